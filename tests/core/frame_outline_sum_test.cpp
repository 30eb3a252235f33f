#include "core/frame/outline_sum.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/base/angle.h"
#include "core/frame/plate_sums.h"

namespace prismwright {
namespace {

/// A star-shaped polygon with corners in and out.
PlateOutline random_star(std::mt19937& draw, int corners) {
  std::uniform_real_distribution<double> radius(5, 40);
  PlateOutline star;
  for (int i = 0; i < corners; ++i) {
    const double r = radius(draw);
    star.push_back({r * std::cos(2 * kPi * i / corners), r * std::sin(2 * kPi * i / corners)});
  }
  return star;
}

/// The convex outline round points, anticlockwise (Andrew's monotone chain).
PlateOutline hull_of(PlateOutline points) {
  std::ranges::sort(points, [](PlatePoint p, PlatePoint q) { return p.u != q.u ? p.u < q.u : p.v < q.v; });
  const auto half = [](const auto& along) {
    PlateOutline chain;
    for (const PlatePoint p : along) {
      const auto right_turn = [&] {
        const PlatePoint a = chain[chain.size() - 2], b = chain.back();
        return (b.u - a.u) * (p.v - a.v) - (b.v - a.v) * (p.u - a.u) <= 0;
      };
      while (chain.size() > 1 && right_turn()) chain.pop_back();
      chain.push_back(p);
    }
    chain.pop_back();
    return chain;
  };
  PlateOutline hull = half(points);
  std::ranges::reverse(points);
  const PlateOutline upper = half(points);
  hull.insert(hull.end(), upper.begin(), upper.end());
  return hull;
}

/// The sum the plain way: every triangle of one, from its middle, with every triangle of the other; a sum of
/// convex outlines is the hull of their corners' sums.
double plain_sum_area(const PlateOutline& a, const PlateOutline& b) {
  std::vector<PlateOutline> sums;
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t k = 0; k < b.size(); ++k) {
      PlateOutline corners;
      for (const PlatePoint p : {PlatePoint{}, a[i], a[(i + 1) % a.size()]}) {
        for (const PlatePoint q : {PlatePoint{}, b[k], b[(k + 1) % b.size()]})
          corners.push_back({p.u + q.u, p.v + q.v});
      }
      sums.push_back(hull_of(std::move(corners)));
    }
  }
  return area_mm2(united(sums));
}

TEST(OutlineSum, OfConvexOutlinesIsThatOfTheMixedAreas) {
  // Area of a sum of rectangles: (a + c) (b + d).
  const PlateOutline a = plate_rectangle({1, 2}, {4, 9});
  const PlateOutline b = plate_rectangle({-3, 0}, {2, 6});
  const PlateRegion sum = outline_sum(a, b);
  ASSERT_EQ(sum.size(), 1u);
  EXPECT_NEAR(area_mm2(sum), (3 + 5) * (7 + 6), 1e-6);
  EXPECT_NEAR(extent_of(sum).low.u, -2, 1e-6);
  EXPECT_NEAR(extent_of(sum).high.v, 15, 1e-6);
}

TEST(OutlineSum, OfRandomStarsIsThatOfAllTheirTriangles) {
  std::mt19937 draw(20260301);
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const PlateOutline a = random_star(draw, 5 + trial % 7);
    const PlateOutline b = random_star(draw, 4 + trial % 5);
    const double plain = plain_sum_area(a, b);
    EXPECT_NEAR(area_mm2(outline_sum(a, b)), plain, 1e-4 * plain);
  }
}

