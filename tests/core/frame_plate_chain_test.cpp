#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "core/base/angle.h"
#include "core/frame/plate_chain.h"
#include "core/frame/plate_polygons.h"
#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kWithin_mm = 0.004;

// Points of an arc, ends included, with chords within a thousandth.
void add_arc(PlateOutline& outline, PlatePoint centre, double radius, double from_deg, double to_deg) {
  const double each = 2 * std::acos(1 - 0.001 / radius);
  const double turn = radians(to_deg - from_deg);
  const int count = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / each)));
  for (int i = 0; i <= count; ++i) {
    const double angle = radians(from_deg) + turn * i / count;
    outline.push_back({centre.u + radius * std::cos(angle), centre.v + radius * std::sin(angle)});
  }
}

PlateOutline rounded_rectangle(double width, double height, double radius) {
  PlateOutline outline;
  add_arc(outline, {width - radius, radius}, radius, -90, 0);
  add_arc(outline, {width - radius, height - radius}, radius, 0, 90);
  add_arc(outline, {radius, height - radius}, radius, 90, 180);
  add_arc(outline, {radius, radius}, radius, 180, 270);
  return outline;
}

double distance_to_chain(const PlateChain& chain, PlatePoint place) {
  double least = std::numeric_limits<double>::max();
  for (const PlateStep& step : chain) least = std::min(least, distance_to(step, place));
  return least;
}

double distance_to_polygon(const PlateOutline& outline, PlatePoint place) {
  return distance_to_chain(straight_chain(outline), place);
}

double worst_kink_deg(const PlateChain& chain) {
  double worst = 0;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& next = chain[(i + 1) % chain.size()];
    worst = std::max(worst, std::abs(turn_between(heading_at_end(chain[i]), heading_at_start(next))));
  }
  return degrees(worst);
}

std::size_t corners_of(const PlateChain& chain) {
  std::size_t corners = 0;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& next = chain[(i + 1) % chain.size()];
    if (std::abs(turn_between(heading_at_end(chain[i]), heading_at_start(next))) > radians(1)) ++corners;
  }
  return corners;
}

void expect_closed(const PlateChain& chain) {
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& step = chain[i];
    const PlateStep& next = chain[(i + 1) % chain.size()];
    EXPECT_EQ(step.to.u, next.from.u);
    EXPECT_EQ(step.to.v, next.from.v);
    if (step.straight()) continue;
    EXPECT_NEAR(distance(step.centre, step.from), step.radius_mm, 1e-6);
    EXPECT_NEAR(distance(step.centre, step.to), step.radius_mm, 1e-6);
    const double turn = turn_between(step.from - step.centre, step.to - step.centre);
    EXPECT_NEAR(std::remainder(turn - step.turn, 2 * kPi), 0, 1e-6);
  }
}

// Both ways: corners of the polygon to the chain, places of the chain to the polygon.
void expect_fits(const PlateChain& chain, const PlateOutline& outline, double within, double sagitta) {
  ASSERT_FALSE(chain.empty());
  expect_closed(chain);
  double worst = 0;
  for (const PlatePoint p : outline) worst = std::max(worst, distance_to_chain(chain, p));
  EXPECT_LE(worst, within);
  worst = 0;
  for (const PlatePoint p : flattened(chain, 0.0005)) worst = std::max(worst, distance_to_polygon(outline, p));
  EXPECT_LE(worst, within + sagitta + 0.0005);
}

TEST(FittedChain, FindsTheLinesAndArcsOfARoundedRectangle) {
  for (const double radius : {0.3, 0.5, 4.0, 12.0}) {
    const PlateOutline outline = rounded_rectangle(60, 40, radius);
    const PlateChain chain = fitted_chain(outline, kWithin_mm);
    expect_fits(chain, outline, kWithin_mm, 0.001);
    EXPECT_EQ(chain.size(), 8u) << radius;
    EXPECT_LT(worst_kink_deg(chain), 1);
    EXPECT_NEAR(signed_area_mm2(chain), 60 * 40 - (4 - kPi) * radius * radius, 2e-3 * radius);
    EXPECT_NEAR(length_mm(chain), 2 * (60 + 40) - (8 - 2 * kPi) * radius, 5e-3);
    EXPECT_NEAR(least_inside_radius_mm(chain, CutSide::inside_of_chain), radius, 0.01);
  }
}

TEST(FittedChain, FindsACircleAsTwoHalfTurns) {
  for (const double radius : {0.2, 1.5, 30.0, 400.0}) {
    PlateOutline outline;
    add_arc(outline, {7, -3}, radius, 10, 370);
    outline.pop_back();
    const PlateChain chain = fitted_chain(outline, kWithin_mm);
    expect_fits(chain, outline, kWithin_mm, 0.001);
    ASSERT_EQ(chain.size(), 2u) << radius;
    EXPECT_NEAR(chain.front().radius_mm, radius, 0.001);
    EXPECT_NEAR(chain.front().turn, kPi, 1e-9);
  }
}

