#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"
#include "core/frame/rib_key.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

LensValues fourth_order(Work work, std::vector<Panel> panels) {
  LensValues values = starting_values("4", work, 8);
  values.panels = std::move(panels);
  return values;
}

LensPlan planned(const LensValues& values) {
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok());
  return plan.value();
}

std::set<std::string> held_marks(const RibPlan& rib) {
  std::set<std::string> marks;
  for (const Pocket& pocket : rib.pockets) marks.insert(pocket.marks.begin(), pocket.marks.end());
  return marks;
}

double height_of(const Profile& profile) {
  double most = 0;
  for (const SectionPoint p : polygon_of(profile, 0.01)) most = std::max(most, std::abs(p.z));
  return most;
}

TEST(FramePlan, GivesEveryPanelItsTwoRibsAndTheLensTwoRings) {
  const FramePlan frame = plan_frame(planned(fourth_order(Work::bullseye, equal_panels(8))));
  ASSERT_EQ(frame.ribs.size(), 16u);
  EXPECT_EQ(frame.ribs[0].mark, "P01-rib-left");
  EXPECT_EQ(frame.ribs[0].side, Side::anticlockwise);
  EXPECT_NEAR(frame.ribs[0].azimuth_deg, 22.5, 1e-9);
  EXPECT_EQ(frame.ribs[1].mark, "P01-rib-right");
  EXPECT_NEAR(frame.ribs[1].azimuth_deg, -22.5, 1e-9);
  ASSERT_EQ(frame.rings.size(), 2u);
  EXPECT_EQ(frame.rings[0].mark, "ring-top");
  EXPECT_EQ(frame.rings[1].mark, "ring-bottom");
  EXPECT_TRUE(frame.notes.empty());
}

TEST(FramePlan, HoldsEveryPrismThatReachesTheRib) {
  for (const Work work : {Work::bullseye, Work::belt}) {
    const LensPlan plan = planned(fourth_order(work, equal_panels(8)));
    const FramePlan frame = plan_frame(plan);
    for (const RibPlan& rib : frame.ribs) {
      const auto held = held_marks(rib);
      for (const PlannedPrism& prism : plan.prisms) {
        if (prism.panel != rib.panel) continue;
        const bool reaches = !end_outlines(prism, rib.side, rib.thickness_mm, 0.01).empty();
        EXPECT_EQ(held.contains(prism.mark), reaches) << prism.mark << " in " << rib.mark;
      }
    }
  }
}

TEST(FramePlan, KeepsBrassRoundEveryPocket) {
  for (const int panels : {3, 6, 8, 12}) {
    const FramePlan frame = plan_frame(planned(fourth_order(Work::bullseye, equal_panels(panels))));
    for (const RibPlan& rib : frame.ribs) {
      const PlateRegion room = grown({rib.outline}, -1.4, Corner::sharp);
      for (const Pocket& pocket : rib.pockets) {
        EXPECT_LT(area_mm2(first_less_second({pocket.outline}, room)), 1e-3) << rib.mark;
        EXPECT_GT(signed_area_mm2(pocket.outline), 0);
      }
      EXPECT_EQ(filled({rib.outline}).size(), 1u);
    }
  }
}

TEST(FramePlan, SharesOnePocketWherePocketsRunTogether) {
  const FramePlan frame = plan_frame(planned(fourth_order(Work::belt, equal_panels(8))));
  std::size_t prisms = 0;
  std::size_t most = 0;
  for (const Pocket& pocket : frame.ribs.front().pockets) {
    prisms += pocket.marks.size();
    most = std::max(most, pocket.marks.size());
  }
  EXPECT_EQ(prisms, held_marks(frame.ribs.front()).size()) << "no prism in two pockets";
  // Refracting rings stand 0.5 mm apart and want 0.5 mm each.
  EXPECT_GT(most, 5u);
}

TEST(FramePlan, KnowsCongruentRibs) {
  const FramePlan equal = plan_frame(planned(fourth_order(Work::bullseye, equal_panels(8))));
  for (const RibPlan& rib : equal.ribs) EXPECT_EQ(rib.shape_key, equal.ribs.front().shape_key);
  for (const RibPlan& rib : equal.ribs) {
    for (const std::string& mark : held_marks(rib)) EXPECT_EQ(mark.substr(0, 3), rib.mark.substr(0, 3));
  }
  const FramePlan unequal = plan_frame(planned(fourth_order(Work::bullseye, {{40, 0, false},
                                                                             {50, 0, false},
                                                                             {40, 5, false},
                                                                             {50, 0, false},
                                                                             {60, 0, false},
                                                                             {60, 0, false},
                                                                             {60, 0, false}})));
  const auto key = [&](std::size_t rib) { return unequal.ribs[rib].shape_key; };
  EXPECT_EQ(key(0), key(1)) << "the two sides of a panel with a middle axis are mirror images";
  EXPECT_NE(key(0), key(2)) << "wider panel";
  EXPECT_NE(key(4), key(5)) << "shifted axis";
  EXPECT_EQ(key(2), key(6)) << "equal panels";
}