/// Places of the shape inside the room the plain way: those of its corner in the room, less those at which an
/// edge of one meets an edge of the other.
double plain_inside_area(const PlateOutline& room, const PlateOutline& shape) {
  std::vector<PlateOutline> meetings;
  for (std::size_t i = 0; i < room.size(); ++i) {
    for (std::size_t k = 0; k < shape.size(); ++k) {
      PlateOutline corners;
      for (const PlatePoint p : {room[i], room[(i + 1) % room.size()]}) {
        for (const PlatePoint q : {shape[k], shape[(k + 1) % shape.size()]})
          corners.push_back({p.u - q.u, p.v - q.v});
      }
      meetings.push_back(hull_of(std::move(corners)));
    }
  }
  PlateOutline places = room;
  for (PlatePoint& p : places) p = {p.u - shape.front().u, p.v - shape.front().v};
  return area_mm2(first_less_second({places}, united(meetings)));
}

TEST(OutlineSum, FindsThePlacesOfRandomStarsInsideLargerOnes) {
  std::mt19937 draw(20260302);
  int found = 0;
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const PlateOutline room = random_star(draw, 5 + trial % 7);
    PlateOutline shape = random_star(draw, 4 + trial % 5);
    for (PlatePoint& p : shape) p = {0.15 * p.u + trial, 0.15 * p.v};
    const double plain = plain_inside_area(room, shape);
    found += plain > 1 ? 1 : 0;
    EXPECT_NEAR(area_mm2(places_inside(room, shape)), plain, 1e-4 * plain + 1e-3);
  }
  EXPECT_GT(found, 30);
}

TEST(OutlineSum, KeepsTheHoleThatTwoHooksLeave) {
  // A frame with a slit, nearly closed, and a square smaller than its room: the square fits inside.
  const PlateOutline hook = {{0, 0},  {30, 0},  {30, 30}, {0, 30}, {0, 16}, {5, 16},
                             {5, 25}, {25, 25}, {25, 5},  {5, 5},  {5, 14}, {0, 14}};
  const PlateRegion meeting = places_that_meet({hook}, plate_rectangle({0, 0}, {8, 8}));
  // The square's corner may stand anywhere in the room of 20 mm less its own 8 mm.
  const PlateRegion inside = common_part({plate_rectangle({5, 5}, {25, 25})}, meeting);
  EXPECT_NEAR(400 - area_mm2(inside), 12 * 12, 1e-3);
}

TEST(PlacesOfAPlate, WithinARoomWithAPillar) {
  const PlateRegion room =
      first_less_second({plate_rectangle({0, 0}, {20, 20})}, {plate_rectangle({9, 9}, {11, 11})});
  const PlateRegion places = places_within(room, plate_rectangle({0, 0}, {4, 4}));
  // 16 by 16 places less those on the pillar: 6 by 6.
  EXPECT_NEAR(area_mm2(places), 256 - 36, 1e-3);
  EXPECT_TRUE(places_within(room, plate_rectangle({0, 0}, {21, 1})).empty());
  // A square as large as to hold the pillar whole must not.
  EXPECT_TRUE(places_within(room, plate_rectangle({0, 0}, {12, 12})).empty());
}

TEST(PlacesOfAPlate, ThatMeetARingLeaveItsOpeningFree) {
  const PlateRegion ring =
      first_less_second({plate_rectangle({0, 0}, {30, 30})}, {plate_rectangle({5, 5}, {25, 25})});
  const PlateRegion meeting = places_that_meet(ring, plate_rectangle({0, 0}, {6, 10}));
  EXPECT_NEAR(area_mm2(meeting), 36 * 40 - 14 * 10, 1e-3);
}

TEST(PlacesOfAPlate, TheRoomiestIsTheMiddle) {
  const PlatePoint square = roomiest_point({plate_rectangle({0, 0}, {10, 10})}, 0.01);
  EXPECT_NEAR(square.u, 5, 0.03);
  EXPECT_NEAR(square.v, 5, 0.03);
  const PlatePoint strip = roomiest_point({plate_rectangle({0, 0}, {100, 4})}, 0.01);
  EXPECT_NEAR(strip.u, 50, 0.03);
  EXPECT_NEAR(strip.v, 2, 0.03);
}

}  // namespace
}  // namespace prismwright
