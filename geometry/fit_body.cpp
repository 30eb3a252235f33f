#include "geometry/fit_body.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"
#include "core/lens/trimmed_ring.h"
#include "geometry/loop_field.h"

namespace prismwright {
namespace {

constexpr double kProfileChord_mm = 0.002;
constexpr double kProfileCell_mm = 2;
constexpr double kPlateChord_mm = 0.005;
constexpr double kPlateCell_mm = 4;
constexpr double kRound_mm = 1.5;    // between places round a profile or along an edge
constexpr double kAtEnd_mm = 0.75;   // along the turn, near the ends
constexpr double kBetween_mm = 10;   // along the turn, between the ends, or
constexpr double kMostBetween = 12;  // so many steps
constexpr double kCorner_deg = 5;
constexpr double kOnAxis_mm = 1e-6;
constexpr double kFar_mm = 3;  // beyond a cut by more, the profile need not be asked

// The profile as the ring lays it out: z is not negative for panel turning.
PlateOutline outline_of(const TrimmedRing& ring) {
  PlateOutline outline;
  for (const SectionPoint p : polygon_of(ring.profile(), kProfileChord_mm)) outline.push_back({p.r, p.z});
  return thinned(outline, kProfileChord_mm);
}

double turn_at(const PlateOutline& outline, std::size_t i) {
  const std::size_t count = outline.size();
  return std::abs(
      turn_between(outline[i] - outline[(i + count - 1) % count], outline[(i + 1) % count] - outline[i]));
}

// Places round a closed outline about kRound_mm apart, its corners among them.
std::vector<PlatePoint> walked(const PlateOutline& outline) {
  std::vector<PlatePoint> points;
  double since_last = kRound_mm;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint from = outline[i];
    const PlateVector step = outline[(i + 1) % outline.size()] - from;
    if (since_last >= kRound_mm || radians(kCorner_deg) < turn_at(outline, i)) {
      points.push_back(from);
      since_last = 0;
    }
    const double length = length_of(step);
    const int pieces = static_cast<int>(std::ceil(length / kRound_mm));
    for (int k = 1; k < pieces; ++k) points.push_back(from + (static_cast<double>(k) / pieces) * step);
    since_last = pieces > 1 ? length / pieces : since_last + length;
  }
  return points;
}

void add_evenly(double from, double to, double pace, std::vector<double>& places) {
  const int pieces = std::max(1, static_cast<int>(std::ceil((to - from) / pace)));
  for (int k = 0; k < pieces; ++k) places.push_back(from + (to - from) * k / pieces);
}

// Both ends, and places between them: close together near the ends.
std::vector<double> places_along(double length_mm, double end_mm) {
  const double end = std::min(end_mm, length_mm / 2);
  std::vector<double> places;
  add_evenly(0, end, kAtEnd_mm, places);
  if (length_mm > 2 * end) {
    add_evenly(end, length_mm - end, std::max(kBetween_mm, length_mm / kMostBetween), places);
  }
  add_evenly(length_mm - end, length_mm, kAtEnd_mm, places);
  places.push_back(length_mm);
  return places;
}

class TurnedBody : public FitBody {
 public:
  TurnedBody(const PlannedPrism& prism, double end_mm)
      : ring_(prism),
        field_({outline_of(ring_)}, kProfileCell_mm),
        about_z_(prism.turning == TurningAxis::lens),
        lift_mm_(about_z_ ? 0 : prism.axis_z_mm),
        cos_dip_(std::cos(ring_.dip())),
        sin_dip_(std::sin(ring_.dip())) {
    const double clockwise = radians(prism.trim.clockwise_side_deg);
    const double anticlockwise = radians(prism.trim.anticlockwise_side_deg);
    inward_ = {SpaceVector{-std::sin(clockwise), std::cos(clockwise), 0},
               SpaceVector{std::sin(anticlockwise), -std::cos(anticlockwise), 0}};
    sample(end_mm);
  }

  [[nodiscard]] double signed_mm(SpacePoint p) const override {
    const SpacePoint own = into_axis(p);
    const double cut = beyond_cuts(p, own);
    if (cut > kFar_mm) return cut;
    const PlatePoint at = about_z_ ? PlatePoint{std::sqrt(own.x * own.x + own.y * own.y), own.z}
                                   : PlatePoint{own.x, std::sqrt(own.y * own.y + own.z * own.z)};
    return std::max(cut, field_.signed_mm(at));
  }

 private:
  [[nodiscard]] SpacePoint into_axis(SpacePoint p) const {
    const double z = p.z - lift_mm_;
    return {p.x * cos_dip_ - z * sin_dip_, p.y, p.x * sin_dip_ + z * cos_dip_};
  }
  [[nodiscard]] SpacePoint out_of_axis(SpacePoint p) const {
    return {p.x * cos_dip_ + p.z * sin_dip_, p.y, lift_mm_ - p.x * sin_dip_ + p.z * cos_dip_};
  }

