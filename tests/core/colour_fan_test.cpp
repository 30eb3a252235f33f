#include "core/optics/colour_fan.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/proved_sections.h"

namespace prismwright {
namespace {

constexpr OfLines<double> kIndex{1.4978, 1.4918, 1.4892};

Section in_arcs() {
  SectionInput input = tight_section("4", Faces::arc);
  input.index = kIndex.d;
  return solved(input);
}

/// A ring of an arc, by plane trigonometry alone: refracted at the upright inner face, met with the circle by
/// the sine rule, refracted at its radius.
double ring_departure(const Section& section, const Zone& ring, double t, double n) {
  const Face& arc = *ring.profile.find(FaceRole::outer);
  const double f = section.input.focal_mm;
  const double inside = std::asin(std::sin(t) / n);
  // Distance of the centre from the ray, left of it positive.
  const double dr = arc.centre.r - f;
  const double dz = arc.centre.z - f * std::tan(t);
  const double aside = std::cos(inside) * dz - std::sin(inside) * dr;
  const double to_normal = std::asin(-aside / arc.radius_mm);  // normal's direction less the ray's
  const double normal = inside + to_normal;
  return normal - std::asin(n * std::sin(to_normal));
}

TEST(ColourFan, OfARingIsThatOfPlaneTrigonometry) {
  const Section section = in_arcs();
  const auto fan = colour_fan(section, kIndex);
  for (std::size_t i = 0; i < section.zones.size(); ++i) {
    const Zone& zone = section.zones[i];
    if (zone.kind != ZoneKind::ring) continue;
    const double t = radians(0.5 * (zone.from_deg + zone.to_deg));
    ASSERT_TRUE(fan[i].middle.f && fan[i].middle.d && fan[i].middle.c) << zone.mark;
    EXPECT_NEAR(*fan[i].middle.f, degrees(ring_departure(section, zone, t, kIndex.f)), 1e-9) << zone.mark;
    EXPECT_NEAR(*fan[i].middle.d, degrees(ring_departure(section, zone, t, kIndex.d)), 1e-9) << zone.mark;
    EXPECT_NEAR(*fan[i].middle.c, degrees(ring_departure(section, zone, t, kIndex.c)), 1e-9) << zone.mark;
  }
}

/// A prism with straight sides, by angles alone: the straight reflecting face turns the ray by twice the angle
/// between them. Entry face carrying the power is left out; the reflecting and exit faces are straight then.
TEST(ColourFan, OfAPrismWithThePowerInItsEntryIsThatOfItsStraightFaces) {
  SectionInput input = tight_section("4");
  input.index = kIndex.d;
  input.settings.upper.power = Power::entry;
  const Section section = solved(input);
  const auto fan = colour_fan(section, kIndex);
  for (std::size_t i = 0; i < section.zones.size(); ++i) {
    const Zone& zone = section.zones[i];
    if (zone.kind != ZoneKind::upper) continue;
    EXPECT_NEAR(fan[i].middle.d.value(), 0, 1e-4) << zone.mark;
    // The true entry curve sends every ray of the design's index along one direction; another index refracts by
    // asin(sin i / n): its normal there follows from the two directions of the design ray.
    const Face& mirror = *zone.profile.find(FaceRole::reflecting);
    const Face& exit = *zone.profile.find(FaceRole::exit);
    const auto angle = [](const Face& face) {
      return std::atan2(face.end().z - face.start().z, face.end().r - face.start().r);
    };
    const double t = radians(0.5 * (zone.from_deg + zone.to_deg));
    const double out_normal = angle(exit) - kPi / 2;
    // Design: level outside; inside at `level_in`, before the mirror at `design`.
    const double level_in = out_normal + std::asin(std::sin(-out_normal) / kIndex.d);
    const double design = 2 * angle(mirror) - level_in;
    // n (cos d, sin d) - (cos t, sin t) is along the entry normal.
    const double normal =
        std::atan2(kIndex.d * std::sin(design) - std::sin(t), kIndex.d * std::cos(design) - std::cos(t));
    for (const auto& [n, found] : {std::pair{kIndex.f, fan[i].middle.f}, {kIndex.c, fan[i].middle.c}}) {
      const double entered = normal + std::asin(std::sin(t - normal) / n);
      const double turned = 2 * angle(mirror) - entered;
      const double left = out_normal + std::asin(n * std::sin(turned - out_normal));
      EXPECT_NEAR(found.value(), degrees(left), 2e-4) << zone.mark << " index " << n;
    }
  }
}

TEST(ColourFan, BlueIsBentMoreThanRedByEveryRing) {
  const Section section = in_arcs();
  const auto fan = colour_fan(section, kIndex);
  for (std::size_t i = 0; i < section.zones.size(); ++i) {
    if (section.zones[i].kind != ZoneKind::ring) continue;
    EXPECT_LT(fan[i].middle.f.value(), fan[i].middle.c.value()) << section.zones[i].mark;
    // At a ring's edge one colour or the other may end in the joint.
    for (const ColourDepartures& ray : {fan[i].low, fan[i].high}) {
      EXPECT_TRUE(ray.d) << section.zones[i].mark;
      if (!ray.f || !ray.c) continue;
      EXPECT_LT(*ray.f, *ray.c) << section.zones[i].mark;
    }
  }
}

TEST(ColourFan, OfOneIndexIsTheDepartureOfTheProof) {
  const Section section = in_arcs();
  const double n = section.input.index;
  const auto fan = colour_fan(section, {n, n, n});
  const Proof proof = prove(section, 20000);
  for (std::size_t i = 0; i < fan.size(); ++i) {
    EXPECT_EQ(fan[i].mark, proof.zones[i].mark);
    EXPECT_EQ(fan[i].middle.f, fan[i].middle.c);
    EXPECT_LE(std::abs(fan[i].low.d.value()), proof.zones[i].worst_departure_deg + 1e-6);
  }
}

}  // namespace
}  // namespace prismwright