TEST(FittedChain, FindsTheFourArcsOfABentSlot) {
  // A slot 6 mm wide about a circle of 50 mm, over a third of a turn: two concentric arcs, two round ends.
  PlateOutline outline;
  add_arc(outline, {0, 0}, 53, 0, 120);
  add_arc(outline, {50 * std::cos(radians(120)), 50 * std::sin(radians(120))}, 3, 120, 300);
  add_arc(outline, {0, 0}, 47, 120, 0);
  add_arc(outline, {50, 0}, 3, 180, 360);
  const PlateChain chain = fitted_chain(outline, kWithin_mm);
  expect_fits(chain, outline, kWithin_mm, 0.001);
  EXPECT_EQ(chain.size(), 4u);
  EXPECT_LT(worst_kink_deg(chain), 1);
  EXPECT_NEAR(signed_area_mm2(chain), kPi / 3 * (53 * 53 - 47 * 47) + kPi * 9, 0.1);
  EXPECT_NEAR(least_inside_radius_mm(chain, CutSide::inside_of_chain), 3, 0.01);
  EXPECT_NEAR(least_inside_radius_mm(chain, CutSide::outside_of_chain), 47, 0.05);
}

// A strip of two arcs that bend to either hand and touch: 20 mm wide, square ends.
TEST(FittedChain, FollowsAnSCurveAndKeepsItsCorners) {
  PlateOutline outline;
  add_arc(outline, {0, 100}, 110, -90, -30);
  add_arc(outline, {200 * std::cos(radians(30)), 0}, 90, 150, 90);
  PlateOutline back;
  add_arc(back, {0, 100}, 90, -90, -30);
  add_arc(back, {200 * std::cos(radians(30)), 0}, 110, 150, 90);
  outline.insert(outline.end(), back.rbegin(), back.rend());
  const PlateChain chain = fitted_chain(outline, kWithin_mm);
  expect_fits(chain, outline, kWithin_mm, 0.001);
  EXPECT_EQ(chain.size(), 6u);
  EXPECT_EQ(corners_of(chain), 4u);
  // Each half of the strip is a sixth of a ring between 90 and 110 mm.
  EXPECT_NEAR(signed_area_mm2(chain), kPi / 3 * (110 * 110 - 90 * 90), 0.3);
  EXPECT_NEAR(length_mm(chain), 2 * kPi / 3 * (110 + 90) + 40, 0.05);
}

TEST(FittedChain, KeepsStraightCornersAsTheyAre) {
  const PlateOutline hexagon{{0, 0}, {30, 0}, {45, 26}, {30, 52}, {0, 52}, {-15, 26}};
  const PlateChain chain = fitted_chain(hexagon, kWithin_mm);
  ASSERT_EQ(chain.size(), 6u);
  EXPECT_NEAR(signed_area_mm2(chain), signed_area_mm2(hexagon), 1e-9);
  EXPECT_EQ(least_inside_radius_mm(chain, CutSide::inside_of_chain), 0);
  EXPECT_EQ(least_inside_radius_mm(chain, CutSide::outside_of_chain), std::numeric_limits<double>::infinity());
  const PlateChain triangle = fitted_chain({{0, 0}, {10, 0}, {0, 10}}, kWithin_mm);
  EXPECT_EQ(triangle.size(), 3u);
}

// Corners between arcs of fine chords are keen although the chords are short.
TEST(FittedChain, KeepsTheKeenEndsOfALens) {
  PlateOutline outline;
  add_arc(outline, {0, -30}, 50, 36.8698976, 143.1301024);
  PlateOutline lower;
  add_arc(lower, {0, 30}, 50, 216.8698976, 323.1301024);
  outline.insert(outline.end(), lower.begin(), lower.end());
  const PlateChain chain = fitted_chain(outline, kWithin_mm);
  expect_fits(chain, outline, kWithin_mm, 0.001);
  EXPECT_EQ(chain.size(), 2u);
  EXPECT_EQ(corners_of(chain), 2u);
}

// Of a radius of 800 000 km rounding moves the ends off the circle by more than a modeller takes.
TEST(ArcStep, IsALineWhereItIsAllButFlat) {
  const PlatePoint from{-510.874735, -18.994471};
  const PlatePoint to{-510.874735, 183.308888};
  EXPECT_TRUE(arc_step(from, to, 2.5e-7).straight());
  const PlateStep flat = arc_step(from, to, 2.5e-6);
  EXPECT_FALSE(flat.straight());
  EXPECT_NEAR(flat.radius_mm, 202.303359 / 2.5e-6, 100);
}

