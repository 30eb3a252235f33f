#pragma once

#include <optional>

#include "core/optics/band_settings.h"
#include "core/optics/face_path.h"

namespace prismwright {

/// A land as it is to be made: width of a flat, or radius.
struct Land {
  LandShape shape = LandShape::flat;
  double size_mm = 0;
};

/// The lands of a reflecting prism's corners.
struct PrismLands {
  Land a, b, c;
  [[nodiscard]] double greatest_mm() const;
};

/// What a land takes of the two faces that meet in a corner.
struct CornerCut {
  double before = 1;         ///< share at which the face that runs into the corner ends
  double after = 0;          ///< share at which the face that leaves the corner begins
  std::optional<Face> land;  ///< blank for a sharp corner
};

/// Blunts the corner where `before` ends and `after` begins. A flat takes equal straight lengths off both faces
/// and has its width within 1e-9 mm; a radius touches both faces. Blank when the land does not fit on the
/// faces.
std::optional<CornerCut> cut_corner(const FacePath& before, const FacePath& after, Land land);

/// Lowest and highest elevation of a land seen from the focus, radians: of its ends, and of a rounding's bulge.
struct ElevationSpan {
  double low = 0;
  double high = 0;
};
ElevationSpan span_of(const CornerCut& cut, const FacePath& before);

}  // namespace prismwright
