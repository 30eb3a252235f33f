#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/optics/reflecting_zone.h"
#include "core/optics/section.h"

namespace prismwright {

/// A stack of reflecting prisms above the focal plane, in the frame of its band: the focal point at the origin,
/// the beam along +r. A lower stack is asked for as its mirror image. Angles in radians.
struct StackTask {
  Band band = Band::upper;
  PrismKind kind;
  PrismLands lands;
  double gap_mm = 0;
  BandSettings settings;
  double side_mm = 30;  ///< for division by side
  double limit = 0;     ///< elevation that the stack is to reach (all divisions but by hand)
  double aim = 0;       ///< what an elevation seen by the maker is less than one in this frame
  /// What the stack starts from: the limiting ray over what lies below, and the height of its top.
  double start_elevation = 0;
  double start_height_mm = 0;
  std::optional<SectionPoint> corner_a;  ///< given by the designer instead
};

/// One prism of a stack.
struct StackedPrism {
  ReflectingPrism prism;
  ElevationSpan reach;
  bool locked = false;
};

struct SolvedStack {
  std::vector<StackedPrism> prisms;
  std::vector<std::string> notes;
};

/// The stack, from the lowest prism up.
///
/// Each prism's corner A stands on the limiting ray of the one before (through its highest glass), at the
/// height of that one's corner C, then moved out along the ray by the setting gap: so no light escapes between
/// them. Where lands blunt the corners, A is lowered until the blunted corner stands on the limiting ray. By
/// side: the last prism is cut short at the limit; a rest too small for its lands is left out, with a note. By
/// count, area or height: so many prisms that end at the limit; by thickness: as few as need be, all alike.
/// Locked prisms stay; each run of prisms between them is divided by itself. Refuses, with the zone and the
/// reason, what cannot be.
Outcome<SolvedStack> solve_stack(const StackTask& task);

}  // namespace prismwright
