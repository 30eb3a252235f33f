#pragma once

#include "core/base/outcome.h"
#include "core/optics/corner_cut.h"
#include "core/optics/prism_shape.h"

namespace prismwright {

/// A reflecting prism above the focal plane with lands on its corners, in the frame of its band (lower ones are
/// mirror images).
class ReflectingPrism {
 public:
  /// Blank where no such prism exists (see make_prism).
  static std::optional<ReflectingPrism> make(SectionPoint a, double side_mm, const PrismKind& kind,
                                             const PrismLands& lands);
  /// The prism whose corner B stands at `elevation` (radians, above A's).
  static std::optional<ReflectingPrism> reaching(SectionPoint a, double elevation, const PrismKind& kind,
                                                 const PrismLands& lands);

  [[nodiscard]] const PrismShape& shape() const { return shape_; }
  [[nodiscard]] const ReflectingCorners& corners() const { return shape_.corners; }
  [[nodiscard]] double side_mm() const { return side_mm_; }
  [[nodiscard]] double reflecting_chord_mm() const { return shape_.reflecting.chord_mm(); }

  /// Lowest and highest elevation of the glass seen from the focus, lands taken off, radians.
  [[nodiscard]] ElevationSpan reach() const;
  /// Its lower end alone.
  [[nodiscard]] double reach_low() const;

  /// Incidence on the reflecting face less the critical angle, for the ray that enters at `share` of AB,
  /// radians; near enough to tell whether a prism works (the proof traces every ray).
  [[nodiscard]] double margin(double share) const;

  /// The closed outline A, C, B with its lands; refused when they eat a face.
  [[nodiscard]] Outcome<Profile> profile() const;

 private:
  ReflectingPrism(PrismShape shape, double side_mm, double index, const PrismLands& lands)
      : shape_(std::move(shape)), side_mm_(side_mm), index_(index), lands_(lands) {}

  [[nodiscard]] Problem lands_eat(const char* side, double length_mm) const;

  PrismShape shape_;
  double side_mm_;
  double index_;
  PrismLands lands_;
};

/// The same flat on all three corners.
PrismLands flat_lands(double width_mm);

}  // namespace prismwright
