#pragma once

#include "tests/support/random_lens.h"

namespace prismwright {

/// What a maker may decide about ribs, pockets and rooms.
inline void draw_setting(FrameSettings& frame, Lot& lot) {
  frame.rib_mm = lot.between(2.5, 10);
  frame.pocket_mm = lot.once_in(4) ? frame.rib_mm : lot.between(0.3, 0.8) * frame.rib_mm;
  frame.setting_gap_mm = lot.once_in(8) ? 0 : lot.between(0.05, 1.5);
  frame.end_gap_mm = lot.once_in(8) ? 0 : lot.between(0.05, 0.6) * frame.pocket_mm;
  frame.rib_margin_mm = lot.between(4, 16);
  frame.heat_range_k = lot.between(0, 60);
  frame.moisture_percent = lot.between(0, 0.4);
  frame.shim_mm = lot.between(0, 0.5);
  frame.glazing_mm = lot.between(0, 0.5);
}

/// Two panels take from each other what two others keep.
inline void draw_widths(LensValues& values, Lot& lot) {
  auto& panels = values.panels;
  if (panels.size() < 4 || !lot.once_in(2)) return;
  const double moved = lot.between(0.05, 0.25) * panels[0].width_deg;
  panels[0].width_deg += moved;
  panels[1].width_deg -= moved;
  panels[0].axis_shift_deg = lot.between(-0.1, 0.1) * panels[0].width_deg;
}

inline LensValues random_frame_values(Lot& lot) {
  const char* orders[] = {"hyper-radial", "1", "2", "3", "3.5", "4", "5", "6"};
  LensValues values = lot.once_in(3)
                          ? random_lens(lot)
                          : starting_values(orders[lot.whole(0, 7)], lot.any<Work>(), lot.whole(2, 16));
  draw_setting(values.frame, lot);
  draw_widths(values, lot);
  return values;
}

/// Mostly few panels: a narrow door with deep ribs cannot swing out at all.
inline LensValues door_lens_values(Lot& lot) {
  const char* orders[] = {"hyper-radial", "1", "2", "3", "3.5", "4", "5", "6"};
  LensValues values = starting_values(orders[lot.whole(0, 7)], lot.any<Work>(),
                                      lot.once_in(4) ? lot.whole(6, 16) : lot.whole(2, 5));
  draw_setting(values.frame, lot);
  draw_widths(values, lot);
  return values;
}

/// What a maker may decide about a door: gaps from too small to wide, hinges from thin to stout, either side.
inline void draw_door(LensValues& values, Lot& lot) {
  FrameSettings& frame = values.frame;
  frame.door_panel = lot.whole(1, static_cast<int>(values.panels.size()));
  frame.door_hinge = lot.once_in(2) ? DoorHinge::left : DoorHinge::right;
  frame.door_gap_mm = lot.once_in(3) ? lot.between(0.05, 0.4) : lot.between(0.4, 0.4 * frame.rib_mm);
  frame.hinge_pin_mm = lot.between(3, 10);
  frame.door_open_deg = lot.between(20, 120);
}

/// Sometimes a lantern stands so near that the door may strike it, or a lamp changer within.
inline void draw_round(LensValues& values, Lot& lot) {
  const double focal_mm = values.brief.focal_mm;
  if (lot.once_in(4)) values.frame.lantern_radius_mm = lot.between(1.3, 2.2) * focal_mm;
  if (lot.once_in(4)) values.frame.changer_radius_mm = lot.between(0.1, 0.3) * focal_mm;
}

inline LensValues random_door_values(Lot& lot) {
  LensValues values = door_lens_values(lot);
  draw_door(values, lot);
  draw_round(values, lot);
  return values;
}

}  // namespace prismwright
