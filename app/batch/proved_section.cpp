#include "app/batch/proved_section.h"

#include <algorithm>
#include <cmath>

#include "core/lens/zone_colours.h"
#include "geometry/glass_by_zone.h"

namespace prismwright {

namespace {

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

Json shares_json(const double (&share)[kFates]) {
  const auto of = [&](Fate fate) { return share[static_cast<int>(fate)]; };
  Json json;
  json["share_level"] = of(Fate::level);
  json["share_stray"] = of(Fate::stray);
  json["share_escaped"] = of(Fate::escaped);
  json["share_stopped"] = of(Fate::stopped);
  json["share_lost"] = of(Fate::lost_land) + of(Fate::lost_reflecting);
  json["share_lost_in_lands"] = of(Fate::lost_land);
  json["share_lost_at_reflection"] = of(Fate::lost_reflecting);
  return json;
}

Json lines_json(const ColourDepartures& departures) {
  Json json;
  json["F_deg"] = optional_json(departures.f);
  json["d_deg"] = optional_json(departures.d);
  json["C_deg"] = optional_json(departures.c);
  return json;
}

Json facet_json(const FacetDeparture& facet) {
  Json json;
  json["worst_departure_deg"] = facet.worst.departure_deg;
  json["worst_azimuth_deg"] = facet.worst.azimuth_deg;
  json["worst_elevation_deg"] = facet.worst.elevation_deg;
  json["worst_sideways_deg"] = facet.most_turned.sideways_deg;
  json["lit_to_deg"] = facet.lit_to_deg;
  json["share_own_way"] = facet.own_way;
  return json;
}

/// Signed: up positive, and sideways away from the panel's axis.
Json facets_json(const std::vector<FacetDeparture>& facets) {
  const FacetDeparture* worst = worst_of(facets);
  double sideways = 0;
  for (const FacetDeparture& facet : facets) {
    if (std::abs(facet.most_turned.sideways_deg) > std::abs(sideways))
      sideways = facet.most_turned.sideways_deg;
  }
  Json json;
  json["facet_worst_departure_deg"] = worst ? Json(worst->worst.departure_deg) : Json();
  json["facet_worst_zone"] = worst ? Json(worst->zone) : Json();
  json["facet_worst_sideways_deg"] = worst ? Json(sideways) : Json();
  json["facet_side_deg"] = worst ? Json(worst->side_deg) : Json();
  json["facet_lit_to_deg"] = worst ? Json(lit_to_deg(facets)) : Json();
  return json;
}

Json glass_json(const ZoneGlass& glass, double density_g_cm3) {
  Json json;
  json["pieces"] = glass.pieces;
  json["volume_mm3"] = glass.volume_mm3;
  json["mass_g"] = glass.volume_mm3 * density_g_cm3 / 1000;
  json["largest_mm3"] = glass.largest_mm3;
  json["largest_g"] = glass.largest_mm3 * density_g_cm3 / 1000;
  return json;
}

Json zone_json(const ProvedSection& proved, std::size_t index) {
  const ZoneProof& zone = proved.proof.zones[index];
  const ZoneColours& colours = proved.colours[index];
  const BandAim aim = proved.plan.section.aim_of(zone.kind);
  Json json;
  json["mark"] = zone.mark;
  json["kind"] = name_of(zone.kind);
  json["from_deg"] = zone.from_deg;
  json["to_deg"] = zone.to_deg;
  json["aim_deg"] = aim.aim_deg;
  json["focus_z_mm"] = aim.focus_z_mm;
  json["worst_departure_deg"] = zone.worst_departure_deg;
  json["least_margin_deg"] = optional_json(zone.least_margin_deg);
  json["share"] = zone.share;
  json["share_level"] = zone.share_level;
  json["through"] = zone.through;
  const FacetDeparture* facet = proved.facet_of(zone.mark);
  json["facet"] = facet ? facet_json(*facet) : Json();
  json["glass"] = glass_json(proved.glass[index], proved.plan.values.material.density_g_cm3);
  json["colour"] = lines_json(colours.middle);
  json["colour_low"] = lines_json(colours.low);
  json["colour_high"] = lines_json(colours.high);
  return json;
}

Json losses_json(const std::vector<LossByCause>& losses) {
  Json json = Json::array();
  for (const LossByCause& loss : losses) {
    Json row;
    row["cause"] = words_of(loss.cause);
    row["zone"] = loss.zone;
    row["share"] = loss.share;
    json.push_back(std::move(row));
  }
  return json;
}

Json lamp_json(const LampLineProof& lamp) {
  Json json;
  json["height_mm"] = lamp.lamp.height_mm;
  json["above_mm"] = lamp.lamp.above_mm;
  json.update(shares_json(lamp.share));
  json["share_of_lamp"] = lamp.share_of_lamp;
  json["share_own_way"] = lamp.own_way;
  json["share_own_way_within"] = lamp.within;
  json["rms_departure_deg"] = lamp.rms_departure_deg;
  json["lowest_departure_deg"] = lamp.lowest_departure_deg;
  json["highest_departure_deg"] = lamp.highest_departure_deg;
  return json;
}

Json beam_json(const std::vector<LightStrip>& strips) {
  Json json = Json::array();
  for (const LightStrip& strip : strips) {
    Json row;
    row["from_mm"] = strip.from_mm;
    row["to_mm"] = strip.to_mm;
    row["zone"] = strip.dark() ? Json() : Json(strip.zone);
    json.push_back(std::move(row));
  }
  return json;
}

Json elevations_json(const std::vector<LampStrip>& strips) {
  Json json = Json::array();
  for (const LampStrip& strip : strips) {
    Json row;
    row["from_deg"] = strip.from_deg;
    row["to_deg"] = strip.to_deg;
    row["zone"] = strip.zone.empty() ? Json() : Json(strip.zone);
    row["fate"] = name_of(strip.fate);
    row["cause"] = strip.cause == LossCause::none ? Json() : Json(words_of(strip.cause));
    json.push_back(std::move(row));
  }
  return json;
}

}  // namespace

const FacetDeparture* ProvedSection::facet_of(const std::string& zone) const {
  const auto found = std::find_if(facets.begin(), facets.end(),
                                  [&](const FacetDeparture& facet) { return facet.zone == zone; });
  return found == facets.end() ? nullptr : &*found;
}

ProvedSection prove_section(LensPlan plan, int elevations) {
  ProvedSection proved{std::move(plan), {}, {}, {}, {}, {}};
  const Section& section = proved.plan.section;
  const LensValues& values = proved.plan.values;
  proved.proof = prove(section, elevations);
  if (values.lamp.height_mm > 0 || values.lamp.above_mm != 0)
    proved.lamp = prove_lamp(section, {values.lamp.height_mm, values.lamp.above_mm});
  proved.glass = glass_by_zone(proved.plan);
  proved.facets = facet_departures(proved.plan);
  proved.colours = zone_colours(section, values.material);
  return proved;
}

Json proof_json(const ProvedSection& proved) {
  const Proof& proof = proved.proof;
  const Section& section = proved.plan.section;
  Json json;
  json["worst_departure_deg"] = proof.worst_departure_deg;
  json["worst_zone"] = proof.worst_zone;
  json.update(facets_json(proved.facets));
  json["level_within_deg"] = section.input.settings.level_within_deg;
  json.update(shares_json(proof.share));
  json["share_of_source"] = proof.share_of_source;
  json["through"] = proof.through;
  json["least_margin_deg"] = optional_json(proof.least_margin_deg);
  json["elevations"] = proof.elevations;
  json["lowest_deg"] = proof.lowest_deg;
  json["highest_deg"] = proof.highest_deg;
  json["losses"] = losses_json(proof.losses);
  if (proved.lamp) json["lamp"] = lamp_json(*proved.lamp);
  json["dark_strips_mm"] = Json::array();
  for (const BeamStrip& strip : proof.dark_strips) {
    json["dark_strips_mm"].push_back(Json::array({strip.from_mm, strip.to_mm}));
  }
  json["beam_strips"] = beam_json(proof.beam);
  json["elevation_strips"] = elevations_json(proof.lamp);
  json["zones"] = Json::array();
  for (std::size_t i = 0; i < proof.zones.size(); ++i) json["zones"].push_back(zone_json(proved, i));
  json["notes"] = section.notes;
  return json;
}

}  // namespace prismwright
