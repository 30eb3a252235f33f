#include "geometry/fit_rib.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "geometry/fit_ways.h"

namespace prismwright {
namespace {

constexpr double kNotHeld_mm = 0.25;
// Ways out, as they are tried: the short ones first.
constexpr std::array kWays{FitWay::from_sea, FitWay::from_lamp, FitWay::from_sea_then_in,
                           FitWay::from_lamp_then_in, FitWay::square_to_rib};
// Ways that ask more of the hand, for what none of those frees.
constexpr std::array kWaysRound{FitWay::from_sea_then_round, FitWay::from_lamp_then_round,
                                FitWay::round_the_axis};
// Ways of several prisms together.
constexpr std::array kWaysTogether{FitWay::square_to_rib, FitWay::from_sea, FitWay::from_lamp};

constexpr bool is_round(FitWay way) {
  return std::find(kWaysRound.begin(), kWaysRound.end(), way) != kWaysRound.end();
}

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

using Units = std::vector<const FitUnit*>;

/// Works out one panel on one of its ribs. Whether one part holds another up on a way depends on nothing else,
/// so each answer is kept.
class RibFit {
 public:
  RibFit(const FitPanel& panel, int first, const std::vector<HomeClash>& clashes,
         const std::function<bool()>& go_on)
      : panel_(panel), first_(first), ways_(panel, first), clashes_(clashes), go_on_(go_on) {}

  PanelFit work() {
    fit_.panel = panel_.number;
    fit_.first_rib = panel_.ribs[first_].marks.front();
    fit_.second_rib = panel_.ribs[1 - first_].marks.front();
    for (const FitUnit& unit : panel_.prisms) left_.push_back(&unit);
    for (const FitUnit& unit : panel_.fixed) fixed_.push_back(&unit);
    take_all_out();
    if (std::erase_if(left_, [&](const FitUnit* unit) { return clash_of(*unit) != nullptr; }) > 0)
      take_all_out();
    write_steps();
    write_stuck();
    put_second_rib_on();
    return std::move(fit_);
  }

 private:
  struct TakenOut {
    Units units;
    FitWay way;
  };

  // A clash is told by itself: what stands in each other does not hold each other up, nor, at last, the rest,
  // which so gets an order all the same.
  [[nodiscard]] const HomeClash* clash_of(const FitUnit& a, const FitUnit& b) const {
    const auto found = std::find_if(clashes_.begin(), clashes_.end(), [&](const HomeClash& clash) {
      return (clash.first == &a && clash.second == &b) || (clash.first == &b && clash.second == &a);
    });
    return found == clashes_.end() ? nullptr : &*found;
  }

  // The deepest that it has with what is not the second rib, which is told of as it goes on.
  [[nodiscard]] const HomeClash* clash_of(const FitUnit& prism) const {
    const FitUnit* second_rib = &panel_.ribs[1 - first_];
    const auto found = std::find_if(clashes_.begin(), clashes_.end(), [&](const HomeClash& clash) {
      return clash.second != second_rib && (clash.first == &prism || clash.second == &prism);
    });
    return found == clashes_.end() || is_brass(prism) ? nullptr : &*found;
  }

  bool clears(const FitUnit& moving, FitWay way, const FitUnit& still) {
    const auto key = std::tuple(&moving, way, &still);
    if (const auto known = clears_.find(key); known != clears_.end()) return known->second;
    if (!go_on_()) throw FitStopped{};
    if (clash_of(moving, still)) return clears_[key] = true;
    return clears_[key] = is_free(moving, ways_.path(moving, way), still);
  }

  bool clears_all(const FitUnit& unit, FitWay way, const Units& others) {
    return std::all_of(others.begin(), others.end(),
                       [&](const FitUnit* other) { return other == &unit || clears(unit, way, *other); });
  }

  bool has_way_out(const FitUnit& unit, FitWay way) {
    return !ways_.path(unit, way).empty() && clears(unit, way, panel_.ribs[first_]) &&
           clears_all(unit, way, fixed_) && clears_all(unit, way, left_);
  }

  void take_out(const Units& units, FitWay way) {
    const auto goes = [&](const FitUnit* unit) {
      return std::find(units.begin(), units.end(), unit) != units.end();
    };
    std::erase_if(left_, goes);
    std::erase_if(fixed_, goes);
    taken_.push_back({units, way});
  }

  void take_all_out() {
    while (take_any_out(left_, kWays) || take_group_out(false) || take_any_out(fixed_, kWays) ||
           take_any_out(left_, kWaysRound) || take_group_out(true)) {
    }
  }

