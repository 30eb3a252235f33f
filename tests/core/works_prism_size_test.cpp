#include "core/works/prism_size.h"

#include <gmock/gmock.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/works/greatest_circle.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using Corners = std::vector<SectionPoint>;

Profile outline_of(const Corners& corners, FaceRole first = FaceRole::land) {
  Profile profile;
  for (std::size_t i = 0; i < corners.size(); ++i)
    profile.faces.push_back(
        straight_face(i == 0 ? first : FaceRole::land, corners[i], corners[(i + 1) % corners.size()]));
  return profile;
}

PlannedPrism bar(double r0, double r1, double z0, double z1) {
  PlannedPrism prism;
  prism.mark = "P01-U01";
  prism.turning = TurningAxis::lens;
  prism.profile = outline_of({{r0, z0}, {r1, z0}, {r1, z1}, {r0, z1}});
  return prism;
}

TEST(PrismSize, OfABarTurnedAboutTheLensAxis) {
  // 60 degrees of a ring from 100 to 120, 10 high: chord 120, sagitta 120 - 100 cos 30.
  PlannedPrism prism = bar(100, 120, 5, 15);
  prism.trim = {-30, 30, 0, Half::whole, 0};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_NEAR(size.length_mm, 120, 1e-6);
  EXPECT_NEAR(size.depth_mm, 120 - 100 * std::cos(kPi / 6), 1e-6);
  EXPECT_NEAR(size.height_mm, 10, 1e-9);
  EXPECT_NEAR(size.turn_deg, 0, 1e-9);
  EXPECT_NEAR(size.volume_mm3, kPi / 6 * (120 * 120 - 100 * 100) * 10, 0.01);
  EXPECT_NEAR(size.thickest_mm, 10, 1e-3);
  EXPECT_NEAR(size.mass_g, size.volume_mm3 * 1.2e-3, 1e-9);
}

TEST(PrismSize, OfALopsidedPieceIsTakenAlongItsOwnMiddle) {
  PlannedPrism even = bar(100, 120, 5, 15);
  even.trim = {-30, 30, 3, Half::whole, 0};
  PlannedPrism lopsided = even;
  lopsided.trim.clockwise_side_deg = -10;
  lopsided.trim.anticlockwise_side_deg = 50;
  const PrismSize one = prism_size(even, 1.2);
  const PrismSize other = prism_size(lopsided, 1.2);
  EXPECT_NEAR(other.turn_deg, 20, 1e-9);
  EXPECT_NEAR(other.length_mm, one.length_mm, 1e-6);
  EXPECT_NEAR(other.depth_mm, one.depth_mm, 1e-6);
  // Set back by 3: the end plane meets the ring of 120 at an angle asin(3/120) before 30 degrees.
  EXPECT_NEAR(one.length_mm, 240 * std::sin(kPi / 6 - std::asin(3.0 / 120)), 1e-6);
}

TEST(PrismSize, OfAFlatInnerFaceReachesNoNearerThanTheFace) {
  PlannedPrism prism = bar(100, 120, 5, 15);
  prism.profile.faces[3].role = FaceRole::inner;
  prism.trim = {-30, 30, 0, Half::whole, 0, 100};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_NEAR(size.depth_mm, 20, 1e-6);
  EXPECT_NEAR(size.length_mm, 120, 1e-6);
}

TEST(PrismSize, OfARoundCentreIsItsWholeDisc) {
  PlannedPrism prism;
  prism.kind = ZoneKind::centre;
  prism.profile = outline_of({{200, 0}, {212, 0}, {212, 30}, {200, 30}}, FaceRole::axis);
  prism.trim = {-40, 40, 0, Half::whole, 0};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_NEAR(size.length_mm, 60, 1e-6);
  EXPECT_NEAR(size.height_mm, 60, 1e-6);
  EXPECT_NEAR(size.depth_mm, 12, 1e-9);
  EXPECT_NEAR(size.volume_mm3, kPi * 900 * 12, 0.1);
  EXPECT_NEAR(size.thickest_mm, 12, 1e-3);
}

TEST(PrismSize, OfAnUpperHalfStopsAtTheGapOverTheLevelPlane) {
  PlannedPrism prism;
  prism.profile = outline_of({{200, 50}, {220, 50}, {220, 80}, {200, 80}});
  prism.trim = {-80, 80, 0, Half::upper, 2};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_NEAR(size.length_mm, 2 * std::sqrt(80 * 80 - 4), 1e-6);
  EXPECT_NEAR(size.height_mm, 78, 1e-6);
  EXPECT_NEAR(size.thickest_mm, 20, 1e-3);
}

TEST(PrismSize, OfAHalfThatReachesPastTheLevelPlaneTakesThatIn) {
  PlannedPrism prism;
  prism.profile = outline_of({{200, 50}, {220, 50}, {220, 80}, {200, 80}});
  prism.trim = {-80, 80, 0, Half::upper, -3};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_NEAR(size.length_mm, 160, 1e-6);
  EXPECT_NEAR(size.height_mm, 83, 1e-6);
}

TEST(PrismSize, OfAPieceBetweenSidePlanesIsAsWideAsTheyLeaveIt) {
  // Sides at 20 degrees either way: at r the half width is r tan 20, widest at the outer face.
  PlannedPrism prism;
  prism.profile = outline_of({{200, 90}, {220, 90}, {220, 130}, {200, 130}});
  prism.trim = {-20, 20, 0, Half::upper, 0};
  const PrismSize size = prism_size(prism, 1.2);
  const double half = 220 * std::tan(radians(20));
  EXPECT_NEAR(size.length_mm, 2 * half, 1e-6);
  EXPECT_NEAR(size.height_mm, 130 - std::sqrt(90 * 90 - half * half), 1e-6);
}

