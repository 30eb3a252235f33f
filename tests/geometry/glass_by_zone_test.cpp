#include "geometry/glass_by_zone.h"

#include <gtest/gtest.h>

#include <map>

#include "geometry/bodies.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

TEST(GlassByZone, IsWhatTheSolidsOfThatZoneHold) {
  const auto plan = plan_lens(sixth_order_belt(Faces::arc));
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  BodyShop shop;
  const auto bodies = shop.make(*plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  std::map<std::string, double> volume_mm3;
  std::map<std::string, int> pieces;
  for (std::size_t i = 0; i < plan->prisms.size(); ++i) {
    volume_mm3[plan->prisms[i].zone] += bodies->prisms[i].volume_mm3;
    pieces[plan->prisms[i].zone] += 1;
  }
  const auto glass = glass_by_zone(*plan);
  ASSERT_EQ(glass.size(), plan->section.zones.size());
  for (std::size_t i = 0; i < glass.size(); ++i) {
    EXPECT_EQ(glass[i].mark, plan->section.zones[i].mark);
    EXPECT_EQ(glass[i].pieces, pieces[glass[i].mark]) << glass[i].mark;
    EXPECT_GT(glass[i].volume_mm3, 0) << glass[i].mark;
    EXPECT_NEAR(glass[i].volume_mm3 / volume_mm3[glass[i].mark], 1, 1e-5) << glass[i].mark;
  }
}

TEST(GlassByZone, BlindPanelsHoldNone) {
  LensValues values = sixth_order_belt(Faces::arc);
  const auto full = plan_lens(values);
  values.panels[2].blind = true;
  const auto blind = plan_lens(values);
  ASSERT_TRUE(full.ok() && blind.ok());
  const auto before = glass_by_zone(*full);
  const auto after = glass_by_zone(*blind);
  for (std::size_t i = 0; i < before.size(); ++i)
    EXPECT_NEAR(after[i].volume_mm3 / before[i].volume_mm3, 5.0 / 6.0, 1e-9) << before[i].mark;
}

}  // namespace
}  // namespace prismwright
