#pragma once

#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// A straight line or an arc in the section.
struct ChainPiece {
  SectionPoint from;
  SectionPoint to;
  double turn = 0;  ///< radians swept about `centre`, anticlockwise positive; 0: straight
  SectionPoint centre;
  double radius_mm = 0;

  [[nodiscard]] bool straight() const { return turn == 0; }
  [[nodiscard]] SectionDirection tangent_at_start() const;
  [[nodiscard]] SectionDirection tangent_at_end() const;
  /// Distance of a place from the piece, mm.
  [[nodiscard]] double distance_to(SectionPoint place) const;
};

/// How near arcs keep to a true curve unless it is said otherwise: a tenth of what polishing takes off
/// unevenly.
inline constexpr double kArcTolerance_mm = 0.002;
inline constexpr double kFinestArcTolerance_mm = 0.0001;
inline constexpr double kCoarsestArcTolerance_mm = 1;

/// The face as lines and arcs. Straight faces and arcs come out as they are; a true curve becomes pairs of arcs
/// that touch each other and, at the ends of each pair, the curve, none of them farther from it than
/// `tolerance_mm`. The pairs part the curve evenly, and there are no more of them than needed.
///
/// Each pair joins two places and tangents of the curve with equal legs d, |V - d (T0 + T1)| = 2 d, V the
/// chord: own derivation. A pair departs from a smooth curve by the third power of its length.
std::vector<ChainPiece> arcs_of(const Face& face, double tolerance_mm = kArcTolerance_mm);

/// The whole outline so, from face to face.
std::vector<ChainPiece> arcs_of(const Profile& profile, double tolerance_mm = kArcTolerance_mm);

/// The one arc through both ends of a face that departs least from it.
struct SingleArc {
  ChainPiece piece;
  double departs_mm = 0;  ///< its greatest distance from the face
};
SingleArc best_arc(const Face& face);

}  // namespace prismwright
