#include "core/light/polarised.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

/// Fresnel's amplitudes for fields across the plane of incidence (s) and in it (p), the latter measured along
/// propagation x s before and after the face.
struct Amplitudes {
  std::complex<double> s;
  std::complex<double> p;
};

struct Cosines {
  double in;
  std::complex<double> out;  ///< imaginary beyond the critical angle
};

Cosines cosines(SpaceVector in, SpaceVector normal, double n_from, double n_to) {
  const double c = std::min(1.0, std::abs(dot(in, normal)));
  const double sine2 = (n_from / n_to) * (n_from / n_to) * (1 - c * c);
  return {c, sine2 <= 1 ? std::complex<double>(std::sqrt(1 - sine2))
                        : std::complex<double>(0, std::sqrt(sine2 - 1))};
}

Amplitudes reflected(const Cosines& c, double n_from, double n_to) {
  return {(n_from * c.in - n_to * c.out) / (n_from * c.in + n_to * c.out),
          (n_to * c.in - n_from * c.out) / (n_to * c.in + n_from * c.out)};
}

/// A unit vector across the plane of incidence; any one across the ray where it runs along the normal.
SpaceVector across(SpaceVector in, SpaceVector normal) {
  const SpaceVector s = cross(in, normal);
  const double long_ = length(s);
  if (long_ > 1e-9) return (1 / long_) * s;
  const SpaceVector other = std::abs(in.x) < 0.7 ? SpaceVector{1, 0, 0} : SpaceVector{0, 1, 0};
  return unit(cross(in, other));
}

}  // namespace

PolarisedLight::PolarisedLight(SpaceVector along) {
  const SpaceVector one = across(along, std::abs(along.z) < 0.7 ? SpaceVector{0, 0, 1} : SpaceVector{1, 0, 0});
  const SpaceVector other = cross(along, one);
  fields_[0] = {one.x, one.y, one.z};
  fields_[1] = {other.x, other.y, other.z};
}

double PolarisedLight::power() const {
  double sum = 0;
  for (const Field& f : fields_) sum += std::norm(f.x) + std::norm(f.y) + std::norm(f.z);
  return 0.5 * sum;
}

template <class Amplitude>
void PolarisedLight::pass(SpaceVector in, SpaceVector out, SpaceVector normal, Amplitude s, Amplitude p) {
  const SpaceVector side = across(in, normal);
  const SpaceVector before = cross(in, side);
  const SpaceVector after = cross(out, side);
  for (Field& field : fields_) {
    const std::complex<double> in_s = s * part(field, side);
    const std::complex<double> in_p = p * part(field, before);
    field = {in_s * side.x + in_p * after.x, in_s * side.y + in_p * after.y, in_s * side.z + in_p * after.z};
  }
}

void PolarisedLight::refract(SpaceVector in, SpaceVector out, SpaceVector normal, double n_from, double n_to) {
  const Cosines c = cosines(in, normal, n_from, n_to);
  const double c_out = c.out.real();
  // Amplitudes scaled so that squares are powers: the beam's width and the index change at the face.
  const double scale = std::sqrt(n_to * c_out / (n_from * c.in));
  pass(in, out, normal, scale * 2 * n_from * c.in / (n_from * c.in + n_to * c_out),
       scale * 2 * n_from * c.in / (n_to * c.in + n_from * c_out));
}

void PolarisedLight::reflect(SpaceVector in, SpaceVector out, SpaceVector normal, double n_from, double n_to) {
  const Amplitudes r = reflected(cosines(in, normal, n_from, n_to), n_from, n_to);
  pass(in, out, normal, r.s, r.p);
}

}  // namespace prismwright
