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
  /// From the seat outward, until the part is out of the panel. Empty where the part has no such way: round the
  /// lens axis goes only what is turned about it, and none of it by more than 170 deg or, off the rib, 45 deg.
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
