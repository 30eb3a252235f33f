#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {
namespace {

const PlateOutline kSquare = plate_rectangle({0, 0}, {10, 10});

TEST(PlatePolygons, GrowSharpAndRound) {
  EXPECT_NEAR(area_mm2(grown({kSquare}, 2, Corner::sharp)), 14 * 14, 1e-6);
  // Round corners as polygons within 0.01 mm of four quarter circles.
  EXPECT_NEAR(area_mm2(grown({kSquare}, 2, Corner::round)), 100 + 80 + kPi * 4, 0.1);
  EXPECT_NEAR(area_mm2(grown({kSquare}, -2, Corner::sharp)), 36, 1e-6);
  EXPECT_TRUE(grown({kSquare}, -5.1, Corner::sharp).empty());
}

TEST(PlatePolygons, KeepHolesApartFromOuterOutlines) {
  const PlateRegion ring = first_less_second({kSquare}, {plate_rectangle({3, 3}, {5, 6})});
  EXPECT_NEAR(area_mm2(ring), 94, 1e-6);
  const auto pieces = pieces_of(ring);
  ASSERT_EQ(pieces.size(), 1u);
  ASSERT_EQ(pieces.front().holes.size(), 1u);
  EXPECT_NEAR(signed_area_mm2(pieces.front().holes.front()), -6, 1e-6);
  EXPECT_NEAR(area_mm2(filled(ring)), 100, 1e-6);
}

TEST(PlatePolygons, UniteWhatOverlapsAndDropWhiskers) {
  const PlateOutline with_whisker{{20, 0}, {30, 0}, {30, 5}, {40, 5}, {30, 5}, {30, 10}, {20, 10}};
  const PlateRegion both = united({kSquare, plate_rectangle({5, 5}, {15, 15}), with_whisker});
  EXPECT_EQ(both.size(), 2u);
  EXPECT_NEAR(area_mm2(both), 175 + 100, 1e-6);
  EXPECT_NEAR(extent_of(both).high.u, 30, 1e-6);
}

// Where outlines cross, rounding leaves steps of 1e-4 mm that turn back.
TEST(PlatePolygons, GrowEvenlyOverAStepThatTurnsBack) {
  PlateOutline with_step;
  for (int i = 0; i < 60; ++i) {
    with_step.push_back({10 * std::cos(2 * kPi * i / 60), 10 * std::sin(2 * kPi * i / 60)});
    if (i == 15) with_step.push_back({0.00009, 10});
  }
  const double by_mm = 0.5;
  for (const PlateOutline& grew : grown({with_step}, by_mm, Corner::round, 0.001)) {
    for (const PlatePoint p : grew) EXPECT_GT(std::hypot(p.u, p.v), 10 * std::cos(kPi / 60) + by_mm - 0.002);
  }
}

TEST(PlatePolygons, ThinACircleWithinItsAllowance) {
  PlateOutline circle;
  for (int i = 0; i < 2000; ++i) {
    circle.push_back({50 * std::cos(2 * kPi * i / 2000), 50 * std::sin(2 * kPi * i / 2000)});
  }
  const PlateOutline thin = thinned(circle, 0.01);
  EXPECT_LT(thin.size(), 320u);  // 157 would do; halving may take twice as many
  for (std::size_t i = 0; i < thin.size(); ++i) {
    const PlatePoint a = thin[i];
    const PlatePoint b = thin[(i + 1) % thin.size()];
    EXPECT_GT(std::hypot(a.u + b.u, a.v + b.v) / 2, 50 - 0.0101);
  }
}

}  // namespace
}  // namespace prismwright
