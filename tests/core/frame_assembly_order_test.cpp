#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/frame/assembly_order.h"

namespace prismwright {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

void add_panel(FramePlan& frame, int number) {
  for (const Side side : {Side::anticlockwise, Side::clockwise}) {
    RibPlan rib;
    rib.panel = number;
    rib.side = side;
    frame.ribs.push_back(rib);
  }
}

void add_flat(FramePlan& frame, PartKind kind, const char* mark, int panel = 0) {
  FlatPart flat;
  flat.kind = kind;
  flat.mark = mark;
  flat.panel = panel;
  frame.flats.push_back(flat);
}

void add_round(FramePlan& frame, PartKind kind, const char* mark) {
  RoundPart part;
  part.kind = kind;
  part.mark = mark;
  frame.rounds.push_back(part);
}

TEST(OrderOfAssembly, OfNothingIsEmpty) { EXPECT_THAT(order_of_assembly({}), IsEmpty()); }

TEST(OrderOfAssembly, LeavesOutWhatTheFrameDoesNotHave) {
  FramePlan frame;
  for (const int panel : {1, 2}) add_panel(frame, panel);
  frame.rings = {{"ring-top"}, {"ring-bottom"}};
  EXPECT_THAT(order_of_assembly(frame),
              ElementsAre("Put panels 1 and 2 together, each on its first rib as its own order says.",
                          "Stand panel 1 on ring-bottom.",
                          "Stand panel 2 beside it, each rib against its neighbour's: then screw rib "
                          "to rib.",
                          "Lay ring-top on the ribs."));
}

TEST(OrderOfAssembly, PutsBaseBeforePanelsAndTheDoorLast) {
  FramePlan frame;
  for (int panel = 1; panel <= 6; ++panel) add_panel(frame, panel);
  frame.rings = {{"ring-top"}, {"ring-bottom"}};
  add_flat(frame, PartKind::base_table, "base-table");
  add_flat(frame, PartKind::finial_plate, "finial-plate");
  add_flat(frame, PartKind::rail, "P01-rail-top", 1);
  add_flat(frame, PartKind::hinge_leaf, "door-hinge-low-leaf", 3);
  add_flat(frame, PartKind::latch, "door-latch", 4);
  for (const char* mark : {"spacer-bottom-1", "spacer-bottom-2", "spacer-top-1"})
    add_round(frame, PartKind::spacer, mark);
  add_round(frame, PartKind::dowel, "D001");
  add_round(frame, PartKind::hinge_pin, "door-hinge-low-pin");
  EXPECT_THAT(
      order_of_assembly(frame),
      ElementsAre(
          "Screw base-table and ring-bottom together with 2 spacers between them.",
          "Put panels 1 to 6 together, each on its first rib as its own order says.",
          "Stand panel 1 on ring-bottom and screw its bottom rail to it.",
          "Stand panels 2 and 4 to 6 beside it one after another, each rib against its neighbour's: set the "
          "dowels, then screw rib to rib and each bottom rail down.",
          "Lay ring-top on the ribs and screw it to the top rails.",
          "Screw finial-plate and ring-top together with 1 spacer between them.",
          "Screw door-hinge-low-leaf to the ribs at the hinge, and set door-hinge-low-pin.",
          "Hang panel 3, the door, on its pins from above.",
          "Screw door-latch on so that it turns, and shut the door."));
}

TEST(OrderOfAssembly, WritesNumbersAsRanges) {
  EXPECT_EQ(numbers_words({1}), "1");
  EXPECT_EQ(numbers_words({1, 2}), "1 and 2");
  EXPECT_EQ(numbers_words({1, 2, 4, 5}), "1, 2, 4 and 5");
  EXPECT_EQ(numbers_words({1, 2, 3, 5, 6, 7}), "1 to 3 and 5 to 7");
  EXPECT_EQ(numbers_words({1, 3, 4, 5, 8}), "1, 3 to 5 and 8");
}

}  // namespace
}  // namespace prismwright
