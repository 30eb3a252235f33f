#include "app/batch/section_zones.h"

#include <fmt/format.h>

#include "app/batch/text_table.h"
#include "core/lens/section_compare.h"

namespace prismwright {

namespace {

Json zone_json(const Section& section, const Zone& zone) {
  const ZoneFigures figures = figures_of(section, zone);
  Json json;
  json["mark"] = zone.mark;
  json["kind"] = name_of(zone.kind);
  json["band"] = name_of(band_of(zone.kind));
  json["from_deg"] = zone.from_deg;
  json["to_deg"] = zone.to_deg;
  json["size_by"] = size_word(figures.size_by);
  json["size_mm"] = figures.size_mm;
  json["thickness_mm"] = zone.thickness_mm;
  json["section_thickness_mm"] = zone.section_thickness_mm;
  json["locked"] = zone.locked;
  return json;
}

}  // namespace

std::string_view size_word(SizeBy by) { return by == SizeBy::margin_mm ? "margin" : "side"; }

Json zones_json(const Section& section) {
  Json zones = Json::array();
  for (const Zone& zone : section.zones) zones.push_back(zone_json(section, zone));
  return zones;
}

void print_zones(const Section& section, std::ostream& out) {
  TextTable table({{"zone"},
                   {"kind"},
                   {"from deg", true},
                   {"to deg", true},
                   {"by"},
                   {"size mm", true},
                   {"thickness mm", true},
                   {""}});
  for (const Zone& zone : section.zones) {
    const ZoneFigures figures = figures_of(section, zone);
    table.add({zone.mark, std::string(name_of(zone.kind)), fmt::format("{:.3f}", zone.from_deg),
               fmt::format("{:.3f}", zone.to_deg), std::string(size_word(figures.size_by)),
               fmt::format("{:.2f}", figures.size_mm), fmt::format("{:.2f}", zone.section_thickness_mm),
               zone.locked ? "locked" : ""});
  }
  table.print(out);
}

}  // namespace prismwright
