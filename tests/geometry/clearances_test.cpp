#include <gtest/gtest.h>

#include <BRepBuilderAPI_Transform.hxx>
#include <TopLoc_Location.hxx>
#include <algorithm>
#include <atomic>
#include <cmath>
#include <set>
#include <utility>

#include "core/base/angle.h"
#include "core/frame/needed_gap.h"
#include "core/frame/setting_check.h"
#include "core/lens/quantities.h"
#include "geometry/clearances.h"
#include "geometry/measured_part.h"
#include "geometry/pair_gap.h"
#include "geometry/rib_place.h"
#include "geometry/solid_gap.h"

namespace prismwright {
namespace {

gp_Trsf shift(double x, double y, double z) {
  gp_Trsf move;
  move.SetTranslation(gp_Vec(x, y, z));
  return move;
}

// A lens with its solids; zones may be left out, and with them all metal but ribs and rings, so that a test
// makes no more than it looks at.
struct BuiltLens {
  LensPlan plan;
  LensBodies bodies;
  FramePlan frame;
  std::vector<FrameBody> metal;

  explicit BuiltLens(const LensValues& values, const std::set<std::string>& zones = {}, int panels = 99) {
    plan = plan_lens(values).value();
    std::erase_if(plan.prisms, [&](const PlannedPrism& prism) {
      return prism.panel > panels || (!zones.empty() && !zones.contains(prism.zone));
    });
    BodyShop shop;
    bodies = shop.make(plan).value();
    frame = plan_frame(plan);
    metal = make_frame(frame).value();
    if (zones.empty()) return;
    std::erase_if(metal, [](const FrameBody& part) {
      return part.kind != PartKind::side_rib && part.kind != PartKind::ring;
    });
  }

  PrismBody& body(const std::string& mark) {
    return *std::find_if(bodies.prisms.begin(), bodies.prisms.end(),
                         [&](const PrismBody& b) { return b.mark == mark; });
  }
  const RibPlan& rib(const std::string& mark) const {
    return *std::find_if(frame.ribs.begin(), frame.ribs.end(),
                         [&](const RibPlan& r) { return r.mark == mark; });
  }
  const TopoDS_Shape& brass(const std::string& mark) const {
    return std::find_if(metal.begin(), metal.end(), [&](const FrameBody& b) { return b.mark == mark; })->shape;
  }
  [[nodiscard]] std::vector<Clearance> clearances() const {
    const auto found = find_clearances(plan, bodies, frame, metal);
    EXPECT_TRUE(found.ok()) << (found.ok() ? "" : found.problem().text);
    return found.ok() ? *found : std::vector<Clearance>{};
  }
};

const Clearance* between(const std::vector<Clearance>& all, std::string_view a, std::string_view b) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Clearance& c) {
    return (c.first == a && c.second == b) || (c.first == b && c.second == a);
  });
  return found == all.end() ? nullptr : &*found;
}

LensValues fourth_order(Work work = Work::bullseye) { return starting_values("4", work, 8); }

LensValues flat_faced_belt() {
  LensValues values = starting_values("4", Work::belt, 8);
  values.section.inner_face = InnerFace::flat;
  values.section.edge_mm = 24;
  return values;
}

struct LensCase {
  const char* name;
  LensValues (*values)();
};

class WholeFourthOrderLens : public ::testing::TestWithParam<LensCase> {};

TEST_P(WholeFourthOrderLens, HasAVerdictOnEveryPairAndNoneIsBad) {
  const BuiltLens lens(GetParam().values());
  const auto all = lens.clearances();
  for (const PlannedPrism& prism : lens.plan.prisms) {
    for (const char* side : {"left", "right"}) {
      const std::string rib = prism.mark.substr(0, 3) + "-rib-" + side;
      EXPECT_TRUE(between(all, prism.mark, rib)) << prism.mark << " " << rib;
    }
  }
  for (const NeighbourPair& pair : neighbours(lens.plan)) {
    EXPECT_TRUE(between(all, lens.plan.prisms[pair.first].mark, lens.plan.prisms[pair.second].mark));
  }
  EXPECT_TRUE(std::any_of(all.begin(), all.end(), [](const Clearance& c) { return c.second == "ring-top"; }));
  EXPECT_TRUE(
      std::any_of(all.begin(), all.end(), [](const Clearance& c) { return c.second == "ring-bottom"; }));
  for (const Clearance& c : all) {
    EXPECT_EQ(c.verdict, Verdict::clear) << c.first << " " << c.second << " " << c.gap_mm;
    EXPECT_NEAR(c.first_point.Distance(c.second_point), c.gap_mm, 1e-6) << c.first << " " << c.second;
  }
}

