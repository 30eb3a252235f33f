#pragma once

#include "core/base/space.h"
#include "core/lens/plan.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// How much larger a master is than its casting, along three directions at right angles, and where these lie.
///
/// In the frame in which a prism's solid is made (panel's axis = +X, Z up, origin at the principal focus):
/// height is Z; depth is the level direction at the azimuth `turned_deg` from +X, length the level direction at
/// a quarter turn anticlockwise from depth. A prism turned about the lens axis has `turned_deg` half way
/// between its two sides, so that length is its tangent at its middle; halves and rings turned about a panel's
/// axis have 0: length is the panel's Y, whether that axis dips or not. The frame's origin stays where it is.
struct MasterStretch {
  double turned_deg = 0;
  double depth = 1;  ///< factors: master = casting x factor, factor = 1 / (1 - s / 100)
  double length = 1;
  double height = 1;

  /// All three alike within 1e-12: a plain enlargement, in which planes, cones and spheres stay what they are.
  [[nodiscard]] bool is_even() const;
  [[nodiscard]] double volume_factor() const { return depth * length * height; }
  /// A place of the casting as it is on the master, and back.
  [[nodiscard]] SpacePoint of_master(SpacePoint casting) const;
  [[nodiscard]] SpacePoint of_casting(SpacePoint master) const;
  /// The unit vectors of depth, length and height.
  [[nodiscard]] SpaceFrame frame() const;
};

MasterStretch master_stretch(const PlannedPrism& prism, const WorksSettings& settings);

}  // namespace prismwright
