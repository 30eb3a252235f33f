#pragma once

#include "core/lens/plan.h"

namespace prismwright {

/// A prism as printer, mould and vessel see it, without the solid modeller. Drawn size, not that of its master.
///
/// The box has its height along the upright and its length along the prism: level, along the tangent at the
/// prism's middle. A piece turned about the lens axis has its middle halfway between its ends, so that the box
/// of a lopsided panel is turned from the panel's axis by `turn_deg`; about a panel's axis the tangent at the
/// top is square to that axis and nothing is turned.
struct PrismSize {
  double length_mm = 0;
  double depth_mm = 0;     ///< seaward
  double height_mm = 0;    ///< upwards
  double turn_deg = 0;     ///< azimuth of the box's depth less the panel's axis, + anticlockwise
  double volume_mm3 = 0;   ///< core/lens/trimmed_volume.h
  double thickest_mm = 0;  ///< diameter of the greatest circle inside the section
  double mass_g = 0;
};

/// Box within 0.001 mm, thickest section within 0.001 mm. A prism of which its trim leaves nothing is all
/// zeros.
PrismSize prism_size(const PlannedPrism& prism, double density_g_cm3);

}  // namespace prismwright
