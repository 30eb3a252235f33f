#include "core/frame/plate_polygons.h"

#include <algorithm>
#include <cmath>
#include <polyclipping/clipper.hpp>

namespace prismwright {
namespace {

using ClipperLib::IntPoint;
using ClipperLib::Path;
using ClipperLib::Paths;

// Whole numbers of 1e-5 mm: plates up to 10 m stay within the clipper's fast range.
constexpr double kPerMm = 1e5;
// Keener corners than 60 deg are squared off: their mitre would run far into the brass.
constexpr double kMitreLimit = 2;
// Steps as short as these that turn back come from rounding where outlines cross; an offset would leave a notch
// as deep as itself at them.
constexpr double kBackStep_mm = 0.001;
constexpr double kBackTurn = -0.5;  // cosine of 120 deg

Path to_path(const PlateOutline& outline) {
  Path path;
  path.reserve(outline.size());
  for (const PlatePoint p : outline) {
    path.emplace_back(std::llround(p.u * kPerMm), std::llround(p.v * kPerMm));
  }
  return path;
}

Paths to_paths(const std::vector<PlateOutline>& outlines) {
  Paths paths;
  paths.reserve(outlines.size());
  for (const PlateOutline& outline : outlines) paths.push_back(to_path(outline));
  return paths;
}

bool is_back_step(const IntPoint& before, const IntPoint& at, const IntPoint& after) {
  const double in_x = static_cast<double>(at.X - before.X);
  const double in_y = static_cast<double>(at.Y - before.Y);
  const double out_x = static_cast<double>(after.X - at.X);
  const double out_y = static_cast<double>(after.Y - at.Y);
  const double in = std::hypot(in_x, in_y);
  const double out = std::hypot(out_x, out_y);
  return std::min(in, out) < kBackStep_mm * kPerMm && in_x * out_x + in_y * out_y <= kBackTurn * in * out;
}

// Taking one point away may lay bare the next.
Path without_back_steps(const Path& path) {
  Path kept;
  for (const IntPoint& point : path) {
    while (kept.size() > 1 && is_back_step(kept[kept.size() - 2], kept.back(), point)) kept.pop_back();
    kept.push_back(point);
  }
  while (kept.size() > 3 && is_back_step(kept[kept.size() - 2], kept.back(), kept.front())) kept.pop_back();
  while (kept.size() > 3 && is_back_step(kept.back(), kept.front(), kept[1])) kept.erase(kept.begin());
  return kept;
}

PlateOutline to_outline(const Path& path) {
  PlateOutline outline;
  outline.reserve(path.size());
  for (const IntPoint& p : path) {
    outline.push_back({static_cast<double>(p.X) / kPerMm, static_cast<double>(p.Y) / kPerMm});
  }
  return outline;
}

PlateRegion to_region(const Paths& paths) {
  PlateRegion region;
  for (const Path& path : paths) {
    if (path.size() > 2) region.push_back(to_outline(path));
  }
  return region;
}

PlateRegion combined(const PlateRegion& a, const PlateRegion& b, ClipperLib::ClipType how) {
  ClipperLib::Clipper clipper;
  clipper.AddPaths(to_paths(a), ClipperLib::ptSubject, true);
  clipper.AddPaths(to_paths(b), ClipperLib::ptClip, true);
  Paths result;
  clipper.Execute(how, result, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  return to_region(result);
}

double distance_to_chord(PlatePoint p, PlatePoint from, PlatePoint to) {
  const double du = to.u - from.u;
  const double dv = to.v - from.v;
  const double length2 = du * du + dv * dv;
  double share = 0;
  if (length2 > 0) share = std::clamp(((p.u - from.u) * du + (p.v - from.v) * dv) / length2, 0.0, 1.0);
  return std::hypot(p.u - from.u - share * du, p.v - from.v - share * dv);
}

// Keeps the ends of points[first..last] and what lies farther than `within_mm` from the chord, by halves.
void keep_far_points(const PlateOutline& points, std::size_t first, std::size_t last, double within_mm,
                     std::vector<bool>& kept) {
  double worst = within_mm;
  std::size_t at = 0;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double away = distance_to_chord(points[i], points[first], points[last % points.size()]);
    if (away > worst) {
      worst = away;
      at = i;
    }
  }
  if (at == 0) return;
  kept[at] = true;
  keep_far_points(points, first, at, within_mm, kept);
  keep_far_points(points, at, last, within_mm, kept);
}

std::size_t farthest_from(const PlateOutline& outline, std::size_t from) {
  std::size_t best = from;
  double most = -1;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const double away = std::hypot(outline[i].u - outline[from].u, outline[i].v - outline[from].v);
    if (away > most) {
      most = away;
      best = i;
    }
  }
  return best;
}

void gather_pieces(const ClipperLib::PolyNode& node, std::vector<PlatePiece>& pieces) {
  for (const ClipperLib::PolyNode* child : node.Childs) {
    PlatePiece piece{to_outline(child->Contour), {}};
    for (const ClipperLib::PolyNode* hole : child->Childs) {
      piece.holes.push_back(to_outline(hole->Contour));
      gather_pieces(*hole, pieces);
    }
    pieces.push_back(std::move(piece));
  }
}

}  // namespace

