#include "core/lens/lens_size.h"

#include <gtest/gtest.h>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

TEST(LensSize, InsideDiameterOfTheOrdersIsThePublishedOne) {
  // Published: US Coast Guard, Historically Famous Lighthouses (CG-232), inside diameters in mm; exact by
  // definition.
  const std::pair<const char*, double> published[] = {{"1", 1840}, {"2", 1400}, {"3", 1000},
                                                      {"4", 500},  {"5", 375},  {"6", 300}};
  for (const auto& [order, diameter_mm] : published) {
    const auto plan = plan_lens(starting_values(order, Work::bullseye, 8));
    ASSERT_TRUE(plan) << plan.problem().text;
    EXPECT_DOUBLE_EQ(size_of(*plan).inside_diameter_mm, diameter_mm) << order;
  }
}

TEST(LensSize, HeightRunsFromTheLowestLowerToTheHighestUpperPrism) {
  const auto plan = plan_lens(starting_values("4", Work::bullseye, 8));
  ASSERT_TRUE(plan) << plan.problem().text;
  const LensSize size = size_of(*plan);
  double highest = 0;
  for (const SectionPoint point : polygon_of(plan->section.zones.back().profile, 0.01))
    EXPECT_GE(point.z, size.lowest_mm);
  for (const Zone& zone : plan->section.zones)
    if (zone.kind == ZoneKind::upper)
      for (const SectionPoint point : polygon_of(zone.profile, 0.01)) highest = std::max(highest, point.z);
  EXPECT_DOUBLE_EQ(size.highest_mm, highest);
  EXPECT_LT(size.lowest_mm, 0);
  EXPECT_DOUBLE_EQ(size.height_mm, size.highest_mm - size.lowest_mm);
}

TEST(LensSize, BandWithoutReflectingPrismsIsAsHighBelowAsAbove) {
  LensValues values = starting_values("4", Work::belt, 8);
  values.section.upper_to_deg = values.section.refracting_to_deg;
  values.section.lower_to_deg = values.section.refracting_to_deg;
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan) << plan.problem().text;
  EXPECT_NEAR(size_of(*plan).lowest_mm, -size_of(*plan).highest_mm, 1e-9);
}

}  // namespace
}  // namespace prismwright
