#pragma once

#include "geometry/fit_panel.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// The ways that parts of a panel may take out of their seats while the panel lies on one of its ribs.
class FitWays {
 public:
  FitWays(const FitPanel& panel, int first_rib);

  /// Far enough to be out of the panel on any way, mm.
  [[nodiscard]] double far_mm() const { return far_mm_; }
  /// How deep the part reaches into the rib, mm.
  [[nodiscard]] double held_mm(const FitUnit& unit) const;
  /// From the seat outward, until the part is out of the panel. Empty where the part has no such way.
  ///
  /// Off the rib round the lens axis any prism may go, by 45 deg at most: that is a tilt in the hand, of a
  /// degree or two where pockets are a few millimetres deep. All the way round it, by 170 deg at most, goes
  /// only what is turned about it: such a prism slides along its neighbours, while nothing guides another one
  /// so far round a line that is nowhere marked.
  [[nodiscard]] FitPath path(const FitUnit& unit, FitWay way) const;
  /// How far the part comes off the rib before it turns seaward or lampward, mm; 0 on other ways.
  [[nodiscard]] double off_rib_mm(const FitUnit& unit, FitWay way) const;

 private:
  [[nodiscard]] const FitRib& face() const { return panel_.faces[first_]; }
  [[nodiscard]] double short_of_clear_mm(const FitUnit& unit, const FitLeg& leg) const;
  [[nodiscard]] FitPath off_round(const FitUnit& unit) const;
  [[nodiscard]] FitPath all_round(const FitUnit& unit) const;

  const FitPanel& panel_;
  int first_;
  double far_mm_;
  double way_round_;  ///< 1 or -1: the way of turning that leads off the rib
};

}  // namespace prismwright