double signed_area_mm2(const PlateOutline& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[(i + 1) % outline.size()];
    twice += a.u * b.v - b.u * a.v;
  }
  return twice / 2;
}

double area_mm2(const PlateRegion& region) {
  double area = 0;
  for (const PlateOutline& outline : region) area += signed_area_mm2(outline);
  return area;
}

PlateRegion united(const std::vector<PlateOutline>& outlines) {
  return combined(outlines, {}, ClipperLib::ctUnion);
}

PlateRegion common_part(const PlateRegion& a, const PlateRegion& b) {
  return combined(a, b, ClipperLib::ctIntersection);
}

PlateRegion first_less_second(const PlateRegion& first, const PlateRegion& second) {
  return combined(first, second, ClipperLib::ctDifference);
}

PlateRegion grown(const PlateRegion& region, double by_mm, Corner corner, double arc_within_mm) {
  ClipperLib::ClipperOffset offset(kMitreLimit, arc_within_mm * kPerMm);
  const auto join = corner == Corner::round ? ClipperLib::jtRound : ClipperLib::jtMiter;
  for (const Path& path : to_paths(region))
    offset.AddPath(without_back_steps(path), join, ClipperLib::etClosedPolygon);
  Paths result;
  offset.Execute(result, by_mm * kPerMm);
  return to_region(result);
}

std::vector<PlatePiece> pieces_of(const PlateRegion& region) {
  ClipperLib::Clipper clipper;
  clipper.AddPaths(to_paths(region), ClipperLib::ptSubject, true);
  ClipperLib::PolyTree tree;
  clipper.Execute(ClipperLib::ctUnion, tree, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  std::vector<PlatePiece> pieces;
  gather_pieces(tree, pieces);
  return pieces;
}

std::vector<PlateOutline> filled(const PlateRegion& region) {
  std::vector<PlateOutline> outer;
  for (const PlateOutline& outline : region) {
    if (signed_area_mm2(outline) > 0) outer.push_back(outline);
  }
  return united(outer);
}

PlateOutline thinned(const PlateOutline& outline, double within_mm) {
  if (outline.size() < 4) return outline;
  // Two points far apart surely belong to the outline's shape; the two walks between them are thinned.
  const std::size_t first = farthest_from(outline, 0);
  PlateOutline turned(outline.begin() + static_cast<std::ptrdiff_t>(first), outline.end());
  turned.insert(turned.end(), outline.begin(), outline.begin() + static_cast<std::ptrdiff_t>(first));
  const std::size_t opposite = farthest_from(turned, 0);
  std::vector<bool> kept(turned.size(), false);
  kept[0] = true;
  kept[opposite] = true;
  keep_far_points(turned, 0, opposite, within_mm, kept);
  keep_far_points(turned, opposite, turned.size(), within_mm, kept);
  PlateOutline result;
  for (std::size_t i = 0; i < turned.size(); ++i) {
    if (kept[i]) result.push_back(turned[i]);
  }
  return result;
}

bool holds(const PlateOutline& outline, PlatePoint place) {
  bool inside = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[j];
    if ((a.v > place.v) == (b.v > place.v)) continue;
    if (place.u < (b.u - a.u) * (place.v - a.v) / (b.v - a.v) + a.u) inside = !inside;
  }
  return inside;
}

PlateOutline plate_rectangle(PlatePoint low, PlatePoint high) {
  return {low, {high.u, low.v}, high, {low.u, high.v}};
}

PlateExtent extent_of(const PlateRegion& region) {
  PlateExtent extent{region.front().front(), region.front().front()};
  for (const PlateOutline& outline : region) {
    for (const PlatePoint p : outline) {
      extent.low = {std::min(extent.low.u, p.u), std::min(extent.low.v, p.v)};
      extent.high = {std::max(extent.high.u, p.u), std::max(extent.high.v, p.v)};
    }
  }
  return extent;
}

}  // namespace prismwright
