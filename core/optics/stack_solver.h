#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/optics/section.h"

namespace prismwright {

enum class StackSide { upper, lower };

/// What a stack of reflecting prisms starts from, above the focal plane.
struct StackStart {
  double limiting_elevation = 0;         ///< of the last ring's limiting ray, radians
  double edge_height_mm = 0;             ///< height of that ring's outer edge
  std::optional<SectionPoint> corner_a;  ///< given by the designer instead
};

/// The stack of reflecting prisms up to `limit_deg`, as upper prisms (lower ones are their mirror images).
///
/// Each prism's corner A stands on the limiting ray of the one before (through its highest glass), at the
/// height of that one's corner C, then moved out along the ray by the setting gap: so no light escapes between
/// them. Where lands blunt the corners, A is lowered until the blunted corner stands on the limiting ray. Entry
/// sides keep their length; the last prism is cut short at the limit. A rest too small for its lands is left
/// out, with a note.
Outcome<std::vector<Zone>> solve_stack(const SectionInput& input, const StackStart& start, double limit_deg,
                                       StackSide side, std::vector<std::string>& notes);

}  // namespace prismwright
