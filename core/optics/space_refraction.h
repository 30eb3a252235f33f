#pragma once

#include "core/base/space.h"

namespace prismwright {

/// Direction of a ray in space after a face with unit normal (either way round); blank where it is totally
/// reflected.
struct Refracted {
  bool total = false;
  SpaceVector along;
};
Refracted refract(SpaceVector along, SpaceVector normal, double n_from, double n_to);
inline SpaceVector reflect(SpaceVector along, SpaceVector normal) {
  return along - 2 * dot(along, normal) * normal;
}

}  // namespace prismwright
