#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"

namespace prismwright {

/// Room between a prism's end and the floor of its pocket, mm. A seat right through the rib leaves the same
/// room to the side plane.
struct EndRoom {
  double length_mm = 0;  ///< of the prism, from end to end; 0: it only leans over the rib and has no end there
  double drawn_mm = 0;
  double heat_mm = 0;
  double moisture_mm = 0;
  [[nodiscard]] double needed_mm() const { return heat_mm + moisture_mm; }
};

/// Room round a prism's sides in its pocket, mm. Shim and glazing stand in the same room: the thicker counts.
struct SideRoom {
  double extent_mm = 0;  ///< greatest extent of the section
  double drawn_mm = 0;
  double shim_mm = 0;
  double glazing_mm = 0;
  double heat_mm = 0;
  double moisture_mm = 0;
  [[nodiscard]] double needed_mm() const {
    return (shim_mm > glazing_mm ? shim_mm : glazing_mm) + heat_mm + moisture_mm;
  }
};

/// The setting rules for one prism in one rib.
struct SettingCheck {
  std::string mark;
  std::string rib;
  EndRoom end;
  SideRoom sides;
  bool end_enough = true;
  bool sides_enough = true;
};

/// Lengths of prisms by their marks, mm.
using PrismLengths = std::map<std::string, double, std::less<>>;

/// Checks every prism that a rib holds, rib by rib in the order of the frame, in each from the top down. A
/// prism that `lengths` does not hold is as long as end_to_end_mm says. Rules: needed_gap.h.
std::vector<SettingCheck> check_setting(const LensPlan& plan, const FramePlan& frame,
                                        const PrismLengths& lengths = {});

/// Greatest distance between two places of the prism's ends that come from one place of its section, mm; 0
/// where it has no end on either side. A half ring that clears one side ends there at the level that bounds it.
double end_to_end_mm(const PlannedPrism& prism);

/// What falls short and what to do, as one or two sentences; empty where nothing does.
std::string advice_on(const SettingCheck& check);

}  // namespace prismwright
