#include "core/frame/step_gap.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

namespace prismwright {
namespace {

constexpr int kPlaces = 200;

PlateStep line(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

PlateStep arc(PlatePoint centre, double radius, double start, double turn) {
  const auto at = [&](double angle) {
    return PlatePoint{centre.u + radius * std::cos(angle), centre.v + radius * std::sin(angle)};
  };
  return {at(start), at(start + turn), turn, centre, radius};
}

PlatePoint along(const PlateStep& step, double share) {
  if (step.straight()) {
    return {step.from.u + share * (step.to.u - step.from.u), step.from.v + share * (step.to.v - step.from.v)};
  }
  const double start = std::atan2(step.from.v - step.centre.v, step.from.u - step.centre.u);
  const double angle = start + share * step.turn;
  return {step.centre.u + step.radius_mm * std::cos(angle), step.centre.v + step.radius_mm * std::sin(angle)};
}

double length_of(const PlateStep& step) {
  return step.straight() ? std::hypot(step.to.u - step.from.u, step.to.v - step.from.v)
                         : std::abs(step.turn) * step.radius_mm;
}

double by_places(const PlateStep& a, const PlateStep& b) {
  double least = std::numeric_limits<double>::max();
  for (int i = 0; i <= kPlaces; ++i) {
    const PlatePoint p = along(a, static_cast<double>(i) / kPlaces);
    for (int k = 0; k <= kPlaces; ++k) {
      const PlatePoint q = along(b, static_cast<double>(k) / kPlaces);
      least = std::min(least, std::hypot(p.u - q.u, p.v - q.v));
    }
  }
  return least;
}

TEST(StepGap, LevelLineUnderAnArcIsItsRadiusFromTheCentre) {
  const StepGap gap = gap_of(line({-5, 0}, {5, 0}), arc({1, 10}, 4, -3, 2.8));
  EXPECT_NEAR(gap.gap_mm, 6, 1e-12);
  EXPECT_NEAR(gap.first.u, 1, 1e-12);
  EXPECT_NEAR(gap.second.v, 6, 1e-12);
}

TEST(StepGap, TwoArcsAreNearestOnTheLineThroughTheirCentres) {
  const StepGap gap = gap_of(arc({0, 0}, 2, -1, 2), arc({10, 0}, 3, 2, 2));
  EXPECT_NEAR(gap.gap_mm, 5, 1e-12);
  EXPECT_NEAR(gap.first.u, 2, 1e-12);
  EXPECT_NEAR(gap.second.u, 7, 1e-12);
}

TEST(StepGap, ArcsAboutOneCentreAreAsFarApartAsTheirRadii) {
  EXPECT_NEAR(gap_of(arc({0, 0}, 2, 0, 1), arc({0, 0}, 5, 0.5, 1)).gap_mm, 3, 1e-12);
}

TEST(StepGap, PiecesThatCrossHaveNone) {
  EXPECT_EQ(gap_of(line({0, 0}, {2, 2}), line({0, 2}, {2, 0})).gap_mm, 0);
  EXPECT_EQ(gap_of(line({-5, 0}, {5, 0}), arc({0, 0}, 2, 0.5, 4)).gap_mm, 0);
  EXPECT_EQ(gap_of(arc({0, 0}, 2, -1, 2), arc({3, 0}, 2, 2, 2.5)).gap_mm, 0);
}

TEST(StepGap, RandomPiecesAgreeWithPlacesAllAlongThem) {
  std::mt19937 random(20);
  std::uniform_real_distribution<double> place(-10, 10);
  std::uniform_real_distribution<double> radius(0.5, 8);
  std::uniform_real_distribution<double> angle(-std::numbers::pi, std::numbers::pi);
  const auto any = [&] {
    return random() % 3 == 0
               ? line({place(random), place(random)}, {place(random), place(random)})
               : arc({place(random), place(random)}, radius(random), angle(random), angle(random));
  };
  for (int i = 0; i < 40; ++i) {
    const PlateStep a = any();
    const PlateStep b = any();
    const double found = gap_of(a, b).gap_mm;
    const double placed = by_places(a, b);
    EXPECT_LE(found, placed + 1e-12) << i;
    // Some place lies within half a stride of the nearest on each.
    EXPECT_GE(found, placed - (length_of(a) + length_of(b)) / kPlaces / 2 - 1e-12) << i;
  }
}

}  // namespace
}  // namespace prismwright
