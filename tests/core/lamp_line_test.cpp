#include "core/optics/lamp_line.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/optics/laser_bench.h"
#include "tests/support/proved_sections.h"

namespace prismwright {
namespace {

/// Integral of cos^2 t: light of an upright Lambertian line.
double lambert(double t) { return 0.5 * t + 0.25 * std::sin(2 * t); }

TEST(LampLine, SharesAddToOne) {
  SectionInput input = tight_section("4");
  input.settings.gap_mm = input.settings.land_mm = 0.5;
  input.settings.upper_rib_mm = 6;
  const Section section = solved(input);
  for (const double height : {0.0, 5.0, 80.0}) {
    const LampLineProof proof = prove_lamp(section, {height, 3});
    EXPECT_NEAR(sum_of_shares(proof.share), 1, 1e-9) << height;
  }
}

TEST(LampLine, PointInTheFocusSendsAllThatATightSectionTakesLevel) {
  const Section section = solved(tight_section("4"));
  const LampLineProof proof = prove_lamp(section, {});
  EXPECT_NEAR(proof.of(Fate::level), 1, 1e-9);
  EXPECT_NEAR(proof.own_way, 1, 1e-9);
  EXPECT_NEAR(proof.within, 1, 1e-9);
  const double taken = lambert(radians(section.highest_deg)) - lambert(radians(section.lowest_deg));
  EXPECT_NEAR(proof.share_of_lamp, taken / (kPi / 2), 1e-9);
}

/// A bar between lamp and glass takes from every point of the lamp what its corners shadow there.
TEST(LampLine, BarBeforeTheGlassTakesItsShadowFromEveryPoint) {
  Section section = solved(tight_section("4"));
  section.ribs.push_back({"upper rib", {150, 60}, {190, 64}});
  const LampLine lamp{30, 5};
  const LampLineProof proof = prove_lamp(section, lamp);
  const SectionPoint top = [&] {
    SectionPoint highest;
    for (const Zone& zone : section.zones)
      if (zone.kind == ZoneKind::upper) highest = zone.corners->b;
    return highest;
  }();
  const SectionPoint foot = [&] {
    SectionPoint lowest;
    for (const Zone& zone : section.zones)
      if (zone.kind == ZoneKind::lower) lowest = zone.corners->b;
    return lowest;
  }();
  double shadowed = 0;
  double all = 0;
  constexpr int kPlaces = 2000;
  for (int i = 0; i < kPlaces; ++i) {
    const double z = lamp.above_mm + lamp.height_mm * ((i + 0.5) / kPlaces - 0.5);
    shadowed += lambert(std::atan2(64 - z, 150)) - lambert(std::atan2(60 - z, 190));
    all += lambert(std::atan2(top.z - z, top.r)) - lambert(std::atan2(foot.z - z, foot.r));
  }
  // No other metal, and no gap that is filled: what is stopped is the shadow.
  EXPECT_NEAR(proof.of(Fate::stopped), shadowed / all, 1e-7);
}

/// Light keeps its extent: height of the source times its directions is height of the beam times its
/// directions. A source moved by dz turns the ray of elevation t by -dz cos t / (dH/dt), H the height at which
/// it leaves; dH/dt by hand from the equal-path curve.
TEST(LampLine, SpreadKeepsTheExtentOfLight) {
  SectionInput input = tight_section("4");
  input.settings.upper_to_deg = input.settings.lower_to_deg = input.settings.refracting_to_deg;
  input.settings.level_within_deg = 5;
  const Section section = solved(input);
  const double height = 0.2;
  double squares = 0;
  double flux = 0;
  double worst = 0;
  for (const Zone& zone : section.zones) {
    const double from = zone.kind == ZoneKind::centre ? 0 : radians(zone.from_deg);
    const double to = radians(zone.to_deg);
    constexpr int kSteps = 400;
    for (int i = 0; i < kSteps; ++i) {
      const double t = from + (to - from) * (i + 0.5) / kSteps;
      const double d = 1e-5;
      const double rise =
          (true_ring_exit(section, zone, t + d).z - true_ring_exit(section, zone, t - d).z) / (2 * d);
      const double turn = std::cos(t) / rise;
      const double weight = std::cos(t) * std::cos(t) * (to - from) / kSteps;
      squares += weight * turn * turn * height * height / 12;
      flux += weight;
      worst = std::max(worst, turn * height / 2);
    }
  }
  const LampLineProof proof = prove_lamp(section, {height, 0}, 4, 4000);
  EXPECT_NEAR(proof.rms_departure_deg, degrees(std::sqrt(squares / flux)), 0.002 * proof.rms_departure_deg);
  EXPECT_GT(proof.highest_departure_deg, 0.9 * degrees(worst));
  EXPECT_LT(proof.highest_departure_deg, 1.02 * degrees(worst));
  EXPECT_NEAR(proof.lowest_departure_deg, -proof.highest_departure_deg, 0.01 * proof.highest_departure_deg);
}

TEST(LampLine, TwiceThePointsHardlyChangeTheShares) {
  SectionInput input = tight_section("4");
  input.settings.gap_mm = input.settings.land_mm = 0.5;
  const Section section = solved(input);
  const LampLineProof some = prove_lamp(section, {40, 0});
  const LampLineProof more = prove_lamp(section, {40, 0}, 7, 3000);
  for (int fate = 0; fate < kFates; ++fate)
    EXPECT_NEAR(some.share[fate], more.share[fate], 2e-3) << name_of(static_cast<Fate>(fate));
}

TEST(LampLine, MovedUpSendsRingsDownAndPrismsUp) {
  // A ring's beam rises with the elevation of the ray, a reflecting prism's falls.
  SectionInput input = tight_section("4");
  EXPECT_GT(prove_lamp(solved(input), {2, 3}).highest_departure_deg, 0.2);
  input.settings.upper_to_deg = input.settings.lower_to_deg = input.settings.refracting_to_deg;
  EXPECT_LT(prove_lamp(solved(input), {2, 3}).highest_departure_deg, 0);
}

}  // namespace
}  // namespace prismwright
