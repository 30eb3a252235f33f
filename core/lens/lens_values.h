#pragma once

#include <vector>

#include "core/frame/frame_settings.h"
#include "core/lens/brief.h"
#include "core/lens/sea_horizon.h"
#include "core/light/light_settings.h"
#include "core/optics/section.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// Everything that a maker decides about one lens: the plain values that a lensbook holds and from which
/// the section, the plan, the solids and every page are worked out.
struct LensValues {
  Brief brief;
  Material material;
  std::vector<Panel> panels = equal_panels(8);
  SectionSettings section;
  FrameSettings frame;
  Lamp lamp;
  LightSettings light;
  WorksSettings works;

  /// What a band's zones are turned about.
  [[nodiscard]] bool turns_about_lens(Band band) const {
    const BandTurning own = section.of(band).turning;
    return own == BandTurning::as_work ? brief.work == Work::belt : own == BandTurning::lens;
  }

  [[nodiscard]] SectionInput section_input() const {
    return {brief.focal_mm, material.effective_index(), section, horizon_dip_deg(brief.height_m),
            turns_about_lens(Band::refracting)};
  }
};

}  // namespace prismwright
