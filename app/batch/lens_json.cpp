#include "app/batch/lens_json.h"

#include <algorithm>

namespace prismwright {

namespace {

Json material_json(const LensValues& values) {
  Json json = group_json(values, "material");
  json["index"] = values.material.effective_index();
  json["index_measured"] = values.material.index.has_value();
  return json;
}

Json section_json(const Section& section, const LensValues& values) {
  Json json = group_json(values, "section");
  json["lowest_deg"] = section.lowest_deg;
  json["highest_deg"] = section.highest_deg;
  json["notes"] = section.notes;
  return json;
}

Json panel_json(const LensPlan& plan, std::size_t index) {
  const PanelPlace& place = plan.panels[index];
  const Panel& panel = plan.values.panels[index];
  Json json;
  json["number"] = place.number;
  json["width_deg"] = panel.width_deg;
  json["axis_shift_deg"] = panel.axis_shift_deg;
  json["blind"] = panel.blind;
  json["axis_deg"] = place.axis_deg;
  json["from_deg"] = place.from_deg;
  json["to_deg"] = place.to_deg;
  json["prisms"] = std::count_if(plan.prisms.begin(), plan.prisms.end(),
                                 [&](const PlannedPrism& prism) { return prism.panel == place.number; });
  return json;
}

Json zone_json(const Zone& zone) {
  Json json;
  json["mark"] = zone.mark;
  json["kind"] = name_of(zone.kind);
  json["from_deg"] = zone.from_deg;
  json["to_deg"] = zone.to_deg;
  json["thickness_mm"] = zone.thickness_mm;
  json["profile"] = to_json(zone.profile);
  return json;
}

Json prism_json(const PlannedPrism& prism, const PrismBody& body) {
  Json json;
  json["mark"] = prism.mark;
  json["panel"] = prism.panel;
  json["zone"] = prism.zone;
  json["kind"] = name_of(prism.kind);
  json["turned_about"] = prism.turning == TurningAxis::lens ? "lens axis" : "panel axis";
  json["axis_deg"] = prism.axis_deg;
  // The profile of a prism turned about its panel's axis stands in that axis's frame.
  json["axis_z_mm"] = prism.axis_z_mm;
  json["axis_dip_deg"] = prism.axis_dip_deg;
  json["profile"] = to_json(prism.profile);
  json["volume_mm3"] = body.volume_mm3;
  json["mass_g"] = body.mass_g;
  json["greatest_length_mm"] = body.greatest_length_mm;
  const gp_Pnt& centre = body.centre_of_gravity_mm;
  json["centre_of_gravity_mm"] = Json::array({centre.X(), centre.Y(), centre.Z()});
  return json;
}

Json totals_json(const LensBodies& bodies) {
  double volume_mm3 = 0;
  double mass_g = 0;
  for (const PrismBody& body : bodies.prisms) {
    volume_mm3 += body.volume_mm3;
    mass_g += body.mass_g;
  }
  Json json;
  json["prisms"] = bodies.prisms.size();
  json["volume_mm3"] = volume_mm3;
  json["mass_g"] = mass_g;
  return json;
}

}  // namespace

Json lens_json(const MadePrisms& lens) {
  const LensPlan& plan = lens.plan;
  Json json;
  json["brief"] = group_json(plan.values, "brief");
  json["material"] = material_json(plan.values);
  json["section"] = section_json(plan.section, plan.values);
  json["frame"] = group_json(plan.values, "frame");
  json["panels"] = Json::array();
  for (std::size_t i = 0; i < plan.panels.size(); ++i) json["panels"].push_back(panel_json(plan, i));
  json["zones"] = Json::array();
  for (const Zone& zone : plan.section.zones) json["zones"].push_back(zone_json(zone));
  json["prisms"] = Json::array();
  for (std::size_t i = 0; i < plan.prisms.size(); ++i) {
    json["prisms"].push_back(prism_json(plan.prisms[i], lens.bodies.prisms[i]));
  }
  json["totals"] = totals_json(lens.bodies);
  return json;
}

}  // namespace prismwright
