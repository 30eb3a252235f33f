#include "geometry/fit_rib.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

namespace prismwright {
namespace {

constexpr double kClearOfRib_mm = 0.2;
constexpr double kNotHeld_mm = 0.25;
// Ways out, as they are tried: the short ones first.
constexpr std::array kWays{FitWay::from_sea, FitWay::from_lamp, FitWay::from_sea_then_in,
                           FitWay::from_lamp_then_in, FitWay::square_to_rib};
// Ways of several prisms together.
constexpr std::array kWaysTogether{FitWay::square_to_rib, FitWay::from_sea, FitWay::from_lamp};

/// A part that holds another up, and how far that one came.
struct Hold {
  const FitUnit* by = nullptr;
  FitTouch touch;
};

bool is_free(const FitUnit& moving, const FitPath& path, const FitUnit& still) {
  for (const auto& body : moving.bodies) {
    for (const auto& other : still.bodies) {
      if (!is_free_way(*body, path, *other)) return false;
    }
  }
  return true;
}

std::optional<FitTouch> first_touch(const FitUnit& moving, const FitPath& path, const FitUnit& still) {
  std::optional<FitTouch> first;
  for (const auto& body : moving.bodies) {
    for (const auto& other : still.bodies) {
      const auto found = touch_on_way(*body, path, *other);
      if (found && (!first || found->after_mm < first->after_mm)) first = found;
    }
  }
  return first;
}

double far_out_mm(const FitPanel& panel) {
  FitBox all = panel.ribs[0].bodies.front()->box();
  for (const FitUnit& unit : panel.prisms) {
    for (const auto& body : unit.bodies) {
      all.take(body->box().low);
      all.take(body->box().high);
    }
  }
  return 2 * length(all.high - all.low);
}

using Units = std::vector<const FitUnit*>;

/// Works out one panel on one of its ribs. Whether one part holds another up on a way depends on nothing else,
/// so each answer is kept.
class RibFit {
 public:
  RibFit(const FitPanel& panel, int first, const std::function<bool()>& go_on)
      : panel_(panel), first_(first), far_mm_(far_out_mm(panel)), go_on_(go_on) {}

  PanelFit work() {
    fit_.panel = panel_.number;
    fit_.first_rib = panel_.ribs[first_].marks.front();
    fit_.second_rib = panel_.ribs[1 - first_].marks.front();
    for (const FitUnit& unit : panel_.prisms) left_.push_back(&unit);
    for (const FitUnit& unit : panel_.fixed) fixed_.push_back(&unit);
    while (take_any_out(left_) || take_group_out(false) || take_any_out(fixed_) || take_group_out(true)) {
    }
    write_steps();
    for (const FitUnit* unit : left_) fit_.cannot.push_back(blocked(*unit));
    put_second_rib_on();
    return std::move(fit_);
  }

 private:
  struct TakenOut {
    Units units;
    FitWay way;
  };

  [[nodiscard]] const FitRib& face() const { return panel_.faces[first_]; }

  // How far a part must come off the rib until it stands clear of the pockets.
  [[nodiscard]] double held_mm(const FitUnit& unit) const {
    double held = 0;
    for (const auto& body : unit.bodies) {
      for (const SpacePoint& p : body->skin()) {
        held = std::max(held, face().inner_face_mm - dot(face().inward, p - SpacePoint{}));
      }
    }
    return std::min(held, face().inner_face_mm);
  }

  // The way out of the seat.
  [[nodiscard]] FitPath path(const FitUnit& unit, FitWay way) const {
    switch (way) {
      case FitWay::from_sea:
        return {{far_mm_, 0, 0}};
      case FitWay::from_lamp:
        return {{-far_mm_, 0, 0}};
      case FitWay::from_sea_then_in:
        return {(held_mm(unit) + kClearOfRib_mm) * face().inward, far_mm_ * face().seaward};
      case FitWay::from_lamp_then_in:
        return {(held_mm(unit) + kClearOfRib_mm) * face().inward, -far_mm_ * face().seaward};
      default:
        return {far_mm_ * face().inward};
    }
  }

