#include "core/frame/prism_end.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kSquareOn = 1e-6;  // cosine of a side square to the panel's axis
constexpr int kMostHalvings = 24;
constexpr int kMostSlices = 12;

double away_from_chord(PlatePoint p, PlatePoint a, PlatePoint b) {
  const double length = std::hypot(b.u - a.u, b.v - a.v);
  if (length == 0) return std::hypot(p.u - a.u, p.v - a.v);
  return std::abs((b.u - a.u) * (p.v - a.v) - (b.v - a.v) * (p.u - a.u)) / length;
}

PlateOutline anticlockwise(PlateOutline outline) {
  if (signed_area_mm2(outline) < 0) std::reverse(outline.begin(), outline.end());
  return outline;
}

// A profile's outline with so many points that straight steps between them map onto every one of the planes
// within the chord: all planes are then walked point by point alike.
class CommonWalk {
 public:
  CommonWalk(const EndView& view, std::vector<double> depths_mm, double chord_mm)
      : view_(view), depths_mm_(std::move(depths_mm)), chord_mm_(chord_mm) {}

  std::vector<SectionPoint> along(const std::vector<SectionPoint>& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const SectionPoint to = polygon[(i + 1) % polygon.size()];
      SectionPoint from = polygon[i];
      for (const double share : crossings(polygon[i], to)) {
        const SectionPoint next = between(polygon[i], to, share);
        step(from, next, 0);
        from = next;
      }
      step(from, to, 0);
    }
    return std::move(walk_);
  }

 private:
  // Where the straight step begins or ceases to reach a plane: the reach is a quadratic along it.
  [[nodiscard]] std::vector<double> crossings(SectionPoint a, SectionPoint b) const {
    std::vector<double> shares;
    for (const double depth : depths_mm_) {
      const double start = view_.reach(a, depth);
      const double middle = view_.reach(between(a, b, 0.5), depth);
      const double end = view_.reach(b, depth);
      const double square = 2 * (start + end - 2 * middle);
      const double slope = end - start - square;
      add_roots(square, slope, start, shares);
    }
    std::sort(shares.begin(), shares.end());
    return shares;
  }

  static void add_roots(double square, double slope, double start, std::vector<double>& shares) {
    const double inside = slope * slope - 4 * square * start;
    if (inside < 0) return;
    const double q = -0.5 * (slope + std::copysign(std::sqrt(inside), slope));
    for (const double root : {q / square, start / q}) {
      if (std::isfinite(root) && root > 0 && root < 1) shares.push_back(root);
    }
  }

  void step(SectionPoint a, SectionPoint b, int halvings) {
    const SectionPoint middle = between(a, b, 0.5);
    const bool bends = std::any_of(depths_mm_.begin(), depths_mm_.end(), [&](double depth) {
      return away_from_chord(view_.at(middle, depth), view_.at(a, depth), view_.at(b, depth)) > chord_mm_;
    });
    if (bends && halvings < kMostHalvings) {
      step(a, middle, halvings + 1);
      step(middle, b, halvings + 1);
    } else {
      walk_.push_back(a);
    }
  }

  const EndView& view_;
  std::vector<double> depths_mm_;
  double chord_mm_;
  std::vector<SectionPoint> walk_;
};

PlateOutline mapped_as_walked(const EndView& view, const std::vector<SectionPoint>& walk, double depth_mm) {
  PlateOutline outline;
  outline.reserve(walk.size());
  for (const SectionPoint p : walk) outline.push_back(view.at(p, depth_mm));
  return outline;
}

PlateOutline mapped(const EndView& view, const std::vector<SectionPoint>& walk, double depth_mm) {
  return anticlockwise(mapped_as_walked(view, walk, depth_mm));
}

std::vector<SectionPoint> polygon_for_turning(const PlannedPrism& prism, double chord_mm) {
  const bool below = prism.turning == TurningAxis::panel && centroid(prism.profile).z < 0;
  return polygon_of(below ? mirrored(prism.profile) : prism.profile, chord_mm);
}

