#include "core/drawing/hatch.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

/// A place by how far it lies along the lines and across them.
struct Turned {
  double along;
  double across;
};

constexpr double kHalfRoot = 0.70710678118654752;

Turned turned(PaperPoint p, double side) {
  return {kHalfRoot * (p.x + side * p.y), kHalfRoot * (p.y - side * p.x)};
}
PaperPoint turned_back(Turned t, double side) {
  return {kHalfRoot * (t.along - side * t.across), kHalfRoot * (side * t.along + t.across)};
}

/// Where the line at that distance across meets the polygon's sides, in order along the line.
std::vector<double> meetings(const std::vector<Turned>& polygon, double across) {
  std::vector<double> places;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Turned a = polygon[i];
    const Turned b = polygon[(i + 1) % polygon.size()];
    if ((a.across <= across) == (b.across <= across)) continue;
    places.push_back(a.along + (b.along - a.along) * (across - a.across) / (b.across - a.across));
  }
  std::ranges::sort(places);
  return places;
}

}  // namespace

std::vector<Stroke> hatch_lines(const std::vector<PaperPoint>& polygon, double apart_mm, bool falling,
                                double least_mm) {
  const double side = falling ? -1 : 1;
  std::vector<Turned> sides;
  for (const PaperPoint p : polygon) sides.push_back(turned(p, side));
  const auto [low, high] = std::ranges::minmax(sides, {}, &Turned::across);
  std::vector<Stroke> lines;
  // Lines stand on whole multiples, so that those of neighbours run on into each other.
  for (double k = std::ceil(low.across / apart_mm); k * apart_mm < high.across; ++k) {
    const auto places = meetings(sides, k * apart_mm);
    for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
      if (places[i + 1] - places[i] < least_mm) continue;
      lines.push_back(straight_stroke(turned_back({places[i], k * apart_mm}, side),
                                      turned_back({places[i + 1], k * apart_mm}, side), LineClass::hatch));
    }
  }
  return lines;
}

}  // namespace prismwright
