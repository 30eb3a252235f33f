#include "core/lens/section_edits.h"

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/lens/choice_words.h"
#include "core/lens/zone_rows.h"
#include "core/optics/refracting_zone.h"

namespace prismwright {

namespace {

using Rows = std::vector<ZoneRow>;

std::string key_of(Band band, const char* name) { return fmt::format("section.{}_{}", name_of(band), name); }

std::vector<const Zone*> zones_of(const Section& section, Band band) {
  std::vector<const Zone*> zones;
  for (const Zone& zone : section.zones)
    if (band_of(zone.kind) == band) zones.push_back(&zone);
  return zones;
}

/// Where a zone ends as its row says it: degrees above level, or below for a lower prism.
double end_deg(const Zone& zone) { return zone.kind == ZoneKind::lower ? -zone.from_deg : zone.to_deg; }

ZoneRow locked_row(const Zone& zone) {
  ZoneRow row;
  row.locked = true;
  if (is_refracting(zone.kind)) {
    row.by = SizeBy::to_deg;
    row.size = zone.to_deg;
    row.from_deg = zone.kind == ZoneKind::centre ? 0 : zone.from_deg;
  } else {
    row.by = SizeBy::side_mm;
    row.size = zone.side_mm;
    row.corner_a = zone.kind == ZoneKind::lower ? mirrored(zone.start_a) : zone.start_a;
  }
  return row;
}

ZoneRow free_row(const Zone& zone) {
  ZoneRow row;
  row.by = is_refracting(zone.kind) ? SizeBy::to_deg : SizeBy::side_mm;
  row.size = is_refracting(zone.kind) ? zone.to_deg : zone.side_mm;
  return row;
}

/// Every zone of the band as a row: those given by hand as they were given, the others as they were drawn.
Rows rows_by_hand(const LensValues& values, const Section& section, Band band) {
  const SectionSettings& settings = values.section;
  if (settings.of(band).division == Division::by_hand) return settings.of(band).rows;
  Rows rows;
  for (const Zone* zone : zones_of(section, band)) {
    ZoneRow row = zone->locked ? locked_row(*zone) : free_row(*zone);
    if (band == Band::refracting && rows.size() < settings.refracting_margins_mm.size()) {
      row.by = SizeBy::margin_mm;
      row.size = settings.refracting_margins_mm[rows.size()];
    }
    rows.push_back(row);
  }
  return rows;
}

SectionEdit by_hand(Band band, const Rows& rows, std::string what) {
  SectionEdit edit;
  edit.what = std::move(what);
  edit.assignments.emplace_back(key_of(band, "division"), "by_hand");
  edit.assignments.emplace_back(key_of(band, "rows"), rows_text(rows));
  if (band == Band::refracting) edit.assignments.emplace_back("section.refracting_margins_mm", "");
  return edit;
}

/// A zone of the section with its band and its place in it.
struct Found {
  const Zone& zone;
  Band band;
  std::size_t place;
};

Outcome<Found> find_zone(const Section& section, std::string_view mark) {
  for (const Band band : {Band::refracting, Band::upper, Band::lower}) {
    const auto zones = zones_of(section, band);
    for (std::size_t i = 0; i < zones.size(); ++i)
      if (zones[i]->mark == mark) return Found{*zones[i], band, i};
  }
  return request_problem(
      "zone.unknown", std::string(mark),
      fmt::format("there is no zone '{}' in this section. Give one of its marks, for instance {}", mark,
                  section.zones.empty() ? "C" : section.zones.back().mark));
}

Problem is_locked(const Zone& zone) {
  return request_problem("zone.locked", zone.mark,
                         fmt::format("zone {} is locked where it stands. Free it first", zone.mark));
}

Outcome<Found> find_free(const Section& section, std::string_view mark) {
  auto found = find_zone(section, mark);
  if (found && found->zone.locked) return is_locked(found->zone);
  return found;
}

double size_now(const Section& section, const Found& found, SizeBy by, const Rows& rows) {
  switch (by) {
    case SizeBy::to_deg:
      return end_deg(found.zone);
    case SizeBy::margin_mm:
      return rows[found.place].by == SizeBy::margin_mm ? rows[found.place].size
                                                       : zone_margin_mm(section, found.zone);
    case SizeBy::side_mm:
      return found.zone.side_mm;
    case SizeBy::thickness_mm:
      return found.zone.section_thickness_mm;
  }
  return 0;
}

const char* words_of(SizeBy by) {
  switch (by) {
    case SizeBy::to_deg:
      return "end";
    case SizeBy::margin_mm:
      return "margin";
    case SizeBy::side_mm:
      return "entry side";
    case SizeBy::thickness_mm:
      return "thickness";
  }
  return "size";
}

const char* unit_of(SizeBy by) { return by == SizeBy::to_deg ? "deg" : "mm"; }

}  // namespace

double zone_margin_mm(const Section& section, const Zone& zone) {
  const SectionInput& in = section.input;
  const RefractingBand band{in.focal_mm, in.index, in.settings.edge_mm, in.settings.faces, in.settings.joint};
  const double tilt = in.refracting_about_lens ? 0 : band_aim(in, Band::refracting).aim_deg;
  return band.margin_of_elevation(radians(zone.to_deg + tilt));
}

Outcome<SectionEdit> resize_zone(const LensValues& values, const Section& section, std::string_view mark,
                                 SizeBy by, double size) {
  const auto found = find_free(section, mark);
  if (!found) return found.problem();
  Rows rows = rows_by_hand(values, section, found->band);
  const double before = size_now(section, *found, by, rows);
  rows[found->place] = {};
  rows[found->place].by = by;
  rows[found->place].size = size;
  if (const Done fit = check_rows(rows, found->band); !fit) return fit.problem();
  return by_hand(found->band, rows,
                 fmt::format("{} of {} {:.6g} -> {:.6g} {}", words_of(by), mark, before, size, unit_of(by)));
}

Outcome<SectionEdit> lock_zone(const LensValues& values, const Section& section, std::string_view mark,
                               bool locked) {
  const auto found = find_zone(section, mark);
  if (!found) return found.problem();
  if (found->zone.locked == locked) {
    return request_problem("zone.lock", std::string(mark),
                           fmt::format("zone {} is {} already", mark, locked ? "locked" : "free"));
  }
  std::string what = fmt::format("{} {}", locked ? "lock" : "free", mark);
  const bool margins = found->band == Band::refracting && !values.section.refracting_margins_mm.empty();
  if (margins || values.section.of(found->band).division == Division::by_hand) {
    Rows rows = rows_by_hand(values, section, found->band);
    rows[found->place] = locked ? locked_row(found->zone) : free_row(found->zone);
    return by_hand(found->band, rows, std::move(what));
  }
  Rows rows;
  for (const Zone* zone : zones_of(section, found->band)) {
    if (zone == &found->zone ? locked : zone->locked) rows.push_back(locked_row(*zone));
  }
  return SectionEdit{{{key_of(found->band, "rows"), rows_text(rows)}}, std::move(what)};
}

Outcome<SectionEdit> remove_zone(const LensValues& values, const Section& section, std::string_view mark) {
  const auto found = find_free(section, mark);
  if (!found) return found.problem();
  Rows rows = rows_by_hand(values, section, found->band);
  if (found->band == Band::refracting && rows.size() == 1) {
    return request_problem(
        "zone.only", std::string(mark),
        fmt::format("zone {} is the only one of the refracting band, which cannot be empty. Make "
                    "it smaller instead",
                    mark));
  }
  rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(found->place));
  return by_hand(found->band, rows, fmt::format("remove {}", mark));
}

