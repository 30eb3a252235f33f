#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "core/base/angle.h"
#include "core/frame/door_places.h"
#include "core/frame/door_swing.h"
#include "core/frame/frame_plan.h"
#include "core/frame/hinge_leaf.h"
#include "tests/support/part_points.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

struct Door {
  const char* name;
  LensValues values;
};
std::ostream& operator<<(std::ostream& out, const Door& door) { return out << door.name; }

Door door(const char* name, LensValues values, int panel, DoorHinge hinge) {
  values.frame.door_panel = panel;
  values.frame.door_hinge = hinge;
  return {name, values};
}

// Doors that can swing out: panels of 90 deg and more, or ribs that do not reach in.
std::vector<Door> doors() {
  const LensValues eye = starting_values("4", Work::bullseye, 4);
  LensValues drum = starting_values("4", Work::belt, 8);
  drum.section.upper_to_deg = drum.section.lower_to_deg = drum.section.refracting_to_deg;
  LensValues thick_pin = eye;
  thick_pin.frame.hinge_pin_mm = 14;
  LensValues wide_gap = eye;
  wide_gap.frame.door_gap_mm = 3;
  wide_gap.frame.rib_mm = 8;
  wide_gap.frame.pocket_mm = 4;
  return {door("bullseye_hinged_left", eye, 3, DoorHinge::left),
          door("bullseye_hinged_right", eye, 1, DoorHinge::right),
          door("drum_hinged_left", drum, 8, DoorHinge::left),
          door("small_belt_hinged_right", starting_values("6", Work::belt, 3), 2, DoorHinge::right),
          door("thick_pin", thick_pin, 4, DoorHinge::left),
          door("wide_gap", wide_gap, 4, DoorHinge::right)};
}

const FlatPart* find(const FramePlan& frame, const std::string& mark) {
  for (const FlatPart& part : frame.flats) {
    if (part.mark == mark) return &part;
  }
  return nullptr;
}

const FramedLens& made(const Door& lens) { return framed_once("door " + std::string(lens.name), lens.values); }

class FrameDoor : public testing::TestWithParam<Door> {};

TEST_P(FrameDoor, HasTwoHingesAndALatchWithTheirScrews) {
  const LensPlan& plan = made(GetParam()).plan;
  const FramePlan& frame = made(GetParam()).frame;
  const auto places = door_places(plan);
  ASSERT_TRUE(frame.hinge && places);
  EXPECT_EQ(frame.hinge->opens_clockwise, places->hinge_side == Side::clockwise);
  for (const char* at : {"low", "high"}) {
    const std::string hinge = std::string("door-hinge-") + at;
    const FlatPart* fixed = find(frame, hinge + "-fixed");
    const FlatPart* leaf = find(frame, hinge + "-leaf");
    ASSERT_TRUE(fixed && leaf) << hinge;
    EXPECT_EQ(fixed->panel, places->next_at_hinge);
    EXPECT_EQ(leaf->panel, places->panel);
    EXPECT_GE(fixed->bores.size(), 1u) << hinge;
    EXPECT_GE(leaf->bores.size(), 1u) << hinge;
    for (const FlatPart* part : {fixed, leaf}) {
      // The pin's hole stands on the line of the hinge.
      const SpacePoint pin =
          part->place.out_of(SpacePoint{part->holes[0].centre.u, part->holes[0].centre.v, 0});
      EXPECT_NEAR(pin.x, frame.hinge->place.x, 1e-9);
      EXPECT_NEAR(pin.y, frame.hinge->place.y, 1e-9);
      EXPECT_GT(signed_area_mm2(part->outline), 0);
    }
    EXPECT_NEAR(leaf->holes[0].diameter_mm - fixed->holes[0].diameter_mm, 0.1, 1e-12);
    EXPECT_NEAR(leaf->place.origin.z - fixed->place.origin.z - fixed->thickness_mm, 0.3, 1e-9);
  }
  const FlatPart* latch = find(frame, "door-latch");
  ASSERT_TRUE(latch);
  EXPECT_EQ(latch->panel, places->next_at_latch) << "it stays when the door moves";
}

