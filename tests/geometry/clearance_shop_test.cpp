#include <gtest/gtest.h>

#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <TopLoc_Location.hxx>
#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "geometry/clearances.h"
#include "geometry/door_sweep.h"

namespace prismwright {
namespace {

// Two prisms of a belt's first panel and its ribs.
struct SmallLens {
  LensPlan plan;
  LensBodies bodies;
  FramePlan frame;
  std::vector<FrameBody> metal;

  explicit SmallLens(LensValues values = starting_values("4", Work::belt, 8)) {
    plan = plan_lens(values).value();
    std::erase_if(plan.prisms,
                  [](const PlannedPrism& prism) { return prism.mark != "P01-U04" && prism.mark != "P01-U05"; });
    bodies = BodyShop().make(plan).value();
    frame = plan_frame(plan);
    const auto not_a_rib = [](const FlatPart& flat) {
      return flat.panel != 1 || flat.kind != PartKind::side_rib;
    };
    std::erase_if(frame.flats, not_a_rib);
    std::erase_if(frame.ribs, [](const RibPlan& rib) { return rib.panel != 1; });
    frame.rings.clear();
    frame.rounds.clear();
    frame.bars.clear();
    metal = make_frame(frame).value();
  }
};

TEST(ClearanceShop, MeasuresNoMoreThanWhatWasMoved) {
  SmallLens lens;
  ClearanceShop shop;
  ASSERT_TRUE(shop.find(lens.plan, lens.bodies, lens.frame, lens.metal).ok());
  const int at_first = shop.measured_anew();
  ASSERT_TRUE(shop.find(lens.plan, lens.bodies, lens.frame, lens.metal).ok());
  EXPECT_EQ(shop.measured_anew(), 0);
  gp_Trsf up;
  up.SetTranslation(gp_Vec(0, 0, 0.1));
  lens.bodies.prisms.front().shape = lens.bodies.prisms.front().shape.Moved(TopLoc_Location(up));
  const auto again = shop.find(lens.plan, lens.bodies, lens.frame, lens.metal);
  EXPECT_GT(shop.measured_anew(), 0);
  EXPECT_LT(shop.measured_anew(), at_first);
  const auto fresh = find_clearances(lens.plan, lens.bodies, lens.frame, lens.metal);
  ASSERT_TRUE(again.ok() && fresh.ok());
  ASSERT_EQ(again->size(), fresh->size());
  for (std::size_t i = 0; i < fresh->size(); ++i) {
    EXPECT_EQ((*again)[i].first + (*again)[i].second, (*fresh)[i].first + (*fresh)[i].second);
    EXPECT_NEAR((*again)[i].gap_mm, (*fresh)[i].gap_mm, 1e-9);
    EXPECT_EQ((*again)[i].verdict, (*fresh)[i].verdict);
  }
}

// A prism turned about the lens axis: radii and heights of its section are those of the solid.
TEST(Surroundings, StandAsFarFromABeltPrismAsItsSectionSays) {
  LensValues values = starting_values("4", Work::belt, 8);
  double least_r = 1e9;
  double most_r = 0;
  double least_z = 1e9;
  for (const SectionPoint p : polygon_of(plan_lens(values)->find("P01-U04")->profile, 1e-5)) {
    least_r = std::min(least_r, p.r);
    most_r = std::max(most_r, p.r);
    least_z = std::min(least_z, p.z);
  }
  values.frame.changer_radius_mm = least_r - 12;
  values.frame.changer_from_mm = -500;
  values.frame.changer_to_mm = 500;
  values.frame.lantern_radius_mm = most_r + 9;
  values.frame.pedestal_radius_mm = most_r + 50;
  values.frame.pedestal_top_mm = least_z - 4;
  const SmallLens lens(values);
  const auto all = find_clearances(lens.plan, lens.bodies, lens.frame, lens.metal);
  ASSERT_TRUE(all.ok());
  std::map<std::string, Clearance> found;
  for (const Clearance& c : *all) {
    if (c.first == "P01-U04" && c.kind == ClearanceKind::surroundings) found[c.second] = c;
  }
  EXPECT_NEAR(found.at("lamp-changer").gap_mm, 12, 1e-3);
  EXPECT_NEAR(found.at("lantern-glazing").gap_mm, 9, 1e-3);
  EXPECT_NEAR(found.at("pedestal").gap_mm, 4, 1e-3);
  EXPECT_EQ(found.at("lantern-glazing").verdict, Verdict::clear);
  EXPECT_EQ(found.at("pedestal").verdict, Verdict::tight) << "5 mm are asked for";
  // The ribs stand within the pedestal's height.
  EXPECT_TRUE(std::any_of(all->begin(), all->end(), [](const Clearance& c) {
    return c.second == "pedestal" && c.first == "P01-rib-left" && c.verdict == Verdict::clash;
  }));
}

// An arm whose leading face holds the hinge's line, and an upright round post of another panel.
struct ArmAndPost {
  static constexpr double kLength_mm = 200;
  static constexpr double kThick_mm = 12;
  static constexpr double kRadius_mm = 8;
  LensPlan plan;
  FramePlan frame;
  std::vector<FrameBody> metal;

