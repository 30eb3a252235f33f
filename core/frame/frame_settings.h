#pragma once

#include <optional>

namespace prismwright {

/// On which side of its panel a door hangs, as seen from the lamp.
enum class DoorHinge { left, right };

/// What a maker decides about the brass frame. Lengths in mm; ranges and meanings stand in the quantity table.
struct FrameSettings {
  double rib_mm = 5;            ///< thickness of one side rib; each panel has its own two
  double pocket_mm = 3;         ///< depth of the blind pockets, from the rib's inner face
  double setting_gap_mm = 0.5;  ///< room round a prism end in its pocket
  double end_gap_mm = 0.5;      ///< room between a prism's end and the floor of its pocket
  double rib_margin_mm = 8;     ///< brass round the pockets in the rib's outline
  double ring_mm = 8;           ///< thickness of the top and bottom rings
  double heat_range_k = 30;     ///< temperature range for which a needed gap is worked out

  // Setting rules.
  double shim_mm = 0.2;     ///< thinnest shim that is kept under a prism's seat
  double glazing_mm = 0.2;  ///< least thickness of glazing compound round a prism
  double moisture_percent =
      0.1;  ///< growth in length of acrylic from its driest to its wettest state in service

  // What cutting and bearing ask of the plates (common practice).
  double least_brass_mm = 1.5;    ///< thinnest brass between two edges before it is warned of
  double least_landing_mm = 1;    ///< least width on which a prism bears in its pocket
  double inside_radius_mm = 0.5;  ///< least radius of an inside corner that the cutter leaves

  // Parts beside the ribs and rings.
  double rail_mm = 8;     ///< thickness of the rails that join the two ribs of a panel, top and bottom
  double base_mm = 8;     ///< thickness of the base table; 0: none
  double finial_mm = 5;   ///< thickness of the finial plate; 0: none
  double spacer_mm = 20;  ///< length of the spacers between rings and base table or finial plate
  double screw_mm = 3;    ///< nominal diameter of all screws
  double dowel_mm = 3;    ///< diameter of the dowels that set panel to panel

  // The door.
  int door_panel = 0;  ///< number of the panel that opens; 0: none
  DoorHinge door_hinge = DoorHinge::left;
  double door_gap_mm = 0.5;   ///< room round the door's ribs and rails when it is shut
  double hinge_pin_mm = 5;    ///< diameter
  double door_open_deg = 90;  ///< how far the door must open

  // What stands round the lens and within it.
  double changer_radius_mm = 0;   ///< of the cylinder that holds lamp and lamp changer; 0: none
  double changer_from_mm = -100;  ///< its lower end over the focal plane
  double changer_to_mm = 60;      ///< its upper end
  double lantern_radius_mm = 0;   ///< inside of the lantern's glazing; 0: none
  double pedestal_radius_mm = 0;  ///< of the pedestal under the lens; 0: none
  double pedestal_top_mm = -400;  ///< its top over the focal plane
  double room_round_mm = 5;       ///< least room to changer, lantern glazing and pedestal

  // Sheets that flat parts are cut from.
  double sheet_width_mm = 1000;
  double sheet_height_mm = 600;
  double sheet_spacing_mm = 6;  ///< between parts, and between parts and the sheet's edge

  /// How far a prism's end stands back from the side plane of its panel.
  [[nodiscard]] double prism_set_back_mm() const { return rib_mm - pocket_mm + end_gap_mm; }
};

}  // namespace prismwright
