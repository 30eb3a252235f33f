#include "core/optics/section_pieces.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kTouching_mm = 1e-6;  ///< glass that a beam only touches is not before it
constexpr double kSameCorner = 1e-10;  ///< radians

double elevation_of(SectionOffset p) { return std::atan2(p.z, p.r); }

/// How far an arc departs from its chord.
double arc_height_mm(const Face& face) {
  if (face.kind != FaceKind::arc) return 0;
  const double half = 0.5 * distance(face.start(), face.end());
  return face.radius_mm - std::sqrt(std::max(0.0, face.radius_mm * face.radius_mm - half * half));
}

/// Extent of a piece along and across a beam, or a little more.
GlassAhead extent(const PieceCurves& piece, double aim) {
  const SectionDirection along = SectionDirection::at(-aim);
  const SectionDirection across = along.quarter_turn();
  GlassAhead box{&piece, 1e30, -1e30, 1e30, -1e30};
  for (const FaceCurve& curve : piece.faces) {
    const double bulge = arc_height_mm(curve.face());
    for (const SectionPoint p : curve.face().points) {
      const SectionOffset place = p - SectionPoint{};
      box.along_from = std::min(box.along_from, dot(place, along) - bulge);
      box.along_to = std::max(box.along_to, dot(place, along) + bulge);
      box.across_from = std::min(box.across_from, dot(place, across) - bulge);
      box.across_to = std::max(box.across_to, dot(place, across) + bulge);
    }
  }
  return box;
}

SeenSpan span_of(const PieceCurves& piece, SectionPoint source, std::vector<double>& corners) {
  const std::size_t first = corners.size();
  for (const FaceCurve& curve : piece.faces) {
    corners.push_back(elevation_of(curve.face().start() - source));
    curve.touches(source, corners);
  }
  const auto [low, high] =
      std::minmax_element(corners.begin() + static_cast<std::ptrdiff_t>(first), corners.end());
  return {*low, *high};
}

}  // namespace

SectionPieces::SectionPieces(const Section& section)
    : held(section), critical(critical_angle(section.input.index)) {
  pieces.reserve(2 * held.zones.size());
  for (const Zone& zone : held.zones) {
    add_piece(zone, zone.profile, false);
    if (zone.kind == ZoneKind::ring) add_piece(zone, lower_image_of(zone), true);
  }
  find_band_edges();
  find_glass_ahead();
  find_sweeps();
}

void SectionPieces::add_piece(const Zone& zone, const Profile& profile, bool image) {
  PieceCurves& piece = pieces.emplace_back();
  piece.zone = &zone;
  piece.image = image;
  piece.aim = radians(held.aim_of(zone.kind).aim_deg);
  piece.faces.reserve(profile.faces.size());
  for (const Face& face : profile.faces) {
    piece.faces.emplace_back(face);
    for (const SectionPoint p : face.points) front_r_mm = std::max(front_r_mm, p.r);
  }
}

void SectionPieces::find_band_edges() {
  bool any = false;
  for (const PieceCurves& piece : pieces) {
    if (!is_refracting(piece.zone->kind)) continue;
    for (const FaceCurve& curve : piece.faces) {
      if (curve.role() != FaceRole::inner) continue;
      for (const SectionPoint p : {curve.face().start(), curve.face().end()}) {
        if (!any || p.z < band_foot.z) band_foot = p;
        if (!any || p.z > band_head.z) band_head = p;
        any = true;
      }
    }
  }
}

void SectionPieces::find_glass_ahead() {
  // Only rays that depart by no more than this are looked at: the others are stray anyhow.
  const double within = std::tan(radians(std::min(held.input.settings.level_within_deg, 45.0)));
  std::vector<GlassAhead> boxes;
  double aim = 0;
  for (PieceCurves& piece : pieces) {
    if (boxes.empty() || piece.aim != aim) {
      aim = piece.aim;
      boxes.clear();
      for (const PieceCurves& each : pieces) boxes.push_back(extent(each, aim));
    }
    const GlassAhead own = boxes[static_cast<std::size_t>(&piece - pieces.data())];
    for (const GlassAhead& other : boxes) {
      if (other.piece == &piece || other.along_to < own.along_from) continue;
      const double spread = (other.along_to - own.along_from) * within;
      if (other.across_to < own.across_from - spread || other.across_from > own.across_to + spread) continue;
      piece.ahead.push_back(other);
      piece.ahead.back().across_from += kTouching_mm;
      piece.ahead.back().across_to -= kTouching_mm;
    }
  }
}

