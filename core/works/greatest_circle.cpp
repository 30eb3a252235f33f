#include "core/works/greatest_circle.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace prismwright {

namespace {

using Polygon = std::vector<SectionPoint>;

SectionPoint nearest_on_edge(SectionPoint p, SectionPoint from, SectionPoint to) {
  const SectionOffset edge = to - from;
  const double length2 = dot(edge, edge);
  const double share = length2 > 0 ? std::clamp(dot(p - from, edge) / length2, 0.0, 1.0) : 0;
  return from + share * edge;
}

/// The nearest place of the outline; the distance is negative outside.
struct Nearest {
  SectionPoint place;
  double depth = -std::numeric_limits<double>::infinity();
};
Nearest nearest_on(const Polygon& polygon, SectionPoint p) {
  Nearest found;
  double nearest = std::numeric_limits<double>::infinity();
  bool inside = false;
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
    const SectionPoint a = polygon[i];
    const SectionPoint b = polygon[j];
    const SectionPoint place = nearest_on_edge(p, a, b);
    const double away = distance(p, place);
    if (away < nearest) {
      nearest = away;
      found.place = place;
    }
    if ((a.z > p.z) != (b.z > p.z) && p.r < (b.r - a.r) * (p.z - a.z) / (b.z - a.z) + a.r) inside = !inside;
  }
  found.depth = inside ? nearest : -nearest;
  return found;
}

/// No place within `reach` of p is farther than this from the outline. By two places of the outline, the
/// nearest and one across: |p + d - q| <= |p - q| + d.u + d^2 / (2 |p - q|), u the unit vector from q to p, so
/// that the mean of the two hardly grows where they lie opposite to each other.
double most_between(const Polygon& polygon, SectionPoint p, const Nearest& nearest, double reach) {
  double most = nearest.depth + reach;
  const SectionOffset first = (1 / nearest.depth) * (p - nearest.place);
  const double bend = reach * reach / (2 * nearest.depth);
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
    const SectionPoint place = nearest_on_edge(p, polygon[i], polygon[j]);
    const double away = distance(p, place);
    const SectionOffset both = first + (1 / away) * (p - place);
    most = std::min(most, (nearest.depth + away + both.length() * reach) / 2 + bend);
  }
  return most;
}

/// A square in which the centre of the circle may lie.
struct Square {
  SectionPoint middle;
  double half = 0;
  double depth = 0;
  double most = 0;  ///< no place of it lies deeper

  Square(const Polygon& polygon, SectionPoint at, double half_side, double enough)
      : middle(at), half(half_side) {
    const Nearest nearest = nearest_on(polygon, at);
    const double reach = half * std::sqrt(2.0);
    depth = nearest.depth;
    most = depth + reach;
    if (most > enough && depth > reach) most = most_between(polygon, at, nearest, reach);
  }
  bool operator<(const Square& other) const { return most < other.most; }
};

std::priority_queue<Square> first_squares(const Polygon& polygon) {
  const auto [west, east] = std::ranges::minmax(polygon, {}, &SectionPoint::r);
  const auto [south, north] = std::ranges::minmax(polygon, {}, &SectionPoint::z);
  const double wide = east.r - west.r;
  const double high = north.z - south.z;
  const double half = std::max(std::min(wide, high), std::max(wide, high) / 50) / 2;
  std::priority_queue<Square> queue;
  if (!(half > 0)) return queue;
  for (double r = west.r + half; r < east.r + half; r += 2 * half)
    for (double z = south.z + half; z < north.z + half; z += 2 * half)
      queue.emplace(polygon, SectionPoint{r, z}, half, 0);
  return queue;
}

}  // namespace

std::vector<SectionPoint> whole_section(const Profile& profile, double chord_mm) {
  const auto axis = std::ranges::find(profile.faces, FaceRole::axis, &Face::role);
  if (axis == profile.faces.end()) return polygon_of(profile, chord_mm);
  Profile walk = profile;
  std::ranges::rotate(walk.faces, walk.faces.begin() + (axis - profile.faces.begin()));
  Polygon half;
  for (std::size_t i = 1; i < walk.faces.size(); ++i) {
    const auto along = points_along(walk.faces[i], chord_mm);
    half.insert(half.end(), along.begin() + (i > 1 ? 1 : 0), along.end());
  }
  // Its first and last point lie on the axis.
  Polygon whole = half;
  for (std::size_t i = half.size() - 1; i-- > 1;) whole.push_back({half[i].r, -half[i].z});
  return whole;
}

InnerCircle greatest_circle(const std::vector<SectionPoint>& polygon, double within_mm) {
  InnerCircle best;
  if (polygon.size() < 3) return best;
  std::priority_queue<Square> queue = first_squares(polygon);
  double depth = 0;
  while (!queue.empty() && queue.top().most > depth + within_mm / 2) {
    const Square square = queue.top();
    queue.pop();
    if (square.depth > depth) {
      depth = square.depth;
      best.centre = square.middle;
    }
    const double half = square.half / 2;
    for (const double r : {-half, half}) {
      for (const double z : {-half, half}) {
        const Square part(polygon, {square.middle.r + r, square.middle.z + z}, half, depth + within_mm / 2);
        if (part.most > depth + within_mm / 2) queue.push(part);
      }
    }
  }
  best.diameter_mm = 2 * depth;
  return best;
}

}  // namespace prismwright
