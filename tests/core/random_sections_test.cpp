#include <gtest/gtest.h>

#include <cmath>

#include "core/frame/plate_polygons.h"
#include "tests/support/random_lens.h"

// Sections drawn at random over every choice that a maker has: what is solved must be glass that can exist, and
// what is refused must say why.

namespace prismwright {
namespace {

bool is_closed(const Profile& profile) {
  for (std::size_t i = 0; i < profile.faces.size(); ++i) {
    const SectionPoint end = profile.faces[i].end();
    if (distance(end, profile.faces[(i + 1) % profile.faces.size()].start()) > 1e-9) return false;
  }
  return true;
}

bool cross_each_other(SectionPoint a, SectionPoint b, SectionPoint c, SectionPoint d) {
  const auto side = [](SectionPoint p, SectionPoint q, SectionPoint r) { return cross(q - p, r - p); };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

bool crosses_itself(const std::vector<SectionPoint>& polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      if (i == 0 && j + 1 == n) continue;
      if (cross_each_other(polygon[i], polygon[(i + 1) % n], polygon[j], polygon[(j + 1) % n])) return true;
    }
  }
  return false;
}

PlateRegion region_of(const Profile& profile) {
  PlateOutline outline;
  for (const SectionPoint p : polygon_of(profile, 1e-4)) outline.push_back({p.r, p.z});
  return united({outline});
}

double shared_area_mm2(const Profile& one, const Profile& other) {
  double area = 0;
  for (const PlateOutline& part : common_part(region_of(one), region_of(other)))
    area += std::abs(signed_area_mm2(part));
  return area;
}

void expect_glass(const Section& section, const Zone& zone, const Profile& profile) {
  EXPECT_TRUE(is_closed(profile)) << zone.mark;
  const auto polygon = polygon_of(profile, 0.02);
  EXPECT_FALSE(crosses_itself(polygon)) << zone.mark;
  EXPECT_GT(area_mm2(profile), 0) << zone.mark;
  for (const SectionPoint p : polygon) ASSERT_TRUE(std::isfinite(p.r) && std::isfinite(p.z)) << zone.mark;
  for (const SectionRib& rib : section.ribs) {
    const Profile metal{{straight_face(FaceRole::land, rib.low, {rib.high.r, rib.low.z}),
                         straight_face(FaceRole::land, {rib.high.r, rib.low.z}, rib.high),
                         straight_face(FaceRole::land, rib.high, {rib.low.r, rib.high.z}),
                         straight_face(FaceRole::land, {rib.low.r, rib.high.z}, rib.low)}};
    EXPECT_LT(shared_area_mm2(metal, profile), 1e-3) << zone.mark << " and " << rib.mark;
  }
}

TEST(RandomSections, AreGlassThatCanExistOrAreRefusedWithTheReason) {
  constexpr int kSections = 300;
  Lot lot(20261125);
  int drawn = 0;
  for (int i = 0; i < kSections; ++i) {
    SCOPED_TRACE(i);
    const SectionInput input = random_lens(lot).section_input();
    const auto section = solve_section(input);
    if (!section) {
      EXPECT_GT(section.problem().text.size(), 40u);
      EXPECT_FALSE(section.problem().code.empty());
      continue;
    }
    drawn += 1;
    const Zone* before = nullptr;
    for (const Zone& zone : section->zones) {
      expect_glass(*section, zone, zone.profile);
      if (zone.kind == ZoneKind::ring) expect_glass(*section, zone, lower_image_of(zone));
      const bool stacked = before && (band_of(before->kind) == band_of(zone.kind) || zone.number == 1);
      if (stacked && zone.kind != ZoneKind::lower) {
        EXPECT_LT(shared_area_mm2(before->profile, zone.profile), 1e-3) << before->mark << " and " << zone.mark;
      }
      before = &zone;
    }
  }
  RecordProperty("drawn", drawn);
  EXPECT_GT(drawn, kSections / 2);
}

}  // namespace
}  // namespace prismwright
