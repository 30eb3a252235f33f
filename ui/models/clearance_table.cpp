#include "ui/models/clearance_table.h"

#include <QBrush>
#include <algorithm>
#include <numeric>

#include "ui/models/prism_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

/// Less is worse: clashes by overlap, then room left over the needed gap.
double ease_of(const Clearance& c) {
  if (c.verdict == Verdict::clash) return -1e9 - c.overlap_mm3;
  return c.gap_mm - c.needed_mm;
}

}  // namespace

ClearanceTable::ClearanceTable(QObject* parent) : QAbstractTableModel(parent) {}

void ClearanceTable::setClearances(std::shared_ptr<const std::vector<Clearance>> clearances, bool inches) {
  beginResetModel();
  clearances_ = std::move(clearances);
  inches_ = inches;
  order_.resize(clearances_ ? clearances_->size() : 0);
  std::iota(order_.begin(), order_.end(), std::size_t{0});
  std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
    return ease_of((*clearances_)[a]) < ease_of((*clearances_)[b]);
  });
  endResetModel();
}

const Clearance& ClearanceTable::clearance(int line) const {
  return (*clearances_)[order_[static_cast<std::size_t>(line)]];
}

int ClearanceTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(order_.size());
}

int ClearanceTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : kColumns; }

QVariant ClearanceTable::sortValue(int line, int column) const {
  const Clearance& of = clearance(line);
  if (column == gap) return of.gap_mm;
  if (column == needed) return of.needed_mm;
  if (column == verdict) return ease_of(of);
  return QString::fromStdString(of.first + of.second);
}

QVariant ClearanceTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const Clearance& of = clearance(index.row());
  if (role == PrismTable::kSortRole) return sortValue(index.row(), index.column());
  const bool number = index.column() == gap || index.column() == needed;
  if (role == Qt::TextAlignmentRole)
    return QVariant((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  if (role == Qt::ForegroundRole && index.column() == verdict && of.verdict == Verdict::clash)
    return QBrush(palette::amiss());
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case pair:
      return tr("%1 to %2").arg(QString::fromStdString(of.first), QString::fromStdString(of.second));
    case gap:
      return length_number(of.gap_mm, inches_);
    case needed:
      return length_number(of.needed_mm, inches_);
    default:
      return QStringLiteral("%1 %2").arg(palette::verdict_sign(of.verdict), palette::verdict_words(of.verdict));
  }
}

QVariant ClearanceTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  const bool number = section == gap || section == needed;
  if (role == Qt::TextAlignmentRole)
    return QVariant((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  const QString unit = length_unit(inches_);
  switch (section) {
    case pair:
      return tr("Between");
    case gap:
      return tr("Gap\n%1").arg(unit);
    case needed:
      return tr("Needed\n%1").arg(unit);
    default:
      return tr("Verdict");
  }
}

}  // namespace prismwright
