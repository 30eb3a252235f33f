#include "core/lens/facet_departure.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/flat_inner_face.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

LensValues flat_belt(int panels, double edge_mm = 4) {
  LensValues values = starting_values("4", Work::belt, panels);
  values.section.inner_face = InnerFace::flat;
  values.section.edge_mm = edge_mm;
  return values;
}

FacetZone zone_of(const LensPlan& plan, const char* mark) {
  const SectionInput& input = plan.section.input;
  const Zone& zone = *plan.section.find(mark);
  const BandAim aim = plan.section.aim_of(zone.kind);
  return {zone.profile, input.focal_mm, input.index, aim.focus_z_mm, aim.aim_deg};
}

// Within what the cubic pieces of a true curve hold.
TEST(FacetRay, InThePanelsMiddleLeavesAtItsAim) {
  for (const double aim_deg : {0.0, 0.8}) {
    LensValues values = flat_belt(8, 25);
    values.section.refracting.aim_deg = aim_deg;
    const auto plan = plan_lens(values);
    ASSERT_TRUE(plan.ok()) << plan.problem().text;
    for (const char* mark : {"C", "R1", "R5"}) {
      for (const double share : {0.1, 0.5, 0.9}) {
        const auto ray = zone_of(*plan, mark).trace(0, share);
        ASSERT_TRUE(ray) << mark;
        EXPECT_NEAR(ray->departure_deg, 0, 5e-6) << mark;
        EXPECT_NEAR(ray->sideways_deg, 0, 1e-12) << mark;
      }
    }
  }
}

// In the focal plane the way of the light is that through a flat face and a circle, in two dimensions: at the
// azimuth q it meets the face at y = f tan q and goes on at a = asin(sin q / n); on the circle of radius R
// about the focus it stands at the azimuth p with R sin(p - a) = (distance of the ray from the focus), and
// leaves at p - asin(n sin(p - a)).
TEST(FacetRay, InTheFocalPlaneIsTurnedAsThroughAFlatFaceAndACircle) {
  const auto plan = plan_lens(flat_belt(8, 25));
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  const double f = plan->section.input.focal_mm;
  const double n = plan->section.input.index;
  const Face& outer = *plan->section.find("C")->profile.find(FaceRole::outer);
  double radius = 0;
  for (const SectionPoint p : outer.points) radius = std::max(radius, p.r);
  for (const double azimuth_deg : {-20.0, 3.0, 11.0, 21.0}) {
    const double q = radians(azimuth_deg);
    const double a = std::asin(std::sin(q) / n);
    const double off = f * std::tan(q) * std::cos(a) - f * std::sin(a);
    const double p = a + std::asin(off / radius);
    const double leaves_deg = degrees(p - std::asin(n * off / radius));
    const auto ray = zone_of(*plan, "C").trace(azimuth_deg, 0.5);
    ASSERT_TRUE(ray);
    EXPECT_NEAR(ray->departure_deg, 0, 1e-9);
    EXPECT_NEAR(ray->azimuth_deg + ray->sideways_deg, leaves_deg, 1e-5);
  }
}

TEST(FacetRay, DepartsAlikeOnBothSidesOfTheAxisAndWithTheSquareOfSmallAzimuths) {
  const auto plan = plan_lens(flat_belt(8, 25));
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  const FacetZone zone = zone_of(*plan, "R3");
  const auto ray = zone.trace(8, 0.5);
  const auto other = zone.trace(-8, 0.5);
  const auto half = zone.trace(4, 0.5);
  ASSERT_TRUE(ray && other && half);
  EXPECT_NEAR(ray->departure_deg, other->departure_deg, 1e-10);
  EXPECT_NEAR(ray->sideways_deg, -other->sideways_deg, 1e-10);
  EXPECT_GT(std::abs(ray->departure_deg), 0.01);
  EXPECT_NEAR(ray->departure_deg / half->departure_deg, 4, 0.1);
}

