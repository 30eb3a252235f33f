#include "core/frame/joint_pattern.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/frame/door_places.h"

namespace prismwright {
namespace {

// Roomiest first; at 1 a place keeps just what is needed.
constexpr double kInsets[] = {2, 1.5, 1.2, 1};
constexpr double kStep_mm = 2;  // between places looked at along an edge
// A screw rather far out stands rather far from its height's middle, two for one.
constexpr double kAwayFromMiddle = 0.5;

struct Taken {
  PlatePoint at;
  double room_mm;
};

// Every corner of the region and places along its edges.
PlateOutline places_along(const PlateRegion& region) {
  PlateOutline places;
  for (const PlateOutline& outline : region) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlatePoint a = outline[i];
      const PlatePoint b = outline[i + 1 < outline.size() ? i + 1 : 0];
      const int steps = 1 + static_cast<int>(std::hypot(b.u - a.u, b.v - a.v) / kStep_mm);
      for (int k = 0; k < steps; ++k) {
        const double share = static_cast<double>(k) / steps;
        places.push_back({a.u + share * (b.u - a.u), a.v + share * (b.v - a.v)});
      }
    }
  }
  return places;
}

class PatternMaker {
 public:
  PatternMaker(const PlateRegion& brass, const JointNeeds& needs) : needs_(needs) {
    for (const double inset : kInsets) {
      screw_places_.push_back(places_along(grown(brass, -inset * needs.screw_room_mm, Corner::sharp)));
      dowel_places_.push_back(places_along(grown(brass, -inset * needs.dowel_room_mm, Corner::sharp)));
    }
  }

  JointPattern make() {
    JointPattern pattern;
    const double height = needs_.high_v_mm - needs_.low_v_mm;
    for (const double from : {2.0 / 3, 1.0 / 3, 0.0}) {
      const HeightRange third{needs_.low_v_mm + from * height, needs_.low_v_mm + (from + 1.0 / 3) * height};
      const double middle = (third.low + third.high) / 2;
      const auto outward = [&](PlatePoint p) { return p.u - kAwayFromMiddle * std::abs(p.v - middle); };
      if (const auto at = take(screw_places_, third, needs_.screw_room_mm, outward))
        pattern.screws.push_back(*at);
    }
    const double middle = (needs_.low_v_mm + needs_.high_v_mm) / 2;
    const auto far_out = [&](PlatePoint p) { return std::abs(p.v - middle); };
    for (const double from : {0.6, 0.0}) {
      const HeightRange end{needs_.low_v_mm + from * height, needs_.low_v_mm + (from + 0.4) * height};
      if (const auto at = take(dowel_places_, end, needs_.dowel_room_mm, far_out))
        pattern.dowels.push_back(*at);
    }
    return pattern;
  }

 private:
  template <class Score>
  std::optional<PlatePoint> take(const std::vector<PlateOutline>& by_inset, HeightRange heights, double room_mm,
                                 const Score& score) {
    for (const PlateOutline& places : by_inset) {
      const PlatePoint* best = nullptr;
      for (const PlatePoint& p : places) {
        if (p.v < heights.low || p.v > heights.high || !is_free(p, room_mm)) continue;
        if (!best || score(p) > score(*best)) best = &p;
      }
      if (!best) continue;
      taken_.push_back({*best, room_mm});
      return *best;
    }
    return std::nullopt;
  }

  [[nodiscard]] bool is_free(PlatePoint p, double room_mm) const {
    return std::all_of(taken_.begin(), taken_.end(), [&](const Taken& taken) {
      return std::hypot(p.u - taken.at.u, p.v - taken.at.v) >= room_mm + taken.room_mm;
    });
  }

  JointNeeds needs_;
  std::vector<PlateOutline> screw_places_;
  std::vector<PlateOutline> dowel_places_;
  std::vector<Taken> taken_;
};

}  // namespace

JointPattern joint_pattern(const PlateRegion& brass, const JointNeeds& needs) {
  if (brass.empty()) return {};
  return PatternMaker(brass, needs).make();
}

}  // namespace prismwright
