#include "core/optics/historic_pair.h"

#include <cmath>

#include "core/optics/refraction.h"

namespace prismwright {

namespace {

/// A side as an arc of the pair's radius: full bulges out of the glass, hollow into it.
struct Side {
  SectionPoint centre;
  double radius_mm = 0;
  bool hollow = false;

  /// Right of the walk, out of the glass, at a place on the arc.
  [[nodiscard]] SectionDirection outward(SectionPoint p) const {
    const SectionDirection spoke = SectionDirection::along(p - centre);
    return hollow ? spoke.reversed() : spoke;
  }
};

Side side_between(SectionPoint from, SectionPoint to, double radius_mm, bool hollow) {
  const SectionOffset chord = to - from;
  const double half = 0.5 * chord.length();
  const double height = std::sqrt(radius_mm * radius_mm - half * half);
  const SectionDirection left = SectionDirection::along(chord).quarter_turn();
  return {between(from, to, 0.5) + (hollow ? -height : height) * left, radius_mm, hollow};
}

/// One trial of the direction of AB.
struct Trial {
  SectionPoint b;
  Side entry;
  SectionDirection at_a;  ///< inside, of the ray that enters at A
  SectionDirection at_b;  ///< inside, of the ray that enters at B
  SectionDirection back;  ///< of the ray reflected at B
  Side exit;
  SectionDirection exit_tangent;  ///< at A, towards C
  double reflecting_radius = 0;
  SectionPoint reflecting_centre;
  SectionPoint far;  ///< where the ray at A is reflected
  double miss = 0;   ///< of the ray at A from the exit face, radians
};

class PairSolver {
 public:
  PairSolver(SectionPoint a, double side_mm, const PrismKind& kind) : a_(a), side_mm_(side_mm), kind_(kind) {}

  std::optional<PrismShape> solve() {
    if (!(kind_.pair_radius_mm > 2 * side_mm_)) return std::nullopt;
    const ReflectingCorners straight = angles_at(a_, kind_.index);
    // |AC| of the straight-sided prism starts the search; it settles with the direction of AB.
    exit_length_mm_ = side_mm_;
    double before = straight.beta + 1e-3;
    double here = straight.beta;
    auto trial = try_direction(before);
    for (int i = 0; i < 60; ++i) {
      if (!trial) return std::nullopt;
      const double miss_before = trial->miss;
      trial = try_direction(here);
      if (!trial) return std::nullopt;
      const double step = trial->miss * (here - before) / (trial->miss - miss_before);
      if (!std::isfinite(step) || std::abs(trial->miss) < 1e-14) break;
      before = here;
      here -= step;
    }
    if (std::abs(trial->miss) > 1e-9) return std::nullopt;
    return shape_of(*trial);
  }

 private:
  [[nodiscard]] bool hollow_entry() const { return kind_.power == Power::hollow_entry; }

  [[nodiscard]] std::optional<Trial> try_direction(double beta) {
    Trial t;
    t.b = a_ + side_mm_ * SectionDirection::at(beta);
    t.entry = side_between(t.b, a_, kind_.pair_radius_mm, hollow_entry());
    const auto into = [&](SectionPoint p) {
      return refract(SectionDirection::along(p - SectionPoint{}), t.entry.outward(p), 1, kind_.index).value();
    };
    t.at_a = into(a_);
    t.at_b = into(t.b);
    t.back = hollow_entry() ? t.entry.outward(t.b).quarter_turn() : SectionDirection::along(a_ - t.b);
    const SectionDirection exit_normal =
        SectionDirection::along(kind_.index * t.back + (-1.0) * SectionDirection());
    t.exit_tangent = exit_normal.quarter_turn();
    const bool hollow_exit = !hollow_entry();
    t.exit = {a_ + (hollow_exit ? kind_.pair_radius_mm : -kind_.pair_radius_mm) * exit_normal,
              kind_.pair_radius_mm, hollow_exit};
    if (!lay_reflecting(t)) return std::nullopt;
    const double chord_lead =
        hollow_exit ? 0 : std::asin(std::min(1.0, exit_length_mm_ / (2 * kind_.pair_radius_mm)));
    t.miss = std::atan2(cross(t.exit_tangent, t.at_a), dot(t.exit_tangent, t.at_a)) - chord_lead;
    return t;
  }