TEST(FittedChain, RoundsOffTurnsTooWeakForACorner) {
  // 60 edges of 10.5 mm that turn by six degrees each.
  PlateOutline outline;
  for (int i = 0; i < 60; ++i) {
    outline.push_back({100 * std::cos(radians(6.0 * i)), 100 * std::sin(radians(6.0 * i))});
  }
  const PlateChain chain = fitted_chain(outline, kWithin_mm);
  expect_fits(chain, outline, kWithin_mm, 1e-9);
  EXPECT_LT(worst_kink_deg(chain), 1);
  EXPECT_EQ(chain.size(), 120u);
}

// r = 100 (1 + sum of waves): smooth, of all curvatures, both hands.
PlateOutline wavy(std::mt19937& random, int points) {
  std::uniform_real_distribution<double> phase(0, 2 * kPi);
  std::uniform_real_distribution<double> size(0, 0.06);
  double phases[6], sizes[6];
  for (int k = 0; k < 6; ++k) {
    phases[k] = phase(random);
    sizes[k] = size(random);
  }
  PlateOutline outline;
  for (int i = 0; i < points; ++i) {
    const double angle = 2 * kPi * i / points;
    double radius = 100;
    for (int k = 0; k < 6; ++k) radius += 100 * sizes[k] * std::cos((k + 2) * angle + phases[k]);
    outline.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  return outline;
}

TEST(FittedChain, FollowsSmoothOutlinesWithFewTouchingSteps) {
  std::mt19937 random(7);
  for (int i = 0; i < 6; ++i) {
    const PlateOutline outline = wavy(random, 1500);
    for (const double within : {0.004, 0.05}) {
      const PlateChain chain = fitted_chain(outline, within);
      expect_fits(chain, outline, within, 0.001);
      EXPECT_LT(worst_kink_deg(chain), 1);
      EXPECT_EQ(corners_of(chain), 0u);
      EXPECT_LT(chain.size(), within < 0.01 ? 110u : 64u);
      EXPECT_NEAR(signed_area_mm2(chain), signed_area_mm2(outline), 700 * within);
      // A fit within w of a length l lengthens it by the square of its slope only.
      EXPECT_NEAR(length_mm(chain), length_mm(straight_chain(outline)), 0.05);
    }
  }
}

// The outlines that plates really have: smooth pieces, short lands, fillets, notches with keen corners.
TEST(FittedChain, FollowsGrownAndCutOutlines) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> place(-90, 90);
  std::uniform_real_distribution<double> size(2, 30);
  for (int i = 0; i < 12; ++i) {
    PlateRegion region{wavy(random, 600)};
    for (int k = 0; k < 6; ++k) {
      const PlatePoint low{place(random), place(random)};
      region = united({first_less_second(region, {plate_rectangle(low, {low.u + size(random), low.v + 80})})});
    }
    for (const PlateOutline& outline : filled(region)) {
      for (const double within : {0.004, 0.03}) {
        const PlateChain chain = fitted_chain(outline, within);
        // The waves' chords are a millimetre long: sagitta up to 0.01 where they bend most.
        expect_fits(chain, outline, within, 0.01);
        EXPECT_LT(chain.size(), 24 + outline.size() / 2);
        EXPECT_NEAR(signed_area_mm2(chain), signed_area_mm2(outline), 1000 * within + 4);
      }
    }
  }
}

TEST(PlateChain, KeepsAreaAndLengthWhenMirroredAndMoved) {
  const PlateChain chain = fitted_chain(rounded_rectangle(60, 40, 5), kWithin_mm);
  const PlateChain mirror = mirrored(chain);
  expect_closed(mirror);
  EXPECT_NEAR(signed_area_mm2(mirror), signed_area_mm2(chain), 1e-9);
  EXPECT_NEAR(extent_of({flattened(mirror, 0.01)}).low.u, -60, 1e-6);
  const PlateChain there = moved(chain, radians(30), {100, -20});
  expect_closed(there);
  EXPECT_NEAR(signed_area_mm2(there), signed_area_mm2(chain), 1e-9);
  EXPECT_NEAR(length_mm(there), length_mm(chain), 1e-9);
  EXPECT_NEAR(distance_to_chain(there, {100 + 5 * std::cos(radians(30)), -20 + 5 * std::sin(radians(30))}), 0,
              0.01);
}

TEST(PlateChain, FlattensWithinTheChord) {
  const PlateChain circle = circle_chain({3, 4}, 20);
  EXPECT_NEAR(signed_area_mm2(circle), kPi * 400, 1e-9);
  EXPECT_NEAR(length_mm(circle), 2 * kPi * 20, 1e-9);
  const PlateOutline outline = flattened(circle, 0.01);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint middle = outline[i] + 0.5 * (outline[(i + 1) % outline.size()] - outline[i]);
    EXPECT_NEAR(distance(outline[i], {3, 4}), 20, 1e-9);
    EXPECT_GE(distance(middle, {3, 4}), 20 - 0.01 - 1e-9);
  }
  EXPECT_LT(outline.size(), 110u);
}

}  // namespace
}  // namespace prismwright
