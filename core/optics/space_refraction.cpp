#include "core/optics/space_refraction.h"

#include <cmath>

namespace prismwright {

Refracted refract(SpaceVector along, SpaceVector normal, double n_from, double n_to) {
  const double c = -dot(along, normal);
  const SpaceVector facing = c >= 0 ? normal : -normal;
  const double cosine = std::abs(c);
  const double ratio = n_from / n_to;
  const double rest = 1 - ratio * ratio * (1 - cosine * cosine);
  if (rest < 0) return {true, {}};
  return {false, unit(ratio * along + (ratio * cosine - std::sqrt(rest)) * facing)};
}

}  // namespace prismwright
