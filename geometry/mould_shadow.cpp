#include "geometry/mould_shadow.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

namespace prismwright {

namespace {

constexpr int kCells = 48;
constexpr double kHair_mm = 0.01;
/// A meeting nearer to the start than this share of the height is the start itself.
constexpr double kOwnShare = 1e-4;

SpaceVector vector_of(const gp_Vec& v) { return {v.X(), v.Y(), v.Z()}; }

/// Height at which the upright line at (x, y) meets a triangle.
std::optional<double> meeting(const gp_Pnt& a, const gp_Pnt& b, const gp_Pnt& c, double x, double y) {
  const double area = (b.X() - a.X()) * (c.Y() - a.Y()) - (c.X() - a.X()) * (b.Y() - a.Y());
  if (std::abs(area) < 1e-12) return std::nullopt;
  const double u = ((x - a.X()) * (c.Y() - a.Y()) - (c.X() - a.X()) * (y - a.Y())) / area;
  const double v = ((b.X() - a.X()) * (y - a.Y()) - (x - a.X()) * (b.Y() - a.Y())) / area;
  if (u < 0 || v < 0 || u + v > 1) return std::nullopt;
  return a.Z() + u * (b.Z() - a.Z()) + v * (c.Z() - a.Z());
}

}  // namespace

SpaceFrame frame_along(SpaceVector along) {
  const SpaceVector level = std::abs(along.y) < 0.9 ? SpaceVector{0, 1, 0} : SpaceVector{0, 0, 1};
  const SpaceVector first = unit(level - dot(level, along) * along);
  return {{0, 0, 0}, first, cross(along, first), along};
}

MouldShadow::MouldShadow(const MouldSkin& skin, SpaceVector along) : skin_(skin), frame_(frame_along(along)) {
  low_ = std::numeric_limits<double>::infinity();
  high_ = -low_;
  for (const gp_Pnt& p : skin.points) {
    places_.push_back(seen(p));
    low_ = std::min(low_, places_.back().Z());
    high_ = std::max(high_, places_.back().Z());
  }
  lay_cells();
  lay_rim();
}

gp_Pnt MouldShadow::seen(const gp_Pnt& place) const {
  const SpacePoint p = frame_.into(SpacePoint{place.X(), place.Y(), place.Z()});
  return {p.x, p.y, p.z};
}

void MouldShadow::lay_cells() {
  double x1 = -std::numeric_limits<double>::infinity(), y1 = x1;
  x0_ = y0_ = -x1;
  for (const gp_Pnt& p : places_) {
    x0_ = std::min(x0_, p.X());
    x1 = std::max(x1, p.X());
    y0_ = std::min(y0_, p.Y());
    y1 = std::max(y1, p.Y());
  }
  step_x_ = std::max(1e-9, (x1 - x0_) / kCells);
  step_y_ = std::max(1e-9, (y1 - y0_) / kCells);
  cells_.resize(kCells * kCells);
  for (std::size_t i = 0; i < skin_.triangles.size(); ++i) {
    double a = 1e300, b = 1e300, c = -1e300, d = -1e300;
    for (const int corner : skin_.triangles[i].corners) {
      const gp_Pnt& p = places_[std::size_t(corner)];
      a = std::min(a, p.X());
      b = std::min(b, p.Y());
      c = std::max(c, p.X());
      d = std::max(d, p.Y());
    }
    const std::size_t from = cell(a, b), to = cell(c, d);
    for (std::size_t row = from / kCells; row <= to / kCells; ++row) {
      for (std::size_t column = from % kCells; column <= to % kCells; ++column) {
        cells_[row * kCells + column].push_back(static_cast<int>(i));
      }
    }
  }
}

std::size_t MouldShadow::cell(double x, double y) const {
  const int column = std::clamp(static_cast<int>((x - x0_) / step_x_), 0, kCells - 1);
  const int row = std::clamp(static_cast<int>((y - y0_) / step_y_), 0, kCells - 1);
  return std::size_t(row) * kCells + std::size_t(column);
}

void MouldShadow::lay_rim() {
  std::map<std::pair<int, int>, bool> faces_up;
  for (const SkinTriangle& t : skin_.triangles) {
    const bool up = dot(vector_of(t.normal), frame_.third) >= 0;
    for (std::size_t k = 0; k < 3; ++k) {
      const int a = t.corners[k], b = t.corners[(k + 1) % 3];
      const auto [at, fresh] = faces_up.try_emplace(std::minmax(a, b), up);
      if (fresh || at->second == up) continue;
      const gp_Pnt& p = places_[std::size_t(a)];
      const gp_Pnt& q = places_[std::size_t(b)];
      rim_.push_back({p.X(), p.Y(), q.X(), q.Y()});
    }
  }
}

std::vector<double> MouldShadow::meetings(double first_mm, double second_mm) const {
  std::vector<double> heights;
  for (const int i : cells_[cell(first_mm, second_mm)]) {
    const auto& c = skin_.triangles[std::size_t(i)].corners;
    const auto at = meeting(places_[std::size_t(c[0])], places_[std::size_t(c[1])], places_[std::size_t(c[2])],
                            first_mm, second_mm);
    if (at) heights.push_back(*at);
  }
  std::sort(heights.begin(), heights.end());
  return heights;
}

bool MouldShadow::hides(std::size_t triangle) const {
  const SkinTriangle& t = skin_.triangles[triangle];
  // A hair outside, so that a wall along the draw is not taken to stand in its own way.
  const gp_Pnt from = seen(skin_.middle(t).Translated(t.normal * kHair_mm));
  const double side = dot(vector_of(t.normal), frame_.third) >= 0 ? 1 : -1;
  const double own = kOwnShare * height_mm() + 1e-3;
  for (const int i : cells_[cell(from.X(), from.Y())]) {
    if (std::size_t(i) == triangle) continue;
    const auto& c = skin_.triangles[std::size_t(i)].corners;
    const auto at = meeting(places_[std::size_t(c[0])], places_[std::size_t(c[1])], places_[std::size_t(c[2])],
                            from.X(), from.Y());
    if (at && side * (*at - from.Z()) > own) return true;
  }
  return false;
}

double MouldShadow::reach_mm(const gp_Pnt& place) const {
  const gp_Pnt p = seen(place);
  double least = std::numeric_limits<double>::infinity();
  for (const Segment& s : rim_) {
    const double x = s.x1 - s.x0, y = s.y1 - s.y0;
    const double square = std::max(1e-18, x * x + y * y);
    const double share = std::clamp(((p.X() - s.x0) * x + (p.Y() - s.y0) * y) / square, 0.0, 1.0);
    least = std::min(least, std::hypot(p.X() - s.x0 - share * x, p.Y() - s.y0 - share * y));
  }
  return std::isfinite(least) ? least : 0;
}

}  // namespace prismwright
