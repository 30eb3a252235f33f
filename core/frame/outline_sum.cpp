#include "core/frame/outline_sum.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <polyclipping/clipper.hpp>
#include <utility>

namespace prismwright {

namespace {

using ClipperLib::IntPoint;
using ClipperLib::Path;
using ClipperLib::Paths;

constexpr double kPerMm = 1e5;  // as the plate polygons keep them

Path to_path(const PlateOutline& outline) {
  Path path;
  for (const PlatePoint p : outline) {
    const IntPoint point(std::llround(p.u * kPerMm), std::llround(p.v * kPerMm));
    if (path.empty() || path.back() != point) path.push_back(point);
  }
  while (path.size() > 1 && path.front() == path.back()) path.pop_back();
  return path;
}

IntPoint edge_of(const Path& path, std::size_t i) {
  const IntPoint& from = path[i];
  const IntPoint& to = path[(i + 1) % path.size()];
  return {to.X - from.X, to.Y - from.Y};
}

std::int64_t cross_of(const IntPoint& a, const IntPoint& b) { return a.X * b.Y - a.Y * b.X; }
std::int64_t dot_of(const IntPoint& a, const IntPoint& b) { return a.X * b.X + a.Y * b.Y; }

/// Lower half plane last, for the order of directions from 0 to 360 deg.
int half_of(const IntPoint& way) { return way.Y > 0 || (way.Y == 0 && way.X > 0) ? 0 : 1; }

/// Directions in turn from 0 deg: below 0 when the first comes first, 0 for equal ones.
int compare_ways(const IntPoint& a, const IntPoint& b) {
  if (half_of(a) != half_of(b)) return half_of(a) - half_of(b);
  const std::int64_t cross = cross_of(a, b);
  return cross > 0 ? -1 : cross < 0 ? 1 : 0;
}

/// Edges of one outline that a corner of the other turns through; with equal directions the edges of the first
/// outline count as coming just before those of the second, so that every tracing closes.
bool within_turn(const IntPoint& from, const IntPoint& to, const IntPoint& way, bool way_of_second) {
  const auto at_or_after = [&](const IntPoint& limit) {
    const int order = compare_ways(limit, way);
    return way_of_second ? order <= 0 : order < 0;
  };
  const bool past_from = at_or_after(from);
  const bool past_to = at_or_after(to);
  const bool wraps = compare_ways(from, to) > 0;
  return wraps ? past_from || !past_to : past_from && !past_to;
}

/// A place on both tracings: corner of the first, corner of the second.
using Node = std::pair<std::size_t, std::size_t>;
using Arcs = std::multimap<Node, Node>;

void add_arcs(const Path& corners, const Path& edges, bool edges_are_second, Arcs& arcs) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const IntPoint in = edge_of(corners, (i + corners.size() - 1) % corners.size());
    const IntPoint out = edge_of(corners, i);
    const std::int64_t turn = cross_of(in, out);
    if (turn == 0 && dot_of(in, out) > 0) continue;
    const bool left = turn >= 0;
    for (std::size_t k = 0; k < edges.size(); ++k) {
      if (!within_turn(left ? in : out, left ? out : in, edge_of(edges, k), edges_are_second)) continue;
      const std::size_t next = (k + 1) % edges.size();
      Node from = edges_are_second ? Node{i, k} : Node{k, i};
      Node to = edges_are_second ? Node{i, next} : Node{next, i};
      if (!left) std::swap(from, to);
      arcs.emplace(from, to);
    }
  }
}

/// As many arcs end at a place as begin there: they are walked off as closed tracings.
Paths closed_tracings(Arcs arcs, const Path& a, const Path& b) {
  Paths tracings;
  while (!arcs.empty()) {
    Path tracing;
    auto arc = arcs.begin();
    while (arc != arcs.end()) {
      const Node at = arc->first;
      const Node to = arc->second;
      tracing.emplace_back(a[at.first].X + b[at.second].X, a[at.first].Y + b[at.second].Y);
      arcs.erase(arc);
      arc = arcs.find(to);
    }
    tracings.push_back(std::move(tracing));
  }
  return tracings;
}

PlateRegion convolved(const Path& first, const Path& second, ClipperLib::PolyFillType counted) {
  Arcs arcs;
  add_arcs(first, second, true, arcs);
  add_arcs(second, first, false, arcs);
  ClipperLib::Clipper clipper;
  clipper.AddPaths(closed_tracings(std::move(arcs), first, second), ClipperLib::ptSubject, true);
  Paths sum;
  clipper.Execute(ClipperLib::ctUnion, sum, counted, counted);
  PlateRegion region;
  for (const Path& path : sum) {
    PlateOutline outline;
    for (const IntPoint& p : path)
      outline.push_back({static_cast<double>(p.X) / kPerMm, static_cast<double>(p.Y) / kPerMm});
    if (outline.size() > 2) region.push_back(std::move(outline));
  }
  return region;
}

/// The first is as wide and as tall as the second, or more: it can hold it, but not lie inside it.
bool holds_box(const Path& a, const Path& b) {
  const auto across = [](const Path& path, ClipperLib::cInt IntPoint::*along) {
    const auto [low, high] = std::ranges::minmax(path, {}, along);
    return high.*along - low.*along;
  };
  return across(a, &IntPoint::X) >= across(b, &IntPoint::X) &&
         across(a, &IntPoint::Y) >= across(b, &IntPoint::Y);
}

}  // namespace

PlateRegion outline_sum(const PlateOutline& a, const PlateOutline& b) {
  return convolved(to_path(a), to_path(b), ClipperLib::pftPositive);
}

PlateRegion places_inside(const PlateOutline& room, const PlateOutline& shape) {
  Path backwards = to_path(room);
  ClipperLib::ReversePath(backwards);
  Path about = to_path(shape);
  if (holds_box(about, backwards)) return {};
  for (IntPoint& p : about) p = {-p.X, -p.Y};
  return convolved(backwards, about, ClipperLib::pftNegative);
}

}  // namespace prismwright
