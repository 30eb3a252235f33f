#include "geometry/fit_path.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace prismwright {
namespace {

constexpr double kBoxMore_mm = 0.5;  // places of a skin stand apart: what lies between them bulges by less

struct Stretch {
  double from = 0;
  double to = -1;
  [[nodiscard]] bool empty() const { return !(from <= to); }
};

// The part of the way from a place that runs through a box grown by kBoxMore_mm.
Stretch within(const FitBox& box, SpacePoint p, SpaceVector along, double length_mm) {
  Stretch stretch{0, length_mm};
  const std::array<std::array<double, 4>, 3> axes{{{p.x, along.x, box.low.x, box.high.x},
                                                   {p.y, along.y, box.low.y, box.high.y},
                                                   {p.z, along.z, box.low.z, box.high.z}}};
  for (const auto& [at, speed, low, high] : axes) {
    const double near = low - kBoxMore_mm - at;
    const double far = high + kBoxMore_mm - at;
    if (std::abs(speed) < 1e-12) {
      if (near > 0 || far < 0) return {};
      continue;
    }
    stretch.from = std::max(stretch.from, std::min(near / speed, far / speed));
    stretch.to = std::min(stretch.to, std::max(near / speed, far / speed));
  }
  return stretch;
}

bool apart(const FitBox& a, const FitBox& b) {
  const double more = 2 * kBoxMore_mm;
  return a.high.x + more < b.low.x || b.high.x + more < a.low.x || a.high.y + more < b.low.y ||
         b.high.y + more < a.low.y || a.high.z + more < b.low.z || b.high.z + more < a.low.z;
}

SpacePoint turned(SpacePoint p, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * p.x - s * p.y, s * p.x + c * p.y, p.z};
}

// Where a part stands: turned about the upright line through the origin, then moved.
struct Stand {
  double angle = 0;
  SpaceVector moved{};

  [[nodiscard]] SpacePoint out_of(SpacePoint p) const { return turned(p, angle) + moved; }
  [[nodiscard]] SpacePoint into(SpacePoint p) const { return turned(p - moved, -angle); }
  void follow(const FitLeg& leg) {
    if (!leg.is_swing()) {
      moved = moved + leg.length_mm() * leg.along();
      return;
    }
    angle += leg.angle();
    moved = turned(SpacePoint{} + moved, leg.angle()) - SpacePoint{};
  }
};

