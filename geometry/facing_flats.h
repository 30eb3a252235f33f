#pragma once

#include <optional>

#include <gp_Trsf.hxx>

#include "geometry/solid_form.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// What two solids' flat faces tell of the room between them.
struct FacingFlats {
  double least_mm = 0;          ///< the gap is no less; 0 where no plane parts them
  std::optional<SolidGap> gap;  ///< exact, where two flats lie face to face; it may be a touch of gap 0
};

/// Two solids that each lie wholly behind a flat face of their own, with the faces parallel and looking at each
/// other, are as far apart as the two planes where the faces cover each other. `place` takes the second to the
/// frame in which the first was made; so are the points given. Faces count as parallel within 1e-9 radian.
FacingFlats facing_flats(const SolidForm& first, const SolidForm& second, const gp_Trsf& place);

/// The gap is no less than this: how far one solid stands in front of a flat face that the other lies behind.
double parted_by_flats_mm(const SolidForm& first, const SolidForm& second, const gp_Trsf& place);

}  // namespace prismwright
