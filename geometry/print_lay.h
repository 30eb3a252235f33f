#pragma once

#include <optional>
#include <vector>

#include <gp_Trsf.hxx>

#include "core/base/outcome.h"
#include "geometry/master.h"

namespace prismwright {

/// How steeply a face stands to the layers of the print, and the steps that it gets.
///
/// Steepness is the angle between face and layer, 0 level to 90 upright. A step stands up from the face by
/// layer_mm x cos(steepness), measured square to the face: nothing on an upright face, a whole layer on one
/// that is all but level (one that is quite level has none, but no place of a curved face counts on that).
struct PrintedFace {
  MasterFace face;
  double area_mm2 = 0;
  double least_steep_deg = 0;
  double most_steep_deg = 0;
  double most_step_mm = 0;  ///< at the least steep place
  double mean_step_mm = 0;  ///< over the area
};

/// How a solid lies in the printer.
struct PrintLay {
  gp_Trsf place;  ///< from the master's frame to the printer's: Z up, lowest place at 0, within 0 to width and
                  ///< depth
  double width_mm = 0;  ///< of its box in that place
  double depth_mm = 0;
  double height_mm = 0;
  std::vector<PrintedFace> faces;   ///< in the order of MasterBody::faces; those of zero area left out
  double mean_optical_step_mm = 0;  ///< over all optical faces, by area
  double most_optical_step_mm = 0;
};

/// The printer's room, mm.
struct PrintRoom {
  double width_mm = 0;
  double depth_mm = 0;
  double height_mm = 0;
};
PrintRoom print_room(const WorksSettings& settings);

/// The best way to lay a solid: of all directions in which it fits the room, those in which its optical faces
/// stand steepest (their mean step no more than 2 % over the least found, or 1 % of a layer), and of these the
/// one that is least high; all alike where no face is optical. Directions are tried a few degrees apart all
/// over and along the solid's own faces, the best one then followed to 0.05 deg. Blank where it fits in none.
/// `faces` name the solid's faces in the order of TopExp_Explorer. Throws Standard_Failure.
std::optional<PrintLay> lay_solid(const TopoDS_Shape& solid, const std::vector<MasterFace>& faces,
                                  const PrintRoom& room, double layer_mm);

}  // namespace prismwright
