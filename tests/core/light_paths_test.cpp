#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/light/light_path.h"
#include "core/light/polarised.h"
#include "core/optics/refraction.h"
#include "core/optics/space_refraction.h"
#include "tests/support/planned_lens.h"

namespace prismwright {
namespace {

/// Focal rays over the glass of a panel: how far those that take a prism's own way stray from the aim.
struct FocalRays {
  int own_way = 0;
  double worst_elevation_deg = 0;
  double worst_azimuth_deg = 0;
};
FocalRays focal_rays(const LensPlan& plan, double half_azimuth_deg, double aim_deg) {
  const LightLens lens(plan);
  const PathFinder finder(lens, {plan.section.input.index, 0});
  FocalRays rays;
  for (double elevation = -48; elevation < 76; elevation += 0.37) {
    for (double azimuth = -half_azimuth_deg; azimuth <= half_azimuth_deg; azimuth += half_azimuth_deg / 6) {
      const LightPath path = finder.follow({{}, direction_at(radians(azimuth), radians(elevation))});
      if (path.end != PathEnd::free || !path.own_way) continue;
      ++rays.own_way;
      const SpaceVector out = path.last.along;
      rays.worst_elevation_deg =
          std::max(rays.worst_elevation_deg, std::abs(degrees(std::asin(out.z)) + aim_deg));
      rays.worst_azimuth_deg = std::max(rays.worst_azimuth_deg, std::abs(degrees(std::atan2(out.y, out.x))));
    }
  }
  return rays;
}

TEST(LightPaths, FocalRaysOfABullsEyePanelLeaveAlongItsAxis) {
  const FocalRays rays = focal_rays(plan_of(starting_values("4", Work::bullseye, 8)), 18, 0);
  EXPECT_GT(rays.own_way, 3500);
  EXPECT_LT(rays.worst_elevation_deg, 1e-5);
  EXPECT_LT(rays.worst_azimuth_deg, 1e-5);
}

TEST(LightPaths, FocalRaysOfABeltLeaveLevelAtTheirOwnAzimuth) {
  const FocalRays rays = focal_rays(plan_of(starting_values("6", Work::belt, 6)), 24, 0);
  EXPECT_GT(rays.own_way, 3000);
  EXPECT_LT(rays.worst_elevation_deg, 1e-5);
}

TEST(LightPaths, FocalRaysFollowAnAimBelowLevel) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  const Assignment aimed[] = {{"section.refracting_aim_deg", "0.7"},
                              {"section.upper_aim_deg", "0.7"},
                              {"section.lower_aim_deg", "0.7"}};
  values = *with_assignments(values, aimed);
  const FocalRays rays = focal_rays(plan_of(values), 16, 0.7);
  EXPECT_GT(rays.own_way, 3000);
  EXPECT_LT(rays.worst_elevation_deg, 1e-5);
  EXPECT_LT(rays.worst_azimuth_deg, 1e-5);
}

TEST(LightPaths, WhatComesThroughIsReflectedOrAbsorbedAddsToOne) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const PathFinder finder(lens, {1.4918, 0.002});
  std::mt19937 random(7);
  std::uniform_real_distribution<double> even(-1, 1);
  for (int i = 0; i < 2000; ++i) {
    const SpaceRay ray{{4 * even(random), 4 * even(random), 6 * even(random)},
                       direction_at(kPi * even(random), std::asin(even(random)))};
    const LightPath path = finder.follow(ray);
    EXPECT_NEAR(path.through + path.reflected + path.absorbed, 1, 1e-12);
    EXPECT_GE(path.reflected, 0);
    EXPECT_GE(path.absorbed, -1e-15);
  }
}

// A ray turned back takes the same way with the same loss: reversibility.
TEST(LightPaths, ARayTurnedBackTakesTheSameWay) {
  const LensPlan plan = plan_of(starting_values("4", Work::bullseye, 8));
  const LightLens lens(plan);
  const PathFinder finder(lens, {1.4918, 0.001});
  int compared = 0;
  for (double elevation = -45; elevation < 74; elevation += 1.3) {
    for (const double azimuth : {-11.0, 3.0, 14.0}) {
      const SpaceRay ray{{2, 3, -4}, direction_at(radians(azimuth), radians(elevation))};
      const LightPath out = finder.follow(ray);
      if (out.end != PathEnd::free || !out.own_way) continue;
      const SpaceRay home{place_on(out.last, 50), -out.last.along};
      const LightPath back = finder.follow(home);
      ASSERT_GE(back.faces, 2);
      const SpaceVector miss = ray.from - back.last.from;
      // The way back runs on past the lamp to the other side of the lens; compare the first prism's part.
      if (back.prisms != 1) continue;
      EXPECT_LT(length(cross(miss, back.last.along)), 1e-6);
      EXPECT_NEAR(back.through, out.through, 1e-9);
      ++compared;
    }
  }
  EXPECT_GT(compared, 5);
}

// Physics: a meridional ray keeps its s and p, so the shares of Fresnel's equations multiply for each.
TEST(PolarisedLight, KeepsSAndPApartAlongAMeridionalPath) {
  const SpaceVector in = direction_at(0, 0.6);
  const SpaceVector face{1, 0, 0};
  const auto inside = refract(in, face, 1, 1.5);
  const SpaceVector other = unit(SpaceVector{1, 0, 0.4});
  const auto outside = refract(inside.along, other, 1.5, 1);
  PolarisedLight light(in);
  light.refract(in, inside.along, face, 1, 1.5);
  light.refract(inside.along, outside.along, other, 1.5, 1);
  const Reflectance one = fresnel_at_cosine(in.x, 1, 1.5);
  const Reflectance two = fresnel_at_cosine(std::abs(dot(inside.along, other)), 1.5, 1);
  EXPECT_NEAR(light.power(), 0.5 * ((1 - one.s) * (1 - two.s) + (1 - one.p) * (1 - two.p)), 1e-14);
}

TEST(PolarisedLight, LosesNothingInTotalReflection) {
  const SpaceVector in = unit(SpaceVector{1, 0.3, 0.9});
  const SpaceVector face{0, 0, 1};
  ASSERT_TRUE(refract(in, face, 1.5, 1).total);
  PolarisedLight light(in);
  light.reflect(in, reflect(in, face), face, 1.5, 1);
  EXPECT_NEAR(light.power(), 1, 1e-14);
}

}  // namespace
}  // namespace prismwright