TEST(FramePlan, LeavesTheRingsClearOfThePrisms) {
  const LensPlan plan = planned(fourth_order(Work::bullseye, equal_panels(8)));
  const FramePlan frame = plan_frame(plan);
  double highest = 0;
  double lowest = 0;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.kind == ZoneKind::upper) highest = std::max(highest, height_of(prism.profile));
    if (prism.kind == ZoneKind::lower) lowest = std::max(lowest, height_of(prism.profile));
  }
  EXPECT_GE(frame.rings[0].z_low_mm, highest + 2);
  EXPECT_LE(frame.rings[1].z_low_mm + frame.rings[1].thickness_mm, -lowest - 2);
}

TEST(FramePlan, CarriesEveryRibsTabsOnTheRings) {
  const FramePlan frame = plan_frame(
      planned(fourth_order(Work::bullseye, {{120, 0, false}, {100, 0, false}, {80, 0, true}, {60, 0, false}})));
  for (const RibPlan& rib : frame.ribs) {
    const PlateExtent extent = extent_of({rib.outline});
    EXPECT_NEAR(extent.high.v, frame.rings[0].z_low_mm, 1e-4) << rib.mark;
    EXPECT_NEAR(extent.low.v, frame.rings[1].z_low_mm + frame.rings[1].thickness_mm, 1e-4) << rib.mark;
    for (const PlatePoint p : rib.outline) {
      if (p.v < extent.high.v - 1e-4) continue;
      EXPECT_GT(p.u, frame.rings[0].inner_radius_mm);
      EXPECT_LT(std::hypot(p.u, rib.thickness_mm), frame.rings[0].outer_radius_mm);
    }
  }
}

TEST(FramePlan, GivesABlindPanelPlainRibs) {
  const LensPlan plan =
      planned(fourth_order(Work::belt, {{90, 0, false}, {90, 0, true}, {90, 0, false}, {90, 0, false}}));
  const FramePlan frame = plan_frame(plan);
  ASSERT_EQ(frame.ribs.size(), 8u);
  for (const RibPlan& rib : frame.ribs) {
    EXPECT_EQ(rib.pockets.empty(), rib.panel == 2) << rib.mark;
    EXPECT_GT(signed_area_mm2(rib.outline), 1000);
  }
}

TEST(FramePlan, HoldsATwoPanelLensBetweenPlainRibs) {
  const FramePlan frame = plan_frame(planned(fourth_order(Work::bullseye, equal_panels(2))));
  ASSERT_EQ(frame.ribs.size(), 4u);
  for (const RibPlan& rib : frame.ribs) {
    EXPECT_TRUE(rib.pockets.empty());
    EXPECT_GT(signed_area_mm2(rib.outline), 1000);
    EXPECT_GT(extent_of({rib.outline}).low.u, 0);
  }
}

// Thick ribs and a stack that ends near the axis: two plates of one panel would run into each other.
TEST(FramePlan, KeepsRibsApartNearTheAxisAndSaysWhatItCost) {
  LensValues values = fourth_order(Work::belt, equal_panels(24));
  values.frame.rib_mm = 12;
  values.frame.pocket_mm = 4;
  const FramePlan frame = plan_frame(planned(values));
  for (const RibPlan& rib : frame.ribs) {
    EXPECT_GE(extent_of({rib.outline}).low.u * std::tan(radians(7.5)), values.frame.rib_mm) << rib.mark;
  }
  EXPECT_FALSE(frame.notes.empty());
}

TEST(RibKey, FollowsEveryOutlineAndThickness) {
  RibPlan rib;
  rib.outline = plate_rectangle({0, 0}, {10, 100});
  rib.pockets = {{plate_rectangle({3, 3}, {7, 7}), {"P01-C"}}};
  const std::string key = rib_key(rib);
  RibPlan other = rib;
  other.pockets.front().marks = {"P02-C"};
  EXPECT_EQ(rib_key(other), key) << "marks are no part of the shape";
  other.pockets.front().outline[2].u += 0.001;
  EXPECT_NE(rib_key(other), key);
  other = rib;
  other.pocket_mm = 2;
  EXPECT_NE(rib_key(other), key);
}

}  // namespace
}  // namespace prismwright
