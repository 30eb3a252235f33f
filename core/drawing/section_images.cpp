#include "core/drawing/section_images.h"

#include <algorithm>

#include "core/drawing/arc_chain.h"

namespace prismwright {

namespace {

/// The mirror of a band that is turned as a whole leans with its beam; about the upright lens axis it does not.
double lean_deg(const Section& section) {
  return section.input.refracting_about_lens ? 0 : section.aim_of(ZoneKind::ring).aim_deg;
}

}  // namespace

std::vector<SectionImage> images_of(const Section& section, const std::set<std::string>& whole_rings) {
  const double twice = 2 * lean_deg(section);
  std::vector<SectionImage> images;
  for (const Zone& zone : section.zones) {
    const bool halves = zone.kind == ZoneKind::ring && !whole_rings.contains(zone.mark);
    images.push_back({zone.mark + (halves ? "a" : ""), &zone, zone.profile, false, zone.from_deg, zone.to_deg});
    if (zone.kind == ZoneKind::ring) {
      images.push_back({zone.mark + (halves ? "b" : ""), &zone, lower_image_of(zone), true,
                        -zone.to_deg - twice, -zone.from_deg - twice});
    }
  }
  return images;
}

SectionReach reach_of(const Section& section, const std::vector<SectionImage>& images) {
  constexpr double kChord_mm = 0.01;
  SectionReach reach;
  const auto take = [&](SectionPoint p) {
    reach.outer_r = std::max(reach.outer_r, p.r);
    if (p.z < reach.low_z) {
      reach.low_z = p.z;
      reach.low_r = p.r;
    }
    if (p.z > reach.high_z) {
      reach.high_z = p.z;
      reach.high_r = p.r;
    }
  };
  for (const SectionImage& image : images) {
    for (const SectionPoint p : polygon_of(image.profile, kChord_mm)) take(p);
  }
  for (const SectionRib& rib : section.ribs) {
    take(rib.low);
    take(rib.high);
  }
  return reach;
}

std::vector<PaperPoint> PaperMap::at(const std::vector<SectionPoint>& points) const {
  std::vector<PaperPoint> places;
  places.reserve(points.size());
  for (const SectionPoint p : points) places.push_back(at(p));
  return places;
}

Stroke outline_stroke(const Profile& profile, const PaperMap& map, double tolerance_mm, bool closed) {
  Stroke stroke;
  stroke.line = LineClass::outline;
  stroke.closed = closed;
  for (const ChainPiece& piece : arcs_of(profile, tolerance_mm)) {
    if (stroke.steps.empty()) stroke.start = map.at(piece.from);
    stroke.steps.push_back(
        {map.at(piece.to), piece.turn, map.at(piece.centre), piece.radius_mm * map.paper_per_mm});
  }
  return stroke;
}

}  // namespace prismwright