  /// The arc through B that halves both extreme rays; the far one leaves the exit face near C.
  bool lay_reflecting(Trial& t) {
    for (int i = 0; i < 4; ++i) {
      const SectionPoint leaving = on_exit(t, exit_length_mm_);
      const auto reversed = refract(SectionDirection().reversed(), t.exit.outward(leaving), 1, kind_.index);
      const SectionDirection out_at_c = reversed.value().reversed();
      const SectionDirection normal_b = mirror_tangent(t.at_b, t.back).quarter_turn().reversed();
      const SectionDirection normal_c = mirror_tangent(t.at_a, out_at_c).quarter_turn().reversed();
      const SectionOffset turn = 1.0 * normal_b + (-1.0) * normal_c;
      t.reflecting_radius = cross(t.b - a_, t.at_a) / cross(turn, t.at_a);
      if (!std::isfinite(t.reflecting_radius) || t.reflecting_radius == 0) return false;
      t.reflecting_centre = t.b - t.reflecting_radius * normal_b;
      t.far = t.reflecting_centre + t.reflecting_radius * normal_c;
      exit_length_mm_ = distance(a_, t.far);
      if (!(exit_length_mm_ < kind_.pair_radius_mm)) return false;
    }
    return true;
  }

  /// The place on the exit arc at a straight distance from A.
  [[nodiscard]] SectionPoint on_exit(const Trial& t, double length_mm) const {
    const double angle = 2 * std::asin(length_mm / (2 * kind_.pair_radius_mm)) * (t.exit.hollow ? -1 : 1);
    const SectionOffset spoke = a_ - t.exit.centre;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return t.exit.centre + SectionOffset{c * spoke.r - s * spoke.z, s * spoke.r + c * spoke.z};
  }

  /// C: the meeting of the exit and reflecting circles next to where the far ray is reflected.
  [[nodiscard]] std::optional<SectionPoint> corner_c(const Trial& t) const {
    const SectionOffset between_centres = t.reflecting_centre - t.exit.centre;
    const double d = between_centres.length();
    const double r1 = kind_.pair_radius_mm;
    const double r2 = std::abs(t.reflecting_radius);
    const double along = (d * d + r1 * r1 - r2 * r2) / (2 * d);
    if (!(std::abs(along) < r1)) return std::nullopt;
    const double aside = std::sqrt(r1 * r1 - along * along);
    const SectionDirection way = SectionDirection::along(between_centres);
    const SectionPoint foot = t.exit.centre + along * way;
    const SectionPoint one = foot + aside * way.quarter_turn();
    const SectionPoint other = foot + (-aside) * way.quarter_turn();
    return distance(one, t.far) < distance(other, t.far) ? one : other;
  }

  [[nodiscard]] std::optional<PrismShape> shape_of(const Trial& t) const {
    const auto c = corner_c(t);
    // The two arcs must meet where the rays want them: a wide miss is no prism.
    if (!c || distance(*c, t.far) > 0.1 * side_mm_) return std::nullopt;
    PrismShape shape;
    shape.start_a = a_;
    shape.corners = {a_, t.b, *c, SectionDirection::along(t.b - a_).elevation(),
                     SectionDirection::along(*c - a_).elevation()};
    shape.exit = FacePath::arc(FaceRole::exit, a_, *c, t.exit.centre);
    shape.reflecting = FacePath::arc(FaceRole::reflecting, *c, t.b, t.reflecting_centre);
    shape.entry = FacePath::arc(FaceRole::entry, t.b, a_, t.entry.centre);
    return shape;
  }

  SectionPoint a_;
  double side_mm_;
  const PrismKind& kind_;
  double exit_length_mm_ = 0;
};

}  // namespace

std::optional<PrismShape> historic_pair(SectionPoint a, double side_mm, const PrismKind& kind) {
  return PairSolver(a, side_mm, kind).solve();
}

}  // namespace prismwright