  // Prisms, or, where they wait for nothing else, rails and cross ribs: these go on when those are in.
  template <class Ways>
  bool take_any_out(const Units& units, const Ways& ways) {
    const std::size_t before = taken_.size();
    for (const FitUnit* unit : Units(units)) {
      const auto way = std::find_if(ways.begin(), ways.end(), [&](FitWay w) { return has_way_out(*unit, w); });
      if (way != ways.end()) take_out({unit}, *way);
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
    const double far = ways_.far_mm();
    const SpaceVector off = panel_.faces[first_].inward;
    const SpaceVector ways[] = {{far, 0, 0}, {-far, 0, 0}, {0, 0, far}, {0, 0, -far}, far * off, -far * off};
    const auto comes_off = [&](const FitUnit* unit) {
      if (!go_on_()) throw FitStopped{};
      return std::any_of(std::begin(ways), std::end(ways), [&](SpaceVector way) {
        return std::all_of(group.begin(), group.end(), [&](const FitUnit* other) {
          return other == unit || is_free(*unit, {FitLeg::straight(way)}, *other);
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
    fit_.steps.push_back(step_of({&panel_.ribs[first_]}, FitWay::laid));
    for (const FitUnit* unit : fixed_) fit_.steps.push_back(step_of({unit}, FitWay::screwed));
    for (auto taken = taken_.rbegin(); taken != taken_.rend(); ++taken) {
      Units units = taken->units;
      std::erase_if(units, [&](const FitUnit* unit) { return clash_of(*unit) != nullptr; });
      if (units.empty()) continue;
      const bool screwed = units.size() == 1 && is_brass(*units.front());
      fit_.steps.push_back(step_of(units, screwed ? FitWay::screwed : taken->way));
    }
  }

  FitStep step_of(const Units& units, FitWay way) {
    FitStep step;
    step.way = way;
    step.put_together = units.size() > 1;
    for (const FitUnit* unit : units) {
      step.marks.insert(step.marks.end(), unit->marks.begin(), unit->marks.end());
      if (way == FitWay::laid || way == FitWay::screwed) continue;
      step.into_pocket_mm = std::max(step.into_pocket_mm, ways_.held_mm(*unit));
      if (is_round(way)) step.round_mm = std::max(step.round_mm, ways_.path(*unit, way).front().length_mm());
    }
    if (step.into_pocket_mm < kNotHeld_mm) step.into_pocket_mm = 0;
    return step;
  }

  void write_stuck() {
    for (const FitUnit& unit : panel_.prisms) {
      if (const HomeClash* clash = clash_of(unit)) {
        fit_.cannot.push_back(clashing(unit, *clash));
      } else if (std::find(left_.begin(), left_.end(), &unit) != left_.end()) {
        fit_.cannot.push_back(blocked(unit));
      }
    }
  }

  static FitBlocked clashing(const FitUnit& unit, const HomeClash& clash) {
    FitBlocked blocked;
    blocked.marks = unit.marks;
    blocked.blocked_by = clash.first == &unit ? clash.second_mark : clash.first_mark;
    blocked.where = clash.sunk.where;
    blocked.deep_mm = clash.sunk.deep_mm;
    return blocked;
  }

  std::optional<Hold> first_hold(const FitUnit& unit, FitWay way) {
    std::optional<Hold> first;
    const auto take = [&](const FitUnit& other) {
      if (&other == &unit || clears(unit, way, other)) return;
      const auto found = first_touch(unit, ways_.path(unit, way), other);
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
    std::vector<FitWay> ways(kWays.begin(), kWays.end());
    ways.insert(ways.end(), kWaysRound.begin(), kWaysRound.end());
    for (const FitWay way : ways) {
      const auto hold = first_hold(unit, way);
      if (!hold || hold->touch.after_mm <= worst.left_mm) continue;
      worst.blocked_by = hold->by->marks.front();
      worst.where = hold->touch.where;
      worst.way = way;
      worst.left_mm = hold->touch.after_mm;
      worst.off_rib_mm = ways_.off_rib_mm(unit, way);
    }
    return worst;
  }

  void put_second_rib_on() {
    const FitUnit& rib = panel_.ribs[1 - first_];
    for (const HomeClash& clash : clashes_) {
      if (clash.second == &rib) return fit_.cannot.push_back(clashing(rib, clash));
    }
    const FitPath off{FitLeg::straight(-ways_.far_mm() * panel_.faces[1 - first_].inward)};
    std::optional<Hold> first;
    for (const FitUnit& unit : panel_.prisms) {
      if (std::find(left_.begin(), left_.end(), &unit) != left_.end()) continue;
      const auto found = first_touch(rib, off, unit);
      if (found && (!first || found->after_mm < first->touch.after_mm)) first = Hold{&unit, *found};
    }
    if (!first) return fit_.steps.push_back(step_of({&rib}, FitWay::square_to_rib));
    FitBlocked held;
    held.marks = rib.marks;
    held.blocked_by = first->by->marks.front();
    held.where = first->touch.where;
    held.way = FitWay::square_to_rib;
    held.left_mm = first->touch.after_mm;
    fit_.cannot.push_back(held);
  }

  const FitPanel& panel_;
  int first_;
  FitWays ways_;
  const std::vector<HomeClash>& clashes_;
  const std::function<bool()>& go_on_;
  PanelFit fit_;
  Units left_;   ///< prisms in place
  Units fixed_;  ///< rails and cross ribs in place
  std::vector<TakenOut> taken_;
  std::map<std::tuple<const FitUnit*, FitWay, const FitUnit*>, bool> clears_;
};

}  // namespace

PanelFit fit_on_rib(const FitPanel& panel, int first, const std::vector<HomeClash>& clashes,
                    const std::function<bool()>& go_on) {
  return RibFit(panel, first, clashes, go_on).work();
}

std::vector<OpenSeat> open_seats(const FitPanel& panel, const std::function<bool()>& go_on) {
  const double far = FitWays(panel, 0).far_mm();
  const auto has_way = [&](const FitUnit& unit, const FitPath& way) {
    const auto clears = [&](const FitUnit& other) { return &other == &unit || is_free(unit, way, other); };
    return clears(panel.ribs[0]) && clears(panel.ribs[1]) &&
           std::all_of(panel.fixed.begin(), panel.fixed.end(), clears) &&
           std::all_of(panel.prisms.begin(), panel.prisms.end(), clears);
  };
  std::vector<OpenSeat> seats;
  for (const FitUnit& unit : panel.prisms) {
    if (!go_on()) throw FitStopped{};
    const FitLeg out = FitLeg::straight({far, 0, 0});
    const OpenSeat seat{"", has_way(unit, {out}), has_way(unit, {out.back()})};
    if (!seat.from_sea && !seat.from_lamp) continue;
    for (const std::string& mark : unit.marks) seats.push_back({mark, seat.from_sea, seat.from_lamp});
  }
  return seats;
}

}  // namespace prismwright