  ArmAndPost(bool clockwise, double post_mm, double post_deg) {
    plan.values.frame.door_panel = 1;
    plan.values.frame.door_open_deg = 90;
    frame.hinge = FramePlan::Hinge{{30, 40, 0}, clockwise};
    const double back = clockwise ? 0 : -kThick_mm;  // the leading face lies at y = 40
    add("arm", 1, BRepPrimAPI_MakeBox(gp_Pnt(30, 40 + back, -50), kLength_mm, kThick_mm, 100).Shape());
    const double azimuth = radians(clockwise ? -post_deg : post_deg);
    const gp_Pnt foot(30 + post_mm * std::cos(azimuth), 40 + post_mm * std::sin(azimuth), -60);
    add("post", 2, BRepPrimAPI_MakeCylinder(gp_Ax2(foot, gp_Dir(0, 0, 1)), kRadius_mm, 120).Shape());
  }
  void add(const char* mark, int panel, const TopoDS_Shape& shape) {
    FrameBody body;
    body.mark = mark;
    body.panel = panel;
    body.kind = PartKind::rail;
    body.shape = shape;
    metal.push_back(body);
  }
  [[nodiscard]] DoorSweep sweep() const { return sweep_door(plan, {}, frame, metal).value().value(); }
};

class DoorEitherWay : public ::testing::TestWithParam<bool> {};

TEST_P(DoorEitherWay, IsStoppedWhereItsFaceTouchesThePost) {
  const DoorSweep sweep = ArmAndPost(GetParam(), 150, 70).sweep();
  EXPECT_NEAR(sweep.free_deg, 70 - degrees(std::asin(ArmAndPost::kRadius_mm / 150)), kDoorFree_deg);
  EXPECT_FALSE(sweep.opens_enough);
  EXPECT_EQ(sweep.steps.back().first, "arm");
  EXPECT_EQ(sweep.steps.back().second, "post");
  EXPECT_EQ(sweep.least.gap_mm, 0);
}

TEST_P(DoorEitherWay, PassesAPostBeyondItsReachAsNearAsItsCornerComes) {
  const double reach = std::hypot(ArmAndPost::kLength_mm, ArmAndPost::kThick_mm);
  const double post = reach + ArmAndPost::kRadius_mm + 1.5;
  const DoorSweep sweep = ArmAndPost(GetParam(), post, 70).sweep();
  EXPECT_EQ(sweep.free_deg, 180);
  EXPECT_TRUE(sweep.opens_enough);
  EXPECT_NEAR(sweep.least.gap_mm, 1.5, kDoorGap_mm);
  // The far corner trails the leading face.
  const double trails = degrees(std::atan2(ArmAndPost::kThick_mm, ArmAndPost::kLength_mm));
  EXPECT_NEAR(sweep.least.angle_deg, 70 + trails, 2);
}

INSTANTIATE_TEST_SUITE_P(ClockwiseOrNot, DoorEitherWay, ::testing::Bool());

}  // namespace
}  // namespace prismwright
