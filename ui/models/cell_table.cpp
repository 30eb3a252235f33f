#include "ui/models/cell_table.h"

#include <QBrush>
#include <algorithm>

#include "core/lens/quantities.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kLast = 1e300;

}  // namespace

Cell number_cell(const QString& shown, double value) {
  return {shown, value, QString::fromStdString(number_text(value))};
}

Cell word_cell(const QString& words) { return {words, words, words}; }

Cell blank_cell() { return {QStringLiteral("–"), kLast, QString()}; }

Cell verdict_cell(Verdict verdict) {
  const std::string_view name = name_of(verdict);
  return {palette::verdict_sign(verdict) + QLatin1Char(' ') + palette::verdict_words(verdict),
          -static_cast<int>(verdict), QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()))};
}

void CellTable::setSheet(CellSheet sheet) {
  beginResetModel();
  sheet_ = std::move(sheet);
  endResetModel();
}

int CellTable::lineOf(const QString& mark) const {
  const auto found = std::find_if(sheet_.rows.begin(), sheet_.rows.end(),
                                  [&](const CellRow& row) { return row.marks.contains(mark); });
  return found == sheet_.rows.end() ? -1 : static_cast<int>(found - sheet_.rows.begin());
}

int CellTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(sheet_.rows.size());
}

int CellTable::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(sheet_.heads.size());
}

QVariant CellTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const CellRow& of = row(index.row());
  const auto column = static_cast<std::size_t>(index.column());
  const CellHead& head = sheet_.heads[column];
  switch (role) {
    case Qt::DisplayRole:
      return of.cells[column].shown;
    case Qt::ToolTipRole:
      return of.cells[column].shown.size() > 24 ? of.cells[column].shown : QString();
    case PrismTable::kSortRole:
      return of.cells[column].sorts;
    case Qt::TextAlignmentRole:
      return QVariant((head.number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    case Qt::ForegroundRole:
      return of.amiss ? QVariant(QBrush(palette::amiss())) : QVariant();
    default:
      return {};
  }
}

QVariant CellTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
  const CellHead& head = sheet_.heads[static_cast<std::size_t>(section)];
  if (role == Qt::DisplayRole) return head.words;
  if (role == Qt::ToolTipRole && !head.tip.isEmpty()) return head.tip;
  if (role == Qt::TextAlignmentRole)
    return QVariant((head.number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  return {};
}

void CellFilter::setChoice(int column, const QString& shown) {
  if (shown.isEmpty())
    choices_.remove(column);
  else
    choices_.insert(column, shown);
  invalidateFilter();
}

bool CellFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  for (auto choice = choices_.begin(); choice != choices_.end(); ++choice)
    if (sourceModel()->index(row, choice.key(), parent).data().toString() != choice.value()) return false;
  return WordFilter::filterAcceptsRow(row, parent);
}

}  // namespace prismwright
