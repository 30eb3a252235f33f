#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_step.h"
#include "core/frame/speck_free.h"
#include "tests/support/random_frame_values.h"

namespace prismwright {
namespace {

FitRules rules_of(double within_mm, double least_step_mm) {
  FitRules rules;
  rules.within_mm = within_mm;
  rules.least_step_mm = least_step_mm;
  return rules;
}

double shortest_mm(const PlateChain& chain) {
  double least = length_mm(chain.front());
  for (const PlateStep& step : chain) least = std::min(least, length_mm(step));
  return least;
}

void expect_closed(const PlateChain& chain) {
  for (std::size_t i = 0; i < chain.size(); ++i) {
    EXPECT_EQ(chain[i].to.u, chain[(i + 1) % chain.size()].from.u);
    EXPECT_EQ(chain[i].to.v, chain[(i + 1) % chain.size()].from.v);
  }
}

// A rectangle of 40 x 20 with one corner broken by a bevel, wherever the walk begins.
PlateChain bevelled(std::size_t begin, double bevel_mm) {
  const PlateOutline corners{{0, 0}, {40, 0}, {40, 20 - bevel_mm}, {40 - bevel_mm, 20}, {0, 20}};
  PlateChain chain = straight_chain(corners);
  std::rotate(chain.begin(), chain.begin() + static_cast<std::ptrdiff_t>(begin), chain.end());
  return chain;
}

TEST(SpeckFree, ABevelOfAHairBecomesTheCornerThatItStandsFor) {
  for (std::size_t begin = 0; begin < 5; ++begin) {
    const PlateChain mended = speck_free(bevelled(begin, 0.02), rules_of(0.3, 0.2));
    ASSERT_EQ(mended.size(), 4u);
    expect_closed(mended);
    EXPECT_EQ(signed_area_mm2(mended), 800);
    EXPECT_TRUE(std::any_of(mended.begin(), mended.end(),
                            [](const PlateStep& step) { return step.from.u == 40 && step.from.v == 20; }));
  }
}

TEST(SpeckFree, LeavesWhatIsLongEnoughOrWouldDepartTooFar) {
  EXPECT_EQ(speck_free(bevelled(0, 0.2), rules_of(0.3, 0.2)).size(), 5u);
  EXPECT_EQ(speck_free(bevelled(0, 0.1), rules_of(0.03, 0.2)).size(), 5u);
  EXPECT_EQ(speck_free(bevelled(0, 0.02), rules_of(0.3, 0)).size(), 5u);
}

// Two lines that meet in 4 deg by way of a step of 0.05 mm that half of the turn lies on either side of.
TEST(SpeckFree, AShortStepInAWeakBendBecomesTwoArcsThatTouchItsNeighbours) {
  const double bend = radians(4);
  const PlatePoint from{20, 0};
  const PlatePoint to = from + 0.05 * PlateVector{std::cos(bend / 2), std::sin(bend / 2)};
  const PlatePoint end = to + 20.0 * PlateVector{std::cos(bend), std::sin(bend)};
  const PlateChain drawn = straight_chain({{0, 0}, from, to, end, {20, 30}});
  const PlateChain mended = speck_free(drawn, rules_of(0.05, 0.2));
  ASSERT_EQ(mended.size(), 6u);
  expect_closed(mended);
  EXPECT_GT(shortest_mm(mended), 0.2);
  for (const PlateStep& step : mended) EXPECT_TRUE(step.straight() || step.radius_mm > 4);
  EXPECT_NEAR(signed_area_mm2(mended), signed_area_mm2(drawn), 0.01);
}

TEST(SpeckFree, AnInsideCornerGetsTheCuttersRadiusInsteadOfAPoint) {
  // A notch's corner turns right by 60 deg.
  const PlatePoint corner{20, 10};
  const PlateVector on{std::cos(radians(60)), std::sin(radians(60))};
  const PlateChain drawn =
      straight_chain({{0, 0}, {40, 0}, {40, 40}, corner + 30.0 * on, corner, {19.95, 10}, {0, 10}});
  FitRules rules = rules_of(0.5, 0.2);
  rules.least_right_radius_mm = 1;
  const PlateChain mended = speck_free(drawn, rules);
  expect_closed(mended);
  EXPECT_GT(shortest_mm(mended), 0.2);
  EXPECT_GE(least_inside_radius_mm(mended, CutSide::outside_of_chain), 1);
}

// The step after the speck is so short that the corner would lie past its end.
TEST(SpeckFree, NeverWalksANeighbourBackwards) {
  const PlateVector rising{std::cos(radians(12.5)), std::sin(radians(12.5))};
  const PlatePoint low{40.05, -0.19};
  const PlateChain drawn = straight_chain({{0, 0}, {40, 0}, low, low + 0.5 * rising, {41, 30}, {0, 30}});
  const PlateChain mended = speck_free(drawn, rules_of(0.5, 0.3));
  expect_closed(mended);
  for (std::size_t i = 0; i < mended.size(); ++i) {
    const PlateStep& next = mended[(i + 1) % mended.size()];
    EXPECT_LT(std::abs(turn_between(heading_at_end(mended[i]), heading_at_start(next))), radians(120)) << i;
  }
}

TEST(SpeckFree, LeavesAnOutlineOfOneLongStepAsItIs) {
  PlateOutline outline{{0, 0}, {10, 0}};
  for (int i = 1; i < 120; ++i) {
    const double angle = radians(1.5 * i);
    outline.push_back({5 + 5 * std::cos(angle), 5 * std::sin(angle)});
  }
  const PlateChain drawn = straight_chain(outline);
  const PlateChain mended = speck_free(drawn, rules_of(0.05, 0.2));
  EXPECT_EQ(mended.size(), drawn.size());
  expect_closed(mended);
}

void expect_cuttable(const FlatPart& rib, const FrameSettings& frame) {
  expect_closed(rib.outline);
  EXPECT_GT(shortest_mm(rib.outline), 0.1) << rib.mark;
  const double radius = std::max(frame.inside_radius_mm, frame.rib_margin_mm / 2);
  EXPECT_GT(least_inside_radius_mm(rib.outline, CutSide::outside_of_chain), 0.99 * radius) << rib.mark;
}

TEST(SpeckFree, RibsDrawnByLotHaveNoStepsThatNoCutterFollows) {
  int ribs = 0;
  for (unsigned seed = 0; seed < 8; ++seed) {
    SCOPED_TRACE(seed);
    Lot lot(seed);
    const LensValues values = seed % 2 == 0 ? random_frame_values(lot) : random_door_values(lot);
    if (!check_values(values)) continue;
    const auto plan = plan_lens(values);
    if (!plan) continue;
    for (const FlatPart& part : plan_frame(*plan).flats) {
      if (part.kind != PartKind::side_rib) continue;
      expect_cuttable(part, values.frame);
      ++ribs;
    }
  }
  EXPECT_GT(ribs, 20);
}

}  // namespace
}  // namespace prismwright
