#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <TopLoc_Location.hxx>
#include <algorithm>
#include <set>

#include "core/base/angle.h"
#include "geometry/bodies.h"
#include "geometry/fit_up.h"
#include "geometry/solid_gap.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;

std::multiset<std::string> marks_in(const PanelFit& fit) {
  std::multiset<std::string> marks;
  for (const FitStep& step : fit.steps) marks.insert(step.marks.begin(), step.marks.end());
  for (const FitBlocked& blocked : fit.cannot) marks.insert(blocked.marks.begin(), blocked.marks.end());
  return marks;
}

void expect_every_prism_once(const LensPlan& plan, const std::vector<PanelFit>& fits) {
  for (const PanelFit& fit : fits) {
    const auto marks = marks_in(fit);
    for (const PlannedPrism& prism : plan.prisms) {
      if (prism.panel != fit.panel) continue;
      EXPECT_EQ(marks.count(prism.mark), 1u) << prism.mark;
    }
    EXPECT_EQ(marks.count(fit.first_rib), 1u);
    EXPECT_EQ(marks.count(fit.second_rib), 1u);
  }
}

TEST(FitUp, BringsEveryPrismOfTheBeltSampleIn) {
  const LensPlan plan = *plan_lens(sixth_order_belt(Faces::true_curve));
  const auto fits = fit_up(plan, plan_frame(plan));
  ASSERT_TRUE(fits.ok());
  ASSERT_EQ(fits->size(), 6u);
  expect_every_prism_once(plan, *fits);
  for (const PanelFit& fit : *fits) EXPECT_TRUE(fit.cannot.empty()) << fit.panel;
  EXPECT_EQ((*fits)[3].first_rib.substr(0, 4), "P04-") << "marks of each congruent panel are its own";
}

// The refracting rings of a bull's-eye grip each other and the leaning rib: they go in as one.
TEST(FitUp, PutsTheRingsOfABullsEyeTogetherFirst) {
  const LensPlan plan = *plan_lens(fourth_order_bullseye(Faces::true_curve));
  const auto fits = fit_up(plan, plan_frame(plan));
  ASSERT_TRUE(fits.ok());
  expect_every_prism_once(plan, *fits);
  const PanelFit& fit = fits->front();
  EXPECT_TRUE(fit.cannot.empty());
  const auto group =
      std::find_if(fit.steps.begin(), fit.steps.end(), [](const FitStep& s) { return s.put_together; });
  ASSERT_NE(group, fit.steps.end());
  EXPECT_EQ(group->way, FitWay::square_to_rib);
  EXPECT_THAT(group->words, HasSubstr("on the bench"));
}

TEST(FitUp, MovesCementedRingsAsOne) {
  LensValues values = sixth_order_belt(Faces::true_curve);
  values.section.gap_mm = 0;
  const LensPlan plan = *plan_lens(values);
  const auto fits = fit_up(plan, plan_frame(plan));
  ASSERT_TRUE(fits.ok());
  expect_every_prism_once(plan, *fits);
  const auto& steps = fits->front().steps;
  const auto cemented =
      std::find_if(steps.begin(), steps.end(), [](const FitStep& s) { return s.marks.size() > 1; });
  ASSERT_NE(cemented, steps.end());
  EXPECT_FALSE(cemented->put_together);
  const auto refracting = std::count_if(plan.prisms.begin(), plan.prisms.end(), [](const PlannedPrism& prism) {
    return prism.panel == 1 && is_refracting(prism.kind);
  });
  EXPECT_EQ(cemented->marks.size(), static_cast<std::size_t>(refracting));
}

TopoDS_Shape shifted(const TopoDS_Shape& shape, SpaceVector by) {
  gp_Trsf move;
  move.SetTranslation(gp_Vec(by.x, by.y, by.z));
  return shape.Moved(TopLoc_Location(move));
}

// The kernel's own cut: on the way told for the last prism, it meets no neighbour and no rib.
TEST(FitUp, TellsAWayThatTheSolidsLeaveFree) {
  const LensPlan plan = *plan_lens(sixth_order_belt(Faces::arc));
  FramePlan frame = plan_frame(plan);
  const PanelFit fit = fit_up(plan, frame)->front();
  const FitStep& last = fit.steps[fit.steps.size() - 2];
  ASSERT_EQ(last.way, FitWay::from_sea_then_in);
  LensPlan two = plan;
  const std::size_t at = static_cast<std::size_t>(plan.find(last.marks.front()) - plan.prisms.data());
  two.prisms = {plan.prisms[at], plan.prisms[at + 1]};
  const LensBodies bodies = *BodyShop().make(two);
  const auto rib = std::find_if(frame.ribs.begin(), frame.ribs.end(),
                                [&](const RibPlan& r) { return r.mark == fit.first_rib; });
  const double a = radians(rib->azimuth_deg);
  const double way = rib->side == Side::clockwise ? 1 : -1;
  const SpaceVector inward{-way * std::sin(a), way * std::cos(a), 0};
  const SpaceVector off = (last.into_pocket_mm + 0.2) * inward;
  for (const double out_mm : {0.0, 2.0, 6.0, 15.0, 40.0}) {
    const SpaceVector moved = off + out_mm * direction_at(a, 0);
    EXPECT_LT(common_volume_mm3(shifted(bodies.prisms[0].shape, moved), bodies.prisms[1].shape), 1e-6)
        << out_mm;
  }
  for (const double part : {0.3, 0.6}) {
    EXPECT_LT(common_volume_mm3(shifted(bodies.prisms[0].shape, part * off), bodies.prisms[1].shape), 1e-6)
        << part;
  }
}

TEST(FitUp, CanBeStopped) {
  const LensPlan plan = *plan_lens(sixth_order_belt(Faces::arc));
  int told = 0;
  const auto fits = fit_up(plan, plan_frame(plan), [&](double, std::string_view) { return ++told < 5; });
  ASSERT_FALSE(fits.ok());
  EXPECT_EQ(fits.problem().trouble, Trouble::stopped);
}

TEST(FitUp, AnswersForLensesDrawnByLot) {
  Lot lot(20);
  int tried = 0;
  while (tried < 2) {
    const auto plan = plan_lens(random_lens(lot));
    if (!plan || plan->prisms.size() > 150) continue;
    ++tried;
    const auto fits = fit_up(*plan, plan_frame(*plan));
    ASSERT_TRUE(fits.ok());
    expect_every_prism_once(*plan, *fits);
  }
}

}  // namespace
}  // namespace prismwright