  bool clears(const FitUnit& moving, FitWay way, const FitUnit& still) {
    const auto key = std::tuple(&moving, way, &still);
    if (const auto known = clears_.find(key); known != clears_.end()) return known->second;
    if (!go_on_()) throw FitStopped{};
    return clears_[key] = is_free(moving, path(moving, way), still);
  }

  bool clears_all(const FitUnit& unit, FitWay way, const Units& others) {
    return std::all_of(others.begin(), others.end(),
                       [&](const FitUnit* other) { return other == &unit || clears(unit, way, *other); });
  }

  bool has_way_out(const FitUnit& unit, FitWay way) {
    return clears(unit, way, panel_.ribs[first_]) && clears_all(unit, way, fixed_) &&
           clears_all(unit, way, left_);
  }

  void take_out(const Units& units, FitWay way) {
    const auto goes = [&](const FitUnit* unit) {
      return std::find(units.begin(), units.end(), unit) != units.end();
    };
    std::erase_if(left_, goes);
    std::erase_if(fixed_, goes);
    taken_.push_back({units, way});
  }

  // Prisms, or, where they wait for nothing else, rails and cross ribs: these go on when those are in.
  bool take_any_out(const Units& units) {
    const std::size_t before = taken_.size();
    for (const FitUnit* unit : Units(units)) {
      const auto way =
          std::find_if(kWays.begin(), kWays.end(), [&](FitWay w) { return has_way_out(*unit, w); });
      if (way != kWays.end()) take_out({unit}, *way);
    }
    return taken_.size() > before;
  }

  // The part with all that holds it up on this way, and what holds that up; empty when the rib does, or brass
  // that is to stay.
  Units with_holders(const FitUnit& unit, FitWay way, bool brass_too) {
    Units group{&unit};
    Units others = left_;
    if (brass_too) others.insert(others.end(), fixed_.begin(), fixed_.end());
    for (std::size_t i = 0; i < group.size(); ++i) {
      const FitUnit& member = *group[i];
      if (!clears(member, way, panel_.ribs[first_])) return {};
      if (!brass_too && !clears_all(member, way, fixed_)) return {};
      for (const FitUnit* other : others) {
        if (std::find(group.begin(), group.end(), other) == group.end() && !clears(member, way, *other)) {
          group.push_back(other);
        }
      }
    }
    return group;
  }

  bool take_group_out(bool brass_too) {
    std::optional<TakenOut> fewest;
    for (const FitWay way : kWaysTogether) {
      for (const FitUnit* unit : left_) {
        Units group = with_holders(*unit, way, brass_too);
        if (group.empty() || (fewest && fewest->units.size() <= group.size()) || !nests(group)) continue;
        fewest = TakenOut{std::move(group), way};
      }
    }
    if (!fewest) return false;
    std::sort(fewest->units.begin(), fewest->units.end());  // prisms as they stand in the panel
    take_out(fewest->units, fewest->way);
    return true;
  }

  // Whether they can be put together with no rib near: taken from each other one by one, straight.
  bool nests(Units group) {
    const SpaceVector off = face().inward;
    const SpaceVector ways[] = {{far_mm_, 0, 0},  {-far_mm_, 0, 0}, {0, 0, far_mm_},
                                {0, 0, -far_mm_}, far_mm_ * off,    -far_mm_ * off};
    const auto comes_off = [&](const FitUnit* unit) {
      if (!go_on_()) throw FitStopped{};
      return std::any_of(std::begin(ways), std::end(ways), [&](SpaceVector way) {
        return std::all_of(group.begin(), group.end(), [&](const FitUnit* other) {
          return other == unit || is_free(*unit, {way}, *other);
        });
      });
    };
    while (group.size() > 1) {
      const auto loose = std::find_if(group.begin(), group.end(), comes_off);
      if (loose == group.end()) return false;
      group.erase(loose);
    }
    return true;
  }

  [[nodiscard]] bool is_brass(const FitUnit& unit) const {
    return std::any_of(panel_.fixed.begin(), panel_.fixed.end(), [&](const FitUnit& f) { return &f == &unit; });
  }