// A whole ring is cut above and below alike; nothing lies beyond the panel's other side.
PlateRegion finished(const PlannedPrism& prism, std::vector<PlateOutline> outlines, double least_u) {
  if (prism.turning == TurningAxis::panel && prism.trim.half == Half::whole) {
    const std::size_t count = outlines.size();
    for (std::size_t i = 0; i < count; ++i) {
      PlateOutline image(outlines[i].rbegin(), outlines[i].rend());
      for (PlatePoint& p : image) p.v = -p.v;
      outlines.push_back(std::move(image));
    }
  }
  const PlateRegion region = united(outlines);
  if (region.empty()) return region;
  const PlateExtent extent = extent_of(region);
  if (extent.low.u >= least_u) return region;
  if (extent.high.u <= least_u) return {};
  return common_part(region,
                     {plate_rectangle({least_u, extent.low.v - 1}, {extent.high.u + 1, extent.high.v + 1})});
}

std::vector<double> even_steps(double from, double to, int steps) {
  std::vector<double> values;
  for (int i = 0; i <= steps; ++i) values.push_back(from + (to - from) * i / steps);
  return values;
}

// How many slices keep straight lines between them within the chord: the way of each point through the
// planes bends as the square of the step.
int slices_needed(const EndView& view, const std::vector<SectionPoint>& walk, const std::vector<double>& depths,
                  double chord_mm) {
  double worst = 0;
  for (const SectionPoint p : walk) {
    const double bend = away_from_chord(view.at(p, depths[1]), view.at(p, depths[0]), view.at(p, depths[2]));
    worst = std::max(worst, bend);
  }
  return std::clamp(static_cast<int>(std::ceil(std::sqrt(worst / chord_mm))), 1, kMostSlices);
}

double twice_area(PlatePoint a, PlatePoint b, PlatePoint c) {
  return (b.u - a.u) * (c.v - a.v) - (c.u - a.u) * (b.v - a.v);
}

// The strips that an outline's edges cover on the way from its first place to its second. Edges that move to
// the same hand make one strip, which then nowhere winds back over itself; an edge that turns over on its way
// leaves two triangles of its own.
class SweptStrips {
 public:
  SweptStrips(const PlateOutline& first, const PlateOutline& second, std::vector<PlateOutline>& strips)
      : first_(first), second_(second), strips_(strips) {}

  void add() {
    for (std::size_t i = 0; i < first_.size(); ++i) add_edge(i, (i + 1) % first_.size());
    end_strip();
  }

 private:
  void add_edge(std::size_t i, std::size_t j) {
    const double near = twice_area(first_[i], first_[j], second_[j]);
    const double far = twice_area(first_[i], second_[j], second_[i]);
    if (near == 0 && far == 0) return end_strip();
    if (near * far < 0) {
      end_strip();
      strips_.push_back(anticlockwise({first_[i], first_[j], second_[j]}));
      strips_.push_back(anticlockwise({first_[i], second_[j], second_[i]}));
      return;
    }
    const double hand = near + far > 0 ? 1 : -1;
    if (hand != hand_) {
      end_strip();
      hand_ = hand;
      there_ = {first_[i]};
      back_ = {second_[i]};
    }
    there_.push_back(first_[j]);
    back_.push_back(second_[j]);
  }

  void end_strip() {
    if (hand_ != 0) {
      there_.insert(there_.end(), back_.rbegin(), back_.rend());
      strips_.push_back(anticlockwise(std::move(there_)));
    }
    hand_ = 0;
    there_.clear();
    back_.clear();
  }

  const PlateOutline& first_;
  const PlateOutline& second_;
  std::vector<PlateOutline>& strips_;
  double hand_ = 0;
  PlateOutline there_;
  PlateOutline back_;
};

}  // namespace

