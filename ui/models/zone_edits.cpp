#include "ui/models/zone_edits.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("ZoneTable", text); }

/// Refracting zones from the centre outward.
std::vector<const Zone*> refracting(const Section& section) {
  std::vector<const Zone*> zones;
  for (const Zone& zone : section.zones)
    if (is_refracting(zone.kind)) zones.push_back(&zone);
  return zones;
}

bool is_last_of_kind(const Section& section, const Zone& zone) {
  const auto last = std::find_if(section.zones.rbegin(), section.zones.rend(), [&](const Zone& other) {
    return is_refracting(zone.kind) ? is_refracting(other.kind) : other.kind == zone.kind;
  });
  return last != section.zones.rend() && last->mark == zone.mark;
}

ZoneEdit limit(const char* key, double value, const QString& words) { return {key, "deg", value, words}; }

std::optional<ZoneEdit> edit_of_to(const Section& section, const Zone& zone) {
  const SectionSettings& settings = section.input.settings;
  if (!is_last_of_kind(section, zone)) return std::nullopt;
  if (is_refracting(zone.kind) && settings.refracting_margins_mm.empty())
    return limit("section.refracting_to_deg", settings.refracting_to_deg, tr("refracting band limit"));
  if (zone.kind == ZoneKind::upper)
    return limit("section.upper_to_deg", settings.upper_to_deg, tr("upper limit"));
  return std::nullopt;
}

std::optional<ZoneEdit> edit_of_from(const Section& section, const Zone& zone) {
  if (zone.kind != ZoneKind::lower || !is_last_of_kind(section, zone)) return std::nullopt;
  return limit("section.lower_to_deg", -section.input.settings.lower_to_deg, tr("lower limit"));
}

std::string margins_text(const Section& section, const Zone& changed, double margin) {
  std::string text;
  for (const Zone* zone : refracting(section)) {
    const double value = zone->mark == changed.mark ? margin : margin_mm(section, *zone);
    text += (text.empty() ? "" : ", ") + number_text(value);
  }
  return text;
}

}  // namespace

double margin_mm(const Section& section, const Zone& zone) {
  const std::vector<double>& asked = section.input.settings.refracting_margins_mm;
  const auto place = static_cast<std::size_t>(zone.kind == ZoneKind::centre ? 0 : zone.number);
  if (place < asked.size()) return asked[place];
  const Face* outer = zone.profile.find(FaceRole::outer);
  if (!outer) return 0;
  // Shown and typed to a micrometre: what is finer is no maker's wish.
  return std::round(std::max(outer->start().z, outer->end().z) * 1000) / 1000;
}

double breadth_mm(const Section& section, const Zone& zone) {
  if (zone.corners) return distance(zone.corners->a, zone.corners->b);
  const double outer = margin_mm(section, zone);
  if (zone.kind == ZoneKind::centre) return 2 * outer;
  double inner = 0;
  for (const Zone* other : refracting(section)) {
    if (other->mark == zone.mark) break;
    inner = margin_mm(section, *other);
  }
  return outer - inner;
}

std::optional<ZoneEdit> edit_behind(const Section& section, const Zone& zone, ZoneCell cell) {
  switch (cell) {
    case ZoneCell::to:
      return edit_of_to(section, zone);
    case ZoneCell::from:
      return edit_of_from(section, zone);
    case ZoneCell::margin:
      if (!is_refracting(zone.kind)) return std::nullopt;
      return ZoneEdit{"section.refracting_margins_mm", "mm", margin_mm(section, zone),
                      tr("outer margin of %1").arg(QString::fromStdString(zone.mark))};
    case ZoneCell::breadth:
      if (is_refracting(zone.kind)) return std::nullopt;
      return ZoneEdit{"section.reflecting_chord_mm", "mm", section.input.settings.reflecting_chord_mm,
                      tr("entry side")};
  }
  return std::nullopt;
}

std::optional<Assignment> assignment_of(const Section& section, const Zone& zone, const ZoneEdit& edit,
                                        const QString& text, const QString& typed_unit) {
  QString plain = text.trimmed();
  plain.replace(QChar(0x2212), '-');
  bool bare = false;
  plain.toDouble(&bare);
  if (bare && edit.unit == "mm") plain += ' ' + typed_unit;
  const auto number = read_number(plain.toStdString(), edit.unit);
  if (!number) return std::nullopt;
  if (edit.key == "section.refracting_margins_mm")
    return Assignment{edit.key, margins_text(section, zone, *number)};
  // A depression is typed as the table shows it, below level; the quantity counts it downward.
  if (edit.key == "section.lower_to_deg") return Assignment{edit.key, number_text(std::abs(*number))};
  return Assignment{edit.key, number_text(*number)};
}

}  // namespace prismwright
