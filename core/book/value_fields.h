#pragma once

#include "core/lens/lens_values.h"

namespace prismwright {

/// Which column of which table holds which value: the one list that writing, reading and comparing go by.
///
/// `visit_table(name, values, fields)` is called for each table of one row; `fields(values, visit)` then calls
/// `visit(column, value)` for each column. Panels have a row each and are not among them. The columns
/// themselves stand in schema.cpp.
template <class Values, class VisitTable>
void for_each_table(Values& all, VisitTable&& visit_table) {
  visit_table("brief", all.brief, [](auto& brief, auto&& visit) {
    visit("title", brief.title);
    visit("client", brief.client);
    visit("order", brief.order);
    visit("focal_mm", brief.focal_mm);
    visit("work", brief.work);
    visit("character", brief.character);
    visit("notes", brief.notes);
    visit("height_m", brief.height_m);
  });
  visit_table("material", all.material, [](auto& material, auto&& visit) {
    visit("name", material.name);
    visit("index", material.index);
    visit("density_g_cm3", material.density_g_cm3);
    visit("temperature_c", material.temperature_c);
    visit("index_per_k", material.index_per_k);
    visit("wavelength_nm", material.wavelength_nm);
    visit("absorption_per_m", material.absorption_per_m);
    visit("tint", material.tint);
    visit("tint_mm", material.tint_mm);
  });
  visit_table("section", all.section, [](auto& section, auto&& visit) {
    visit("faces", section.faces);
    visit("joint", section.joint);
    visit("edge_mm", section.edge_mm);
    visit("ring_growth_mm", section.ring_growth_mm);
    visit("land_mm", section.land_mm);
    visit("gap_mm", section.gap_mm);
    visit("refracting_to_deg", section.refracting_to_deg);
    visit("refracting_margins_mm", section.refracting_margins_mm);
    visit("upper_to_deg", section.upper_to_deg);
    visit("lower_to_deg", section.lower_to_deg);
    visit("reflecting_chord_mm", section.reflecting_chord_mm);
    visit("upper_start_r_mm", section.upper_start_r_mm);
    visit("upper_start_z_mm", section.upper_start_z_mm);
    visit("level_within_deg", section.level_within_deg);
    visit("land_a_mm", section.land_a.size_mm);
    visit("land_a_shape", section.land_a.shape);
    visit("land_b_mm", section.land_b.size_mm);
    visit("land_b_shape", section.land_b.shape);
    visit("land_c_mm", section.land_c.size_mm);
    visit("land_c_shape", section.land_c.shape);
    visit("refracting_division", section.refracting.division);
    visit("refracting_count", section.refracting.count);
    visit("refracting_rows", section.refracting.rows);
    visit("refracting_faces", section.refracting.faces);
    visit("refracting_turning", section.refracting.turning);
    visit("refracting_focus_mm", section.refracting.focus_z_mm);
    visit("refracting_aim_deg", section.refracting.aim_deg);
    visit("upper_division", section.upper.division);
    visit("upper_count", section.upper.count);
    visit("upper_side_mm", section.upper.side_mm);
    visit("upper_thickness_mm", section.upper.section_thickness_mm);
    visit("upper_rows", section.upper.rows);
    visit("upper_power", section.upper.power);
    visit("upper_faces", section.upper.faces);
    visit("upper_turning", section.upper.turning);
    visit("upper_focus_mm", section.upper.focus_z_mm);
    visit("upper_aim_deg", section.upper.aim_deg);
    visit("lower_division", section.lower.division);
    visit("lower_count", section.lower.count);
    visit("lower_side_mm", section.lower.side_mm);
    visit("lower_thickness_mm", section.lower.section_thickness_mm);
    visit("lower_rows", section.lower.rows);
    visit("lower_power", section.lower.power);
    visit("lower_faces", section.lower.faces);
    visit("lower_turning", section.lower.turning);
    visit("lower_focus_mm", section.lower.focus_z_mm);
    visit("lower_aim_deg", section.lower.aim_deg);
    visit("pair_radius_mm", section.pair_radius_mm);
    visit("upper_rib_mm", section.upper_rib_mm);
    visit("lower_rib_mm", section.lower_rib_mm);
    visit("rib_inner_r_mm", section.rib_inner_r_mm);
    visit("rib_outer_r_mm", section.rib_outer_r_mm);
    visit("aim", section.aim_at);
    visit("inner_face", section.inner_face);
  });
  visit_table("frame", all.frame, [](auto& frame, auto&& visit) {
    visit("rib_mm", frame.rib_mm);
    visit("pocket_mm", frame.pocket_mm);
    visit("setting_gap_mm", frame.setting_gap_mm);
    visit("end_gap_mm", frame.end_gap_mm);
    visit("rib_margin_mm", frame.rib_margin_mm);
    visit("ring_mm", frame.ring_mm);
    visit("heat_range_k", frame.heat_range_k);
    visit("shim_mm", frame.shim_mm);
    visit("glazing_mm", frame.glazing_mm);
    visit("moisture_percent", frame.moisture_percent);
    visit("least_brass_mm", frame.least_brass_mm);
    visit("least_landing_mm", frame.least_landing_mm);
    visit("inside_radius_mm", frame.inside_radius_mm);
    visit("rail_mm", frame.rail_mm);
    visit("base_mm", frame.base_mm);
    visit("finial_mm", frame.finial_mm);
    visit("spacer_mm", frame.spacer_mm);
    visit("screw_mm", frame.screw_mm);
    visit("dowel_mm", frame.dowel_mm);
    visit("door_panel", frame.door_panel);
    visit("door_hinge", frame.door_hinge);
    visit("door_gap_mm", frame.door_gap_mm);
    visit("hinge_pin_mm", frame.hinge_pin_mm);
    visit("door_open_deg", frame.door_open_deg);
    visit("changer_radius_mm", frame.changer_radius_mm);
    visit("changer_from_mm", frame.changer_from_mm);
    visit("changer_to_mm", frame.changer_to_mm);
    visit("lantern_radius_mm", frame.lantern_radius_mm);
    visit("pedestal_radius_mm", frame.pedestal_radius_mm);
    visit("pedestal_top_mm", frame.pedestal_top_mm);
    visit("room_round_mm", frame.room_round_mm);
    visit("sheet_width_mm", frame.sheet_width_mm);
    visit("sheet_height_mm", frame.sheet_height_mm);
    visit("sheet_spacing_mm", frame.sheet_spacing_mm);
  });
  visit_table("lamp", all.lamp, [](auto& lamp, auto&& visit) {
    visit("height_mm", lamp.height_mm);
    visit("above_mm", lamp.above_mm);
    visit("shape", lamp.shape);
    visit("width_mm", lamp.width_mm);
    visit("set", lamp.set);
    visit("count", lamp.count);
    visit("ring_mm", lamp.ring_mm);
    visit("facing_deg", lamp.facing_deg);
    visit("facing_up_deg", lamp.facing_up_deg);
    visit("aside_x_mm", lamp.aside_x_mm);
    visit("aside_y_mm", lamp.aside_y_mm);
    visit("known", lamp.known);
    visit("flux_lm", lamp.flux_lm);
    visit("luminance_cd_mm2", lamp.luminance_cd_mm2);
    visit("light", lamp.light);
    visit("temperature_k", lamp.temperature_k);
    visit("line_nm", lamp.line_nm);
    visit("spectrum", lamp.spectrum);
  });
  visit_table("light", all.light, [](auto& light, auto&& visit) {
    visit("turn_s", light.turn_s);
    visit("turn_way", light.turn_way);
    visit("glazing_factor", light.glazing_factor);
    visit("service_factor", light.service_factor);
    visit("threshold_lux", light.threshold_lux);
    visit("visibility_nmi", light.visibility_nmi);
    visit("eye_height_m", light.eye_height_m);
    visit("integration_s", light.integration_s);
    visit("red_screen", light.red_screen);
    visit("green_screen", light.green_screen);
    visit("yellow_screen", light.yellow_screen);
    visit("board_mm", light.board_mm);
    visit("tilt_error_deg", light.tilt_error_deg);
    visit("shift_error_mm", light.shift_error_mm);
    visit("face_error_deg", light.face_error_deg);
    visit("index_error", light.index_error);
    visit("lamp_error_mm", light.lamp_error_mm);
    visit("trials", light.trials);
    visit("seed", light.seed);
    visit("sun_w_m2", light.sun_w_m2);
  });
  visit_table("works", all.works, [](auto& works, auto&& visit) {
    visit("resin", works.resin);
    visit("resin_batch", works.resin_batch);
    visit("resin_density_g_cm3", works.resin_density_g_cm3);
    visit("initiator_percent", works.initiator_percent);
    visit("tint_percent", works.tint_percent);
    visit("tint_name", works.tint_name);
    visit("shrink_length_percent", works.shrink_length_percent);
    visit("shrink_depth_percent", works.shrink_depth_percent);
    visit("shrink_height_percent", works.shrink_height_percent);
    visit("resin_head_percent", works.resin_head_percent);
    visit("stock_mm", works.stock_mm);
    visit("stock_faces", works.stock_faces);
    visit("print_width_mm", works.print_width_mm);
    visit("print_depth_mm", works.print_depth_mm);
    visit("print_height_mm", works.print_height_mm);
    visit("layer_mm", works.layer_mm);
    visit("key_mm", works.key_mm);
    visit("key_gap_mm", works.key_gap_mm);
    visit("mould_wall_mm", works.mould_wall_mm);
    visit("mould_draft_deg", works.mould_draft_deg);
    visit("gate_mm", works.gate_mm);
    visit("vent_mm", works.vent_mm);
    visit("pin_mm", works.pin_mm);
    visit("pin_gap_mm", works.pin_gap_mm);
    visit("mould_life", works.mould_life);
    visit("half_turn", works.half_turn);
    visit("scrap_percent", works.scrap_percent);
    visit("vessel_diameter_mm", works.vessel_diameter_mm);
    visit("vessel_height_mm", works.vessel_height_mm);
    visit("load_spacing_mm", works.load_spacing_mm);
    visit("thickness_ratio", works.thickness_ratio);
    visit("vessel_max_bar", works.vessel_max_bar);
    visit("vessel_max_c", works.vessel_max_c);
    visit("cure_bar", works.cure_bar);
    visit("cure_c", works.cure_c);
    visit("cure_h", works.cure_h);
    visit("anneal_c", works.anneal_c);
    visit("anneal_h_per_mm", works.anneal_h_per_mm);
    visit("anneal_least_h", works.anneal_least_h);
    visit("heating_c_per_h", works.heating_c_per_h);
    visit("cooling_c_per_h", works.cooling_c_per_h);
    visit("take_out_c", works.take_out_c);
    visit("room_c", works.room_c);
    visit("width_within_mm", works.width_within_mm);
    visit("angle_within_deg", works.angle_within_deg);
    visit("radius_within_percent", works.radius_within_percent);
    visit("length_within_mm", works.length_within_mm);
    visit("laser_within_deg", works.laser_within_deg);
    visit("master_h", works.master_h);
    visit("print_cm3_per_h", works.print_cm3_per_h);
    visit("mould_h", works.mould_h);
    visit("load_h", works.load_h);
    visit("anneal_hand_h", works.anneal_hand_h);
    visit("polish_h_per_dm2", works.polish_h_per_dm2);
    visit("prove_h", works.prove_h);
    visit("glaze_h", works.glaze_h);
    visit("frame_h", works.frame_h);
    visit("hours_a_week", works.hours_a_week);
    visit("start_date", works.start_date);
    visit("currency", works.currency);
    visit("hour_cost", works.hour_cost);
    visit("resin_cost_per_kg", works.resin_cost_per_kg);
    visit("print_cost_per_kg", works.print_cost_per_kg);
    visit("print_density_g_cm3", works.print_density_g_cm3);
    visit("tooling_cost_per_l", works.tooling_cost_per_l);
    visit("brass_cost_per_kg", works.brass_cost_per_kg);
  });
}

}  // namespace prismwright
