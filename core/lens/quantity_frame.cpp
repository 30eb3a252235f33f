#include "core/lens/quantity_table.h"

namespace prismwright {

namespace {

using Rows = std::vector<QuantityRow>;

/// Adds rows whose members are numbers of the frame.
class FrameRows {
 public:
  explicit FrameRows(Rows& rows) : rows_(rows) {}

  void length(const char* key, double min, double max, double FrameSettings::*member, const char* label,
              const char* meaning) {
    number(key, "mm", min, max, member, label, meaning);
  }
  void number(const char* key, const char* unit, double min, double max, double FrameSettings::*member,
              const char* label, const char* meaning) {
    rows_.push_back({number_quantity(key, unit, min, max, label, meaning),
                     NumberPlace([member](LensValues& v) -> double& { return v.frame.*member; })});
  }

 private:
  Rows& rows_;
};

using F = FrameSettings;

void add_ribs(FrameRows& rows) {
  rows.length("frame.rib_mm", 0.5, 60, &F::rib_mm, "Rib thickness",
              "Brass plate of a side rib; each panel has its own two");
  rows.length("frame.pocket_mm", 0, 60, &F::pocket_mm, "Pocket depth",
              "Blind pockets in the ribs that take the prism ends");
  rows.length("frame.setting_gap_mm", 0, 10, &F::setting_gap_mm, "Pocket gap",
              "Room round a prism's end in its pocket");
  rows.length("frame.end_gap_mm", 0, 10, &F::end_gap_mm, "End gap",
              "Room between a prism's end and the floor of its pocket");
  rows.length("frame.rib_margin_mm", 1, 100, &F::rib_margin_mm, "Rib margin",
              "Brass round the pockets in the outline of a rib");
  rows.length("frame.ring_mm", 1, 100, &F::ring_mm, "Ring thickness", "Top and bottom rings");
}

void add_setting(FrameRows& rows) {
  rows.number("frame.heat_range_k", "K", 0, 100, &F::heat_range_k, "Temperature range",
              "For which the needed gaps are worked out");
  rows.length("frame.shim_mm", 0, 5, &F::shim_mm, "Thinnest shim", "Kept under the seat of every prism");
  rows.length("frame.glazing_mm", 0, 10, &F::glazing_mm, "Least glazing",
              "Thinnest glazing compound that still holds and seals round a prism");
  rows.number("frame.moisture_percent", "%", 0, 2, &F::moisture_percent, "Moisture growth",
              "Growth in length of acrylic from its driest to its wettest state in service");
}

void add_cutting(FrameRows& rows) {
  rows.length("frame.least_brass_mm", 0, 50, &F::least_brass_mm, "Least brass",
              "Thinner brass between two edges of a plate is warned of");
  rows.length("frame.least_landing_mm", 0, 50, &F::least_landing_mm, "Least landing",
              "Least width on which a prism bears in its pocket");
  rows.length("frame.inside_radius_mm", 0, 20, &F::inside_radius_mm, "Inside radius",
              "Least radius that the cutter leaves in an inside corner; water jet 0.5 mm or more");
  rows.length("frame.sheet_width_mm", 50, 10000, &F::sheet_width_mm, "Sheet width",
              "Of the sheets that flat parts are cut from");
  rows.length("frame.sheet_height_mm", 50, 10000, &F::sheet_height_mm, "Sheet height",
              "Of the sheets that flat parts are cut from");
  rows.length("frame.sheet_spacing_mm", 0, 100, &F::sheet_spacing_mm, "Sheet spacing",
              "Between two parts on a sheet, and between a part and the sheet's edge");
}

void add_parts(FrameRows& rows) {
  rows.length("frame.rail_mm", 1, 100, &F::rail_mm, "Rail thickness",
              "Of the rails that join the two ribs of a panel, top and bottom");
  rows.length("frame.base_mm", 0, 200, &F::base_mm, "Base table", "Thickness of the base table; 0: none");
  rows.length("frame.finial_mm", 0, 100, &F::finial_mm, "Finial plate",
              "Thickness of the plate over the top ring; 0: none");
  rows.length("frame.spacer_mm", 0, 500, &F::spacer_mm, "Spacers",
              "Length of the spacers between the rings and base table or finial plate");
  rows.length("frame.screw_mm", 1, 30, &F::screw_mm, "Screws", "Nominal diameter of the frame's screws");
  rows.length("frame.dowel_mm", 1, 30, &F::dowel_mm, "Dowels",
              "Diameter of the dowels that set panel to panel");
}

void add_door(Rows& all, FrameRows& rows) {
  Quantity panel = number_quantity("frame.door_panel", "", 0, 32, "Door",
                                   "Number of the panel that opens as a door; 0: none");
  panel.form = QuantityForm::count;
  all.push_back({panel, CountPlace([](LensValues& v) -> int& { return v.frame.door_panel; })});
  all.push_back({choice_quantity("frame.door_hinge", choice_words<DoorHinge>(), "Hinged at",
                                 "The side of the door at which it hangs, as seen from the lamp"),
                 choice_place<DoorHinge>([](LensValues& v) -> DoorHinge& { return v.frame.door_hinge; })});
  rows.length("frame.door_gap_mm", 0.05, 20, &F::door_gap_mm, "Door gap",
              "Room round the door's ribs and rails when it is shut");
  rows.length("frame.hinge_pin_mm", 1, 50, &F::hinge_pin_mm, "Hinge pin", "Diameter of the hinges' pins");
  rows.number("frame.door_open_deg", "deg", 0, 180, &F::door_open_deg, "Door opens",
              "How far the door must open without touching anything");
}

void add_surroundings(FrameRows& rows) {
  rows.length("frame.changer_radius_mm", 0, 2000, &F::changer_radius_mm, "Changer radius",
              "Of the upright cylinder that holds lamp and lamp changer; 0: none");
  rows.length("frame.changer_from_mm", -5000, 5000, &F::changer_from_mm, "Changer from",
              "Lower end of that cylinder, height over the focal plane");
  rows.length("frame.changer_to_mm", -5000, 5000, &F::changer_to_mm, "Changer to",
              "Upper end of that cylinder, height over the focal plane");
  rows.length("frame.lantern_radius_mm", 0, 20000, &F::lantern_radius_mm, "Lantern glazing",
              "Inside radius of the lantern's glazing; 0: none");
  rows.length("frame.pedestal_radius_mm", 0, 5000, &F::pedestal_radius_mm, "Pedestal radius",
              "Of the pedestal that the lens stands on or over; 0: none");
  rows.length("frame.pedestal_top_mm", -10000, 0, &F::pedestal_top_mm, "Pedestal top",
              "Its height over the focal plane");
  rows.length("frame.room_round_mm", 0, 500, &F::room_round_mm, "Room round",
              "Least room between the lens and changer, lantern glazing or pedestal");
}

}  // namespace

void add_frame(Rows& rows) {
  FrameRows frame(rows);
  add_ribs(frame);
  add_setting(frame);
  add_parts(frame);
  add_cutting(frame);
  add_door(rows, frame);
  add_surroundings(frame);
}

}  // namespace prismwright
