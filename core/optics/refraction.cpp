#include "core/optics/refraction.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

std::optional<SectionDirection> refract(SectionDirection ray, SectionDirection normal, double n_from,
                                        double n_to) {
  const double ratio = n_from / n_to;
  const double along = dot(ray, normal);
  const SectionDirection facing = along < 0 ? normal.reversed() : normal;
  const double cos_in = std::abs(along);
  const double sin_out_squared = ratio * ratio * (1 - cos_in * cos_in);
  if (sin_out_squared > 1) return std::nullopt;
  const double cos_out = std::sqrt(1 - sin_out_squared);
  return SectionDirection::along(ratio * ray + (cos_out - ratio * cos_in) * facing);
}

SectionDirection reflect(SectionDirection ray, SectionDirection normal) {
  return SectionDirection::along(1.0 * ray + (-2 * dot(ray, normal)) * normal);
}

double incidence(SectionDirection ray, SectionDirection normal) {
  return std::atan2(std::abs(cross(ray, normal)), std::abs(dot(ray, normal)));
}

double elevation_inside(double elevation, double index) { return std::asin(std::sin(elevation) / index); }

Reflectance fresnel(double incidence, double n_from, double n_to) {
  return fresnel_at_cosine(std::cos(incidence), n_from, n_to);
}

Reflectance fresnel_at_cosine(double cos_in, double n_from, double n_to) {
  const double ratio = n_from / n_to;
  const double cos_out_squared = 1 - ratio * ratio * (1 - cos_in * cos_in);
  if (cos_out_squared <= 0) return {1, 1};
  const double cos_out = std::sqrt(cos_out_squared);
  const double s = (n_from * cos_in - n_to * cos_out) / (n_from * cos_in + n_to * cos_out);
  const double p = (n_to * cos_in - n_from * cos_out) / (n_to * cos_in + n_from * cos_out);
  return {s * s, p * p};
}

double critical_angle(double index) { return std::asin(1 / index); }

}  // namespace prismwright
