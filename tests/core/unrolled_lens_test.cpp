#include "core/drawing/unrolled_lens.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/drawing/ring_outline.h"
#include "core/drawing/spread_heights.h"
#include "core/frame/plate_polygons.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

double area_of(const std::vector<PlateChain>& loops) {
  double area = 0;
  for (const PlateChain& loop : loops) area += signed_area_mm2(loop);
  return area;
}

/// The same area by summing upright strips, heights from the circles themselves.
double area_in_strips(const CutRing& ring, double floor_v) {
  constexpr int kStrips = 200000;
  const double left = std::max(ring.left_u, -ring.outer_mm);
  const double right = std::min(ring.right_u, ring.outer_mm);
  const double step = (right - left) / kStrips;
  double area = 0;
  for (int i = 0; i < kStrips; ++i) {
    const double u = left + (i + 0.5) * step;
    const double outer = std::sqrt(std::max(0.0, ring.outer_mm * ring.outer_mm - u * u));
    const double inner = std::sqrt(std::max(0.0, ring.inner_mm * ring.inner_mm - u * u));
    area += step * std::max(0.0, outer - std::max(inner, floor_v));
  }
  return area;
}

void expect_closed(const std::vector<PlateChain>& loops) {
  for (const PlateChain& loop : loops) {
    ASSERT_FALSE(loop.empty());
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const PlatePoint to = loop[i].to;
      const PlatePoint from = loop[(i + 1) % loop.size()].from;
      EXPECT_NEAR(to.u, from.u, 1e-9);
      EXPECT_NEAR(to.v, from.v, 1e-9);
    }
  }
}

struct RingCase {
  const char* situation;
  CutRing ring;
  std::size_t whole_loops;
};

TEST(RingOutline, AreasAreThoseOfTheCutRing) {
  const RingCase cases[] = {
      {"a disc", {0, 50, -80, 80}, 1},
      {"a disc cut on the right", {0, 50, -80, 20}, 1},
      {"a ring with its hole", {30, 50, -80, 80}, 2},
      {"a ring cut outside its hole", {30, 50, -80, 40}, 2},
      {"a ring open on the left", {30, 50, -20, 80}, 1},
      {"a ring open on the right, cut on the left", {30, 50, -45, 10}, 1},
      {"a ring in two pieces", {30, 50, -20, 10}, 2},
  };
  for (const RingCase& it : cases) {
    const auto whole = whole_ring(it.ring);
    EXPECT_EQ(whole.size(), it.whole_loops) << it.situation;
    expect_closed(whole);
    EXPECT_NEAR(area_of(whole), 2 * area_in_strips(it.ring, 0), 0.02) << it.situation;
    for (const double floor : {0.0, 0.25, 35.0}) {
      const auto upper = upper_half(it.ring, floor);
      expect_closed(upper);
      EXPECT_NEAR(area_of(upper), area_in_strips(it.ring, floor), 0.02) << it.situation << ", " << floor;
      EXPECT_NEAR(area_of(upside_down(upper)), area_of(upper), 1e-9) << it.situation;
    }
    EXPECT_TRUE(upper_half(it.ring, 50).empty()) << it.situation;
  }
}

TEST(UnrolledLens, BeltPrismsLieFlatAtTheFocalDistance) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  const double focal = plan.values.brief.focal_mm;
  const double wide = focal * radians(60) - 2 * plan.values.frame.prism_set_back_mm();
  for (const UnrolledPanel& panel : unrolled(plan)) {
    for (const UnrolledPrism& prism : panel.prisms) {
      const PlateExtent extent = extent_of({flattened(prism.loops.front(), 0.01)});
      EXPECT_NEAR(extent.high.u - extent.low.u, wide, 1e-9) << prism.mark;
    }
  }
}

TEST(UnrolledLens, PlacesForSignAndLeaderLieInside) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::arc), sixth_order_belt(Faces::arc),
                                   two_panels(Work::bullseye, Faces::arc), lopsided_bullseye()}) {
    for (const UnrolledPanel& panel : unrolled(plan_of(values))) {
      for (const UnrolledPrism& prism : panel.prisms) {
        for (const PlatePoint place : {prism.middle, prism.right}) {
          int around = 0;
          for (const PlateChain& loop : prism.loops) around += holds(flattened(loop, 0.001), place) ? 1 : 0;
          EXPECT_EQ(around % 2, 1) << prism.mark;
        }
      }
    }
  }
}

TEST(SpreadHeights, KeepThePitchAndStayNearTheirWishes) {
  EXPECT_TRUE(spread_heights({}, 2, 0, 10).empty());
  // Free ones stay, three that would meet part evenly about their mean.
  const auto heights = spread_heights({90, 50, 50, 50, 10}, 4, 0, 100);
  const std::vector<double> expected = {90, 54, 50, 46, 10};
  ASSERT_EQ(heights.size(), expected.size());
  for (std::size_t i = 0; i < heights.size(); ++i) EXPECT_NEAR(heights[i], expected[i], 1e-9);
  const auto pushed = spread_heights({100, 100, 100}, 4, 0, 100);
  EXPECT_NEAR(pushed.front(), 100, 1e-9);
  EXPECT_NEAR(pushed.back(), 92, 1e-9);
}

}  // namespace
}  // namespace prismwright