TEST(FacetDepartures, GrowWithThePanelAndSayHowFarItLights) {
  double before = 0;
  for (const int panels : {24, 16, 12}) {
    const auto plan = plan_lens(flat_belt(panels, 15));
    ASSERT_TRUE(plan.ok()) << plan.problem().text;
    const auto departures = facet_departures(*plan);
    const FacetDeparture* worst = worst_of(departures);
    ASSERT_TRUE(worst);
    EXPECT_GT(std::abs(worst->worst.departure_deg), before);
    before = std::abs(worst->worst.departure_deg);
    EXPECT_LT(worst->side_deg, 180.0 / panels);
    EXPECT_GT(worst->side_deg, 180.0 / panels - 1) << "set back by the rib";
    EXPECT_LT(lit_to_deg(departures), worst->side_deg) << "the flat face gathers the light sideways";
    for (const FacetDeparture& zone : departures) {
      EXPECT_GT(zone.own_way, 0.9) << zone.zone;
      EXPECT_LE(zone.own_way, 1) << zone.zone;
    }
  }
}

TEST(FacetDepartures, AreForFlatFacesOfABandAboutTheLensAlone) {
  LensValues values = flat_belt(8, 25);
  values.section.inner_face = InnerFace::hollow;
  EXPECT_TRUE(facet_departures(plan_lens(values).value()).empty());
  values = starting_values("4", Work::bullseye, 8);
  values.section.inner_face = InnerFace::flat;
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  EXPECT_TRUE(facet_departures(*plan).empty());
  for (const PlannedPrism& prism : plan->prisms) EXPECT_FALSE(prism.trim.flat_inner_mm) << prism.mark;
}

TEST(FlatInnerFace, IsCutIntoRefractingPrismsAloneAndMakesShapesOfTheirOwn) {
  const auto flat = plan_lens(flat_belt(8, 25));
  LensValues values = flat_belt(8, 25);
  values.section.inner_face = InnerFace::hollow;
  const auto hollow = plan_lens(values);
  ASSERT_TRUE(flat.ok() && hollow.ok());
  ASSERT_EQ(flat->prisms.size(), hollow->prisms.size());
  for (std::size_t i = 0; i < flat->prisms.size(); ++i) {
    const PlannedPrism& prism = flat->prisms[i];
    EXPECT_EQ(prism.trim.flat_inner_mm.has_value(), is_refracting(prism.kind)) << prism.mark;
    EXPECT_EQ(prism.shape_key == hollow->prisms[i].shape_key, !is_refracting(prism.kind)) << prism.mark;
  }
  EXPECT_DOUBLE_EQ(*flat->find("P01-C")->trim.flat_inner_mm, values.brief.focal_mm);
}

// f / cos(22.5 deg) = 250 / 0.92388 = 270.598; with 1 mm of glass the edge must stand at 271.598 or more. At
// 271.5 mm the widest side is acos(250 / 270.5) = 22.4497 deg.
TEST(FlatInnerFace, IsRefusedWhereAPanelIsTooWideForItsEdge) {
  const auto refused = plan_lens(flat_belt(8, 21.5));
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "facet.thin");
  for (const char* said : {"panel 1", "45 deg", "270.60 mm", "271.50 mm", "at most 44.8 deg", "21.6 mm"}) {
    EXPECT_THAT(refused.problem().text, HasSubstr(said));
  }
  EXPECT_FALSE(check_buildable(flat_belt(8, 21.5)));
  EXPECT_TRUE(plan_lens(flat_belt(8, 21.6)).ok());
  EXPECT_TRUE(check_buildable(flat_belt(8, 21.6)));
}

TEST(FlatInnerFace, TakesNoNoticeOfBlindPanelsAndCountsAShiftedAxis) {
  LensValues values = flat_belt(8, 12);
  values.panels = {{120, 0, true}};
  for (int i = 0; i < 8; ++i) values.panels.push_back({30, 0, false});
  EXPECT_TRUE(plan_lens(values).ok());
  values.panels[3].axis_shift_deg = -4;
  const auto refused = plan_lens(values);
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("panel 4"));
}

}  // namespace
}  // namespace prismwright
