// Reflecting prisms against the conditions published by A. Stevenson, Account of the Skerryvore Lighthouse
// (1848), pp. 272-285, and Encyclopaedia Britannica, 7th ed., vol. 20, p. 24. Figures marked "derived" follow
// from them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/moved_power.h"
#include "core/optics/proof.h"
#include "core/optics/reflecting_zone.h"
#include "core/optics/section.h"

namespace prismwright {
namespace {

struct AngleRow {
  double elevation_deg;
  double xi_deg;
  double ga_deg;
  double incidence_deg;
};

class SkerryvoreAngles : public testing::TestWithParam<AngleRow> {};

/// Derived, m = 1.51; printed to 1e-5 deg.
TEST_P(SkerryvoreAngles, FollowFromTheElevationOfTheLowestRay) {
  const AngleRow row = GetParam();
  const double e = radians(row.elevation_deg);
  const auto prism = *ReflectingPrism::make({900 * std::cos(e), 900 * std::sin(e)}, 1e-3,
                                            {.index = 1.51, .faces = Faces::arc}, {});
  const double xi = prism.corners().beta - kPi / 2 - e;
  const double ga = e + xi - prism.corners().gamma;
  EXPECT_NEAR(degrees(xi), row.xi_deg, 1e-5);
  EXPECT_NEAR(degrees(ga), row.ga_deg, 1e-5);
  // The prism is so small that its incidence is that of the lowest ray (to 1e-5 deg).
  EXPECT_NEAR(degrees(prism.margin(0)) + degrees(std::asin(1 / 1.51)), row.incidence_deg, 1e-4);
}

INSTANTIATE_TEST_SUITE_P(Index151, SkerryvoreAngles,
                         testing::Values(AngleRow{40, 36.63987, 23.27975, 56.63987},
                                         AngleRow{60, 22.26648, 14.53297, 52.26648}));

Section first_order_stack() {
  SectionInput input{920, 1.51, {}};
  input.settings.faces = Faces::arc;
  input.settings.edge_mm = 10;
  input.settings.gap_mm = 0;
  input.settings.land_mm = 0;
  input.settings.reflecting_chord_mm = 90;
  input.settings.upper_start_r_mm = 920;
  input.settings.upper_start_z_mm = 500;
  input.settings.lower_to_deg = 28.5;
  auto section = solve_section(input);
  EXPECT_TRUE(section.ok()) << (section ? "" : section.problem().text);
  return *section;
}

/// Derived, f = 920 stack from (920, 500), entry side 90 mm. The source letters the outer-lower corner C and
/// the outer-upper corner A; here they are A and C. Printed to 1e-6 mm.
TEST(SkerryvoreStack, FirstTwoZonesStandWhereTheSourcePutsThem) {
  const Section section = first_order_stack();
  const Zone* first = section.find("U01");
  const Zone* second = section.find("U02");
  ASSERT_NE(second, nullptr);
  EXPECT_NEAR(first->corners->b.r, 833.880196, 1e-5);
  EXPECT_NEAR(first->corners->b.z, 526.141526, 1e-5);
  EXPECT_NEAR(first->corners->c.r, 985.062857, 1e-5);
  EXPECT_NEAR(first->corners->c.z, 565.997748, 1e-5);
  const Face* face = first->profile.find(FaceRole::reflecting);
  EXPECT_NEAR(face->radius_mm, 8829.705980, 1e-3);  // a radius of 8.8 m follows from corners known to 1e-6 mm
  EXPECT_NEAR(face->centre.r, 3160.250579, 1e-3);
  EXPECT_NEAR(face->centre.z, -7991.587546, 1e-3);
  EXPECT_NEAR(second->corners->a.r, 897.048209, 1e-5);
  EXPECT_NEAR(second->corners->a.z, 565.997748, 1e-5);
  EXPECT_NEAR(second->corners->b.r, 810.411392, 1e-5);
  EXPECT_NEAR(second->corners->b.z, 590.371133, 1e-5);
  EXPECT_NEAR(second->corners->c.r, 959.153440, 1e-5);
  EXPECT_NEAR(second->corners->c.z, 634.882858, 1e-5);
  EXPECT_NEAR(second->profile.find(FaceRole::reflecting)->radius_mm, 8314.000308, 1e-3);
}

/// Published, Encyclopaedia Britannica, 7th ed., p. 24: first-order reflecting sides have a radius "upwards of
/// 24 feet", the curve departing from its chord by about .0125 inch. Band for upper zones: radius 22-31 ft,
/// sagitta 0.25-0.45 mm.
TEST(FirstOrderReflectingSides, LieInThePublishedBand) {
  const Section section = first_order_stack();
  for (const Zone& zone : section.zones) {
    if (zone.kind != ZoneKind::upper || zone.number > 6) continue;
    const Face* face = zone.profile.find(FaceRole::reflecting);
    const double chord = distance(face->start(), face->end());
    const double sagitta = face->radius_mm - std::sqrt(face->radius_mm * face->radius_mm - chord * chord / 4);
    EXPECT_GT(face->radius_mm / 304.8, 22) << zone.mark;
    EXPECT_LT(face->radius_mm / 304.8, 31) << zone.mark;
    EXPECT_GT(sagitta, 0.25) << zone.mark;
    EXPECT_LT(sagitta, 0.45) << zone.mark;
  }
}

/// Own check figures (n = 1.4918, A at elevation 30 deg and r = 270, |AB| = 30), printed to 0.01 mm and deg.
TEST(FourthOrderPrism, MatchesTheCheckFigures) {
  const SectionPoint a{270, 270 * std::tan(radians(30))};
  const auto arc = *ReflectingPrism::make(a, 30, {.index = 1.4918, .faces = Faces::arc}, {});
  EXPECT_NEAR(arc.corners().b.r, 241.19, 0.005);
  EXPECT_NEAR(arc.corners().b.z, 164.24, 0.005);
  EXPECT_NEAR(degrees(arc.corners().beta), 163.83, 0.005);
  EXPECT_NEAR(degrees(arc.corners().gamma), 46.17, 0.005);
  EXPECT_NEAR(arc.corners().c.r, 291.50, 0.005);
  EXPECT_NEAR(arc.corners().c.z, 178.28, 0.005);
  const auto profile = arc.profile();
  ASSERT_TRUE(profile.ok());
  EXPECT_NEAR(profile->find(FaceRole::reflecting)->radius_mm, 2517.6, 0.05);

  const auto curve = *ReflectingPrism::make(a, 30, {.index = 1.4918}, {});
  EXPECT_NEAR(curve.corners().c.r, 291.472, 0.0005);
  EXPECT_NEAR(curve.corners().c.z, 178.252, 0.0005);
}

/// Own check figures for the power in the entry or exit face, with the reflecting face along the chord B to C
/// of the true-curve prism (15.571234 deg): printed to 1e-6 mm and deg.
TEST(FourthOrderPrism, PowerInAnotherFaceMatchesTheCheckFigures) {
  const SectionPoint a{270, 270 * std::tan(radians(30))};
  const auto plain = *ReflectingPrism::make(a, 30, {.index = 1.4918}, {});
  const SectionDirection tau = SectionDirection::along(plain.corners().c - plain.corners().b);
  EXPECT_NEAR(degrees(tau.elevation()), 15.571234, 1e-6);
  const SectionDirection e = SectionDirection::at(plain.corners().beta).reversed();
  const SectionDirection inside = SectionDirection::along(2 * dot(e, tau) * tau + (-1.0) * e);
  EXPECT_NEAR(degrees(inside.elevation()), 47.312709, 1e-6);
  const EntryCurve entry{plain.corners().b, inside, 1.4918};
  EXPECT_NEAR(entry.constant(), -132.247554, 1e-6);
  EXPECT_NEAR(entry.at(radians(30)).r, 269.981229, 1e-6);
  EXPECT_NEAR(entry.at(radians(30)).z, 155.873735, 1e-6);

  ExitCurve exit{{a, plain.corners().b, 1.4918}, tau, 0};
  const SectionDirection way = exit.after(1);
  const SectionDirection side = SectionDirection::at(plain.corners().gamma);
  const SectionPoint b = plain.corners().b;
  exit.constant = exit.constant_for(1, b + cross(a - b, side) / cross(way, side) * way);
  EXPECT_NEAR(exit.constant, 66.561571, 1e-6);
  EXPECT_NEAR(exit.at(1).r, 269.499910, 1e-6);
  EXPECT_NEAR(exit.at(1).z, 155.363626, 1e-6);
  EXPECT_NEAR(exit.at(0).r, 291.490752, 1e-6);
  EXPECT_NEAR(exit.at(0).z, 178.246891, 1e-6);
}

TEST(FourthOrderPrism, ArcDepartsByTheCheckFigure) {
  SectionInput input{250, 1.4918, {}};
  input.settings.faces = Faces::arc;
  input.settings.gap_mm = input.settings.land_mm = 0;
  input.settings.upper_start_r_mm = 270;
  input.settings.upper_start_z_mm = 270 * std::tan(radians(30));
  input.settings.lower_to_deg = 28.5;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok());
  const Proof proof = prove(*section, 50000);
  const auto first =
      std::find_if(proof.zones.begin(), proof.zones.end(), [](const ZoneProof& z) { return z.mark == "U01"; });
  EXPECT_NEAR(first->worst_departure_deg, 0.128, 0.0005);
}

/// Own check figure: a stack of twelve such prisms runs to 81 deg with incidence never under 46.9 deg.
TEST(FourthOrderStack, TwelvePrismsReachEightyOneDegrees) {
  SectionInput input{250, 1.4918, {}};
  input.settings.gap_mm = input.settings.land_mm = 0;
  input.settings.upper_start_r_mm = 270;
  input.settings.upper_start_z_mm = 270 * std::tan(radians(30));
  input.settings.upper_to_deg = 85;
  input.settings.lower_to_deg = 28.5;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok());
  const Zone* twelfth = section->find("U12");
  ASSERT_NE(twelfth, nullptr);
  EXPECT_NEAR(twelfth->to_deg, 81, 0.5);
  const Proof proof = prove(*section, 20000);
  for (const ZoneProof& zone : proof.zones) {
    if (zone.kind != ZoneKind::upper || zone.to_deg > 81.5) continue;
    EXPECT_GT(*zone.least_margin_deg + 42.09, 46.85) << zone.mark;
  }
}

}  // namespace
}  // namespace prismwright
