#include "core/frame/smooth_arcs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/frame/plate_step.h"
#include "core/frame/step_foot.h"

namespace prismwright {
namespace {

constexpr double kWithin_mm = 1e-6;

double distance_to(const PlateChain& chain, PlatePoint p) {
  double least = std::numeric_limits<double>::max();
  for (const PlateStep& step : chain) least = std::min(least, distance(p, foot_on(step, p).place));
  return least;
}

SmoothCurve ellipse(double turn) {
  return {[](double t) {
            return PlatePoint{60 * std::cos(t), 40 * std::sin(t)};
          },
          [](double t) {
            return PlatePoint{-60 * std::sin(t), 40 * std::cos(t)};
          },
          0, turn};
}

TEST(SmoothArcs, QuarterOfAnEllipseKeepsWithinWhatWasAsked) {
  const SmoothCurve curve = ellipse(std::numbers::pi / 2);
  const PlateChain chain = arcs_along(curve, kWithin_mm);
  for (int i = 0; i <= 5000; ++i) {
    EXPECT_LE(distance_to(chain, curve.place(curve.to * i / 5000)), kWithin_mm) << i;
  }
  EXPECT_LT(chain.size(), 300u);
}

TEST(SmoothArcs, WholeEllipseClosesWithItsArea) {
  const PlateChain chain = arcs_along(ellipse(2 * std::numbers::pi), kWithin_mm);
  EXPECT_NEAR(distance(chain.front().from, chain.back().to), 0, 1e-9);
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    EXPECT_NEAR(distance(chain[i].to, chain[i + 1].from), 0, 1e-12) << i;
  }
  // The outline is some 320 mm long.
  EXPECT_NEAR(signed_area_mm2(chain), std::numbers::pi * 60 * 40, 320 * kWithin_mm);
}

TEST(SmoothArcs, ArcComesOutAsItsOwnCircle) {
  const SmoothCurve circle{[](double t) {
                             return PlatePoint{3 + 5 * std::cos(t), 4 + 5 * std::sin(t)};
                           },
                           [](double t) {
                             return PlatePoint{-std::sin(t), std::cos(t)};
                           },
                           0, 2};
  const PlateChain chain = arcs_along(circle, kWithin_mm);
  ASSERT_EQ(chain.size(), 2u);
  for (const PlateStep& step : chain) {
    EXPECT_NEAR(step.radius_mm, 5, 1e-9);
    EXPECT_NEAR(step.turn, 1, 1e-9);
  }
}

TEST(SmoothArcs, SectionKeepsItsLinesAndArcs) {
  Profile profile;
  profile.faces = {straight_face(FaceRole::joint_lower, {100, 0}, {130, 0}),
                   arc_face(FaceRole::outer, {130, 0}, {130, 20}, {60, 10}, std::hypot(70, 10)),
                   straight_face(FaceRole::joint_upper, {130, 20}, {100, 20}),
                   straight_face(FaceRole::inner, {100, 20}, {100, 0})};
  const PlateChain chain = section_chain(profile, kWithin_mm);
  ASSERT_EQ(chain.size(), 4u);
  EXPECT_NEAR(chain[1].radius_mm, std::hypot(70, 10), 1e-9);
  // A rectangle, and a segment of R^2 / 2 (a - sin a) with tan(a / 2) = 1 / 7.
  EXPECT_NEAR(signed_area_mm2(chain), 600 + 2500 * (2 * std::atan(1.0 / 7) - 0.28), 1e-9);
}

// A place right on an upright chord lies within the arc's circle, whatever the last bits of its look say.
TEST(CrossingsOfAnArc, AgreeForAPlaceOnItsChord) {
  for (const double radius : {258.767229773827, 209.995949270815, 33.3}) {
    PlateChain circle;
    for (int i = 0; i < 3; ++i) {
      const auto corner = [&](int k) {
        const double angle = k % 3 * 2 * std::numbers::pi / 3;
        return PlatePoint{radius * std::cos(angle), radius * std::sin(angle)};
      };
      circle.push_back({corner(i), corner(i + 1), 2 * std::numbers::pi / 3, {}, radius});
    }
    for (int k = -80; k <= 80; ++k) {
      const PlatePoint on_chord{-radius / 2, radius * k / 100.0};
      int crossings = 0;
      for (const PlateStep& step : circle) crossings += crossings_of(step, on_chord);
      EXPECT_EQ(crossings % 2, 1) << radius << " " << on_chord.v;
    }
  }
}

}  // namespace
}  // namespace prismwright