FitBox box_of(const FitBox& box, const Stand& stand) {
  FitBox all{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
  for (const double x : {box.low.x, box.high.x}) {
    for (const double y : {box.low.y, box.high.y}) {
      for (const double z : {box.low.z, box.high.z}) all.take(stand.out_of({x, y, z}));
    }
  }
  return all;
}

// All that a box may pass: its corners' ways, and beside them as far as the arcs between bulge.
FitBox swept(const FitBox& box, const FitLeg& leg) {
  FitBox all = box;
  double bulge_mm = 0;
  for (const double x : {box.low.x, box.high.x}) {
    for (const double y : {box.low.y, box.high.y}) {
      all.take(leg.place_at({x, y, box.low.z}, leg.length_mm()));
      all.take(leg.place_at({x, y, box.high.z}, leg.length_mm()));
      bulge_mm = std::max(bulge_mm, std::hypot(x, y) * (1 - std::cos(leg.angle() / 2)));
    }
  }
  const SpaceVector more{bulge_mm, bulge_mm, 0};
  return {all.low - more, all.high + more};
}

// The part of a leg from a place on that may run through a box.
Stretch within(const FitBox& box, SpacePoint p, const FitLeg& leg) {
  if (!leg.is_swing()) return within(box, p, leg.along(), leg.length_mm());
  return apart(swept({p, p}, leg), box) ? Stretch{} : Stretch{0, leg.length_mm()};
}

// Follows one place along one leg; answers how far it came when it stood too deep. The body that it may touch
// stands in a frame of its own.
template <class Room>
std::optional<double> stopped_at(SpacePoint from, const FitLeg& leg, double length_mm, const FitBox& box,
                                 const Room& signed_mm) {
  const Stretch stretch = within(box, from, leg);
  const double to_mm = std::min(stretch.to, length_mm);
  for (double t = stretch.from; t <= to_mm;) {
    const double room = signed_mm(leg.place_at(from, t));
    if (room < -kFitTouch_mm) return t;
    t += std::max(room, kFitStep_mm) / leg.pace_at(from);
  }
  return std::nullopt;
}

// Follows the places of both skins along one way, leg by leg.
class WayWatch {
 public:
  WayWatch(const FitBody& moving, const FitPath& path, const FitBody& still)
      : moving_(moving), path_(path), still_(still) {}

  // The earliest touch; with `any`, the first that is found.
  std::optional<FitTouch> run(bool any) {
    any_ = any;
    for (const FitLeg& leg : path_) {
      if (leg.length_mm() <= 0) continue;
      here_ = box_of(moving_.box(), stand_);
      if (!apart(swept(here_, leg), still_.box())) follow(leg);
      if (std::isfinite(after_mm_)) return FitTouch{where_, gone_mm_ + after_mm_};
      stand_.follow(leg);
      gone_mm_ += leg.length_mm();
    }
    return std::nullopt;
  }

 private:
  void follow(const FitLeg& leg) {
    const auto in_still = [&](SpacePoint p) { return still_.signed_mm(p); };
    for (const SpacePoint& p : moving_.skin()) {
      const SpacePoint from = stand_.out_of(p);
      if (stops(from, leg, still_.box(), in_still)) where_ = leg.place_at(from, after_mm_);
      if (done()) return;
    }
    // A place that stands still comes the other way, seen from the part that moves.
    const FitLeg back = leg.back();
    const auto in_moving = [&](SpacePoint p) { return moving_.signed_mm(stand_.into(p)); };
    for (const SpacePoint& p : still_.skin()) {
      if (stops(p, back, here_, in_moving)) where_ = p;
      if (done()) return;
    }
  }

  [[nodiscard]] bool done() const { return any_ && std::isfinite(after_mm_); }

  template <class Room>
  bool stops(SpacePoint from, const FitLeg& leg, const FitBox& box, const Room& signed_mm) {
    const auto stopped = stopped_at(from, leg, std::min(leg.length_mm(), after_mm_), box, signed_mm);
    if (!stopped || *stopped >= after_mm_) return false;
    after_mm_ = *stopped;
    return true;
  }

  const FitBody& moving_;
  const FitPath& path_;
  const FitBody& still_;
  bool any_ = false;
  Stand stand_;
  FitBox here_;  ///< of the part that moves, where the leg begins
  double gone_mm_ = 0;
  double after_mm_ = std::numeric_limits<double>::infinity();
  SpacePoint where_;
};

void take_deeper(const FitBody& skin_of, const FitBody& body, FitSunk& deepest) {
  for (const SpacePoint& p : skin_of.skin()) {
    const Stretch here = within(body.box(), p, {1, 0, 0}, 0);
    if (here.empty()) continue;
    const double deep_mm = -body.signed_mm(p);
    if (deep_mm > deepest.deep_mm) deepest = {p, deep_mm};
  }
}

}  // namespace

FitLeg FitLeg::straight(SpaceVector by_mm) {
  FitLeg leg;
  leg.length_mm_ = length(by_mm);
  if (leg.length_mm_ > 0) leg.along_ = unit(by_mm);
  return leg;
}

FitLeg FitLeg::swing(double angle, double radius_mm) {
  FitLeg leg;
  leg.angle_ = angle;
  leg.radius_mm_ = radius_mm;
  leg.length_mm_ = std::abs(angle) * radius_mm;
  return leg;
}

FitLeg FitLeg::back() const {
  FitLeg leg = *this;
  leg.along_ = -along_;
  leg.angle_ = -angle_;
  return leg;
}

SpacePoint FitLeg::place_at(SpacePoint p, double gone_mm) const {
  if (!is_swing()) return p + gone_mm * along_;
  return turned(p, std::copysign(gone_mm, angle_) / radius_mm_);
}

double FitLeg::pace_at(SpacePoint p) const {
  return is_swing() ? std::max(1.0, std::hypot(p.x, p.y) / radius_mm_) : 1;
}

std::optional<FitTouch> touch_on_way(const FitBody& moving, const FitPath& path, const FitBody& still) {
  return WayWatch(moving, path, still).run(false);
}

bool is_free_way(const FitBody& moving, const FitPath& path, const FitBody& still) {
  return !WayWatch(moving, path, still).run(true);
}

std::optional<FitSunk> sunk(const FitBody& first, const FitBody& second) {
  if (apart(first.box(), second.box())) return std::nullopt;
  FitSunk deepest;
  take_deeper(first, second, deepest);
  take_deeper(second, first, deepest);
  return deepest.deep_mm > kFitTouch_mm ? std::optional(deepest) : std::nullopt;
}

}  // namespace prismwright
