#include "core/drawing/ring_outline.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kSame_mm = 1e-9;

double rise(double radius, double u) { return std::sqrt(std::max(0.0, radius * radius - u * u)); }

/// Draws a closed outline of straight lines and of arcs about the origin.
class RingPen {
 public:
  explicit RingPen(PlatePoint start) : start_(start), at_(start) {}

  void line_to(PlatePoint to) {
    if (std::hypot(to.u - at_.u, to.v - at_.v) > kSame_mm) push(to, 0, 0);
  }
  void arc_to(PlatePoint to, bool anticlockwise) {
    if (std::hypot(to.u - at_.u, to.v - at_.v) <= kSame_mm) return;
    double turn = std::atan2(to.v, to.u) - std::atan2(at_.v, at_.u);
    if (anticlockwise && turn <= 0) turn += 2 * kPi;
    if (!anticlockwise && turn >= 0) turn -= 2 * kPi;
    push(to, turn, std::hypot(at_.u, at_.v));
  }
  PlateChain close() {
    line_to(start_);
    if (!chain_.empty()) chain_.back().to = start_;
    return std::move(chain_);
  }

 private:
  void push(PlatePoint to, double turn, double radius) {
    chain_.push_back({at_, to, turn, {}, radius});
    at_ = to;
  }

  PlatePoint start_;
  PlatePoint at_;
  PlateChain chain_;
};

PlateChain outer_outline(const CutRing& ring) {
  const double right = std::min(ring.right_u, ring.outer_mm);
  const double left = std::max(ring.left_u, -ring.outer_mm);
  if (right == ring.outer_mm && left == -ring.outer_mm) return circle_chain({}, ring.outer_mm);
  RingPen pen({right, -rise(ring.outer_mm, right)});
  pen.line_to({right, rise(ring.outer_mm, right)});
  pen.arc_to({left, rise(ring.outer_mm, left)}, true);
  pen.line_to({left, -rise(ring.outer_mm, left)});
  pen.arc_to({right, -rise(ring.outer_mm, right)}, true);
  return pen.close();
}

PlateChain hole(double radius) {
  RingPen pen({radius, 0});
  pen.arc_to({-radius, 0}, false);
  pen.arc_to({radius, 0}, false);
  return pen.close();
}

/// Cut through on the left only: a ring that is open there.
PlateChain open_on_the_left(const CutRing& ring) {
  const double right = std::min(ring.right_u, ring.outer_mm);
  const double left = ring.left_u;
  RingPen pen({left, rise(ring.inner_mm, left)});
  pen.arc_to({left, -rise(ring.inner_mm, left)}, false);
  pen.line_to({left, -rise(ring.outer_mm, left)});
  pen.arc_to({right, -rise(ring.outer_mm, right)}, true);
  pen.line_to({right, rise(ring.outer_mm, right)});
  pen.arc_to({left, rise(ring.outer_mm, left)}, true);
  return pen.close();
}

}  // namespace

std::vector<PlateChain> whole_ring(const CutRing& ring) {
  const bool open_right = ring.right_u < ring.inner_mm;
  const bool open_left = -ring.left_u < ring.inner_mm;
  if (open_left && open_right) {
    const auto upper = upper_half(ring, 0);
    auto both = upper;
    for (PlateChain& lower : upside_down(upper)) both.push_back(std::move(lower));
    return both;
  }
  if (open_left) return {open_on_the_left(ring)};
  if (open_right)
    return {mirrored(open_on_the_left({ring.inner_mm, ring.outer_mm, -ring.right_u, -ring.left_u}))};
  std::vector<PlateChain> loops = {outer_outline(ring)};
  if (ring.inner_mm > 0) loops.push_back(hole(ring.inner_mm));
  return loops;
}

std::vector<PlateChain> upper_half(const CutRing& ring, double floor_v) {
  if (ring.outer_mm <= floor_v) return {};
  const double outer_half = rise(ring.outer_mm, floor_v);
  const double right = std::min(ring.right_u, outer_half);
  const double left = std::max(ring.left_u, -outer_half);
  const double inner_half = ring.inner_mm > floor_v ? rise(ring.inner_mm, floor_v) : 0;
  const auto inner_v = [&](double u) { return std::max(floor_v, rise(ring.inner_mm, u)); };
  const PlatePoint inner_right = {std::min(right, inner_half), inner_v(std::min(right, inner_half))};
  const PlatePoint inner_left = {std::max(left, -inner_half), inner_v(std::max(left, -inner_half))};
  RingPen pen(inner_half > 0 ? inner_right : PlatePoint{left, floor_v});
  if (right > inner_half) pen.line_to({right, floor_v});
  pen.line_to({right, rise(ring.outer_mm, right)});
  pen.arc_to({left, rise(ring.outer_mm, left)}, true);
  if (inner_half > 0) {
    if (left < -inner_half) pen.line_to({left, floor_v});
    pen.line_to(inner_left);
    pen.arc_to(inner_right, false);
  }
  return {pen.close()};
}

std::vector<PlateChain> upside_down(const std::vector<PlateChain>& loops) {
  std::vector<PlateChain> turned;
  // The mirror image (u, v) -> (-u, v), turned by half a turn, is (u, -v).
  for (const PlateChain& loop : loops) turned.push_back(moved(mirrored(loop), kPi, {}));
  return turned;
}

}  // namespace prismwright
