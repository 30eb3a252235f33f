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
  });
  visit_table("material", all.material, [](auto& material, auto&& visit) {
    visit("name", material.name);
    visit("index", material.index);
    visit("density_g_cm3", material.density_g_cm3);
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
  });
  visit_table("frame", all.frame, [](auto& frame, auto&& visit) {
    visit("rib_mm", frame.rib_mm);
    visit("pocket_mm", frame.pocket_mm);
    visit("setting_gap_mm", frame.setting_gap_mm);
    visit("end_gap_mm", frame.end_gap_mm);
    visit("rib_margin_mm", frame.rib_margin_mm);
    visit("ring_mm", frame.ring_mm);
    visit("heat_range_k", frame.heat_range_k);
  });
}

}  // namespace prismwright
