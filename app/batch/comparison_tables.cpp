#include "app/batch/comparison_tables.h"

#include <fmt/format.h>

#include <algorithm>

#include "app/batch/section_zones.h"
#include "app/batch/text_table.h"

namespace prismwright {

namespace {

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

Json figures_json(const std::optional<ZoneFigures>& zone) {
  if (!zone) return nullptr;
  Json json;
  json["from_deg"] = zone->from_deg;
  json["to_deg"] = zone->to_deg;
  json["size_by"] = size_word(zone->size_by);
  json["size_mm"] = zone->size_mm;
  json["section_thickness_mm"] = zone->section_thickness_mm;
  json["locked"] = zone->locked;
  json["volume_mm3"] = optional_json(zone->volume_mm3);
  return json;
}

std::string figure_text(const std::optional<double>& value, FigureForm form) {
  if (!value) return "-";
  switch (form) {
    case FigureForm::count:
      return fmt::format("{:.0f}", *value);
    case FigureForm::share:
      return fmt::format("{:.3f} %", 100 * *value);
    case FigureForm::degrees:
      return fmt::format("{:.4f} deg", *value);
    case FigureForm::length_mm:
      return fmt::format("{:.2f} mm", *value);
    case FigureForm::volume_mm3:
      return fmt::format("{:.1f} cm3", *value / 1000);
    case FigureForm::mass_g:
      return fmt::format("{:.3f} kg", *value / 1000);
  }
  return {};
}

/// A setting's text for the table; a long list is cut, JSON has it whole.
std::string shown(const std::string& text, const std::string& unit) {
  constexpr std::size_t kLongest = 40;
  if (text.empty()) return "blank";
  if (text.size() > kLongest) return text.substr(0, kLongest - 4) + " ...";
  return unit.empty() ? text : text + ' ' + unit;
}

void print_settings(const SectionComparison& comparison, std::ostream& out) {
  if (comparison.settings.empty()) {
    out << "No setting differs.\n";
    return;
  }
  TextTable table({{"setting"}, {"key"}, {comparison.first}, {comparison.second}});
  for (const SettingDifference& setting : comparison.settings) {
    table.add(
        {setting.label, setting.key, shown(setting.first, setting.unit), shown(setting.second, setting.unit)});
  }
  table.print(out);
}

void print_figures(const SectionComparison& comparison, std::ostream& out) {
  TextTable table({{"figure"}, {comparison.first, true}, {comparison.second, true}});
  for (const FigurePair& figure : comparison.figures) {
    table.add({figure.label, figure_text(figure.first, figure.form), figure_text(figure.second, figure.form)});
  }
  table.print(out);
}

std::string zone_text(const std::optional<ZoneFigures>& zone) {
  if (!zone) return "none";
  return fmt::format("{:.3f} to {:.3f} deg, {} {:.2f}, thick {:.2f} mm{}", zone->from_deg, zone->to_deg,
                     size_word(zone->size_by), zone->size_mm, zone->section_thickness_mm,
                     zone->locked ? ", locked" : "");
}

void print_zone_pairs(const SectionComparison& comparison, std::ostream& out) {
  TextTable table({{"zone"}, {comparison.first}, {comparison.second}});
  for (const ZonePair& zone : comparison.zones) {
    if (zone.differs()) table.add({zone.mark, zone_text(zone.first), zone_text(zone.second)});
  }
  if (!table.empty()) table.print(out);
  const auto alike = std::count_if(comparison.zones.begin(), comparison.zones.end(),
                                   [](const ZonePair& zone) { return !zone.differs(); });
  out << fmt::format("{} of {} zones are alike.\n", alike, comparison.zones.size());
}

}  // namespace

Json comparison_json(const SectionComparison& comparison, const LensValues& first, const LensValues& second) {
  Json json;
  json["first"] = comparison.first;
  json["second"] = comparison.second;
  json["alike"] = comparison.alike();
  json["settings"] = Json::array();
  for (const SettingDifference& setting : comparison.settings) {
    const Quantity& quantity = *find_quantity(setting.key);
    json["settings"].push_back(Json{{"key", setting.key},
                                    {"label", setting.label},
                                    {"unit", setting.unit},
                                    {"first", value_json(first, quantity)},
                                    {"second", value_json(second, quantity)}});
  }
  json["figures"] = Json::array();
  for (const FigurePair& figure : comparison.figures) {
    json["figures"].push_back(Json{{"key", figure.key},
                                   {"label", figure.label},
                                   {"first", optional_json(figure.first)},
                                   {"second", optional_json(figure.second)}});
  }
  json["zones"] = Json::array();
  for (const ZonePair& zone : comparison.zones) {
    json["zones"].push_back(Json{{"mark", zone.mark},
                                 {"kind", name_of(zone.kind)},
                                 {"differs", zone.differs()},
                                 {"first", figures_json(zone.first)},
                                 {"second", figures_json(zone.second)}});
  }
  return json;
}

void print_comparison(const SectionComparison& comparison, std::ostream& out) {
  print_settings(comparison, out);
  print_figures(comparison, out);
  print_zone_pairs(comparison, out);
}

}  // namespace prismwright
