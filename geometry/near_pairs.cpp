#include "geometry/near_pairs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace prismwright {
namespace {

constexpr double kNoLimit = std::numeric_limits<double>::max();

struct TiltedBox {
  gp_Vec middle;
  std::array<gp_Vec, 3> axes;
  std::array<double, 3> half;
  Bnd_Box upright;
};

TiltedBox box_of(const MeasuredPart& part) {
  const gp_Pnt low = part.form->box().CornerMin();
  const gp_Pnt high = part.form->box().CornerMax();
  TiltedBox box;
  const gp_Pnt middle((low.X() + high.X()) / 2, (low.Y() + high.Y()) / 2, (low.Z() + high.Z()) / 2);
  box.middle = gp_Vec(middle.Transformed(part.place).XYZ());
  box.axes = {gp_Vec(1, 0, 0).Transformed(part.place), gp_Vec(0, 1, 0).Transformed(part.place),
              gp_Vec(0, 0, 1).Transformed(part.place)};
  box.half = {(high.X() - low.X()) / 2, (high.Y() - low.Y()) / 2, (high.Z() - low.Z()) / 2};
  box.upright = part.form->box().Transformed(part.place);
  return box;
}

double half_along(const TiltedBox& box, const gp_Vec& axis) {
  double half = 0;
  for (int i = 0; i < 3; ++i) half += box.half[i] * std::abs(box.axes[i].Dot(axis));
  return half;
}

// The greatest distance that any of the boxes' own axes and the upright ones shows.
double parted_by(const TiltedBox& a, const TiltedBox& b, double enough_mm) {
  double most = a.upright.Distance(b.upright);
  const gp_Vec between = b.middle - a.middle;
  for (const auto* axes : {&a.axes, &b.axes}) {
    for (const gp_Vec& axis : *axes) {
      if (most > enough_mm) return most;
      most = std::max(most, std::abs(between.Dot(axis)) - half_along(a, axis) - half_along(b, axis));
    }
  }
  return std::max(most, 0.0);
}

class PairFinder {
 public:
  PairFinder(const LensPlan& plan, const FramePlan& frame, const std::vector<MeasuredPart>& parts)
      : parts_(parts) {
    for (std::size_t i = 0; i < parts.size(); ++i) places_[parts[i].mark] = i;
    for (const MeasuredPart& part : parts) boxes_.push_back(box_of(part));
    for (const NeighbourPair& pair : neighbours(plan)) {
      planned_.insert(in_order(plan.prisms[pair.first].mark, plan.prisms[pair.second].mark));
      order_.emplace_back(plan.prisms[pair.first].mark, plan.prisms[pair.second].mark);
    }
    for (const FrameJoint& joint : frame.joints) {
      joints_.insert(in_order(joint.first, joint.second));
      partners_[joint.first].push_back(joint.second);
      partners_[joint.second].push_back(joint.first);
    }
  }

  std::vector<WantedPair> find() {
    for (const auto& [first, second] : order_) {
      const auto a = places_.find(first);
      const auto b = places_.find(second);
      if (a != places_.end() && b != places_.end()) pairs_.push_back({a->second, b->second, kNoLimit, false});
    }
    sweep();
    // In the order of the parts, whatever order the sweep found them in.
    std::sort(pairs_.begin() + static_cast<std::ptrdiff_t>(order_count()), pairs_.end(),
              [](const WantedPair& a, const WantedPair& b) {
                return std::pair(a.first, a.second) < std::pair(b.first, b.second);
              });
    return std::move(pairs_);
  }

 private:
  using Marks = std::pair<std::string, std::string>;
  static Marks in_order(const std::string& a, const std::string& b) {
    return a < b ? Marks(a, b) : Marks(b, a);
  }
  [[nodiscard]] std::size_t order_count() const {
    return static_cast<std::size_t>(std::count_if(pairs_.begin(), pairs_.end(), [&](const WantedPair& pair) {
      return planned_.contains(in_order(parts_[pair.first].mark, parts_[pair.second].mark));
    }));
  }