Outcome<SectionEdit> split_zone(const LensValues& values, const Section& section, std::string_view mark) {
  const auto found = find_free(section, mark);
  if (!found) return found.problem();
  Rows rows = rows_by_hand(values, section, found->band);
  ZoneRow inner;
  ZoneRow outer = rows[found->place];
  if (found->band == Band::refracting) {
    const double from = found->zone.kind == ZoneKind::centre ? 0 : found->zone.from_deg;
    inner.by = SizeBy::to_deg;
    inner.size = 0.5 * (from + found->zone.to_deg);
  } else {
    inner.by = SizeBy::side_mm;
    inner.size = 0.5 * found->zone.side_mm;
    outer = {};
    outer.by = SizeBy::to_deg;
    outer.size = end_deg(found->zone);
  }
  rows[found->place] = outer;
  rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(found->place), inner);
  return by_hand(found->band, rows, fmt::format("split {}", mark));
}

Outcome<SectionEdit> add_zone(const LensValues& values, const Section& section, Band band) {
  Rows rows = rows_by_hand(values, section, band);
  const auto zones = zones_of(section, band);
  ZoneRow row;
  if (band == Band::refracting) {
    const Zone& last = *zones.back();
    const double from = last.kind == ZoneKind::centre ? 0 : last.from_deg;
    row.by = SizeBy::to_deg;
    row.size = last.to_deg + (last.to_deg - from);
  } else {
    row.by = SizeBy::side_mm;
    row.size = zones.empty() ? values.section.of(band).side_mm.value_or(values.section.reflecting_chord_mm)
                             : zones.back()->side_mm;
  }
  rows.push_back(row);
  return by_hand(
      band, rows,
      fmt::format("add a zone to the {} {}", name_of(band), band == Band::refracting ? "band" : "prisms"));
}

Outcome<SectionEdit> divide_band(const LensValues& values, const Section& section, Band band, Division division,
                                 double number) {
  const bool refracting = band == Band::refracting;
  if (division == Division::by_hand || (refracting && division == Division::side)) {
    return request_problem(
        "divide.rule", key_of(band, "division"),
        fmt::format("the {} band cannot be divided anew by '{}'. Choose count, area, height, "
                    "thickness{}",
                    name_of(band), word_of(division), refracting ? "" : " or side"));
  }
  SectionEdit edit;
  edit.what = fmt::format("divide {} {} by {} {:g}", name_of(band), refracting ? "band" : "prisms",
                          word_of(division), number);
  // Locked zones of a band that was divided otherwise stay as rows; a rule drops the others.
  Rows locked;
  for (const Zone* zone : zones_of(section, band))
    if (zone->locked) locked.push_back(locked_row(*zone));
  edit.assignments.emplace_back(key_of(band, "division"), std::string(word_of(division)));
  edit.assignments.emplace_back(key_of(band, "rows"), rows_text(locked));
  if (refracting) edit.assignments.emplace_back("section.refracting_margins_mm", "");
  if (division == Division::side) {
    edit.assignments.emplace_back(key_of(band, "side_mm"), number_text(number));
  } else if (division != Division::thickness) {
    edit.assignments.emplace_back(key_of(band, "count"), number_text(number));
  } else if (refracting) {
    edit.assignments.emplace_back("section.ring_growth_mm", number_text(number - values.section.edge_mm));
  } else {
    edit.assignments.emplace_back(key_of(band, "thickness_mm"), number_text(number));
  }
  return edit;
}

}  // namespace prismwright
