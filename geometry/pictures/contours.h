#pragma once

#include <vector>

#include "geometry/pictures/pictured_solid.h"

namespace prismwright {

/// A place where a round face turns away from the eye.
struct ContourNode {
  SpacePoint place;    ///< on the true face
  SpaceVector normal;  ///< of the face there, at right angles to the way to the eye
};
using Contour = std::vector<ContourNode>;

/// The lines on the round faces of a solid along which they turn away from an eye far off in the direction
/// `eye` (unit, in the solid's own frame). Hollow stretches, which never can be seen, are left out. Several
/// threads may ask at once.
std::vector<Contour> contours_of(const PicturedSolid& solid, SpaceVector eye);

}  // namespace prismwright
