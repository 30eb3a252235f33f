#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/lens_values.h"
#include "core/optics/section.h"

namespace prismwright {

/// Which line a prism's profile is turned about.
enum class TurningAxis {
  lens,   ///< the upright axis Z: profile (r, z) -> radius r at height z
  panel,  ///< the panel's level axis: profile (r, z) -> r along the axis, |z| away from it
};

/// Which part of a turned ring is kept, seen about the panel's axis.
enum class Half { whole, upper, lower };

/// How the turned ring is cut. The two side planes are upright, pass through the lens axis at the given
/// azimuths from the panel's axis, and are set back into the panel by `set_back_mm` (moved parallel).
/// A half is cut by the level plane through the focus too, set back by `half_gap_mm`.
struct Trim {
  double clockwise_side_deg = -22.5;     ///< azimuth less the panel's axis; negative or 0
  double anticlockwise_side_deg = 22.5;  ///< positive or 0; the two differ by at most 180
  double set_back_mm = 0;
  Half half = Half::whole;
  double half_gap_mm = 0;
  /// Lens turning: what lies nearer than this along the panel's axis is cut away by a flat upright face.
  std::optional<double> flat_inner_mm = std::nullopt;
};

/// One prism of the lens: everything needed to make its solid.
struct PlannedPrism {
  std::string mark;  ///< "P03-R2a"
  int panel = 1;
  std::string zone;  ///< "R2": mark of its zone in the section
  ZoneKind kind = ZoneKind::centre;
  Profile profile;  ///< closed; for panel turning it never crosses z = 0 (a centre is its upper half)
  TurningAxis turning = TurningAxis::panel;
  /// Panel turning only: the turning axis crosses the lens axis at this height and falls seaward by this angle.
  /// The profile is then in the axis's own frame: r along it from that crossing, z away from it.
  double axis_z_mm = 0;
  double axis_dip_deg = 0;
  double axis_deg = 0;  ///< azimuth of the panel's axis: the solid is made at 0 and turned by this about Z
  Trim trim;
  std::string shape_key;  ///< equal keys: the same solid before turning to axis_deg (congruent prisms)
};

/// The whole lens as prisms to be made.
struct LensPlan {
  LensValues values;
  Section section;
  std::vector<PanelPlace> panels;
  std::vector<PlannedPrism> prisms;  ///< panel by panel, in each from the top down

  [[nodiscard]] const PlannedPrism* find(std::string_view mark) const;
};

/// Marks of prisms in the same panel that lie next to each other, as index pairs into `prisms`.
struct NeighbourPair {
  std::size_t first;
  std::size_t second;
};
std::vector<NeighbourPair> neighbours(const LensPlan& plan);

/// Works out section and plan, or says why it cannot be.
Outcome<LensPlan> plan_lens(const LensValues& values);

/// The plan of an already solved section (values as they were solved).
LensPlan plan_lens(const LensValues& values, Section section);

}  // namespace prismwright
