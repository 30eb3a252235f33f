#include "ui/models/setting_reasons.h"

#include <QCoreApplication>

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("SettingReasons", text); }

bool is_by_number(Division division) {
  return division == Division::count || division == Division::area || division == Division::height;
}

/// A reason that holds unless the quantity applies.
QString only(bool applies, const char* reason) { return applies ? QString() : tr(reason); }

/// Whether a band has prisms at all: it reaches beyond the refracting band.
bool has_prisms(const SectionSettings& section, Band band) {
  return (band == Band::upper ? section.upper_to_deg : section.lower_to_deg) > section.refracting_to_deg ||
         section.of(band).division == Division::by_hand;
}

QString reason_in_band(const SectionSettings& section, Band band, std::string_view name) {
  const Division division = section.of(band).division;
  if (band != Band::refracting && !has_prisms(section, band) && name != "division" && name != "rows")
    return tr("There are no such prisms");
  if (name == "count") return only(is_by_number(division), "Only for division by count, area or height");
  if (name == "side_mm") return only(division == Division::side, "Only for division by entry side");
  if (name == "thickness_mm") return only(division == Division::thickness, "Only for division by thickness");
  if (name == "to_deg") return only(division != Division::by_hand, "The zones by hand say where the band ends");
  if (name == "faces" && is_pair(section.of(band).power)) return tr("The historic pair is made of arcs");
  return {};
}

bool some_prisms(const SectionSettings& section) {
  return has_prisms(section, Band::upper) || has_prisms(section, Band::lower);
}

bool some_pair(const SectionSettings& section) {
  return is_pair(section.upper.power) || is_pair(section.lower.power);
}

QString reason_of_section(const SectionSettings& section, std::string_view name) {
  const bool ribs = section.upper_rib_mm > 0 || section.lower_rib_mm > 0;
  if (name == "rib_inner_r_mm" || name == "rib_outer_r_mm") return only(ribs, "There is no rib");
  if (name == "pair_radius_mm") return only(some_pair(section), "No band is the historic pair");
  if (name.starts_with("land") && !some_prisms(section)) return tr("There are no reflecting prisms");
  for (const auto& [corner, land] :
       {std::pair("land_a_shape", &section.land_a), std::pair("land_b_shape", &section.land_b),
        std::pair("land_c_shape", &section.land_c)})
    if (name == corner && !land->size_mm && section.land_mm <= 0) return tr("The corner is sharp");
  if (name == "reflecting_chord_mm") {
    const bool taken = (section.upper.division == Division::side && !section.upper.side_mm) ||
                       (section.lower.division == Division::side && !section.lower.side_mm);
    return only(taken, "No band takes its entry side from here");
  }
  if (name.starts_with("upper_start"))
    return only(has_prisms(section, Band::upper), "There are no upper prisms");
  if (name == "ring_growth_mm")
    return only(section.refracting.division == Division::thickness && section.refracting_margins_mm.empty(),
                "Only for division by thickness");
  return {};
}

QString reason_of_lamp(const Lamp& lamp, std::string_view name) {
  const bool flat = lamp.shape == LampShape::disc || lamp.shape == LampShape::tile;
  if (name == "flux_lm") return only(lamp.known == LampKnown::flux, "Luminance is given");
  if (name == "luminance_cd_mm2") return only(lamp.known == LampKnown::luminance, "Flux is given");
  if (name == "temperature_k") return only(lamp.light == LampLight::black_body, "Black body only");
  if (name == "line_nm") return only(lamp.light == LampLight::line, "Single line only");
  if (name == "spectrum") return only(lamp.light == LampLight::points, "By points only");
  if (name == "count" || name == "ring_mm") return only(lamp.set != LampSet::one, "One lamp only");
  if (name == "facing_deg") return only(flat && lamp.set != LampSet::ring, "Single flat lamp");
  if (name == "facing_up_deg") return only(flat, "Flat lamps only");
  return {};
}

QString reason_of_frame(const FrameSettings& frame, std::string_view name) {
  if (name.starts_with("door_") && name != "door_panel") return only(frame.door_panel > 0, "There is no door");
  if (name == "hinge_pin_mm") return only(frame.door_panel > 0, "There is no door");
  if (name == "changer_from_mm" || name == "changer_to_mm")
    return only(frame.changer_radius_mm > 0, "There is no changer");
  if (name == "pedestal_top_mm") return only(frame.pedestal_radius_mm > 0, "There is no pedestal");
  if (name == "spacer_mm")
    return only(frame.base_mm > 0 || frame.finial_mm > 0, "Neither base table nor finial");
  return {};
}

}  // namespace

QString idle_reason(const LensValues& values, std::string_view key) {
  if (key.starts_with("lamp.")) return reason_of_lamp(values.lamp, key.substr(5));
  if (key.starts_with("frame.")) return reason_of_frame(values.frame, key.substr(6));
  if (!key.starts_with("section.")) return {};
  const std::string_view name = key.substr(8);
  if (name == "inner_face")
    return only(values.turns_about_lens(Band::refracting), "Turned about the panel's axis, it is flat anyway");
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    const std::string_view band_name = name_of(band);
    if (!name.starts_with(band_name) || name.starts_with("upper_start") || name.ends_with("_rib_mm") ||
        name == "refracting_margins_mm")
      continue;
    return reason_in_band(values.section, band, name.substr(band_name.size() + 1));
  }
  return reason_of_section(values.section, name);
}

}  // namespace prismwright