TEST_P(WholeFourthOrderLens, LeavesEveryHeldPrismItsSettingGap) {
  const BuiltLens lens(GetParam().values(), {}, 1);
  const double gap = lens.plan.values.frame.setting_gap_mm;
  const RibPlan& rib = lens.rib("P01-rib-left");
  PartBook book;
  const auto parts = book.parts_of(lens.plan, lens.bodies, lens.frame, lens.metal);
  const auto part = [&](std::string_view mark) -> const MeasuredPart& {
    return *std::find_if(parts.begin(), parts.end(), [&](const MeasuredPart& p) { return p.mark == mark; });
  };
  int held = 0;
  for (const Pocket& pocket : rib.pockets) {
    for (const std::string& mark : pocket.marks) {
      const GapsFound gaps = pair_gap(part(mark), part(rib.mark), 1e9);
      ASSERT_TRUE(gaps.side && gaps.end) << mark;
      EXPECT_NEAR(gaps.side->gap_mm, gap, 0.02) << mark;
      // A whole ring that only grazes its pocket does not come down to the floor.
      if (lens.plan.find(mark)->trim.half != Half::whole) {
        EXPECT_NEAR(gaps.end->gap_mm, lens.plan.values.frame.end_gap_mm, 1e-5) << mark;
      }
      ++held;
    }
  }
  EXPECT_GT(held, 15);
}

INSTANTIATE_TEST_SUITE_P(EveryWork, WholeFourthOrderLens,
                         ::testing::Values(LensCase{"bullseye", [] { return fourth_order(Work::bullseye); }},
                                           LensCase{"belt", [] { return fourth_order(Work::belt); }},
                                           LensCase{"flat_faced_belt", flat_faced_belt}),
                         [](const auto& named) { return std::string(named.param.name); });

// The kernel's solid-to-solid distance, which takes seconds a pair against a whole rib.
TEST(Clearances, AgreeWithTheKernel) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    const BuiltLens lens(fourth_order(work), {"U04", "U05", "R8", "R9"}, 1);
    const auto all = lens.clearances();
    for (const auto& [a, b] : {std::pair("P01-U05", "P01-U04"), std::pair("P01-R8a", "P01-R9a")}) {
      const Clearance* found = between(all, a, b);
      ASSERT_TRUE(found) << a << b;
      const SolidGap exact = gap_between(lens.bodies.find(a)->shape, lens.bodies.find(b)->shape);
      EXPECT_NEAR(found->gap_mm, exact.gap_mm, 2e-4) << a << b;
    }
    for (const char* mark : {"P01-U04", "P01-R9b"}) {
      const Clearance* found = between(all, mark, "P01-rib-right");
      ASSERT_TRUE(found);
      const SolidGap exact = gap_between(lens.bodies.find(mark)->shape, lens.brass("P01-rib-right"));
      EXPECT_NEAR(found->gap_mm, exact.gap_mm, 5e-4) << mark;
    }
  }
}

TEST(Clearances, AreTheSameOnBothSidesOfASymmetricPanel) {
  const BuiltLens lens(fourth_order(), {"U05", "R9"});
  const auto all = lens.clearances();
  const Clearance* left = between(all, "P03-U05", "P03-rib-left");
  const Clearance* right = between(all, "P03-U05", "P03-rib-right");
  ASSERT_TRUE(left && right);
  EXPECT_NEAR(left->gap_mm, right->gap_mm, 2e-4) << "each is found within 1e-4 mm";
  const Clearance* other = between(all, "P07-U05", "P07-rib-left");
  ASSERT_TRUE(other);
  EXPECT_DOUBLE_EQ(other->gap_mm, left->gap_mm);
  EXPECT_NEAR(other->first_point.X(), -left->first_point.X(), 1e-6) << "turned by half a turn";
}

enum class HowMoved { placed, remade };
class MisplacedPrism : public ::testing::TestWithParam<HowMoved> {
 protected:
  // The left rib of panel 1 stands at 22.5 deg: its normal into the rib.
  static gp_Trsf into_left_rib(double by_mm) {
    return shift(-std::sin(radians(22.5)) * by_mm, std::cos(radians(22.5)) * by_mm, 0);
  }
  static void move(PrismBody& body, const gp_Trsf& by) {
    body.shape = GetParam() == HowMoved::placed ? body.shape.Moved(TopLoc_Location(by))
                                                : BRepBuilderAPI_Transform(body.shape, by, true).Shape();
  }
};

