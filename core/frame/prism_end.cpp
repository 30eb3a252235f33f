#include "core/frame/prism_end.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/frame/end_view.h"

namespace prismwright {
namespace {

constexpr int kMostHalvings = 24;
constexpr int kMostSlices = 12;
constexpr double kRoundedAway_mm = 5e-5;  // what is thinner than this comes from rounding alone

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
      cross(a, b, shares, [&](SectionPoint p) { return view_.reach_of_plane(p, depth); });
      cross(a, b, shares, [&](SectionPoint p) { return view_.reach_of_level(p, depth); });
    }
    std::sort(shares.begin(), shares.end());
    return shares;
  }

  template <class Reach>
  static void cross(SectionPoint a, SectionPoint b, std::vector<double>& shares, Reach reach) {
    const double start = reach(a);
    const double end = reach(b);
    const double square = 2 * (start + end - 2 * reach(between(a, b, 0.5)));
    add_roots(square, end - start - square, start, shares);
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

// Nothing lies beyond the panel's other side. What falls short of a plane lies along one line in it, and
// rounding would leave hairs of that line.
PlateRegion within_panel(const PlannedPrism& prism, const std::vector<PlateOutline>& outlines, double least_u) {
  PlateRegion region = united(outlines);
  const bool falls_short = prism.trim.half != Half::whole || prism.axis_dip_deg != 0;
  if (prism.turning == TurningAxis::panel && falls_short) {
    region = grown(grown(region, -kRoundedAway_mm, Corner::sharp), kRoundedAway_mm, Corner::sharp);
  }
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

// The sheets of a plane that a profile needs.
std::vector<EndView> sheets(const PlannedPrism& prism, Side side, const std::vector<SectionPoint>& polygon,
                            const std::vector<double>& depths) {
  std::vector<EndView> views = {EndView(prism, side)};
  const bool folded = std::any_of(depths.begin(), depths.end(),
                                  [&](double depth) { return views.front().is_folded(polygon, depth); });
  if (folded) views.emplace_back(prism, side, EndView::Sheet::far);
  return views;
}

// The walk without what falls short of both planes: that lies along one straight line, of which only the ends
// bound anything.
std::vector<SectionPoint> bounding(const EndView& view, const std::vector<SectionPoint>& walk, double first_mm,
                                   double second_mm) {
  std::vector<bool> meets;
  for (std::size_t i = 0; i < walk.size(); ++i) {
    const SectionPoint middle = between(walk[i], walk[(i + 1) % walk.size()], 0.5);
    meets.push_back(view.reach(middle, first_mm) > 0 || view.reach(middle, second_mm) > 0);
  }
  std::vector<SectionPoint> kept;
  for (std::size_t i = 0; i < walk.size(); ++i) {
    if (meets[i] || meets[(i + walk.size() - 1) % walk.size()]) kept.push_back(walk[i]);
  }
  return kept;
}

// What one sheet of the planes takes between the first depth and the last: all that lies inside at some depth
// is inside at the first or is crossed by the outline on the way.
void sweep(const EndView& view, const std::vector<SectionPoint>& polygon, double from, double to,
           double chord_mm, std::vector<PlateOutline>& outlines) {
  auto depths = even_steps(from, to, 2);
  const int steps = slices_needed(view, CommonWalk(view, depths, chord_mm).along(polygon), depths, chord_mm);
  depths = even_steps(from, to, steps);
  const auto points = CommonWalk(view, depths, chord_mm).along(polygon);
  outlines.push_back(mapped(view, points, from));
  for (std::size_t i = 1; i < depths.size(); ++i) {
    const auto bounds = bounding(view, points, depths[i - 1], depths[i]);
    const PlateOutline place = mapped_as_walked(view, bounds, depths[i - 1]);
    const PlateOutline next = mapped_as_walked(view, bounds, depths[i]);
    SweptStrips(place, next, outlines).add();
  }
}

}  // namespace

PlateRegion end_slice(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm) {
  const EndView view(prism, side);
  if (!view.sees_ends() || depth_mm < prism.trim.set_back_mm - 1e-9) return {};
  const auto polygon = polygon_for_turning(prism, chord_mm / (2 * view.stretch()));
  std::vector<PlateOutline> outlines;
  for (const EndView& sheet : sheets(prism, side, polygon, {depth_mm})) {
    CommonWalk walk(sheet, {depth_mm}, chord_mm / 2);
    outlines.push_back(mapped(sheet, walk.along(polygon), depth_mm));
  }
  return within_panel(prism, outlines, view.least_u(depth_mm));
}

PlateRegion swept_end(const PlannedPrism& prism, Side side, double from_mm, double to_mm, double chord_mm) {
  const EndView view(prism, side);
  const double from = std::max(from_mm, prism.trim.set_back_mm);
  if (!view.sees_ends() || from > to_mm) return {};
  const auto polygon = polygon_for_turning(prism, chord_mm / (2 * view.stretch()));
  std::vector<PlateOutline> outlines;
  for (const EndView& sheet : sheets(prism, side, polygon, {from, to_mm})) {
    sweep(sheet, polygon, from, to_mm, chord_mm / 2, outlines);
  }
  return within_panel(prism, outlines, std::min(view.least_u(from), view.least_u(to_mm)));
}

}  // namespace prismwright
