#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/light/flux_budget.h"
#include "core/light/sun_hazard.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

LampBody lamp_of(LampShape shape, double width_mm, double height_mm, LampSet set = LampSet::one,
                 int count = 1) {
  Lamp lamp;
  lamp.shape = shape;
  lamp.width_mm = width_mm;
  lamp.height_mm = height_mm;
  lamp.flux_lm = 1500;
  lamp.set = set;
  lamp.count = count;
  lamp.ring_mm = 12;
  return *LampBody::make(lamp);
}

// Lambert: a convex body of luminance L sends pi L from each unit of surface.
TEST(LampBody, SendsItsFluxEvenlyByTheCosineLaw) {
  for (const LampShape shape : {LampShape::cylinder, LampShape::sphere, LampShape::disc, LampShape::tile}) {
    const LampBody lamp = lamp_of(shape, 10, 16);
    EXPECT_NEAR(kPi * lamp.luminance_cd_mm2() * lamp.parts()[0].surface_mm2(), 1500, 1e-9);
    // Intensity along x by counting rays near it, against luminance times the outline seen from there.
    const double half = radians(8);
    long hits = 0;
    constexpr long kRays = 1000000;
    std::uint64_t state = 42;
    const auto next = [&] {
      state = state * 6364136223846793005ULL + 1442695040888963407ULL;
      return static_cast<double>(state >> 11) * 0x1p-53;
    };
    for (long i = 0; i < kRays; ++i) {
      const double a = next(), b = next(), c = next(), d = next();
      const SpaceRay ray = lamp.ray({a, b, c, d});
      if (ray.along.x > std::cos(half)) ++hits;
    }
    const double cd =
        1500.0 * static_cast<double>(hits) / static_cast<double>(kRays) / (2 * kPi * (1 - std::cos(half)));
    // Over the cone a cylinder's ends are seen a little too: the mean of |sin elevation| is 4 / (3 pi) of its
    // edge's.
    const double ends = shape == LampShape::cylinder ? kPi * 25 * 4 / (3 * kPi) * std::sin(half) : 0;
    const double outline = ends + (shape == LampShape::sphere || shape == LampShape::disc ? kPi * 25 : 160);
    EXPECT_NEAR(cd / (lamp.luminance_cd_mm2() * outline), 1, 0.03) << static_cast<int>(shape);
  }
}

TEST(LampBody, WithoutSizeIsRefusedByItsKey) {
  Lamp lamp;
  lamp.height_mm = 0;
  const auto refused = LampBody::make(lamp);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().where, "lamp.height_mm");
}

class FluxOfSamples : public testing::TestWithParam<Work> {};

// Conservation: the parts add to the lamp's flux, and the beam summed over all directions is the level part.
// The two are found by different ways: rays from the lamp, and rays sent back from the aperture.
TEST_P(FluxOfSamples, AddsUpAndAgreesWithTheBeam) {
  const bool belt = GetParam() == Work::belt;
  const LensPlan plan = plan_of(starting_values(belt ? "6" : "4", GetParam(), belt ? 6 : 8));
  const LightLens lens(plan);
  const LampBody lamp = lamp_of(LampShape::cylinder, 8, 12);
  BudgetRequest ask;
  ask.colours = {{{plan.section.input.index, 0.0005}, 1}};
  ask.rays = 60000;
  const FluxBudget budget = *flux_budget(lens, lamp, ask);
  EXPECT_NEAR(std::accumulate(budget.lm.begin(), budget.lm.end(), 0.0) / 1500, 1, 1e-9);
  BeamRequest beam;
  beam.colours = ask.colours;
  const BeamFlux flux = beam_flux(lens, lamp, beam, 1500);
  const double whole = budget.of(LightFate::level) + budget.stray_lm();
  EXPECT_NEAR((flux.lm + budget.stray_lm()) / whole, 1, 0.005);
  EXPECT_LT(flux.error_lm, 0.004 * flux.lm);
  EXPECT_GT(budget.of(LightFate::level), 0.4 * 1500);
  double zones = 0;
  for (const ZoneFlux& zone : budget.zones) zones += zone.level_lm + zone.stray_lm;
  EXPECT_NEAR(zones / whole, 1, 1e-9);
}
INSTANTIATE_TEST_SUITE_P(Works, FluxOfSamples, testing::Values(Work::bullseye, Work::belt));

TEST(FluxBudget, CountsLightThatOtherLampsOfARingStop) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  BudgetRequest ask;
  ask.colours = {{{1.4918, 0}, 1}};
  ask.rays = 8000;
  EXPECT_EQ(flux_budget(lens, lamp_of(LampShape::sphere, 6, 0), ask)->of(LightFate::lamp), 0);
  EXPECT_GT(flux_budget(lens, lamp_of(LampShape::sphere, 6, 0, LampSet::ring, 8), ask)->of(LightFate::lamp),
            500);
  EXPECT_GT(flux_budget(lens, lamp_of(LampShape::sphere, 6, 0, LampSet::changer, 4), ask)->of(LightFate::lamp),
            5);
}

// Derived in the project's sources: a lens 200 mm across of f = 250 puts 25 W into the sun's image at 900 W/m2.
// Ours is larger: the power grows with the aperture, and no ball takes more than the sunlight on the aperture.
TEST(SunHazard, GathersTheSunlightOfThePanelInTheSunsImage) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const SunHazard hazard = sun_hazard(lens, 250, {1.4918, 0}, 900, 0);
  EXPECT_NEAR(hazard.image_mm, 2.33, 0.01);
  EXPECT_TRUE(hazard.kindles);
  double before = 0;
  for (const SunSpot& spot : hazard.spots) {
    EXPECT_GE(spot.watts, before * 0.98);
    before = spot.watts;
  }
  // About 200 mm wide and 480 mm high, four fifths let through: between 40 and 90 W.
  EXPECT_GT(before, 40);
  EXPECT_LT(before, 90);
}

}  // namespace
}  // namespace prismwright