void SectionPieces::find_sweeps() {
  const auto edge = [](SectionPoint p, double focus) { return elevation_of(p - SectionPoint{0, focus}); };
  const auto reach = [&](Band band, bool top) {
    double found = top ? -kPi : kPi;
    for (const Zone& zone : held.zones) {
      if (band_of(zone.kind) != band) continue;
      found = top ? std::max(found, radians(zone.to_deg)) : std::min(found, radians(zone.from_deg));
    }
    return found;
  };
  const auto has = [&](Band band) {
    return std::any_of(held.zones.begin(), held.zones.end(),
                       [&](const Zone& zone) { return band_of(zone.kind) == band; });
  };
  const auto add = [&](Band band, double focus, SeenSpan span) {
    if (!has(band) || !(span.high > span.low)) return;
    if (!sweeps.empty() && sweeps.back().focus_z_mm == focus) {
      sweeps.back().span.high = span.high;
    } else {
      sweeps.push_back({band, focus, span});
    }
  };
  const double lower = band_aim(held.input, Band::lower).focus_z_mm;
  const double middle = band_aim(held.input, Band::refracting).focus_z_mm;
  const double upper = band_aim(held.input, Band::upper).focus_z_mm;
  add(Band::lower, lower, {reach(Band::lower, false), edge(band_foot, lower)});
  add(Band::refracting, middle, {edge(band_foot, middle), edge(band_head, middle)});
  add(Band::upper, upper, {edge(band_head, upper), reach(Band::upper, true)});
}

SectionView SectionPieces::seen_from(double source_z_mm) const {
  const SectionPoint source{0, source_z_mm};
  SectionView view;
  view.source_z_mm = source_z_mm;
  view.pieces.reserve(pieces.size());
  for (const PieceCurves& piece : pieces) view.pieces.push_back(span_of(piece, source, view.corners));
  for (const SectionRib& rib : held.ribs) {
    for (const SectionPoint p :
         {rib.low, rib.high, SectionPoint{rib.low.r, rib.high.z}, SectionPoint{rib.high.r, rib.low.z}})
      view.corners.push_back(elevation_of(p - source));
  }
  view.band = {elevation_of(band_foot - source), elevation_of(band_head - source)};
  std::sort(view.corners.begin(), view.corners.end());
  const auto same = [](double a, double b) { return b - a < kSameCorner; };
  view.corners.erase(std::unique(view.corners.begin(), view.corners.end(), same), view.corners.end());
  return view;
}

Band SectionPieces::band_at(double elevation) const {
  const double focus = band_aim(held.input, Band::refracting).focus_z_mm;
  if (elevation > elevation_of(band_head - SectionPoint{0, focus})) return Band::upper;
  return elevation < elevation_of(band_foot - SectionPoint{0, focus}) ? Band::lower : Band::refracting;
}

const Zone* SectionPieces::zone_before_gap(const SectionView& view, double elevation) const {
  if (elevation <= view.band.low || elevation >= view.band.high) return nullptr;
  // Above the centre the zone below the gap, under it the zone above.
  const Zone* before = nullptr;
  double nearest = kPi;
  const double centre = view.pieces.empty() ? 0 : 0.5 * (view.pieces[0].low + view.pieces[0].high);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!is_refracting(pieces[i].zone->kind)) continue;
    const SeenSpan& span = view.pieces[i];
    const double middle = 0.5 * (span.low + span.high);
    const double away = elevation > centre ? elevation - middle : middle - elevation;
    if (away < 0 || away >= nearest) continue;
    nearest = away;
    before = pieces[i].zone;
  }
  return before;
}

}  // namespace prismwright
