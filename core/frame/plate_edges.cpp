#include "core/frame/plate_edges.h"

#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

constexpr double kOnBound_mm = 1e-6;

}  // namespace

PlateEdges::PlateEdges(const PlateOutline& outline, HeightRange heights) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[i + 1 < outline.size() ? i + 1 : 0];
    if (std::max(a.v, b.v) < heights.low - kReach_mm || std::min(a.v, b.v) > heights.high + kReach_mm) continue;
    edges_.push_back({a, b});
  }
}

bool PlateEdges::holds(PlatePoint p) const {
  bool inside = false;
  for (const Edge& edge : edges_) {
    const PlatePoint a = edge.from;
    const PlatePoint b = edge.to;
    if ((a.v > p.v) != (b.v > p.v) && p.u < (b.u - a.u) * (p.v - a.v) / (b.v - a.v) + a.u) inside = !inside;
  }
  return inside;
}

double PlateEdges::distance_mm(PlatePoint p) const {
  double least2 = kReach_mm * kReach_mm;
  for (const Edge& edge : edges_) {
    const double du = edge.to.u - edge.from.u;
    const double dv = edge.to.v - edge.from.v;
    const double length2 = du * du + dv * dv;
    const double share =
        length2 > 0 ? std::clamp(((p.u - edge.from.u) * du + (p.v - edge.from.v) * dv) / length2, 0.0, 1.0) : 0;
    const double away_u = p.u - edge.from.u - share * du;
    const double away_v = p.v - edge.from.v - share * dv;
    least2 = std::min(least2, away_u * away_u + away_v * away_v);
  }
  return std::sqrt(least2);
}

void PlateEdges::append_shadows(HeightRange heights, std::vector<HeightRange>& shadows) const {
  const double low = heights.low + kOnBound_mm;
  const double high = heights.high - kOnBound_mm;
  for (const Edge& edge : edges_) {
    PlatePoint a = edge.from;
    PlatePoint b = edge.to;
    if (a.v > b.v) std::swap(a, b);
    if (b.v < low || a.v > high) continue;
    const auto u_at = [&](double v) { return a.u + (b.u - a.u) * (v - a.v) / (b.v - a.v); };
    const double from = a.v < low ? u_at(low) : a.u;
    const double to = b.v > high ? u_at(high) : b.u;
    shadows.push_back({std::min(from, to), std::max(from, to)});
  }
}

}  // namespace prismwright
