#pragma once

#include "core/base/outcome.h"
#include "core/optics/section.h"

namespace prismwright {

/// A reflecting prism above the focal plane (lower ones are mirror images).
///
/// Conditions: A. Stevenson, Account of the Skerryvore Lighthouse (1848), pp. 272-285: the focal ray at A,
/// refracted at AB, runs along AC; the ray reflected at B runs along BA and leaves AC level. With e the
/// elevation of A they come to sin xi = n sin ga, 2 xi - ga = 90 deg - e (closed form derived), beta = 90 deg +
/// e + xi, gamma = e + xi - ga. True reflecting curve (equal optical path): Q = P + t d with t = (K - |P| + n
/// P.e) / (n (1 - d.e)), K = |B| - n B.e, e the direction of BA. Historic arc: through B, tangents at B and C
/// halve the angle between the ray in and the ray out.
class ReflectingPrism {
 public:
  /// The prism with corner A at `a` (r > 0, z > 0), entry side `chord_mm` long.
  ReflectingPrism(SectionPoint a, double chord_mm, double index, Faces faces);
  /// The same prism cut short so that corner B stands at `elevation` (radians, above A's).
  static ReflectingPrism reaching(SectionPoint a, double elevation, double index, Faces faces);

  [[nodiscard]] const ReflectingCorners& corners() const { return corners_; }
  [[nodiscard]] double chord_mm() const { return distance(corners_.a, corners_.b); }
  [[nodiscard]] double reflecting_chord_mm() const { return distance(corners_.b, corners_.c); }

  /// Lowest and highest elevation of the glass seen from the focus when each corner carries a land, radians.
  struct Reach {
    double low;
    double high;
  };
  [[nodiscard]] Reach reach(double land_mm) const;

  /// Incidence on the reflecting face less the critical angle, for the ray that enters at `share` of AB,
  /// radians.
  [[nodiscard]] double margin(double share) const;

  /// The closed outline A, C, B with lands of `land_mm` at its corners; refused when they eat a face.
  [[nodiscard]] Outcome<Profile> profile(double land_mm) const;

 private:
  [[nodiscard]] SectionPoint entry_point(double share) const;
  [[nodiscard]] SectionDirection ray_inside(double share) const;
  [[nodiscard]] SectionPoint true_point(double share) const;
  [[nodiscard]] SectionDirection reflecting_tangent(double share) const;
  [[nodiscard]] double land_cut(double land_mm, bool at_b) const;
  [[nodiscard]] Face reflecting_face(double cut_c_mm, double cut_b_mm) const;
  [[nodiscard]] SectionPoint point_on_reflecting(double cut_mm, bool at_b) const;
  [[nodiscard]] double true_share_at(double cut_mm, bool at_b) const;
  void find_arc();

  ReflectingCorners corners_;
  double index_;
  Faces faces_;
  SectionDirection out_;  ///< direction of BA, the way of every useful ray inside after reflection
  SectionPoint centre_;   ///< historic arc
  double radius_mm_ = 0;
};

}  // namespace prismwright
