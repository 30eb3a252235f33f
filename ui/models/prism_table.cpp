#include "ui/models/prism_table.h"

#include <QBrush>

#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kLast = 1e300;  // what is not known yet sorts behind everything that is

QString kind_words(ZoneKind kind) {
  const std::string_view name = name_of(kind);
  return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString dash() { return QStringLiteral("–"); }

}  // namespace

std::vector<PrismRow> prism_rows(const Workbench& bench) {
  std::vector<PrismRow> rows;
  const auto plan = bench.plan();
  if (!plan) return rows;
  const auto made = bench.made();
  rows.reserve(plan->prisms.size());
  for (const PlannedPrism& prism : plan->prisms) {
    PrismRow row;
    row.mark = QString::fromStdString(prism.mark);
    row.panel = prism.panel;
    row.zone = QString::fromStdString(prism.zone);
    row.kind = kind_words(prism.kind);
    if (const PrismBody* body = made && made->bodies ? made->bodies->find(prism.mark) : nullptr) {
      row.volume_mm3 = body->volume_mm3;
      row.mass_g = body->mass_g;
      row.greatest_length_mm = body->greatest_length_mm;
    }
    if (const Clearance* clearance = made ? made->tightest_of(prism.mark) : nullptr) {
      row.tightest_mm = clearance->gap_mm;
      row.verdict = clearance->verdict;
    }
    if (const auto at = bench.stages().find(prism.mark); at != bench.stages().end()) row.stage = at->second;
    rows.push_back(std::move(row));
  }
  return rows;
}

PrismTable::PrismTable(QObject* parent) : QAbstractTableModel(parent) {}

void PrismTable::setRows(std::vector<PrismRow> rows, bool inches) {
  const bool same_prisms = std::equal(rows.begin(), rows.end(), rows_.begin(), rows_.end(),
                                      [](const PrismRow& a, const PrismRow& b) { return a.mark == b.mark; });
  if (!same_prisms) beginResetModel();
  rows_ = std::move(rows);
  inches_ = inches;
  if (same_prisms) {
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
    emit headerDataChanged(Qt::Horizontal, 0, kColumns - 1);
    return;
  }
  lines_.clear();
  for (std::size_t i = 0; i < rows_.size(); ++i) lines_.insert(rows_[i].mark, static_cast<int>(i));
  endResetModel();
}

int PrismTable::lineOf(const QString& of_mark) const { return lines_.value(of_mark, -1); }

int PrismTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int PrismTable::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : kColumns; }

QString PrismTable::words(const PrismRow& row, int column) const {
  switch (column) {
    case mark:
      return row.mark;
    case panel:
      return QString::number(row.panel);
    case zone:
      return row.zone;
    case kind:
      return row.kind;
    case volume:
      return row.volume_mm3 ? QString::number(*row.volume_mm3 / 1000, 'f', 1) : dash();
    case mass:
      return row.mass_g ? QString::number(*row.mass_g, 'f', *row.mass_g < 100 ? 1 : 0) : dash();
    case length:
      return row.greatest_length_mm ? length_number(*row.greatest_length_mm, inches_, 1) : dash();
    case tightest:
      if (!row.tightest_mm || !row.verdict) return dash();
      return QStringLiteral("%1 %2 %3")
          .arg(length_number(*row.tightest_mm, inches_), palette::verdict_sign(*row.verdict),
               palette::verdict_words(*row.verdict));
    case stage:
      return palette::stage_words(row.stage);
    default:
      return {};
  }
}

QVariant PrismTable::sortValue(const PrismRow& row, int column) {
  switch (column) {
    case panel:
      return row.panel;
    case volume:
      return row.volume_mm3.value_or(kLast);
    case mass:
      return row.mass_g.value_or(kLast);
    case length:
      return row.greatest_length_mm.value_or(kLast);
    case tightest:
      // A clash stands before a mere touch.
      return row.tightest_mm ? *row.tightest_mm - (row.verdict == Verdict::clash ? 1.0 : 0.0) : kLast;
    case stage:
      return static_cast<int>(row.stage);
    case zone:
      return row.zone;
    case kind:
      return row.kind;
    default:
      return row.mark;
  }
}

QVariant PrismTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const PrismRow& of = row(index.row());
  switch (role) {
    case Qt::DisplayRole:
      return words(of, index.column());
    case kSortRole:
      return sortValue(of, index.column());
    case Qt::TextAlignmentRole:
      if (index.column() == panel || (index.column() >= volume && index.column() <= tightest))
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
      return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    case Qt::DecorationRole:
      return index.column() == stage ? QVariant(palette::stage(of.stage)) : QVariant();
    case Qt::ForegroundRole:
      if (index.column() == tightest && of.verdict == Verdict::clash) return QBrush(palette::amiss());
      return {};
    default:
      return {};
  }
}

QVariant PrismTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole) {
    const bool number = section == panel || (section >= volume && section <= tightest);
    return QVariant((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  }
  if (role != Qt::DisplayRole) return {};
  const QString unit = length_unit(inches_);
  switch (section) {
    case mark:
      return tr("Mark");
    case panel:
      return tr("Panel");
    case zone:
      return tr("Zone");
    case kind:
      return tr("Kind");
    case volume:
      return tr("Volume\ncm³");
    case mass:
      return tr("Mass\ng");
    case length:
      return tr("Length\n%1").arg(unit);
    case tightest:
      return tr("Tightest\n%1").arg(unit);
    case stage:
      return tr("Stage");
    default:
      return {};
  }
}

WordFilter::WordFilter(QObject* parent) : QSortFilterProxyModel(parent) {
  setSortRole(PrismTable::kSortRole);
  setDynamicSortFilter(true);
}

void WordFilter::setWords(const QString& text) {
  words_ = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  invalidateFilter();
}

bool WordFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  QString line;
  for (int column = 0; column < sourceModel()->columnCount(parent); ++column)
    line += sourceModel()->index(row, column, parent).data().toString() + QLatin1Char('\n');
  return std::all_of(words_.begin(), words_.end(),
                     [&](const QString& word) { return line.contains(word, Qt::CaseInsensitive); });
}

}  // namespace prismwright
