#include "core/lens/section_compare.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/lens/quantities.h"
#include "core/lens/section_edits.h"

namespace prismwright {

namespace {

constexpr double kSame = 1e-6;  ///< degrees, mm
constexpr double kMm3PerCm3 = 1000;
constexpr double kOutlineChord_mm = 0.01;

bool same(double a, double b) { return std::abs(a - b) <= kSame; }

std::optional<double> volume_of(const std::vector<ZoneGlass>& glass, const std::string& mark) {
  const auto found =
      std::find_if(glass.begin(), glass.end(), [&](const auto& each) { return each.mark == mark; });
  return found == glass.end() ? std::nullopt : std::optional(found->volume_mm3);
}

std::optional<double> volume_mm3(const ComparedSection& side) {
  if (side.glass.empty()) return std::nullopt;
  double sum = 0;
  for (const ZoneGlass& zone : side.glass) sum += zone.volume_mm3;
  return sum;
}

std::optional<double> mass_g(const ComparedSection& side) {
  const std::optional<double> volume = volume_mm3(side);
  return volume ? std::optional(*volume / kMm3PerCm3 * side.values.material.density_g_cm3) : std::nullopt;
}

double greatest_thickness_mm(const Section& section) {
  double greatest = 0;
  for (const Zone& zone : section.zones) greatest = std::max(greatest, zone.section_thickness_mm);
  return greatest;
}

double locked_zones(const Section& section) {
  return static_cast<double>(
      std::count_if(section.zones.begin(), section.zones.end(), [](const Zone& zone) { return zone.locked; }));
}

/// The rows of figures: what each is called, and how it is read off a section.
class FigureRows {
 public:
  FigureRows(const ComparedSection& first, const ComparedSection& second) : first_(first), second_(second) {}

  template <class Read>
  FigureRows& add(const char* key, const char* label, FigureForm form, Read&& read) {
    rows_.push_back({key, label, form, read(first_), read(second_)});
    return *this;
  }
  FigureRows& add_share(const char* key, const char* label, Fate fate) {
    return add(key, label, FigureForm::share, [fate](const auto& side) { return side.proof.of(fate); });
  }
  std::vector<FigurePair> take() { return std::move(rows_); }

 private:
  const ComparedSection& first_;
  const ComparedSection& second_;
  std::vector<FigurePair> rows_;
};

void add_light(FigureRows& rows) {
  rows.add_share("share_level", "Level light", Fate::level)
      .add_share("share_stray", "Stray light", Fate::stray)
      .add_share("share_escaped", "Escaped between prisms", Fate::escaped)
      .add_share("share_stopped", "Stopped by metal", Fate::stopped)
      .add_share("share_lost_at_reflection", "Lost at reflecting faces", Fate::lost_reflecting)
      .add_share("share_lost_in_lands", "Lost in lands and joints", Fate::lost_land)
      .add("share_of_source", "Taken of all the light", FigureForm::share,
           [](const auto& side) { return side.proof.share_of_source; })
      .add("through", "Level light through the faces", FigureForm::share,
           [](const auto& side) { return side.proof.through; })
      .add("worst_departure_deg", "Worst departure", FigureForm::degrees,
           [](const auto& side) { return side.proof.worst_departure_deg; })
      .add("least_margin_deg", "Least margin to total reflection", FigureForm::degrees,
           [](const auto& side) { return side.proof.least_margin_deg; });
}

void add_glass(FigureRows& rows) {
  rows.add("volume_mm3", "Glass volume", FigureForm::volume_mm3, volume_mm3)
      .add("mass_g", "Glass mass", FigureForm::mass_g, mass_g)
      .add("height_mm", "Height", FigureForm::length_mm,
           [](const auto& side) { return height_mm(side.section); })
      .add("section_thickness_mm", "Greatest section thickness", FigureForm::length_mm,
           [](const auto& side) { return greatest_thickness_mm(side.section); });
}

std::vector<FigurePair> figure_pairs(const ComparedSection& first, const ComparedSection& second) {
  FigureRows rows(first, second);
  rows.add("zones", "Zones", FigureForm::count,
           [](const auto& side) { return static_cast<double>(side.section.zones.size()); })
      .add("locked", "Locked zones", FigureForm::count,
           [](const auto& side) { return locked_zones(side.section); });
  add_light(rows);
  add_glass(rows);
  return rows.take();
}

std::vector<SettingDifference> setting_differences(const LensValues& first, const LensValues& second) {
  std::vector<SettingDifference> differences;
  for (const std::string& key : changed_keys(first, second)) {
    const Quantity& quantity = *find_quantity(key);
    differences.push_back(
        {key, quantity.label, quantity.unit, value_text(first, key), value_text(second, key)});
  }
  return differences;
}

void put_zones(const ComparedSection& side, std::optional<ZoneFigures> ZonePair::*place,
               std::vector<ZonePair>& pairs, std::vector<int>& numbers) {
  for (const Zone& zone : side.section.zones) {
    const auto found =
        std::find_if(pairs.begin(), pairs.end(), [&](const ZonePair& pair) { return pair.mark == zone.mark; });
    ZoneFigures figures = figures_of(side.section, zone);
    figures.volume_mm3 = volume_of(side.glass, zone.mark);
    if (found != pairs.end()) {
      (*found).*place = figures;
      continue;
    }
    pairs.push_back({zone.mark, zone.kind, {}, {}});
    pairs.back().*place = figures;
    numbers.push_back(zone.number);
  }
}

std::vector<ZonePair> zone_pairs(const ComparedSection& first, const ComparedSection& second) {
  std::vector<ZonePair> pairs;
  std::vector<int> numbers;
  put_zones(first, &ZonePair::first, pairs, numbers);
  put_zones(second, &ZonePair::second, pairs, numbers);
  std::vector<std::size_t> order(pairs.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tuple(pairs[a].kind, numbers[a]) < std::tuple(pairs[b].kind, numbers[b]);
  });
  std::vector<ZonePair> sorted;
  for (const std::size_t i : order) sorted.push_back(std::move(pairs[i]));
  return sorted;
}

}  // namespace