TEST_P(FrameDoor, HangsFartherOutThanItsRibs) {
  const LensPlan& plan = made(GetParam()).plan;
  const FramePlan& frame = made(GetParam()).frame;
  const auto places = door_places(plan);
  ASSERT_TRUE(frame.hinge && places);
  for (const RibPlan& rib : frame.ribs) {
    const bool own = rib.panel == places->panel && rib.side == places->hinge_side;
    const bool next = rib.panel == places->next_at_hinge && rib.side != places->hinge_side;
    if (!own && !next) continue;
    const SpaceVector out = direction_at(radians(rib.azimuth_deg), 0);
    for (const PlatePoint p : rib.outline)
      EXPECT_LT(p.u, dot(frame.hinge->place - SpacePoint{}, out)) << rib.mark;
  }
}

// The brass of the door, turned about its hinge by hand.
TEST_P(FrameDoor, SwingsOutPastEveryOtherPart) {
  const LensPlan& plan = made(GetParam()).plan;
  const FramePlan& frame = made(GetParam()).frame;
  ASSERT_TRUE(frame.hinge);
  const int own = plan.values.frame.door_panel;
  std::vector<PartPoints> moving;
  std::vector<PartPoints> fixed;
  for (const PartPoints& part : points_of(frame, plan)) (part.panel == own ? moving : fixed).push_back(part);
  ASSERT_GE(moving.size(), 6u) << "two ribs, two rails, two leaves";
  for (const double angle_deg : {0.0, 0.3, 2.0, 10.0, 45.0, 90.0}) {
    const double angle = radians(frame.hinge->opens_clockwise ? -angle_deg : angle_deg);
    for (const PartPoints& part : moving) {
      const PartPoints turned = part.turned(frame.hinge->place, angle);
      for (const PartPoints& other : fixed) {
        if (!turned.may_meet(other, -0.02)) continue;
        EXPECT_LT(overlap_mm(turned, other, 0), 0.02)
            << part.mark << " and " << other.mark << " at " << angle_deg;
      }
    }
  }
}

TEST_P(FrameDoor, RubsWhenItIsOpenedTheOtherWay) {
  const LensPlan& plan = made(GetParam()).plan;
  const FramePlan& frame = made(GetParam()).frame;
  ASSERT_TRUE(frame.hinge);
  const int own = plan.values.frame.door_panel;
  double most = -1;
  std::vector<PartPoints> moving;
  std::vector<PartPoints> fixed;
  for (const PartPoints& part : points_of(frame, plan)) (part.panel == own ? moving : fixed).push_back(part);
  for (const PartPoints& part : moving) {
    const PartPoints turned = part.turned(frame.hinge->place, radians(frame.hinge->opens_clockwise ? 20 : -20));
    for (const PartPoints& other : fixed) {
      if (turned.may_meet(other, -0.02)) most = std::max(most, overlap_mm(turned, other, 0));
    }
  }
  EXPECT_GT(most, 0.5) << "inward, the door's rib runs into its neighbour";
}

TEST_P(FrameDoor, IsNotWarnedOf) {
  for (const FrameWarning& warning : made(GetParam()).frame.warnings)
    EXPECT_EQ(warning.sentence.find("cannot swing"), std::string::npos) << warning.sentence;
}

INSTANTIATE_TEST_SUITE_P(Doors, FrameDoor, testing::ValuesIn(doors()),
                         [](const auto& lens) { return std::string(lens.param.name); });

