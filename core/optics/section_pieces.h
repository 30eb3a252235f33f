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
  std::vector<double> corners;  ///< elevations of the ends of its faces
  std::vector<FaceCurve> faces;
};

/// What became of one focal ray, without the record of where it went.
struct TracedRay {
  Fate fate = Fate::escaped;
  const PieceCurves* piece = nullptr;  ///< that took the ray; null when it met none
  double departure_deg = 0;
  double least_margin = 0;  ///< radians; see RayPath::least_margin_deg
  double through = 1;
  double lost_at_reflection = 0;
  bool regular = false;
  double exit_z_mm = 0;  ///< height at which it left the glass or ended
};

/// The whole section as pieces. Holds its own section; not movable, because pieces point into it.
struct SectionPieces {
  explicit SectionPieces(const Section& section);
  SectionPieces(const SectionPieces&) = delete;
  SectionPieces& operator=(const SectionPieces&) = delete;

  /// Follows the focal ray at `elevation` (radians) through whichever piece it meets first. With `record` the
  /// places and meetings are written there too.
  [[nodiscard]] TracedRay trace(double elevation, RayPath* record = nullptr) const;

  Section held;
  std::vector<PieceCurves> pieces;
  double critical;      ///< critical angle of the material, radians
  double band_top = 0;  ///< elevation up to which the refracting band reaches
};

}  // namespace prismwright
