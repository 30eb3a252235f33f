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

FitBox swept(FitBox box, SpaceVector along, double length_mm) {
  FitBox all = box;
  all.take(box.low + length_mm * along);
  all.take(box.high + length_mm * along);
  return all;
}

// Follows one place along one leg; answers how far it came when it stood too deep.
std::optional<double> stopped_at(SpacePoint from, SpaceVector along, double length_mm, const FitBody& still) {
  const Stretch stretch = within(still.box(), from, along, length_mm);
  if (stretch.empty()) return std::nullopt;
  for (double t = stretch.from; t <= stretch.to;) {
    const double room = still.signed_mm(from + t * along);
    if (room < -kFitTouch_mm) return t;
    t += std::max(room, kFitStep_mm);
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
    for (const SpaceVector& leg : path_) {
      leg_mm_ = length(leg);
      if (leg_mm_ <= 0) continue;
      along_ = unit(leg);
      const FitBox here = {moving_.box().low + gone_, moving_.box().high + gone_};
      if (!apart(swept(here, along_, leg_mm_), still_.box())) follow_leg();
      if (std::isfinite(after_mm_)) return FitTouch{where_, gone_mm_ + after_mm_};
      gone_ = gone_ + leg;
      gone_mm_ += leg_mm_;
    }
    return std::nullopt;
  }

 private:
  void follow_leg() {
    for (const SpacePoint& p : moving_.skin()) {
      const SpacePoint from = p + gone_;
      if (stops(from, along_, still_)) where_ = from + after_mm_ * along_;
      if (done()) return;
    }
    // A place that stands still comes the other way, seen from the part that moves.
    for (const SpacePoint& p : still_.skin()) {
      if (stops(p - gone_, -along_, moving_)) where_ = p;
      if (done()) return;
    }
  }

  [[nodiscard]] bool done() const { return any_ && std::isfinite(after_mm_); }

  bool stops(SpacePoint from, SpaceVector along, const FitBody& body) {
    const auto stopped = stopped_at(from, along, std::min(leg_mm_, after_mm_), body);
    if (!stopped || *stopped >= after_mm_) return false;
    after_mm_ = *stopped;
    return true;
  }

  const FitBody& moving_;
  const FitPath& path_;
  const FitBody& still_;
  bool any_ = false;
  SpaceVector along_;
  double leg_mm_ = 0;
  SpaceVector gone_{};
  double gone_mm_ = 0;
  double after_mm_ = std::numeric_limits<double>::infinity();
  SpacePoint where_;
};

}  // namespace

std::optional<FitTouch> touch_on_way(const FitBody& moving, const FitPath& path, const FitBody& still) {
  return WayWatch(moving, path, still).run(false);
}

bool is_free_way(const FitBody& moving, const FitPath& path, const FitBody& still) {
  return !WayWatch(moving, path, still).run(true);
}

}  // namespace prismwright