bool FigurePair::differs() const {
  return first.has_value() != second.has_value() || (first && !same(*first, *second));
}

bool ZonePair::differs() const {
  if (!first || !second) return true;
  return !same(first->from_deg, second->from_deg) || !same(first->to_deg, second->to_deg) ||
         !same(first->size_mm, second->size_mm) ||
         !same(first->section_thickness_mm, second->section_thickness_mm) || first->locked != second->locked;
}

bool SectionComparison::alike() const {
  const auto differs = [](const auto& each) { return each.differs(); };
  return settings.empty() && std::none_of(figures.begin(), figures.end(), differs) &&
         std::none_of(zones.begin(), zones.end(), differs);
}

Outcome<ComparedSection> compared_section(std::string name, const LensValues& values, int elevations) {
  Outcome<Section> section = solve_section(values.section_input());
  if (!section) {
    Problem why = section.problem();
    why.text = fmt::format("the section '{}' cannot be worked out: {}", name, why.text);
    return why;
  }
  ComparedSection side{std::move(name), values, std::move(section).value(), {}, {}};
  side.proof = prove(side.section, elevations);
  return side;
}

ZoneFigures figures_of(const Section& section, const Zone& zone) {
  ZoneFigures figures;
  figures.from_deg = zone.from_deg;
  figures.to_deg = zone.to_deg;
  figures.size_by = is_refracting(zone.kind) ? SizeBy::margin_mm : SizeBy::side_mm;
  figures.size_mm = is_refracting(zone.kind) ? zone_margin_mm(section, zone) : zone.side_mm;
  figures.section_thickness_mm = zone.section_thickness_mm;
  figures.locked = zone.locked;
  return figures;
}

SectionComparison compare_sections(const ComparedSection& first, const ComparedSection& second) {
  return {first.name, second.name, setting_differences(first.values, second.values),
          figure_pairs(first, second), zone_pairs(first, second)};
}

double height_mm(const Section& section) {
  double low = 0;
  double high = 0;
  const auto take = [&](const Profile& profile) {
    for (const SectionPoint& point : polygon_of(profile, kOutlineChord_mm)) {
      low = std::min(low, point.z);
      high = std::max(high, point.z);
    }
  };
  for (const Zone& zone : section.zones) {
    take(zone.profile);
    if (zone.kind == ZoneKind::ring) take(lower_image_of(zone));
  }
  return high - low;
}

}  // namespace prismwright
