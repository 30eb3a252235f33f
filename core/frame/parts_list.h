#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// Parts that are alike, as one line of the parts list.
struct PartsLine {
  PartKind kind = PartKind::side_rib;
  PartMaking making = PartMaking::cut_flat;
  PartMetal metal = PartMetal::brass;
  double thickness_mm = 0;  ///< 0 for what is no plate
  /// Plates: smallest upright rectangle in their own frame, "312.4 x 88.1 mm". Screws "M3 x 12", pins, dowels
  /// and spacers diameter by length. Turned bars: their section.
  std::string size;
  std::vector<std::string> marks;
  int quantity = 0;
  std::optional<double> mass_g;  ///< of one; blank where the volume is not known
  std::string size_inches = {};  ///< `size` in inches; screws keep their name
};

/// Volumes by mark, mm3, where they are known from elsewhere: of turned bars, which have no closed form here.
using KnownVolumes = std::map<std::string, double>;

/// Every part of the frame, alike ones (by their shape keys) in one line: by kind, then in the order in which
/// they stand in the frame.
std::vector<PartsLine> parts_list(const FramePlan& frame, const KnownVolumes& known = {});

/// Volumes of turned bars by the closed integral of their section, bores left in.
KnownVolumes drawn_volumes(const FramePlan& frame);

struct PartsTotals {
  int pieces = 0;
  double brass_g = 0;
  double steel_g = 0;
  int unweighed = 0;  ///< pieces whose mass is not known and not counted
};
PartsTotals totals_of(const std::vector<PartsLine>& lines);

/// Exact: cylinder less its bore, with the cone of a sunk head, mm3. (Of a plate: core/frame/cut_shapes.h.)
double volume_mm3(const RoundPart& part);

}  // namespace prismwright