TEST(HingeLeaf, IsAClosedOutlineRoundItsPin) {
  // Thin and thick pins against the flange: with and without a step in the block.
  for (const double pin : {5.0, 30.0}) {
    const LeafPlan leaf{pin, 1.1 * pin, 0.25, 5.25, -1.3 * pin, -1.3 * pin - 8, 6, 0.5};
    const PlateChain chain = leaf_outline(leaf);
    for (std::size_t i = 0; i < chain.size(); ++i) {
      const PlateStep& step = chain[i];
      EXPECT_EQ(step.to.u, chain[(i + 1) % chain.size()].from.u);
      EXPECT_EQ(step.to.v, chain[(i + 1) % chain.size()].from.v);
      if (step.straight()) continue;
      EXPECT_NEAR(std::hypot(step.from.u - step.centre.u, step.from.v - step.centre.v), step.radius_mm, 1e-12);
      EXPECT_NEAR(std::hypot(step.to.u - step.centre.u, step.to.v - step.centre.v), step.radius_mm, 1e-12);
    }
    EXPECT_GT(signed_area_mm2(chain), 0);
    const PlateOutline outline = flattened(chain, 0.01);
    EXPECT_GT(part_points::depth_in(outline, 0, 0), 1.05 * pin) << "brass all round the pin's axis";
    EXPECT_GE(least_inside_radius_mm(chain, CutSide::outside_of_chain), 0.5 - 1e-12);
    // Where the rib stands there is no brass, up to its sharp corner.
    const PlateOutline rib =
        plate_rectangle({leaf.flange_x_mm, leaf.back_y_mm}, {leaf.edge_x_mm, leaf.front_y_mm});
    EXPECT_LT(area_mm2(common_part({rib}, {outline})), 1e-3);
  }
}

// A full stack of prisms in a panel of 45 deg: the inner ends of the latch side's rib swing into the next
// panel.
TEST(NarrowDoor, IsWarnedOfAndRubs) {
  const LensPlan plan = plan_of(door("narrow", fourth_order_bullseye(Faces::arc), 3, DoorHinge::left).values);
  const FramePlan frame = plan_frame(plan);
  const auto warning = std::find_if(
      frame.warnings.begin(), frame.warnings.end(),
      [](const FrameWarning& found) { return found.sentence.find("cannot swing") != std::string::npos; });
  ASSERT_NE(warning, frame.warnings.end());
  EXPECT_EQ(warning->mark, "P03-rib-right");
  std::optional<PartPoints> own;
  std::optional<PartPoints> next;
  for (const FlatPart& part : frame.flats) {
    if (part.mark == "P03-rib-right") own.emplace(part);
    if (part.mark == "P02-rib-left") next.emplace(part);
  }
  const double at_10 = overlap_mm(own->turned(frame.hinge->place, radians(10)), *next, 0);
  EXPECT_GT(at_10, 1);
}

// A place of the latch side's rib is turned step by step; the gap that frees it is where it just grazes the
// plane.
TEST(LatchRoom, IsTheGapAtWhichTheInnermostPlaceJustGrazesTheNeighbour) {
  RibPlan rib;
  rib.azimuth_deg = -20;
  rib.side = Side::clockwise;
  rib.outline = {{180, 0}, {260, 0}, {260, 300}, {180, 300}};
  const SpacePoint hinge = SpacePoint{} + 300.0 * direction_at(radians(20), 0);
  const LatchRoom room = latch_room(rib, hinge);
  EXPECT_EQ(room.least_u_mm, 180);
  const SpaceVector into{std::sin(radians(20)), std::cos(radians(20)), 0};
  const auto nearest = [&](double gap) {
    const SpacePoint place = SpacePoint{} + 180.0 * direction_at(radians(-20), 0) + gap * into;
    double least = gap;
    for (double angle = 0; angle < 1.5; angle += 1e-4) {
      const SpaceVector v = place - hinge;
      const SpacePoint turned{hinge.x + v.x * std::cos(angle) - v.y * std::sin(angle),
                              hinge.y + v.x * std::sin(angle) + v.y * std::cos(angle), 0};
      least = std::min(least, dot(turned - SpacePoint{}, into));
    }
    return least;
  };
  EXPECT_NEAR(nearest(room.needed_mm), 0, 1e-4);
  EXPECT_LT(nearest(0.9 * room.needed_mm), -0.1);
  EXPECT_EQ(latch_room(rib, SpacePoint{} + 230.0 * direction_at(radians(20), 0)).needed_mm, 0)
      << "the hinge stands no farther along that plane than the rib begins";
}

TEST(FrameWithoutDoor, HasNoPartsWithoutADoorPanel) {
  const FramePlan frame = plan_frame(plan_of(fourth_order_bullseye(Faces::arc)));
  EXPECT_FALSE(frame.hinge);
  for (const FlatPart& part : frame.flats) {
    EXPECT_NE(part.kind, PartKind::hinge_leaf);
    EXPECT_NE(part.kind, PartKind::latch);
  }
}

}  // namespace
}  // namespace prismwright