TEST(PrismSize, OfAnAxisThatDipsTurnsTheBoxWithIt) {
  // A disc of radius 30, 12 thick, tipped by 10 degrees.
  PlannedPrism prism;
  prism.kind = ZoneKind::centre;
  prism.profile = outline_of({{200, 0}, {212, 0}, {212, 30}, {200, 30}}, FaceRole::axis);
  prism.trim = {-40, 40, 0, Half::whole, 0};
  prism.axis_dip_deg = 10;
  prism.axis_z_mm = 7;
  const PrismSize size = prism_size(prism, 1.2);
  const double c = std::cos(radians(10));
  const double s = std::sin(radians(10));
  EXPECT_NEAR(size.length_mm, 60, 1e-6);
  EXPECT_NEAR(size.height_mm, 60 * c + 12 * s, 1e-6);
  EXPECT_NEAR(size.depth_mm, 60 * s + 12 * c, 1e-6);
}

TEST(PrismSize, OfWhatItsTrimTakesAwayIsNothing) {
  PlannedPrism prism = bar(100, 120, 5, 15);
  prism.trim = {-2, 2, 30, Half::whole, 0};
  const PrismSize size = prism_size(prism, 1.2);
  EXPECT_EQ(size.length_mm, 0);
  EXPECT_EQ(size.volume_mm3, 0);
}

TEST(GreatestCircle, TouchesAllSidesOfATriangle) {
  // Sides 3, 4, 5: the inscribed circle has radius 1, centre (1, 1).
  const InnerCircle circle = greatest_circle({{0, 0}, {4, 0}, {0, 3}}, 1e-7);
  EXPECT_NEAR(circle.diameter_mm, 2, 1e-7);
  EXPECT_NEAR(circle.centre.r, 1, 1e-3);
  EXPECT_NEAR(circle.centre.z, 1, 1e-3);
}

TEST(GreatestCircle, OfALongBarIsAsWideAsTheBar) {
  const Corners tilted = {{0, 0}, {80, 60}, {77, 64}, {-3, 4}};  // 100 by 5
  EXPECT_NEAR(greatest_circle(tilted).diameter_mm, 5, 5e-4);
}

TEST(GreatestCircle, OfAHollowOutlineStaysInside) {
  // An L of two bars 10 wide: the circle in its elbow touches both outer sides and the inner corner (10, 10).
  // Radius R with centre (R, R): (10 - R) sqrt 2 = R.
  const double r = 10 * std::sqrt(2.0) / (1 + std::sqrt(2.0));
  const Corners elbow = {{0, 0}, {50, 0}, {50, 10}, {10, 10}, {10, 50}, {0, 50}};
  EXPECT_NEAR(greatest_circle(elbow, 1e-5).diameter_mm, 2 * r, 1e-5);
}

TEST(GreatestCircle, OfARoundIsTheRound) {
  Corners round;
  for (int i = 0; i < 400; ++i)
    round.push_back({5 + 20 * std::cos(kPi * i / 200), 20 * std::sin(kPi * i / 200)});
  EXPECT_NEAR(greatest_circle(round).diameter_mm, 40 * std::cos(kPi / 400), 5e-4);
}

TEST(GreatestCircle, OfNothingIsNothing) {
  EXPECT_EQ(greatest_circle({}).diameter_mm, 0);
  EXPECT_EQ(greatest_circle({{0, 0}, {1, 1}}).diameter_mm, 0);
}

/// No circle about a place of a fine raster is greater, and the one found stays inside.
void expect_greatest(const Profile& profile) {
  const auto outline = whole_section(profile, 2e-4);
  const InnerCircle circle = greatest_circle(outline);
  double nearest = 1e9;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const SectionPoint from = outline[i];
    const SectionPoint to = outline[(i + 1) % outline.size()];
    for (int k = 0; k < 20; ++k)
      nearest = std::min(nearest, distance(circle.centre, between(from, to, k / 20.0)));
  }
  EXPECT_NEAR(2 * nearest, circle.diameter_mm, 0.02);
  EXPECT_LE(kPi / 4 * circle.diameter_mm * circle.diameter_mm, std::abs(area_mm2(profile)) * 2 + 1e-9);
}

TEST(GreatestCircle, LiesInEverySectionOfTheSamples) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::true_curve), sixth_order_belt(Faces::arc)}) {
    const LensPlan plan = plan_of(values);
    for (const PlannedPrism* prism : distinct_prisms(plan)) {
      SCOPED_TRACE(prism->mark);
      expect_greatest(prism->profile);
    }
  }
}

TEST(PrismSize, OfRandomLensesIsSoundAndNoSmallerThanItsVolume) {
  Lot lot(72);
  int seen = 0;
  while (seen < 6) {
    const auto plan = plan_lens(random_lens(lot));
    if (!plan) continue;
    ++seen;
    for (const PlannedPrism* prism : distinct_prisms(*plan)) {
      SCOPED_TRACE(prism->mark);
      const PrismSize size = prism_size(*prism, 1.19);
      if (size.volume_mm3 <= 0) continue;
      EXPECT_LE(size.volume_mm3, size.length_mm * size.depth_mm * size.height_mm * (1 + 1e-6));
      EXPECT_GT(size.volume_mm3, 0.01 * size.length_mm * size.depth_mm * size.height_mm);
      EXPECT_GT(size.thickest_mm, 0);
      EXPECT_LE(size.thickest_mm, std::hypot(size.depth_mm, size.height_mm) + 1e-6);
    }
  }
}

}  // namespace
}  // namespace prismwright
