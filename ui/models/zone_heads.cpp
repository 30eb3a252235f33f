#include <array>

#include "ui/models/shown_numbers.h"
#include "ui/models/zone_table.h"

namespace prismwright {

QVariant ZoneTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  const QString unit = length_unit(bench_->inches());
  const std::array<QString, columns> heads = {tr("Zone"),
                                              tr("Kind"),
                                              tr("From\ndeg"),
                                              tr("To\ndeg"),
                                              tr("Margin\n") + unit,
                                              tr("Breadth\n") + unit,
                                              tr("Thickest\n") + unit,
                                              tr("Departs\ndeg"),
                                              tr("To spare\ndeg"),
                                              tr("Light\n%"),
                                              tr("Through\n%")};
  const std::array<QString, columns> tips = {
      tr("Mark of the zone"),
      tr("What the zone does: the centre and the rings refract, upper and lower prisms reflect"),
      tr("Lowest elevation served, seen from the focus"),
      tr("Highest elevation served, seen from the focus"),
      tr("Height of the outer edge of a refracting zone, at the depth of its thin edge"),
      tr("Refracting: from margin to margin. Reflecting: length of the entry side"),
      tr("Refracting: greatest thickness of glass. Reflecting: length of the reflecting side"),
      tr("Worst departure from level"),
      tr("Least margin: incidence on the reflecting face over the critical angle"),
      tr("Share of the light between the limits of the section that the zone takes"),
      tr("Mean share that comes through the faces of the zone")};
  const auto place = static_cast<std::size_t>(section);
  if (place >= heads.size()) return {};
  if (role == Qt::DisplayRole) return heads[place];
  if (role == Qt::ToolTipRole) return tips[place];
  if (role == Qt::TextAlignmentRole)
    return QVariant(Qt::AlignVCenter | (section <= kind ? Qt::AlignLeft : Qt::AlignRight));
  return {};
}

}  // namespace prismwright
