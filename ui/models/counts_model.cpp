#include "ui/models/counts_model.h"

#include <QFont>
#include <algorithm>

#include "ui/style/palette.h"

namespace prismwright {

CountsModel::CountsModel(Workbench* bench, QObject* parent) : QAbstractTableModel(parent), bench_(bench) {
  connect(bench_, &Workbench::bookChanged, this, &CountsModel::read);
  connect(bench_, &Workbench::valuesChanged, this, &CountsModel::read);
  connect(bench_, &Workbench::ledgerChanged, this, &CountsModel::read);
  read();
}

void CountsModel::read() {
  beginResetModel();
  zones_.clear();
  counts_ = {};
  if (const auto plan = bench_->plan()) {
    std::vector<std::string> marks;
    for (const PlannedPrism& prism : plan->prisms) {
      marks.push_back(prism.mark);
      if (std::find(zones_.begin(), zones_.end(), prism.zone) == zones_.end()) zones_.push_back(prism.zone);
    }
    counts_ = count_stages(bench_->stages(), marks);
  }
  endResetModel();
}

int CountsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(zones_.size()) + 1;
}

int CountsModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(kStages.size()) + 2;
}

QVariant CountsModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  const bool stage = section > 0 && section <= static_cast<int>(kStages.size());
  if (role == Qt::TextAlignmentRole)
    return QVariant((section == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
  if (stage) {
    const Stage which = kStages.at(static_cast<std::size_t>(section - 1));
    if (role == Qt::DisplayRole) return palette::stage_sign(which);
    if (role == Qt::ToolTipRole) return palette::stage_words(which);
    return {};
  }
  if (role == Qt::DisplayRole) return section == 0 ? tr("Zone") : tr("All");
  return {};
}

QVariant CountsModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const bool whole = index.row() == 0;
  if (role == Qt::TextAlignmentRole)
    return QVariant((index.column() == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
  if (role == Qt::FontRole && whole) {
    QFont font;
    font.setBold(true);
    return font;
  }
  if (role != Qt::DisplayRole) return {};
  if (index.column() == 0)
    return whole ? tr("Whole lens") : QString::fromStdString(zones_[static_cast<std::size_t>(index.row() - 1)]);
  static const std::array<int, 9> kNone{};
  const std::array<int, 9>* counts = &counts_.all;
  if (!whole) {
    const auto found = counts_.by_zone.find(zones_[static_cast<std::size_t>(index.row() - 1)]);
    counts = found == counts_.by_zone.end() ? &kNone : &found->second;
  }
  if (index.column() > static_cast<int>(kStages.size())) {
    int sum = 0;
    for (const int count : *counts) sum += count;
    return sum;
  }
  const int count = counts->at(static_cast<std::size_t>(index.column() - 1));
  // A nought is left out so that the eye finds what there is.
  return count == 0 ? QVariant(QString()) : QVariant(count);
}

Stage CountsModel::stageOf(const std::string& mark) const {
  const auto found = bench_->stages().find(mark);
  return found == bench_->stages().end() ? Stage::drawn : found->second;
}

QStringList CountsModel::marksOf(const QModelIndex& index) const {
  QStringList marks;
  const auto plan = bench_->plan();
  if (!plan || !index.isValid()) return marks;
  const bool one_stage = index.column() > 0 && index.column() <= static_cast<int>(kStages.size());
  for (const PlannedPrism& prism : plan->prisms) {
    if (index.row() > 0 && prism.zone != zones_[static_cast<std::size_t>(index.row() - 1)]) continue;
    if (one_stage && stageOf(prism.mark) != kStages.at(static_cast<std::size_t>(index.column() - 1))) continue;
    marks << QString::fromStdString(prism.mark);
  }
  return marks;
}

}  // namespace prismwright
