#include "core/lens/plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

LensPlan planned(const LensValues& values) {
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok()) << (plan ? "" : plan.problem().text);
  return *plan;
}

bool holds(const LensPlan& plan, const char* mark) { return plan.find(mark) != nullptr; }

TEST(BullseyePlan, SplitsTheRingsThatCrossThePanelSides) {
  const LensPlan plan = planned(starting_values("4", Work::bullseye, 8));
  EXPECT_TRUE(holds(plan, "P01-C"));
  EXPECT_TRUE(holds(plan, "P01-R1"));
  EXPECT_FALSE(holds(plan, "P01-R1a"));
  EXPECT_TRUE(holds(plan, "P08-R9a"));
  EXPECT_TRUE(holds(plan, "P08-R9b"));
  EXPECT_FALSE(holds(plan, "P08-R9"));
  EXPECT_TRUE(holds(plan, "P03-U07"));
  EXPECT_TRUE(holds(plan, "P03-L04"));
}

TEST(BeltPlan, HasEveryRingAboveAndBelow) {
  const LensPlan plan = planned(starting_values("6", Work::belt, 6));
  EXPECT_TRUE(holds(plan, "P01-C"));
  EXPECT_TRUE(holds(plan, "P01-R1a"));
  EXPECT_TRUE(holds(plan, "P01-R1b"));
  EXPECT_EQ(plan.find("P01-R1b")->turning, TurningAxis::lens);
  EXPECT_LT(centroid(plan.find("P01-R1b")->profile).z, 0);
}

TEST(EveryPlan, HasMarksThatAreUniqueAndRunFromTheTopDown) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    const LensPlan plan = planned(starting_values("4", work, 8));
    std::set<std::string> marks;
    for (const PlannedPrism& prism : plan.prisms) EXPECT_TRUE(marks.insert(prism.mark).second) << prism.mark;
    EXPECT_EQ(plan.prisms.front().mark.substr(0, 5), "P01-U");
    EXPECT_EQ(plan.prisms.back().mark.substr(0, 5), "P08-L");
  }
}

TEST(EqualPanels, ShareTheirShapes) {
  const LensPlan plan = planned(starting_values("4", Work::bullseye, 8));
  std::set<std::string> keys;
  for (const PlannedPrism& prism : plan.prisms) keys.insert(prism.shape_key);
  EXPECT_EQ(keys.size(), plan.prisms.size() / 8);
}

TEST(UnequalPanels, DoNotShareShapesThatDiffer) {
  LensValues values = starting_values("4", Work::bullseye, 4);
  values.panels = {{100, 0, false}, {80, 0, false}, {100, 10, false}, {80, 0, false}};
  const LensPlan plan = planned(values);
  EXPECT_NE(plan.find("P01-U01")->shape_key, plan.find("P02-U01")->shape_key);
  EXPECT_EQ(plan.find("P02-U01")->shape_key, plan.find("P04-U01")->shape_key);
  EXPECT_NE(plan.find("P01-U01")->shape_key, plan.find("P03-U01")->shape_key);
  EXPECT_DOUBLE_EQ(plan.find("P03-U01")->trim.clockwise_side_deg, -60);
  EXPECT_DOUBLE_EQ(plan.find("P03-U01")->trim.anticlockwise_side_deg, 40);
}

TEST(BlindPanels, HoldNoPrisms) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.panels[3].blind = true;
  const LensPlan plan = planned(values);
  EXPECT_TRUE(
      std::none_of(plan.prisms.begin(), plan.prisms.end(), [](const PlannedPrism& p) { return p.panel == 4; }));
  EXPECT_TRUE(holds(plan, "P05-C"));
}

TEST(TwoPanelLens, HasFullRingsAndHalfRingsOfReflectingPrisms) {
  const LensPlan plan = planned(starting_values("4", Work::bullseye, 2));
  EXPECT_TRUE(holds(plan, "P01-R9"));
  EXPECT_EQ(plan.find("P01-U01")->trim.half, Half::upper);
  EXPECT_EQ(plan.find("P01-L01")->trim.half, Half::lower);
}

TEST(Neighbours, FormAChainFromTheTopToTheBottomOfEachPanel) {
  const LensPlan plan = planned(starting_values("4", Work::bullseye, 8));
  const auto pairs = neighbours(plan);
  // A chain of n prisms has n - 1 pairs; eight equal panels have the same.
  const std::size_t per_panel = plan.prisms.size() / 8;
  EXPECT_GE(pairs.size(), 8 * (per_panel - 1));
  for (const NeighbourPair& pair : pairs)
    EXPECT_EQ(plan.prisms[pair.first].panel, plan.prisms[pair.second].panel);
  const auto next_to = [&](const char* a, const char* b) {
    return std::any_of(pairs.begin(), pairs.end(), [&](const NeighbourPair& p) {
      const std::string& x = plan.prisms[p.first].mark;
      const std::string& y = plan.prisms[p.second].mark;
      return (x == a && y == b) || (x == b && y == a);
    });
  };
  EXPECT_TRUE(next_to("P01-C", "P01-R1"));
  EXPECT_TRUE(next_to("P01-R9a", "P01-U01"));
  EXPECT_TRUE(next_to("P01-R9b", "P01-L01"));
  EXPECT_TRUE(next_to("P02-U03", "P02-U04"));
  EXPECT_FALSE(next_to("P01-U03", "P02-U03"));
}

}  // namespace
}  // namespace prismwright
