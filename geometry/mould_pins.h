#pragma once

#include <vector>

#include <gp_Pnt.hxx>
#include <gp_XY.hxx>

#include "core/works/works_settings.h"
#include "geometry/mould_rim.h"
#include "geometry/mould_sheet.h"
#include "geometry/mould_standing.h"

namespace prismwright {

/// Measures of a register pin and its hole, from the settings.
struct PinSize {
  double radius_mm = 4;
  double hole_radius_mm = 4.1;
  double length_mm = 8;  ///< over the parting at its axis
  double hole_length_mm = 8.5;
  double tip_mm = 1;  ///< chamfer of its tip
};
PinSize pin_size(const WorksSettings& settings);

/// Room that the pins want beside the casting, so that both its walls hold: to the cavity the mould wall, to
/// the outside of the block half of it.
double pin_room_mm(const WorksSettings& settings);

/// Where pins may stand in plan, two or three of them, as far apart as can be and not in one line: clear of the
/// rim by the mould wall, of the block's outside and the openings by half of it. Fewer where there is no room.
std::vector<gp_XY> pin_places(const RimmedMaster& master, const BlockPlan& plan, const Standing& standing,
                              const WorksSettings& settings);

/// A pin as it stands in the lower half from `depth_mm` under the parting, and the hole for it.
TopoDS_Shape pin_solid(const gp_Pnt& root, const PinSize& size, double depth_mm);
TopoDS_Shape pin_hole(const gp_Pnt& root, const PinSize& size, double depth_mm);

}  // namespace prismwright
