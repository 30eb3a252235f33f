#include "ui/models/ledger_model.h"

#include "ui/models/local_time.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QVariant number_or_blank(long long number) {
  return number == 0 ? QVariant() : QVariant(static_cast<qlonglong>(number));
}

bool is_number(int column) {
  return column == LedgerModel::number || column == LedgerModel::casting || column == LedgerModel::load;
}

}  // namespace

LedgerModel::LedgerModel(Workbench* bench, QObject* parent) : QAbstractTableModel(parent), bench_(bench) {
  connect(bench_, &Workbench::bookChanged, this, &LedgerModel::read);
  connect(bench_, &Workbench::ledgerChanged, this, &LedgerModel::read);
  connect(bench_, &Workbench::selectionChanged, this, [this] {
    if (only_selection_) read();
  });
  read();
}

void LedgerModel::setOnlySelection(bool only) {
  only_selection_ = only;
  read();
}

void LedgerModel::read() {
  beginResetModel();
  lines_.clear();
  if (bench_->hasBook()) {
    const std::vector<LedgerEntry>& ledger = bench_->book().ledger();
    for (auto line = ledger.rbegin(); line != ledger.rend(); ++line)
      if (!only_selection_ || bench_->selection().contains(QString::fromStdString(line->mark)))
        lines_.push_back(*line);
  }
  endResetModel();
}

int LedgerModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int LedgerModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QVariant LedgerModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole)
    return QVariant((is_number(section) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case number:
      return tr("No.");
    case when:
      return tr("When");
    case prism:
      return tr("Prism");
    case casting:
      return tr("Casting");
    case load:
      return tr("Load");
    case from:
      return tr("From");
    case to:
      return tr("To");
    case by:
      return tr("By");
    case note:
      return tr("Note");
    default:
      return {};
  }
}

QVariant LedgerModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const LedgerEntry& line = lines_[static_cast<std::size_t>(index.row())];
  if (role == Qt::TextAlignmentRole && is_number(index.column()))
    return QVariant(Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::ToolTipRole && index.column() == note) return QString::fromStdString(line.note);
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case number:
      return static_cast<qlonglong>(line.number);
    case when:
      return local_time(line.when_utc);
    case prism:
      return QString::fromStdString(line.mark);
    case casting:
      return number_or_blank(line.serial);
    case load:
      return number_or_blank(line.load);
    case from:
      return palette::stage_words(line.from);
    case to:
      return palette::stage_words(line.to);
    case by:
      return QString::fromStdString(line.by);
    case note:
      return QString::fromStdString(line.note);
    default:
      return {};
  }
}

}  // namespace prismwright
