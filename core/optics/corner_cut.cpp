#include "core/optics/corner_cut.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kFit_mm = 1e-10;
constexpr int kTurns = 40;

double elevation_of(SectionPoint p) { return std::atan2(p.z, p.r); }

/// Angle inside the glass at the corner, radians.
double corner_angle(const FacePath& before, const FacePath& after) {
  const SectionDirection back = before.tangent(1).reversed();
  return std::acos(std::clamp(dot(back, after.tangent(0)), -1.0, 1.0));
}

std::optional<CornerCut> flat_cut(const FacePath& before, const FacePath& after, double width_mm) {
  double cut = width_mm / (2 * std::sin(0.5 * corner_angle(before, after)));
  const double room = std::min(before.chord_mm(), after.chord_mm());
  CornerCut corner;
  for (int i = 0; i < kTurns; ++i) {
    if (!(cut < room)) return std::nullopt;
    corner.before = before.share_at(cut, true);
    corner.after = after.share_at(cut, false);
    const double made = distance(before.place(corner.before), after.place(corner.after));
    if (std::abs(made - width_mm) < kFit_mm) break;
    cut *= width_mm / made;
  }
  corner.land = straight_face(FaceRole::land, before.place(corner.before), after.place(corner.after));
  return corner;
}

/// Newton's steps on the two shares until both faces give the same centre at the radius inside the glass.
std::optional<CornerCut> round_cut(const FacePath& before, const FacePath& after, double radius_mm) {
  const double reach = radius_mm / std::tan(0.5 * corner_angle(before, after));
  if (!(reach < std::min(before.chord_mm(), after.chord_mm()))) return std::nullopt;
  CornerCut corner{before.share_at(reach, true), after.share_at(reach, false), {}};
  const auto centre_from = [&](const FacePath& path, double share) {
    return path.place(share) - radius_mm * path.outward(share);
  };
  constexpr double kStep = 1e-6;
  for (int i = 0; i < kTurns; ++i) {
    const SectionOffset apart = centre_from(after, corner.after) - centre_from(before, corner.before);
    if (apart.length() < kFit_mm) break;
    const SectionOffset by_before =
        (1 / kStep) * (centre_from(before, corner.before + kStep) - centre_from(before, corner.before));
    const SectionOffset by_after =
        (1 / kStep) * (centre_from(after, corner.after + kStep) - centre_from(after, corner.after));
    const double whole = cross(by_before, by_after);
    if (whole == 0) return std::nullopt;
    corner.before += cross(apart, by_after) / whole;
    corner.after += cross(apart, by_before) / whole;
  }
  if (!(corner.before > 0 && corner.before <= 1 && corner.after >= 0 && corner.after < 1)) return std::nullopt;
  const SectionPoint centre = centre_from(before, corner.before);
  corner.land =
      arc_face(FaceRole::land, before.place(corner.before), after.place(corner.after), centre, radius_mm);
  return corner;
}

}  // namespace

double PrismLands::greatest_mm() const { return std::max({a.size_mm, b.size_mm, c.size_mm}); }

std::optional<CornerCut> cut_corner(const FacePath& before, const FacePath& after, Land land) {
  if (land.size_mm <= 0) return CornerCut{};
  return land.shape == LandShape::flat ? flat_cut(before, after, land.size_mm)
                                       : round_cut(before, after, land.size_mm);
}

ElevationSpan span_of(const CornerCut& cut, const FacePath& before) {
  if (!cut.land) {
    const double corner = elevation_of(before.place(1));
    return {corner, corner};
  }
  const double start = elevation_of(cut.land->start());
  const double end = elevation_of(cut.land->end());
  ElevationSpan span{std::min(start, end), std::max(start, end)};
  if (cut.land->kind != FaceKind::arc) return span;
  // Where the ray from the focus just touches the rounding, if that place lies on the arc.
  const SectionOffset to_centre = cut.land->centre - SectionPoint{};
  const double middle = to_centre.length();
  const double aside = std::asin(std::min(1.0, cut.land->radius_mm / middle));
  const SectionOffset chord = cut.land->end() - cut.land->start();
  for (const double elevation :
       {elevation_of(cut.land->centre) - aside, elevation_of(cut.land->centre) + aside}) {
    const SectionPoint touch = SectionPoint{} + middle * std::cos(aside) * SectionDirection::at(elevation);
    // The arc lies right of its chord, out of the glass.
    if (cross(chord, touch - cut.land->start()) > 0) continue;
    span.low = std::min(span.low, elevation);
    span.high = std::max(span.high, elevation);
  }
  return span;
}

}  // namespace prismwright
