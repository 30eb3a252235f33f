#include "ui/models/clearance_table.h"

#include <QBrush>
#include <QCoreApplication>
#include <algorithm>
#include <numeric>

#include "geometry/clearance_order.h"
#include "ui/models/prism_table.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

/// Less is worse: clashes by overlap, then room left over the needed gap, parts that rest on each other last.
double ease_of(const Clearance& c) {
  if (c.verdict == Verdict::clash) return -1e9 - c.overlap_mm3;
  if (rests_by_design(c)) return 1e9;
  return c.gap_mm - c.needed_mm;
}

/// Indices of all clearances, clashes first by their overlap, then by what is left over the needed gap.
std::vector<std::size_t> tightest_first(const std::vector<Clearance>& clearances) {
  std::vector<std::size_t> order(clearances.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return ease_of(clearances[a]) < ease_of(clearances[b]);
  });
  return order;
}

QString kind_words(ClearanceKind kind) {
  const std::string name(name_of(kind));
  return QCoreApplication::translate("ClearanceKind", name.c_str());
}

Cell hidden_number(double value) { return number_cell({}, value); }

std::vector<Cell> cells_of(const Clearance& of, bool inches) {
  const QString first = QString::fromStdString(of.first);
  const QString second = QString::fromStdString(of.second);
  Cell verdict = verdict_cell(of.verdict);
  verdict.sorts = ease_of(of);
  return {
      word_cell(ClearanceTable::tr("%1 to %2").arg(first, second)),
      number_cell(length_number(of.gap_mm, inches), of.gap_mm),
      number_cell(length_number(of.needed_mm, inches), of.needed_mm),
      verdict,
      word_cell(kind_words(of.kind)),
      of.overlap_mm3 > 0 ? number_cell(QString::number(of.overlap_mm3, 'g', 3), of.overlap_mm3) : blank_cell(),
      word_cell(first),
      word_cell(second),
      hidden_number(of.first_point.X()),
      hidden_number(of.first_point.Y()),
      hidden_number(of.first_point.Z()),
      hidden_number(of.second_point.X()),
      hidden_number(of.second_point.Y()),
      hidden_number(of.second_point.Z())};
}

}  // namespace

ClearanceSheet clearance_sheet(const std::vector<Clearance>& clearances, bool inches) {
  const auto tr = [](const char* text) { return ClearanceTable::tr(text); };
  const QString unit = length_unit(inches);
  ClearanceSheet all;
  all.order = tightest_first(clearances);
  all.sheet.heads = {{tr("Between"), "between", {}, false},
                     {tr("Gap\n%1").arg(unit), "gap_mm", tr("Least distance of the two solids"), true},
                     {tr("Needed\n%1").arg(unit), "needed_mm", {}, true},
                     {tr("Verdict"), "verdict", {}, false},
                     {tr("Kind"), "kind", tr("What the two are"), false},
                     {tr("Overlap\nmm³"), "overlap_mm3", tr("Common volume where they overlap"), true},
                     {{}, "first", {}, false},
                     {{}, "second", {}, false},
                     {{}, "first_x_mm", {}, true},
                     {{}, "first_y_mm", {}, true},
                     {{}, "first_z_mm", {}, true},
                     {{}, "second_x_mm", {}, true},
                     {{}, "second_y_mm", {}, true},
                     {{}, "second_z_mm", {}, true}};
  all.sheet.rows.reserve(clearances.size());
  for (const std::size_t place : all.order) {
    const Clearance& of = clearances[place];
    all.sheet.rows.push_back({{QString::fromStdString(of.first), QString::fromStdString(of.second)},
                              cells_of(of, inches),
                              of.verdict == Verdict::clash});
  }
  return all;
}

ClearanceTable::ClearanceTable(QObject* parent) : QAbstractTableModel(parent) {}

void ClearanceTable::setClearances(std::shared_ptr<const std::vector<Clearance>> clearances, bool inches) {
  beginResetModel();
  clearances_ = std::move(clearances);
  inches_ = inches;
  order_ = clearances_ ? tightest_first(*clearances_) : std::vector<std::size_t>{};
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
