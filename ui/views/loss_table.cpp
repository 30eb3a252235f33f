#include "ui/views/loss_table.h"

#include <QHeaderView>

#include "ui/models/slow_pace.h"
#include "ui/views/fate_bar.h"

namespace prismwright {
namespace {
constexpr int kRowHeight = 25;
constexpr int kWhereWidth = 52;
constexpr int kShareWidth = 72;
}  // namespace

LossTable::LossTable(Workbench* bench, QWidget* parent) : QTableWidget(0, 3, parent), bench_(bench) {
  setObjectName(QStringLiteral("proof.losses"));
  setAccessibleName(tr("Lost light by cause"));
  setEditTriggers(NoEditTriggers);
  setSelectionMode(NoSelection);
  setProperty("dense", true);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setTabKeyNavigation(false);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  setHorizontalHeaderLabels({tr("Cause"), tr("Where"), tr("Share")});
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeaderItem(2)->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
  for (const auto& [column, width] : {std::pair(1, kWhereWidth), std::pair(2, kShareWidth)}) {
    horizontalHeader()->setSectionResizeMode(column, QHeaderView::Fixed);
    setColumnWidth(column, width);
  }
  SlowPace::of(bench_)->add(this, [this] { follow(); });
  follow();
}

void LossTable::follow() {
  const auto proof = bench_->proof();
  const std::vector<LossByCause> losses = proof ? proof->losses : std::vector<LossByCause>();
  setRowCount(static_cast<int>(losses.size()));
  for (int row = 0; row < rowCount(); ++row) {
    const LossByCause& loss = losses[static_cast<std::size_t>(row)];
    const std::string_view cause = words_of(loss.cause);
    const QString texts[] = {QString::fromUtf8(cause.data(), static_cast<qsizetype>(cause.size())),
                             QString::fromStdString(loss.zone), share_text(loss.share)};
    for (int column = 0; column < 3; ++column) {
      auto* item = new QTableWidgetItem(texts[column]);
      item->setTextAlignment(Qt::AlignVCenter | (column == 2 ? Qt::AlignRight : Qt::AlignLeft));
      setItem(row, column, item);
    }
  }
}

}  // namespace prismwright