  // By height: only what overlaps there within the widest reach is looked at.
  void sweep() {
    std::vector<std::size_t> by_low(parts_.size());
    for (std::size_t i = 0; i < by_low.size(); ++i) by_low[i] = i;
    std::vector<double> low;
    std::vector<double> high;
    for (const TiltedBox& box : boxes_) {
      low.push_back(box.upright.CornerMin().Z());
      high.push_back(box.upright.CornerMax().Z());
    }
    std::sort(by_low.begin(), by_low.end(), [&](std::size_t a, std::size_t b) { return low[a] < low[b]; });
    for (std::size_t i = 0; i < by_low.size(); ++i) {
      for (std::size_t k = i + 1; k < by_low.size() && low[by_low[k]] <= high[by_low[i]] + kNear_mm; ++k) {
        const auto [first, second] = std::minmax(by_low[i], by_low[k]);
        look(first, second);
      }
    }
  }

  static bool is_fastener(const MeasuredPart& part) {
    return part.kind == PartKind::screw || part.kind == PartKind::dowel;
  }

  // A screw or dowel ends flush in what it holds, so it may touch whatever that may touch.
  [[nodiscard]] bool may_touch(const MeasuredPart& a, const MeasuredPart& b) const {
    if (joints_.contains(in_order(a.mark, b.mark))) return true;
    if (is_fastener(b))
      return std::ranges::any_of(held_by(b), [&](const std::string& holder) {
        return holder == a.mark || joints_.contains(in_order(a.mark, holder)) ||
               (is_fastener(a) && std::ranges::any_of(held_by(a), [&](const std::string& other) {
                  return other == holder || joints_.contains(in_order(other, holder));
                }));
      });
    return is_fastener(a) && may_touch(b, a);
  }

  [[nodiscard]] const std::vector<std::string>& held_by(const MeasuredPart& part) const {
    static const std::vector<std::string> kNone;
    const auto found = partners_.find(part.mark);
    return found == partners_.end() ? kNone : found->second;
  }

  // Prisms come first in the list of parts.
  void look(std::size_t first, std::size_t second) {
    const MeasuredPart& a = parts_[first];
    const MeasuredPart& b = parts_[second];
    const double box_mm = parted_by(boxes_[first], boxes_[second], kNear_mm);
    if (a.prism && b.prism) {
      if (box_mm > kNearPrisms_mm || planned_.contains(in_order(a.mark, b.mark))) return;
      pairs_.push_back({first, second, kNearPrisms_mm, false});
    } else if (a.prism) {
      const bool own_rib = b.kind == PartKind::side_rib && b.panel == a.panel;
      if (own_rib || box_mm <= kNear_mm)
        pairs_.push_back({first, second, own_rib ? kNoLimit : kNear_mm, false});
    } else if (box_mm <= kNearMetal_mm) {
      const bool joint = may_touch(a, b);
      pairs_.push_back({first, second, joint ? kNoLimit : kNearMetal_mm, joint});
    }
  }

  const std::vector<MeasuredPart>& parts_;
  std::vector<TiltedBox> boxes_;
  std::map<std::string, std::size_t> places_;
  std::set<Marks> planned_;
  std::set<Marks> joints_;
  std::map<std::string, std::vector<std::string>> partners_;
  std::vector<Marks> order_;
  std::vector<WantedPair> pairs_;
};

}  // namespace

double box_distance_mm(const MeasuredPart& first, const MeasuredPart& second) {
  return parted_by(box_of(first), box_of(second), kNoLimit);
}

std::vector<WantedPair> near_pairs(const LensPlan& plan, const FramePlan& frame,
                                   const std::vector<MeasuredPart>& parts) {
  return PairFinder(plan, frame, parts).find();
}

}  // namespace prismwright