TEST_P(MisplacedPrism, ClashesByATwentiethOfAMillimetreWithItsPocketsFloor) {
  BuiltLens lens(fourth_order(), {"U05"}, 1);
  move(lens.body("P01-U05"), into_left_rib(lens.plan.values.frame.end_gap_mm + 0.05));
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-U05", "P01-rib-left");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->verdict, Verdict::clash);
  EXPECT_EQ(found->gap_mm, 0);
  // The end's area, sunk by 0.05 mm.
  EXPECT_NEAR(found->overlap_mm3, 0.05 * area_mm2(lens.plan.prisms.front().profile) / std::cos(radians(22.5)),
              3);
  // The other rib leans to this one by 45 deg: there the move takes the sides' room, shim and glazing.
  const Clearance* other = between(all, "P01-U05", "P01-rib-right");
  EXPECT_EQ(other->verdict, Verdict::tight);
  EXPECT_EQ(other->overlap_mm3, 0);
}

TEST_P(MisplacedPrism, IsTightWhereItsEndLacksTheRoomToGrow) {
  BuiltLens lens(fourth_order(), {"U05"}, 1);
  move(lens.body("P01-U05"), into_left_rib(lens.plan.values.frame.end_gap_mm - 0.06));
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-U05", "P01-rib-left");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->verdict, Verdict::tight);
  EXPECT_NEAR(found->gap_mm, 0.06, 1e-6);
  EXPECT_GT(found->needed_mm, 0.06);
  EXPECT_EQ(found->overlap_mm3, 0);
}

// From the first prism to where it comes nearest to the second, along the line of nearest places.
gp_Trsf towards(const std::vector<Clearance>& all, const char* first, const char* second, double left_mm) {
  const Clearance* pair = between(all, first, second);
  gp_Vec way(pair->first_point, pair->second_point);
  if (pair->first != first) way.Reverse();
  way *= (pair->gap_mm - left_mm) / pair->gap_mm;
  return shift(way.X(), way.Y(), way.Z());
}

TEST_P(MisplacedPrism, ClashesByATwentiethOfAMillimetreWithItsNeighbour) {
  BuiltLens lens(fourth_order(), {"R8", "R9"}, 1);
  const auto before = lens.clearances();
  EXPECT_NEAR(between(before, "P01-R8a", "P01-R9a")->gap_mm, 0.5, 2e-4);
  move(lens.body("P01-R9a"), towards(before, "P01-R9a", "P01-R8a", -0.05));
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-R8a", "P01-R9a");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->verdict, Verdict::clash);
  EXPECT_EQ(found->gap_mm, 0);
  EXPECT_GT(found->overlap_mm3, 1e-3);
}

TEST_P(MisplacedPrism, IsTightToItsNeighbour) {
  BuiltLens lens(fourth_order(Work::belt), {"U04", "U05"}, 1);
  move(lens.body("P01-U05"), towards(lens.clearances(), "P01-U05", "P01-U04", 0.02));
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-U04", "P01-U05");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->verdict, Verdict::tight);
  EXPECT_NEAR(found->gap_mm, 0.02, 5e-4);
}

INSTANTIATE_TEST_SUITE_P(ByPlaceOrShape, MisplacedPrism, ::testing::Values(HowMoved::placed, HowMoved::remade));

TEST(Clearances, MeasureARibThatIsNotWhereItWasPlanned) {
  BuiltLens lens(fourth_order(), {"R9"}, 1);
  for (FrameBody& part : lens.metal) {
    if (part.mark == "P01-rib-left") {
      part.shape = part.shape.Moved(
          TopLoc_Location(shift(std::sin(radians(22.5)) * 0.3, -std::cos(radians(22.5)) * 0.3, 0)));
    }
  }
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-R9a", "P01-rib-left");
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->gap_mm, lens.plan.values.frame.end_gap_mm - 0.3, 1e-3);
}

TEST(Clearances, TakeRefractingRingsWithoutAGapForCemented) {
  LensValues values = fourth_order();
  values.section.gap_mm = 0;
  const BuiltLens lens(values, {"R8", "R9"}, 1);
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-R8a", "P01-R9a");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->gap_mm, 0);
  EXPECT_LT(found->overlap_mm3, 1e-3);
  EXPECT_EQ(found->needed_mm, 0);
  EXPECT_EQ(found->verdict, Verdict::clear);
}