EndView::EndView(const PlannedPrism& prism, Side side)
    : turning_(prism.turning),
      half_(prism.trim.half),
      level_mm_(prism.trim.half == Half::whole ? 0 : prism.trim.half_gap_mm),
      set_back_mm_(prism.trim.set_back_mm) {
  const bool clockwise = side == Side::clockwise;
  const double azimuth = radians(clockwise ? prism.trim.clockwise_side_deg : prism.trim.anticlockwise_side_deg);
  const double width = radians(prism.trim.anticlockwise_side_deg - prism.trim.clockwise_side_deg);
  cos_side_ = std::cos(azimuth);
  sin_side_ = std::sin(azimuth);
  normal_x_ = clockwise ? -sin_side_ : sin_side_;
  normal_y_ = clockwise ? cos_side_ : -cos_side_;
  sin_width_ = std::sin(width);
  cos_width_ = std::cos(width);
}

bool EndView::sees_ends() const { return turning_ == TurningAxis::lens || std::abs(cos_side_) > kSquareOn; }

double EndView::stretch() const {
  return turning_ == TurningAxis::lens ? 1 : 1 / std::max(kSquareOn, std::abs(cos_side_));
}

double EndView::reach(SectionPoint p, double depth_mm) const {
  if (turning_ == TurningAxis::lens) return 1;
  const double u = (p.r - depth_mm * normal_x_) / cos_side_;
  const double y = u * sin_side_ + depth_mm * normal_y_;
  return p.z * p.z - y * y - level_mm_ * level_mm_;
}

PlatePoint EndView::at(SectionPoint p, double depth_mm) const {
  if (turning_ == TurningAxis::lens) {
    return {std::sqrt(std::max(0.0, p.r * p.r - depth_mm * depth_mm)), p.z};
  }
  const double u = (p.r - depth_mm * normal_x_) / cos_side_;
  const double v = std::sqrt(std::max(0.0, reach(p, depth_mm)) + level_mm_ * level_mm_);
  return {u, half_ == Half::lower ? -v : v};
}

double EndView::least_u(double depth_mm) const {
  if (sin_width_ < kSquareOn) return 0;
  return std::max(0.0, (set_back_mm_ + depth_mm * cos_width_) / sin_width_);
}

PlateRegion end_slice(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm) {
  const EndView view(prism, side);
  if (!view.sees_ends() || depth_mm < prism.trim.set_back_mm - 1e-9) return {};
  CommonWalk walk(view, {depth_mm}, chord_mm / 2);
  const auto points = walk.along(polygon_for_turning(prism, chord_mm / (2 * view.stretch())));
  return finished(prism, {mapped(view, points, depth_mm)}, view.least_u(depth_mm));
}

PlateRegion swept_end(const PlannedPrism& prism, Side side, double from_mm, double to_mm, double chord_mm) {
  const EndView view(prism, side);
  const double from = std::max(from_mm, prism.trim.set_back_mm);
  if (!view.sees_ends() || from > to_mm) return {};
  const auto polygon = polygon_for_turning(prism, chord_mm / (2 * view.stretch()));
  auto depths = even_steps(from, to_mm, 2);
  const int steps =
      slices_needed(view, CommonWalk(view, depths, chord_mm / 2).along(polygon), depths, chord_mm / 2);
  depths = even_steps(from, to_mm, steps);
  const auto points = CommonWalk(view, depths, chord_mm / 2).along(polygon);

  // What lies inside at some depth is inside at the first or is crossed by the outline on the way.
  std::vector<PlateOutline> outlines{mapped(view, points, from)};
  PlateOutline place = mapped_as_walked(view, points, from);
  for (std::size_t i = 1; i < depths.size(); ++i) {
    PlateOutline next = mapped_as_walked(view, points, depths[i]);
    SweptStrips(place, next, outlines).add();
    place = std::move(next);
  }
  return finished(prism, std::move(outlines), std::min(view.least_u(from), view.least_u(to_mm)));
}

}  // namespace prismwright
