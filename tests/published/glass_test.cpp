// Materials and Fresnel's equations against published and physical values.
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/orders.h"
#include "core/optics/medium.h"
#include "core/optics/refraction.h"

namespace prismwright {
namespace {

constexpr double kF_nm = 486.13;
constexpr double kD_nm = 587.56;
constexpr double kC_nm = 656.27;

/// Beadie 2015, refractiveindex.info database (CC0); printed to 1e-6.
TEST(Acrylic, IndexFollowsThePublishedFormula) {
  const Medium* acrylic = find_medium("acrylic");
  ASSERT_NE(acrylic, nullptr);
  EXPECT_NEAR(acrylic->index(kF_nm), 1.498363, 2e-6);
  EXPECT_NEAR(acrylic->index(kD_nm), 1.492528, 2e-6);
  EXPECT_NEAR(acrylic->index(kC_nm), 1.490067, 2e-6);
}

/// N-BK7: n_d 1.5168 (published to 1e-4), V_d 64.17.
TEST(BorosilicateCrown, IndexAndDispersionArePublished) {
  const Medium* glass = find_medium("n-bk7");
  ASSERT_NE(glass, nullptr);
  EXPECT_NEAR(glass->index(kD_nm), 1.5168, 5e-5);
  const double v = (glass->index(kD_nm) - 1) / (glass->index(kF_nm) - glass->index(kC_nm));
  EXPECT_NEAR(v, 64.17, 0.01);
}

/// Encyclopaedia Britannica, 11th ed., p. 635: n = 1.51, critical angle printed 41 deg 30' (to half a degree's
/// tenth).
TEST(HistoricCrown, ReflectsTotallyFromThePublishedAngle) {
  const Medium* crown = find_medium("crown");
  ASSERT_NE(crown, nullptr);
  EXPECT_DOUBLE_EQ(crown->index(), 1.51);
  EXPECT_NEAR(degrees(critical_angle(crown->index())), 41.5, 0.05);
}

/// Physics, n = 1.49; printed to 1e-6.
TEST(FresnelEquations, GiveTheTextbookValues) {
  EXPECT_NEAR(fresnel(0, 1, 1.49).unpolarised(), 0.038725, 1e-6);
  const Reflectance at45 = fresnel(radians(45), 1, 1.49);
  EXPECT_NEAR(at45.s, 0.089652, 1e-6);
  EXPECT_NEAR(at45.p, 0.008038, 1e-6);
  EXPECT_NEAR(at45.p, at45.s * at45.s, 1e-12);
  EXPECT_NEAR(fresnel(radians(56.1328), 1, 1.49).p, 0, 1e-9);
  EXPECT_NEAR(degrees(critical_angle(1.49)), 42.1552, 1e-4);
  const Reflectance inside = fresnel(radians(40), 1.49, 1);
  EXPECT_NEAR(inside.s, 0.356998, 1e-6);
  EXPECT_NEAR(inside.p, 0.079841, 1e-6);
  EXPECT_DOUBLE_EQ(fresnel(radians(43), 1.49, 1).s, 1);
}

/// Two faces at normal incidence, m = 1.51: R = 0.0412851 each, T = 0.9191343 (physics).
TEST(FresnelEquations, TwoFacesLetThePublishedShareThrough) {
  const double r = fresnel(0, 1, 1.51).unpolarised();
  EXPECT_NEAR(r, 0.0412851, 1e-7);
  EXPECT_NEAR((1 - r) * (1 - r), 0.9191343, 1e-7);
}

/// Encyclopaedia Britannica, 11th ed., Table II p. 639: focal distances in mm, exact.
TEST(Orders, HaveThePublishedFocalDistances) {
  const std::pair<const char*, double> rows[] = {{"hyper-radial", 1330}, {"1", 920}, {"2", 700},   {"3", 500},
                                                 {"3.5", 375},           {"4", 250}, {"5", 187.5}, {"6", 150}};
  for (const auto& [key, focal_mm] : rows) {
    const Order* order = find_order(key);
    ASSERT_NE(order, nullptr) << key;
    EXPECT_EQ(order->focal_mm, focal_mm) << key;
  }
  EXPECT_EQ(find_order("Fourth order"), find_order("4"));
  EXPECT_EQ(find_order("seventh"), nullptr);
}

}  // namespace
}  // namespace prismwright