  void write_steps() {
    fit_.steps.push_back({panel_.ribs[first_].marks, FitWay::laid, false, 0, ""});
    for (const FitUnit* unit : fixed_) fit_.steps.push_back({unit->marks, FitWay::screwed, false, 0, ""});
    for (auto taken = taken_.rbegin(); taken != taken_.rend(); ++taken) {
      const bool together = taken->units.size() > 1;
      FitStep step{
          {}, !together && is_brass(*taken->units.front()) ? FitWay::screwed : taken->way, together, 0, ""};
      for (const FitUnit* unit : taken->units) {
        step.marks.insert(step.marks.end(), unit->marks.begin(), unit->marks.end());
        step.into_pocket_mm = std::max(step.into_pocket_mm, held_mm(*unit));
      }
      if (step.into_pocket_mm < kNotHeld_mm) step.into_pocket_mm = 0;
      fit_.steps.push_back(std::move(step));
    }
  }

  std::optional<Hold> first_hold(const FitUnit& unit, FitWay way) {
    std::optional<Hold> first;
    const auto take = [&](const FitUnit& other) {
      if (&other == &unit || clears(unit, way, other)) return;
      const auto found = first_touch(unit, path(unit, way), other);
      if (found && (!first || found->after_mm < first->touch.after_mm)) first = Hold{&other, *found};
    };
    take(panel_.ribs[first_]);
    for (const FitUnit* other : fixed_) take(*other);
    for (const FitUnit* other : left_) take(*other);
    return first;
  }

  // The hold on the way that goes farthest.
  FitBlocked blocked(const FitUnit& unit) {
    FitBlocked worst;
    worst.marks = unit.marks;
    worst.left_mm = -1;
    for (const FitWay way : kWays) {
      const auto hold = first_hold(unit, way);
      if (!hold || hold->touch.after_mm <= worst.left_mm) continue;
      worst.blocked_by = hold->by->marks.front();
      worst.where = hold->touch.where;
      worst.way = way;
      worst.left_mm = hold->touch.after_mm;
    }
    return worst;
  }

  void put_second_rib_on() {
    const FitUnit& rib = panel_.ribs[1 - first_];
    const FitPath off{-far_mm_ * panel_.faces[1 - first_].inward};
    std::optional<Hold> first;
    for (const TakenOut& taken : taken_) {
      for (const FitUnit* unit : taken.units) {
        const auto found = first_touch(rib, off, *unit);
        if (found && (!first || found->after_mm < first->touch.after_mm)) first = Hold{unit, *found};
      }
    }
    if (!first) return fit_.steps.push_back({rib.marks, FitWay::square_to_rib, false, 0, ""});
    fit_.cannot.push_back({rib.marks, first->by->marks.front(), first->touch.where, FitWay::square_to_rib,
                           first->touch.after_mm, ""});
  }

  const FitPanel& panel_;
  int first_;
  double far_mm_;
  const std::function<bool()>& go_on_;
  PanelFit fit_;
  Units left_;   ///< prisms in place
  Units fixed_;  ///< rails and cross ribs in place
  std::vector<TakenOut> taken_;
  std::map<std::tuple<const FitUnit*, FitWay, const FitUnit*>, bool> clears_;
};

}  // namespace

PanelFit fit_on_rib(const FitPanel& panel, int first, const std::function<bool()>& go_on) {
  return RibFit(panel, first, go_on).work();
}

std::vector<OpenSeat> open_seats(const FitPanel& panel, const std::function<bool()>& go_on) {
  const double far = far_out_mm(panel);
  const auto has_way = [&](const FitUnit& unit, const FitPath& way) {
    const auto clears = [&](const FitUnit& other) { return &other == &unit || is_free(unit, way, other); };
    return clears(panel.ribs[0]) && clears(panel.ribs[1]) &&
           std::all_of(panel.fixed.begin(), panel.fixed.end(), clears) &&
           std::all_of(panel.prisms.begin(), panel.prisms.end(), clears);
  };
  std::vector<OpenSeat> seats;
  for (const FitUnit& unit : panel.prisms) {
    if (!go_on()) throw FitStopped{};
    const OpenSeat seat{"", has_way(unit, {{far, 0, 0}}), has_way(unit, {{-far, 0, 0}})};
    if (!seat.from_sea && !seat.from_lamp) continue;
    for (const std::string& mark : unit.marks) seats.push_back({mark, seat.from_sea, seat.from_lamp});
  }
  return seats;
}

}  // namespace prismwright
