#pragma once

#include <optional>

#include "core/optics/face_path.h"
#include "core/optics/section.h"

namespace prismwright {

/// How the reflecting prisms of a band are made, in the band's own frame (focus at the origin, beam along +r).
struct PrismKind {
  double index = 1.4925;
  Faces faces = Faces::true_curve;
  Power power = Power::reflecting;
  double pair_radius_mm = 4000;  ///< of the hollow and full sides
};

/// A reflecting prism with sharp corners: its three faces as they are walked, anticlockwise.
struct PrismShape {
  SectionPoint start_a;       ///< the corner from which it was worked out; A itself but for a curved entry face
  ReflectingCorners corners;  ///< beta and gamma are the directions of the chords
  FacePath exit;              ///< A to C
  FacePath reflecting;        ///< C to B
  FacePath entry;             ///< B to A
};

/// The prism above the focal plane with corner A at `a` (r > 0, z > 0) and an entry side of `side_mm`; blank
/// where no such prism exists.
///
/// Angles: conditions of A. Stevenson, Account of the Skerryvore Lighthouse (1848), pp. 272-285: the focal ray
/// at A, refracted at AB, runs along AC; the ray reflected at B runs along BA and leaves AC level. With e the
/// elevation of A they come to sin xi = n sin ga, 2 xi - ga = 90 deg - e (closed form derived), beta = 90 deg +
/// e + xi, gamma = e + xi - ga.
///
/// Power in the reflecting face: true curve by equal optical path, Q = P + t d with t = (K - |P| + n P.e) /
/// (n (1 - d.e)), K = |B| - n B.e, e the direction of BA; or the arc through B whose tangents at B and C halve
/// the angle between the ray in and the ray out. Power in another face or in the historic pair: see
/// moved_power.h and historic_pair.h.
std::optional<PrismShape> make_prism(SectionPoint a, double side_mm, const PrismKind& kind);

/// Angles beta and gamma of a prism whose sides are straight, with corner A there (b and c are not set).
ReflectingCorners angles_at(SectionPoint a, double index);

/// The entry side seen as straight, from A (share 0) to B, with the focal ray refracted at a share of it.
struct StraightEntry {
  SectionPoint a;
  SectionPoint b;
  double index = 1.4925;

  [[nodiscard]] SectionPoint place(double share) const { return between(a, b, share); }
  [[nodiscard]] SectionDirection inside(double share) const;
};

/// Direction half way between two, for the tangent of a face that reflects one into the other; walked against
/// them.
SectionDirection mirror_tangent(SectionDirection in, SectionDirection out);

/// Diameter of the circle inside the three corners, mm: the section thickness that a caster cares for.
double circle_inside_mm(const ReflectingCorners& corners);

}  // namespace prismwright
