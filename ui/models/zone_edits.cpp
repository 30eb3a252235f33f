#include "ui/models/zone_edits.h"

#include <QCoreApplication>
#include <cmath>

#include "ui/models/shown_numbers.h"

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("ZoneTable", text); }

Quantity plain_number(const ZoneSize& size) {
  Quantity quantity;
  quantity.unit = size.unit;
  return quantity;
}

}  // namespace

double breadth_mm(const Section& section, const Zone& zone) {
  if (!is_refracting(zone.kind)) return zone.side_mm;
  const double outer = zone_margin_mm(section, zone);
  if (zone.kind == ZoneKind::centre) return 2 * outer;
  double inner = 0;
  for (const Zone& other : section.zones) {
    if (other.mark == zone.mark) break;
    if (is_refracting(other.kind)) inner = zone_margin_mm(section, other);
  }
  return outer - inner;
}

std::optional<ZoneSize> size_behind(const Section& section, const Zone& zone, ZoneCell cell) {
  if (zone.locked) return std::nullopt;
  const bool refracting = is_refracting(zone.kind);
  switch (cell) {
    case ZoneCell::to:
      if (zone.kind == ZoneKind::lower) return std::nullopt;
      return ZoneSize{SizeBy::to_deg, zone.to_deg, "deg"};
    case ZoneCell::from:
      if (zone.kind != ZoneKind::lower) return std::nullopt;
      return ZoneSize{SizeBy::to_deg, zone.from_deg, "deg"};
    case ZoneCell::margin:
      if (!refracting) return std::nullopt;
      return ZoneSize{SizeBy::margin_mm, zone_margin_mm(section, zone), "mm"};
    case ZoneCell::breadth:
      if (refracting) return std::nullopt;
      return ZoneSize{SizeBy::side_mm, zone.side_mm, "mm"};
    case ZoneCell::thickness:
      if (refracting) return std::nullopt;
      return ZoneSize{SizeBy::thickness_mm, zone.section_thickness_mm, "mm"};
  }
  return std::nullopt;
}

QString edit_text(const ZoneSize& size, bool inches) {
  const double finest = size.by == SizeBy::to_deg ? 1e-4 : 1e-3;
  return shown_value(plain_number(size), number_text(std::round(size.value / finest) * finest), inches);
}

Outcome<SectionEdit> edit_from_text(const LensValues& values, const Section& section, const Zone& zone,
                                    const ZoneSize& size, const QString& typed, bool inches) {
  const std::string text = typed_value(plain_number(size), QString(typed).replace(QChar(0x2212), '-'), inches);
  const std::optional<double> number = read_number(text, size.unit);
  if (!number) {
    const QString example = size.by == SizeBy::to_deg
                                ? tr("an angle: type degrees, for instance 31.5")
                                : tr("a length: type one, for instance 12.5 mm or 1/2 in");
    return request_problem("zone.number", zone.mark,
                           tr("\"%1\" is not %2").arg(typed.trimmed(), example).toStdString());
  }
  // A limit below level is typed as the table shows it; the edit counts it downward.
  const bool depression = zone.kind == ZoneKind::lower && size.by == SizeBy::to_deg;
  return resize_zone(values, section, zone.mark, size.by, depression ? std::abs(*number) : *number);
}

}  // namespace prismwright
