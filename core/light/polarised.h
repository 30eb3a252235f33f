#pragma once

#include <complex>

#include "core/base/space.h"

namespace prismwright {

/// Unpolarised light on its way through faces: two equal, independent parts, polarised at right angles to each
/// other at the start, each with what is left of its field. So s and p are kept apart along the whole path, the
/// turn of the plane of incidence from face to face and the phases of total reflection included.
class PolarisedLight {
 public:
  /// Light of power 1 along a unit vector.
  explicit PolarisedLight(SpaceVector along);

  /// Share of the power that is left, 0 to 1.
  [[nodiscard]] double power() const;

  /// Takes it through a face with unit normal (either way round) from index n_from into n_to, along the
  /// refracted unit vector `out`. Fresnel's equations.
  void refract(SpaceVector in, SpaceVector out, SpaceVector normal, double n_from, double n_to);
  /// Reflects it at a face. Beyond the critical angle without loss, with the phases of total reflection; else
  /// by Fresnel's equations.
  void reflect(SpaceVector in, SpaceVector out, SpaceVector normal, double n_from, double n_to);

 private:
  struct Field {
    std::complex<double> x, y, z;
  };
  [[nodiscard]] static std::complex<double> part(const Field& field, SpaceVector v) {
    return field.x * v.x + field.y * v.y + field.z * v.z;
  }
  template <class Amplitude>
  void pass(SpaceVector in, SpaceVector out, SpaceVector normal, Amplitude s, Amplitude p);

  Field fields_[2];
};

}  // namespace prismwright
