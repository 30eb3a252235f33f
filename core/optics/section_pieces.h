#pragma once

#include <vector>

#include "core/optics/face_curve.h"
#include "core/optics/proof.h"
#include "core/optics/refraction.h"

namespace prismwright {

/// One piece of glass in the section, above or below the focal plane, made ready for rays.
struct PieceCurves {
  const Zone* zone = nullptr;
  bool image = false;  ///< the lower image of a ring
  double low = 0;      ///< elevations between which the piece is seen from the focus, radians
  double high = 0;
  std::vector<FaceCurve> faces;
};

/// The whole section as pieces. Holds its own section; not movable, because pieces point into it.
struct SectionPieces {
  explicit SectionPieces(const Section& section);
  SectionPieces(const SectionPieces&) = delete;
  SectionPieces& operator=(const SectionPieces&) = delete;

  /// Follows the focal ray at `elevation` (radians) through whichever piece it meets first; with `only`, as
  /// if that piece stood alone.
  [[nodiscard]] RayPath trace(double elevation, const PieceCurves* only = nullptr) const;

  Section held;
  std::vector<PieceCurves> pieces;
  double band_top;  ///< elevation up to which the refracting band reaches
};

}  // namespace prismwright
