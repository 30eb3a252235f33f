#include "ui/models/zone_edits.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/angle.h"
#include "core/optics/refracting_zone.h"
#include "ui/models/shown_numbers.h"

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

std::optional<ZoneEdit> edit_of_to(const Section& section, const Zone& zone) {
  const SectionSettings& settings = section.input.settings;
  if (!is_last_of_kind(section, zone)) return std::nullopt;
  if (is_refracting(zone.kind) && settings.refracting_margins_mm.empty())
    return ZoneEdit{"section.refracting_to_deg", "deg", settings.refracting_to_deg};
  if (zone.kind == ZoneKind::upper) return ZoneEdit{"section.upper_to_deg", "deg", settings.upper_to_deg};
  return std::nullopt;
}

std::optional<ZoneEdit> edit_of_from(const Section& section, const Zone& zone) {
  if (zone.kind != ZoneKind::lower || !is_last_of_kind(section, zone)) return std::nullopt;
  return ZoneEdit{"section.lower_to_deg", "deg", -section.input.settings.lower_to_deg};
}

/// The whole list of margins with one of them typed anew.
std::string margins_text(const Section& section, const Zone& changed, const std::string& typed) {
  std::string text;
  for (const Zone* zone : refracting(section)) {
    if (!text.empty()) text += ", ";
    text += zone->mark == changed.mark ? typed : number_text(margin_mm(section, *zone));
  }
  return text;
}

}  // namespace

double margin_mm(const Section& section, const Zone& zone) {
  const std::vector<double>& asked = section.input.settings.refracting_margins_mm;
  const auto place = static_cast<std::size_t>(zone.kind == ZoneKind::centre ? 0 : zone.number);
  if (place < asked.size()) return asked[place];
  const SectionInput& in = section.input;
  const RefractingBand band{in.focal_mm, in.index, in.settings.edge_mm, in.settings.faces, in.settings.joint};
  // Shown and typed to a micrometre: what is finer is no maker's wish.
  return std::round(band.margin_of_elevation(radians(zone.to_deg)) * 1000) / 1000;
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
      return ZoneEdit{"section.refracting_margins_mm", "mm", margin_mm(section, zone)};
    case ZoneCell::breadth:
      if (is_refracting(zone.kind)) return std::nullopt;
      return ZoneEdit{"section.reflecting_chord_mm", "mm", section.input.settings.reflecting_chord_mm};
  }
  return std::nullopt;
}

ZoneAssignment assignment_of(const Section& section, const Zone& zone, const ZoneEdit& edit,
                             const QString& typed, bool inches) {
  Quantity single = *find_quantity(edit.key);
  single.form = QuantityForm::number;
  const std::string text = typed_value(single, QString(typed).replace(QChar(0x2212), '-'), inches);
  const std::optional<double> number = read_number(text, edit.unit);
  const std::string value = number ? number_text(*number) : text;
  if (edit.key == "section.refracting_margins_mm")
    return {{edit.key, margins_text(section, zone, value)},
            tr("outer margin of %1 %2 -> %3 mm")
                .arg(QString::fromStdString(zone.mark), QString::fromStdString(number_text(edit.value)),
                     QString::fromStdString(value))};
  // A depression is typed as the table shows it, below level; the quantity counts it downward.
  const bool depression = edit.key == "section.lower_to_deg" && number;
  return {{edit.key, depression ? number_text(std::abs(*number)) : value}, {}};
}

}  // namespace prismwright