  // How far a place lies outside the nearest of the cuts; negative within them all.
  [[nodiscard]] double beyond_cuts(SpacePoint p, SpacePoint own) const {
    const Trim& trim = ring_.trim();
    double beyond = -1e30;
    for (const SpaceVector& side : inward_) {
      beyond = std::max(beyond, trim.set_back_mm - dot(side, p - SpacePoint{}));
    }
    if (about_z_) return trim.flat_inner_mm ? std::max(beyond, *trim.flat_inner_mm - p.x) : beyond;
    if (trim.half == Half::whole) return beyond;
    return std::max(beyond, trim.half_gap_mm - (trim.half == Half::upper ? own.z : -own.z));
  }

  void sample(double end_mm) {
    const PlateOutline outline = outline_of(ring_);
    for (const PlatePoint at : walked(outline)) {
      if (!about_z_ && lies_within_axis(at, outline)) continue;
      const SectionPoint p{at.u, at.v};
      if (ring_.trim().half != Half::lower) sample(p, Half::upper, end_mm);
      if (!about_z_ && ring_.trim().half != Half::upper) sample(p, Half::lower, end_mm);
    }
  }

  // The axis that closes a centre's profile is no skin but at its two ends.
  static bool lies_within_axis(PlatePoint at, const PlateOutline& outline) {
    if (at.v > kOnAxis_mm) return false;
    return std::none_of(outline.begin(), outline.end(),
                        [&](PlatePoint corner) { return distance(corner, at) < kOnAxis_mm; });
  }

  void sample(SectionPoint p, Half side, double end_mm) {
    const double reach = about_z_ ? p.r : p.z;
    for (const TrimmedRing::Span& span : ring_.spans(p, side)) {
      for (const double along : places_along((span.to - span.from) * reach, end_mm)) {
        add_skin(place(p, side, reach > 0 ? span.from + along / reach : span.from));
      }
    }
  }

  [[nodiscard]] SpacePoint place(SectionPoint p, Half side, double angle) const {
    if (about_z_) return {p.r * std::cos(angle), p.r * std::sin(angle), p.z};
    const double up = side == Half::lower ? -1 : 1;
    return out_of_axis({p.r, p.z * std::cos(angle), up * p.z * std::sin(angle)});
  }

  TrimmedRing ring_;
  LoopField field_;
  bool about_z_;
  double lift_mm_;
  double cos_dip_;
  double sin_dip_;
  std::vector<SpaceVector> inward_;
};

class PlateBody : public FitBody {
 public:
  PlateBody(const FlatPart& part, const SpaceFrame& place)
      : place_(place),
        thickness_mm_(part.thickness_mm),
        floor_mm_(part.thickness_mm),
        under_(loops_of(part, false), kPlateCell_mm),
        walls_(loops_of(part, true), kPlateCell_mm) {
    for (const PlatePocket& pocket : part.pockets) {
      floor_mm_ = std::min(floor_mm_, std::max(0.0, part.thickness_mm - pocket.depth_mm));
    }
    for (const PlateOutline& loop : loops_of(part, false)) sample(loop, {0, thickness_mm_});
    for (const PlatePocket& pocket : part.pockets) {
      sample(flattened(pocket.outline, kPlateChord_mm), {floor_mm_, thickness_mm_});
    }
  }

  [[nodiscard]] double signed_mm(SpacePoint p) const override {
    const SpacePoint own = place_.into(p);
    const double slab = std::max(-own.z, own.z - thickness_mm_);
    if (slab > kFar_mm) return slab;
    const PlatePoint at{own.x, own.y};
    const double in_walls = walls_.signed_mm(at);
    if (in_walls > kFar_mm && own.z > floor_mm_ + kFar_mm) return std::min(in_walls, own.z - floor_mm_);
    const double walls = std::max({floor_mm_ - own.z, own.z - thickness_mm_, in_walls});
    if (floor_mm_ <= 0) return walls;
    // The floor's brass goes on into the walls': within both, the walls' lower face is no skin.
    const double in_plate = under_.signed_mm(at);
    const double under = std::max({-own.z, own.z - floor_mm_, in_plate});
    const double through = std::max(slab, in_walls);
    return std::min({walls, under, through});
  }

 private:
  static PlateRegion loops_of(const FlatPart& part, bool with_pockets) {
    PlateRegion loops{flattened(part.outline, kPlateChord_mm)};
    for (const PlateChain& opening : part.openings) loops.push_back(flattened(opening, kPlateChord_mm));
    if (!with_pockets) return loops;
    for (const PlatePocket& pocket : part.pockets) loops.push_back(flattened(pocket.outline, kPlateChord_mm));
    return loops;
  }

  void sample(const PlateOutline& loop, std::initializer_list<double> depths) {
    for (const PlatePoint p : walked(loop)) {
      for (const double depth : depths) add_skin(place_.out_of(SpacePoint{p.u, p.v, depth}));
    }
  }

  SpaceFrame place_;
  double thickness_mm_;
  double floor_mm_;
  LoopField under_;
  LoopField walls_;
};

}  // namespace

void FitBox::take(SpacePoint p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
}

void FitBody::add_skin(SpacePoint p) {
  skin_.push_back(p);
  box_.take(p);
}

std::unique_ptr<FitBody> turned_body(const PlannedPrism& prism, double end_mm) {
  return std::make_unique<TurnedBody>(prism, end_mm);
}

std::unique_ptr<FitBody> plate_body(const FlatPart& part, const SpaceFrame& place) {
  return std::make_unique<PlateBody>(part, place);
}

}  // namespace prismwright
