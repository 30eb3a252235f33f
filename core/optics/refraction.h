#pragma once

#include <optional>

#include "core/optics/section_plane.h"

namespace prismwright {

/// Direction of a ray after it passes from index `n_from` into `n_to` through a face with unit normal `normal`
/// (either way round). Blank where the ray is totally reflected. Snell's law in vector form.
std::optional<SectionDirection> refract(SectionDirection ray, SectionDirection normal, double n_from,
                                        double n_to);

/// Direction of a ray after reflection at a face with unit normal `normal` (either way round).
SectionDirection reflect(SectionDirection ray, SectionDirection normal);

/// Angle between ray and normal, 0 to pi/2.
double incidence(SectionDirection ray, SectionDirection normal);

/// Elevation inside the glass of a focal ray at elevation `elevation` that enters a flat upright face, radians.
double elevation_inside(double elevation, double index);

/// Share of the power that a face reflects.
struct Reflectance {
  double s = 0;  ///< polarised across the plane of incidence
  double p = 0;  ///< polarised in the plane of incidence
  [[nodiscard]] double unpolarised() const { return 0.5 * (s + p); }
};

/// Fresnel's equations for a ray meeting a face at `incidence` radians, from index n_from into n_to; 1 and 1
/// where the reflection is total.
Reflectance fresnel(double incidence, double n_from, double n_to);

/// The same from the cosine of the incidence (0 to 1).
Reflectance fresnel_at_cosine(double cos_incidence, double n_from, double n_to);

/// Incidence from which reflection inside a medium of that index against air is total, radians.
double critical_angle(double index);

}  // namespace prismwright
