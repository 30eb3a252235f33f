#pragma once

#include <string_view>
#include <vector>

#include "core/optics/section_plane.h"

namespace prismwright {

/// What a face of a prism does for the light.
enum class FaceRole {
  inner,        ///< refracting zone: where the focal ray enters
  outer,        ///< refracting zone: where the level ray leaves
  entry,        ///< reflecting zone: the side AB
  exit,         ///< reflecting zone: the side CA
  reflecting,   ///< reflecting zone: the side BC
  joint_upper,  ///< face towards the neighbour above
  joint_lower,  ///< face towards the neighbour below
  land,         ///< narrow flat that takes the place of a sharp corner
  axis,         ///< not a face of glass: the turning axis that closes a bull's-eye centre
};

/// How a face is shaped in the section.
enum class FaceKind {
  straight,    ///< between its two points
  arc,         ///< circle through its two points about `centre`, the shorter way
  true_curve,  ///< smooth curve through all its points, with the given tangents
};

/// One side of a prism in the section.
///
/// points: straight and arc, the two ends; true_curve, two or more points that lie on the exact curve.
/// tangents: true_curve only, one per point, the exact unit tangent in the direction of travel.
/// centre, radius_mm: arc only.
struct Face {
  FaceRole role = FaceRole::land;
  FaceKind kind = FaceKind::straight;
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  SectionPoint centre;
  double radius_mm = 0;

  [[nodiscard]] SectionPoint start() const { return points.front(); }
  [[nodiscard]] SectionPoint end() const { return points.back(); }
};

/// A closed outline in the section, walked anticlockwise (r to the right, z up): each face starts
/// exactly where the one before it ends, and the glass lies on the left of the walk.
struct Profile {
  std::vector<Face> faces;

  /// The face with this role, or null when there is none. Roles but `land` occur once.
  [[nodiscard]] const Face* find(FaceRole role) const;
};

std::string_view name_of(FaceRole role);  ///< "inner", "outer", "entry", ... as printed in JSON
std::string_view name_of(FaceKind kind);  ///< "straight", "arc", "true"

Face straight_face(FaceRole role, SectionPoint from, SectionPoint to);
Face arc_face(FaceRole role, SectionPoint from, SectionPoint to, SectionPoint centre, double radius_mm);
Face true_face(FaceRole role, std::vector<SectionPoint> points, std::vector<SectionDirection> tangents);

/// The same face walked the other way.
Face reversed(Face face);
/// The mirror image in the focal plane (z -> -z), walked so that it is anticlockwise again.
Profile mirrored(const Profile& profile);

/// The profile as a closed polygon (first point not repeated): curves are divided until no chord
/// departs from its curve by more than `chord_mm`. Anticlockwise.
std::vector<SectionPoint> polygon_of(const Profile& profile, double chord_mm);
/// Points along one face, both ends included, chords within `chord_mm` of the face.
std::vector<SectionPoint> points_along(const Face& face, double chord_mm);

/// Section area, mm2.
double area_mm2(const Profile& profile);
/// Centroid of the section.
SectionPoint centroid(const Profile& profile);

}  // namespace prismwright
