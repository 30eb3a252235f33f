#pragma once

#include <functional>
#include <optional>

#include <gp_Pnt.hxx>
#include <gp_Trsf.hxx>

#include "geometry/room_field.h"
#include "geometry/solid_form.h"

namespace prismwright {

/// Where a solid comes nearest to a part.
struct NearestPlace {
  double distance_mm = 0;
  gp_Pnt on_solid;
  gp_Pnt on_part;
};

/// The gap found is never too small (its places lie on the solid's own faces and edges and on the part), and
/// too great by no more than this, mm.
inline constexpr double kSearchWithin_mm = 2e-4;

/// The place on a solid's own faces and edges that is nearest to a part. Cells of faces and edges are taken in
/// the order of the least that they may hold, and halved, until none may hold a place nearer by more than
/// kSearchWithin_mm than the best one found. What a cell may hold follows from the distance's slope and bend in
/// its middle (room_field.h); a face's cell where the distance has a slope throughout holds no least place of
/// its own, as its edges are searched too.
///
/// `place` takes the solid from the frame that it was made in to the part's. Distance 0 where they meet; a part
/// wholly within the solid is not seen. Places farther than `no_farther_mm` are not looked for: blank when
/// there is none nearer, or when places that do not count (RoomField::counts) hide the nearest one.
std::optional<NearestPlace> nearest_place(const SolidForm& solid, const gp_Trsf& place, const RoomField& part,
                                          double no_farther_mm = std::numeric_limits<double>::max());

}  // namespace prismwright
