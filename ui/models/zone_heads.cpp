#include <array>

#include "ui/models/shown_numbers.h"
#include "ui/models/zone_table.h"

namespace prismwright {

QVariant ZoneTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  const QString unit = length_unit(bench_->inches());
  const std::array<QString, columns> heads = {tr("Zone"),
                                              tr("Kind"),
                                              tr("Lock"),
                                              tr("From\ndeg"),
                                              tr("To\ndeg"),
                                              tr("Margin\n") + unit,
                                              tr("Breadth\n") + unit,
                                              tr("Thick\n") + unit,
                                              tr("Off by\ndeg"),
                                              tr("Spare\ndeg"),
                                              tr("Light\n%"),
                                              tr("Passes\n%")};
  const std::array<QString, columns> tips = {
      tr("Mark of the zone"),
      tr("What the zone does: the centre and the rings refract, upper and lower prisms reflect"),
      tr("A locked zone stays when its neighbours are divided anew"),
      tr("Lowest elevation served, seen from the focus"),
      tr("Highest elevation served, seen from the focus"),
      tr("Height of the outer edge of a refracting zone, at the depth of its thin edge"),
      tr("Refracting: from margin to margin. Reflecting: length of the entry side"),
      tr("What the caster cares for. Refracting: greatest thickness of glass. Reflecting: the circle that "
         "fits into the section"),
      tr("Worst departure from level"),
      tr("Least margin: incidence on the reflecting face over the critical angle"),
      tr("Share of the light between the limits of the section that the zone takes"),
      tr("Mean share that comes through the faces of the zone")};
  const auto place = static_cast<std::size_t>(section);
  if (place >= heads.size()) return {};
  if (role == Qt::DisplayRole) return heads[place];
  if (role == Qt::ToolTipRole) return tips[place];
  if (role == Qt::TextAlignmentRole)
    return QVariant(Qt::AlignVCenter | (section <= lock ? Qt::AlignLeft : Qt::AlignRight));
  return {};
}

}  // namespace prismwright
