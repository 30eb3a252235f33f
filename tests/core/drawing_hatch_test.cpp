#include "core/drawing/hatch.h"

#include <gtest/gtest.h>

#include <cmath>

namespace prismwright {
namespace {

double length_of(const Stroke& line) {
  return std::hypot(line.steps[0].to.x - line.start.x, line.steps[0].to.y - line.start.y);
}

/// The lines' length times their distance is the area that they fill.
double filled_mm2(const std::vector<Stroke>& lines, double apart_mm) {
  double sum = 0;
  for (const Stroke& line : lines) sum += length_of(line) * apart_mm;
  return sum;
}

TEST(Hatch, FillsAConcaveOutlineEvenlyAndOnlyInside) {
  // An L of 10 by 10 with a bite of 6 by 6: 64 mm2.
  const std::vector<PaperPoint> corner = {{3, 2}, {13, 2}, {13, 6}, {7, 6}, {7, 12}, {3, 12}};
  for (const bool falling : {false, true}) {
    const auto lines = hatch_lines(corner, 0.05, falling, 0);
    EXPECT_NEAR(filled_mm2(lines, 0.05), 64, 0.2);
    for (const Stroke& line : lines) {
      const PaperPoint to = line.steps[0].to;
      EXPECT_NEAR(std::abs(to.x - line.start.x), std::abs(to.y - line.start.y), 1e-9);
      EXPECT_EQ((to.x - line.start.x) * (to.y - line.start.y) < 0, falling);
      const PaperPoint middle = {(line.start.x + to.x) / 2, (line.start.y + to.y) / 2};
      EXPECT_FALSE(middle.x > 7 && middle.y > 6);
    }
  }
}

}  // namespace
}  // namespace prismwright
