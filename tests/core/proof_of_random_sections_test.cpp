#include <gtest/gtest.h>

#include <random>

#include "tests/support/proved_sections.h"

namespace prismwright {
namespace {

/// Sections over the choices that matter for light: curves, joints, powers, lands, gaps, ribs, aims, focal
/// points.
SectionInput drawn_by_lot(std::mt19937& lot) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(lot);
  };
  const auto one_of = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(lot); };
  const char* orders[] = {"1", "3", "4", "6"};
  LensValues values = starting_values(orders[one_of(4)], one_of(2) ? Work::belt : Work::bullseye, 8);
  SectionSettings& s = values.section;
  const double f = values.brief.focal_mm;
  s.faces = one_of(2) ? Faces::arc : Faces::true_curve;
  s.joint = one_of(2) ? Joint::level : Joint::along_ray;
  s.land_mm = one_of(3) ? between(0, 0.003 * f) : 0;
  s.gap_mm = one_of(3) ? between(0, 0.003 * f) : 0;
  for (CornerLand* land : {&s.land_a, &s.land_b, &s.land_c})
    land->shape = one_of(2) ? LandShape::radius : LandShape::flat;
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    if (band != Band::refracting) s.of(band).power = static_cast<Power>(one_of(5));
    if (!one_of(3)) s.of(band).aim_deg = between(-2, 2);
    if (!one_of(3)) s.of(band).focus_z_mm = between(-0.02, 0.04) * f;
  }
  if (!one_of(2)) s.upper_rib_mm = between(0, 0.02 * f);
  if (!one_of(2)) s.lower_rib_mm = between(0, 0.02 * f);
  s.level_within_deg = between(0.02, 1);
  return values.section_input();
}

/// The figures that a proof must reach: shares add to 1 within 1e-9; ten times more elevations change none by
/// 1e-4. Fixed seed.
TEST(ProofOfRandomSections, AddsToOneAndHardlyChangesWithTenTimesMoreElevations) {
  std::mt19937 lot(20260401);
  int proved = 0;
  double worst = 0;
  for (int i = 0; i < 200; ++i) {
    const SectionInput input = drawn_by_lot(lot);
    const auto section = solve_section(input);
    if (!section) continue;
    ++proved;
    const Proof coarse = prove(*section, 1000);
    ASSERT_NEAR(sum_of_shares(coarse.share), 1, 1e-9) << i;
    double level_and_lost = coarse.of(Fate::level);
    for (const LossByCause& loss : coarse.losses) level_and_lost += loss.share;
    ASSERT_NEAR(level_and_lost, 1, 1e-9) << i;
    if (i % 2) continue;
    const Proof fine = prove(*section, 10000);
    for (int fate = 0; fate < kFates; ++fate) {
      const double off = std::abs(coarse.share[fate] - fine.share[fate]);
      worst = std::max(worst, off);
      EXPECT_LT(off, 1e-4) << i << ' ' << name_of(static_cast<Fate>(fate));
    }
  }
  EXPECT_GT(proved, 120);
  RecordProperty("worst_change", std::to_string(worst));
}

}  // namespace
}  // namespace prismwright