TEST(Clearances, NeedTheGrowthOfHalfThePrismAtItsEnd) {
  LensValues values = fourth_order();
  values.frame.end_gap_mm = 0.05;
  const BuiltLens lens(values, {"U05"}, 1);
  const auto all = lens.clearances();
  const Clearance* found = between(all, "P01-U05", "P01-rib-left");
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->gap_mm, 0.05, 1e-6);
  // Half the length: 4.95e-5 /K between acrylic and brass over 30 K, and 0.1 % of moisture.
  const double length_mm = end_to_end_mm(*lens.plan.find("P01-U05"));
  EXPECT_NEAR(found->needed_mm, length_mm / 2 * (4.95e-5 * 30 + 1e-3), 1e-9);
  EXPECT_EQ(found->verdict, Verdict::tight);
}

// What rests on a floor has nothing in common with it, which no common volume needs to tell.
TEST(Clearances, CallAPrismTightThatRestsOnItsPocketsFloor) {
  LensValues values = fourth_order();
  values.frame.end_gap_mm = 0;
  const BuiltLens lens(values, {"R8", "U05"}, 1);
  const auto all = lens.clearances();
  for (const char* mark : {"P01-R8a", "P01-R8b", "P01-U05"}) {
    const Clearance* found = between(all, mark, "P01-rib-left");
    ASSERT_TRUE(found) << mark;
    EXPECT_EQ(found->gap_mm, 0) << mark;
    EXPECT_EQ(found->overlap_mm3, 0) << mark;
    EXPECT_GT(found->needed_mm, 0.05) << mark;
    EXPECT_EQ(found->verdict, Verdict::tight) << mark;
  }
}

TEST(Clearances, NeedShimOrGlazingAndGrowthInThePocketAlone) {
  LensValues values = fourth_order();
  values.frame.glazing_mm = 0.6;
  const BuiltLens lens(values, {"R8", "R9"}, 1);
  const auto all = lens.clearances();
  const double extent_mm = section_extent_mm(lens.plan.find("P01-R9a")->profile);
  const Clearance* at_rib = between(all, "P01-R9a", "P01-rib-left");
  ASSERT_TRUE(at_rib);
  EXPECT_NEAR(at_rib->needed_mm, 0.6 + extent_mm / 2 * (4.95e-5 * 30 + 1e-3), 1e-9);
  EXPECT_EQ(at_rib->verdict, Verdict::tight);
  const double other_mm = section_extent_mm(lens.plan.find("P01-R8a")->profile);
  const Clearance* between_prisms = between(all, "P01-R8a", "P01-R9a");
  ASSERT_TRUE(between_prisms);
  EXPECT_NEAR(between_prisms->needed_mm, (extent_mm + other_mm) / 2 * (4.95e-5 * 30 + 1e-3), 1e-9);
  EXPECT_EQ(between_prisms->verdict, Verdict::clear);
}

TEST(Clearances, ReachATwoPanelLensAndABlindPanel) {
  LensValues two = starting_values("6", Work::bullseye, 2);
  const BuiltLens lens(two, {"C", "R1", "U01", "U02"});
  for (const Clearance& c : lens.clearances())
    EXPECT_EQ(c.verdict, Verdict::clear) << c.first << " " << c.second;
  LensValues blind = starting_values("6", Work::belt, 6);
  blind.panels[1].blind = true;
  const BuiltLens with_blind(blind, {"C", "R1", "U01"});
  const auto all = with_blind.clearances();
  EXPECT_FALSE(all.empty());
  for (const Clearance& c : all) {
    if (c.kind != ClearanceKind::metal_metal) {
      EXPECT_NE(c.first.substr(0, 3), "P02");
    }
    EXPECT_EQ(c.verdict, Verdict::clear) << c.first << " " << c.second;
  }
}

TEST(Clearances, CanBeStopped) {
  const BuiltLens lens(fourth_order(Work::belt), {"R8", "R9"}, 2);
  std::atomic<int> told = 0;
  const auto found = find_clearances(lens.plan, lens.bodies, lens.frame, lens.metal,
                                     [&](double, std::string_view) { return ++told < 2; });
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(found.problem().trouble, Trouble::stopped);
  EXPECT_EQ(told, 2);
}

}  // namespace
}  // namespace prismwright
