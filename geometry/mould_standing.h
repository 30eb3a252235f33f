#pragma once

#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>

#include "core/works/works_settings.h"
#include "geometry/mould_sheet.h"
#include "geometry/mould_skin.h"

namespace prismwright {

/// An opening as it is planned, in the frame whose +Z is the draw.
struct PlannedOpening {
  bool gate = false;
  gp_Pnt foot;          ///< on the skin
  double floor_mm = 0;  ///< along up: where the opening begins, a hair within the cavity
  double top_mm = 0;    ///< along up: the high point that it serves
  double throat_mm = 0;
  double bore_mm = 0;
  std::string face;
  bool optical = false;
};

/// How a mould stands when it is filled.
struct Standing {
  gp_Dir up{1, 0, 0};
  std::vector<PlannedOpening> openings;  ///< the gate first
  double cost = 0;
};

/// Chooses which way is up (along a side of the block, of either sense) and where the gate and the vents stand:
/// the gate on a face that is no optical one where there is room, as near the highest place as it can; a vent
/// at every high point that the gate leaves more than 0.3 mm below or has no way to. Fewer openings, a wide
/// gate and a block that fits the vessel's height win, in the order: optical faces spared, vessel, gate,
/// openings. `skin` lies with its draw along +Z.
Standing chosen_standing(const MouldSkin& skin, const WorksSettings& settings);

/// The solids that an opening takes out of the lower and the upper half: round, and open towards the parting
/// (with 3 deg of draft) where it runs square to the draw, so that what sets in it can be drawn.
struct OpeningTools {
  std::vector<TopoDS_Shape> lower;
  std::vector<TopoDS_Shape> upper;
};
OpeningTools opening_tools(const PlannedOpening& opening, const gp_Dir& up, const BlockPlan& plan,
                           double bottom_mm, double top_mm);
/// Where an opening leaves the block.
gp_Pnt mouth_of(const PlannedOpening& opening, const gp_Dir& up, const BlockPlan& plan, double bottom_mm,
                double top_mm);

}  // namespace prismwright
