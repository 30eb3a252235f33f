// Historic refracting rings against values derived from A. Stevenson, Account of the Skerryvore Lighthouse
// (1848), Notes. Formula published; the figures below are derived from it (f = 920 mm, m = 1.51, e = 10 mm) and
// printed to 1e-6 mm, so 1e-5 mm allows for their rounding.
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/optics/proof.h"
#include "core/optics/section.h"

namespace prismwright {
namespace {

constexpr double kPrinted_mm = 1e-5;

Section first_order_band() {
  SectionInput input{920, 1.51, {}};
  input.settings.faces = Faces::arc;
  input.settings.edge_mm = 10;
  input.settings.gap_mm = 0;
  input.settings.land_mm = 0;
  // Margins of the table and, for rings 3 and 4 that it leaves out, heights between.
  input.settings.refracting_margins_mm = {139.7, 209.55, 261.104, 302, 341.177, 374.675};
  input.settings.upper_to_deg = 28.5;
  input.settings.lower_to_deg = 28.5;
  auto section = solve_section(input);
  EXPECT_TRUE(section.ok()) << (section ? "" : section.problem().text);
  return *section;
}

struct RingRow {
  const char* zone;
  double rho_mm;
  double centre_drop_mm;   ///< CG: the centre lies this far below the axis
  double centre_depth_mm;  ///< CQ: the centre lies this far inside the inner face
};

class SkerryvoreRing : public testing::TestWithParam<RingRow> {};

TEST_P(SkerryvoreRing, HasTheDerivedRadiusAndCentre) {
  const Section section = first_order_band();
  const Zone* zone = section.find(GetParam().zone);
  ASSERT_NE(zone, nullptr);
  const Face* outer = zone->profile.find(FaceRole::outer);
  EXPECT_NEAR(outer->radius_mm, GetParam().rho_mm, kPrinted_mm);
  EXPECT_NEAR(outer->centre.z, -GetParam().centre_drop_mm, kPrinted_mm);
  EXPECT_NEAR(outer->centre.r, 920 - GetParam().centre_depth_mm, kPrinted_mm);
}

INSTANTIATE_TEST_SUITE_P(FirstOrder, SkerryvoreRing,
                         testing::Values(RingRow{"R1", 545.512901, 12.953888, 488.072630},
                                         RingRow{"R2", 600.592357, 31.864936, 514.290360},
                                         RingRow{"R5", 763.605516, 106.085416, 583.264533}));

TEST(SkerryvoreDisc, HasTheDerivedRadiusAndThickness) {
  const Section section = first_order_band();
  const Zone* disc = section.find("C");
  ASSERT_NE(disc, nullptr);
  const Face* outer = disc->profile.find(FaceRole::outer);
  EXPECT_NEAR(outer->radius_mm, 491.265357, kPrinted_mm);
  EXPECT_NEAR(outer->centre.z, 0, kPrinted_mm);
  EXPECT_NEAR(outer->centre.r + outer->radius_mm - 920, 30.281747, kPrinted_mm);
}

TEST(SkerryvoreRingTraced, SendsExtremeRaysLevelAndDepartsByTheDerivedWorst) {
  // Derived: ring 1 traced, extreme rays level, worst inside 0.044 deg (printed to 0.001 deg).
  const Proof proof = prove(first_order_band(), 20000);
  const auto ring =
      std::find_if(proof.zones.begin(), proof.zones.end(), [](const ZoneProof& z) { return z.mark == "R1"; });
  ASSERT_NE(ring, proof.zones.end());
  EXPECT_NEAR(ring->worst_departure_deg, 0.044, 0.0005);
  const SectionTracer tracer(first_order_band());
  EXPECT_NEAR(tracer.trace(ring->from_deg + 1e-7).departure_deg, 0, 1e-6);
  EXPECT_NEAR(tracer.trace(ring->to_deg - 1e-7).departure_deg, 0, 1e-6);
}

/// Own check figures, worked out numerically before the program (n = 1.4918, f = 250, e = 4, ring 9 to 15 deg);
/// printed to 0.01 mm.
TEST(FourthOrderRing, MatchesTheCheckFigures) {
  SectionInput input{250, 1.4918, {}};
  input.settings.edge_mm = 4;
  input.settings.gap_mm = 0;
  input.settings.land_mm = 0;
  const auto margin = [](double deg) {
    const double t = radians(deg);
    return 250 * std::tan(t) + 4 * std::tan(std::asin(std::sin(t) / 1.4918));
  };
  input.settings.refracting_margins_mm = {margin(9), margin(15)};
  input.settings.upper_to_deg = input.settings.lower_to_deg = 15;
  input.settings.refracting_to_deg = 15;
  input.settings.faces = Faces::arc;
  const auto arcs = solve_section(input);
  ASSERT_TRUE(arcs.ok());
  const Face* arc = arcs->find("R1")->profile.find(FaceRole::outer);
  EXPECT_NEAR(arc->start().r, 265.46, 0.005);
  EXPECT_NEAR(arc->start().z, 41.23, 0.005);
  EXPECT_NEAR(arc->end().r, 254.00, 0.005);
  EXPECT_NEAR(arc->end().z, 67.69, 0.005);
  EXPECT_NEAR(arc->radius_mm, 151.03, 0.005);
  EXPECT_NEAR(arc->centre.r, 121.75, 0.005);
  EXPECT_NEAR(arc->centre.z, -5.26, 0.005);
  const Proof proof = prove(*arcs, 20000);
  EXPECT_NEAR(proof.zones[1].worst_departure_deg, 0.107, 0.0005);

  input.settings.faces = Faces::true_curve;
  const auto curves = solve_section(input);
  ASSERT_TRUE(curves.ok());
  const Face* curve = curves->find("R1")->profile.find(FaceRole::outer);
  EXPECT_NEAR(curve->start().r, 265.52, 0.005);
  EXPECT_NEAR(curve->start().z, 41.23, 0.005);
  EXPECT_LT(prove(*curves, 20000).worst_departure_deg, 1e-4);
}

}  // namespace
}  // namespace prismwright
