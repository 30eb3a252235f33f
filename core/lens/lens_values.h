#pragma once

#include <vector>

#include "core/frame/frame_settings.h"
#include "core/lens/brief.h"
#include "core/optics/section.h"

namespace prismwright {

/// Everything that a maker decides about one lens: the plain values that a lensbook holds and from which
/// the section, the plan, the solids and every page are worked out.
struct LensValues {
  Brief brief;
  Material material;
  std::vector<Panel> panels = equal_panels(8);
  SectionSettings section;
  FrameSettings frame;

  [[nodiscard]] SectionInput section_input() const {
    return {brief.focal_mm, material.effective_index(), section};
  }
};

}  // namespace prismwright
