#include "geometry/fit_ways.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

// A panel of so many degrees with one block of radius 100 to 120 mm; ribs 5 mm thick, its ends 2.5 mm in them.
FitPanel panel_of(TurningAxis turning, double half_width_deg) {
  LensPlan plan;
  FramePlan frame;
  for (const Side side : {Side::anticlockwise, Side::clockwise}) {
    RibPlan rib;
    rib.mark = side == Side::anticlockwise ? "P01-rib-left" : "P01-rib-right";
    rib.side = side;
    rib.azimuth_deg = side == Side::anticlockwise ? half_width_deg : -half_width_deg;
    rib.outline = {{80, -20}, {140, -20}, {140, 80}, {80, 80}};
    rib.edge = straight_chain(rib.outline);
    frame.ribs.push_back(rib);
  }
  PlannedPrism prism;
  prism.mark = "P01-U01";
  prism.kind = ZoneKind::upper;
  prism.turning = turning;
  prism.trim = {-half_width_deg, half_width_deg, 2.5, Half::whole, 0, std::nullopt};
  const SectionPoint corners[] = {{100, 60}, {120, 60}, {120, 70}, {100, 70}};
  for (int i = 0; i < 4; ++i) {
    prism.profile.faces.push_back(straight_face(FaceRole::land, corners[i], corners[(i + 1) % 4]));
  }
  if (turning == TurningAxis::panel) prism.trim.half = Half::upper;
  plan.prisms = {prism};
  return fit_panel(plan, frame, {1, 0, -half_width_deg, half_width_deg});
}

// Past the other side, 60 deg away, and 2 deg on; on the left rib clockwise, counted at the block's edge.
TEST(FitWays, GoAllRoundTheLensAxisForWhatIsTurnedAboutIt) {
  const FitPanel panel = panel_of(TurningAxis::lens, 30);
  const FitPath path = FitWays(panel, 0).path(panel.prisms.front(), FitWay::round_the_axis);
  ASSERT_EQ(path.size(), 1u);
  EXPECT_NEAR(degrees(path.front().angle()), -62, 1e-6);
  EXPECT_NEAR(path.front().length_mm(), 120 * radians(62), 1e-6);
}

TEST(FitWays, DoNotGoAllRoundTheLensAxisForWhatIsTurnedAboutThePanels) {
  const FitPanel panel = panel_of(TurningAxis::panel, 30);
  EXPECT_TRUE(FitWays(panel, 0).path(panel.prisms.front(), FitWay::round_the_axis).empty());
}

TEST(FitWays, GoAllRoundNoFartherThanMostOfHalfATurn) {
  const FitPanel wide = panel_of(TurningAxis::lens, 85);
  EXPECT_TRUE(FitWays(wide, 0).path(wide.prisms.front(), FitWay::round_the_axis).empty());
}

// Off the rib it is a tilt that any prism may take: the places deepest in the rib end up clear of it.
TEST(FitWays, TiltAnyPrismOffTheRibRoundTheLensAxis) {
  for (const TurningAxis turning : {TurningAxis::lens, TurningAxis::panel}) {
    const FitPanel panel = panel_of(turning, 30);
    for (int rib = 0; rib < 2; ++rib) {
      const FitWays ways(panel, rib);
      const FitUnit& unit = panel.prisms.front();
      EXPECT_NEAR(ways.held_mm(unit), 2.5, 0.05);
      const FitPath path = ways.path(unit, FitWay::from_sea_then_round);
      ASSERT_EQ(path.size(), 2u);
      ASSERT_TRUE(path.front().is_swing());
      EXPECT_EQ(path.front().angle() < 0, rib == 0) << "into the panel, from either side";
      EXPECT_LT(std::abs(degrees(path.front().angle())), 3);
      EXPECT_DOUBLE_EQ(ways.off_rib_mm(unit, FitWay::from_sea_then_round), path.front().length_mm());
      double lowest_mm = 1e9;
      for (const SpacePoint& p : unit.bodies.front()->skin()) {
        const SpacePoint there = path.front().place_at(p, path.front().length_mm());
        lowest_mm = std::min(lowest_mm, dot(panel.faces[rib].inward, there - SpacePoint{}));
      }
      EXPECT_NEAR(lowest_mm - panel.faces[rib].inner_face_mm, 0.2, 0.03);
    }
  }
}

}  // namespace
}  // namespace prismwright
