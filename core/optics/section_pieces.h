#pragma once

#include <vector>

#include "core/optics/face_curve.h"
#include "core/optics/proof.h"
#include "core/optics/refraction.h"

namespace prismwright {

struct PieceCurves;

/// Glass that a ray which has left a piece may still run into, with its extent in the aim frame of that piece:
/// `along` its beam and `across` it, mm from the section's origin.
struct GlassAhead {
  const PieceCurves* piece = nullptr;
  double along_from = 0;
  double along_to = 0;
  double across_from = 0;
  double across_to = 0;
};

/// One piece of glass in the section, above or below the focal plane, made ready for rays.
struct PieceCurves {
  const Zone* zone = nullptr;
  bool image = false;  ///< the lower image of a ring
  double aim = 0;      ///< depression of its band's beam, radians
  std::vector<FaceCurve> faces;
  std::vector<GlassAhead> ahead;  ///< pieces of which some part lies before its beam
};

/// What became of one ray, without the record of where it went.
struct TracedRay {
  Fate fate = Fate::escaped;
  LossCause cause = LossCause::between_prisms;
  const PieceCurves* piece = nullptr;  ///< that took the ray; null when it met none
  const SectionRib* rib = nullptr;     ///< that stopped it
  double departure_deg = 0;            ///< from the aim of the piece's band
  double least_margin = 0;             ///< radians; see RayPath::least_margin_deg
  double through = 1;
  double lost_at_reflection = 0;
  bool regular = false;
  bool below_aim = false;  ///< stray by its zone's own way, and below the aim
  double beam_z_mm = 0;    ///< height at which it left the glass, followed along the aim to the lens's front

  /// Whether both end in the same way at the same part of the lens.
  [[nodiscard]] bool goes_with(const TracedRay& other) const {
    return fate == other.fate && cause == other.cause && piece == other.piece && rib == other.rib &&
           regular == other.regular && below_aim == other.below_aim;
  }
};

/// Elevations between which something is seen from a source, radians.
struct SeenSpan {
  double low = 0;
  double high = 0;
};

/// The section as it is seen from one point of the lens axis.
struct SectionView {
  double source_z_mm = 0;
  std::vector<SeenSpan> pieces;  ///< of each piece, in their order
  SeenSpan band;                 ///< of the refracting band's inner edges
  std::vector<double> corners;   ///< elevations of all corners of glass and metal, and of touched curves
};

/// A band's light: its focal point, and the elevations that the band serves as seen from there, radians.
/// Neighbouring bands with one focal point make one sweep.
struct BandSweep {
  Band band = Band::refracting;  ///< the lowest of those that it serves
  double focus_z_mm = 0;
  SeenSpan span;
};

/// The whole section as pieces. Holds its own section; not movable, because pieces point into it.
struct SectionPieces {
  explicit SectionPieces(const Section& section);
  SectionPieces(const SectionPieces&) = delete;
  SectionPieces& operator=(const SectionPieces&) = delete;

  /// What is seen from a height on the lens axis.
  [[nodiscard]] SectionView seen_from(double source_z_mm) const;

  /// Follows the ray that leaves the view's source at `elevation` (radians) through whichever piece it meets
  /// first. With `record` the places and meetings are written there too.
  [[nodiscard]] TracedRay trace(const SectionView& view, double elevation, RayPath* record = nullptr) const;

  /// The band whose focal point a laser at this elevation is sent from: the refracting band up to its edges,
  /// the stacks beyond.
  [[nodiscard]] Band band_at(double elevation) const;
  /// The zone nearer to the axis of the gap through which a ray of the view passes; null beyond the band.
  [[nodiscard]] const Zone* zone_before_gap(const SectionView& view, double elevation) const;

  Section held;
  std::vector<PieceCurves> pieces;
  double critical;         ///< critical angle of the material, radians
  double front_r_mm = 0;   ///< greatest r of the glass
  SectionPoint band_foot;  ///< lowest and highest inner edge of the refracting band
  SectionPoint band_head;
  std::vector<BandSweep> sweeps;  ///< rising

 private:
  void add_piece(const Zone& zone, const Profile& profile, bool image);
  void find_band_edges();
  void find_glass_ahead();
  void find_sweeps();
};

}  // namespace prismwright
