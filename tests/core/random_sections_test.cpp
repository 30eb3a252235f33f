#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/frame/plate_polygons.h"
#include "core/lens/choice_words.h"
#include "core/lens/quantities.h"

// Sections drawn at random over every choice that a maker has: what is solved must be glass that can exist, and
// what is refused must say why.

namespace prismwright {
namespace {

class Lot {
 public:
  explicit Lot(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  bool once_in(int n) { return whole(1, n) == 1; }
  template <class Choice>
  Choice any() {
    const auto& words = kChoiceWords<Choice>;
    return words[static_cast<std::size_t>(whole(0, static_cast<int>(words.size()) - 1))].first;
  }

 private:
  std::mt19937 engine_;
};

SectionInput random_input(Lot& lot) {
  const char* orders[] = {"hyper-radial", "1", "2", "3", "3.5", "4", "5", "6"};
  LensValues values = starting_values(orders[lot.whole(0, 7)], lot.once_in(2) ? Work::belt : Work::bullseye, 8);
  const double f = values.brief.focal_mm;
  SectionSettings& s = values.section;
  s.faces = lot.any<Faces>();
  s.joint = lot.any<Joint>();
  s.land_mm = lot.between(0, 0.004 * f);
  s.gap_mm = lot.once_in(4) ? 0 : lot.between(0, 0.004 * f);
  for (CornerLand* land : {&s.land_a, &s.land_b, &s.land_c}) {
    land->shape = lot.any<LandShape>();
    if (lot.once_in(3)) land->size_mm = lot.between(0, 0.003 * f);
  }
  s.refracting_to_deg = lot.between(15, 40);
  s.upper_to_deg = lot.between(s.refracting_to_deg, 82);
  s.lower_to_deg = lot.between(s.refracting_to_deg, 60);
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    BandSettings& own = s.of(band);
    do {
      own.division = lot.any<Division>();
    } while (own.division == Division::by_hand || (band == Band::refracting && own.division == Division::side));
    own.count = lot.whole(2, 14);
    own.section_thickness_mm = lot.between(0.04, 0.12) * f;
    own.power = lot.any<Power>();
    own.faces = lot.any<BandFaces>();
    own.turning = lot.any<BandTurning>();
    if (lot.once_in(3)) own.focus_z_mm = lot.between(-0.02, 0.03) * f;
    if (lot.once_in(3)) own.aim_deg = lot.between(-1, 1);
  }
  if (lot.once_in(3)) s.upper_rib_mm = lot.between(0, 0.02 * f);
  if (lot.once_in(3)) s.lower_rib_mm = lot.between(0, 0.02 * f);
  values.material.index = lot.between(1.47, 1.62);
  return values.section_input();
}

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
    const SectionInput input = random_input(lot);
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
