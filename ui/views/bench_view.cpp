#include "ui/views/bench_view.h"

#include <QHeaderView>
#include <QShortcut>
#include <algorithm>

#include "ui/models/bench_table.h"

namespace prismwright {
namespace {

constexpr int kHeadRoom_px = 10;
constexpr int kLeastMend_px = 215;  // "shim the inner edge 0.03 mm"

}  // namespace

BenchView::BenchView(MarkFilter* order, QWidget* parent) : QTableView(parent) {
  setObjectName(QStringLiteral("bench.table"));
  setModel(order);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setTabKeyNavigation(false);
  setAlternatingRowColors(true);
  setShowGrid(false);
  setProperty("dense", true);
  setWordWrap(false);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  QHeaderView* heads = horizontalHeader();
  heads->setHighlightSections(false);
  heads->setMinimumSectionSize(28);
  heads->setSortIndicator(-1, Qt::AscendingOrder);
  heads->moveSection(heads->visualIndex(BenchTable::turn), BenchTable::kColumns - 1);
  setSortingEnabled(true);
  connect(this, &QTableView::doubleClicked, this, &BenchView::recordWanted);
  for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Enter}) {
    auto* shortcut = new QShortcut(key, this);
    shortcut->setContext(Qt::WidgetShortcut);
    connect(shortcut, &QShortcut::activated, this, &BenchView::recordWanted);
  }
}

/// Of the cells and of each line of the head: the head's own hint counts its lines as one.
int BenchView::neededWidth(int column) const {
  int width = sizeHintForColumn(column);
  const QString head = model()->headerData(column, Qt::Horizontal).toString();
  for (const QString& line : head.split('\n'))
    width = std::max(width, horizontalHeader()->fontMetrics().horizontalAdvance(line) + kHeadRoom_px);
  return width;
}

void BenchView::fitColumns() {
  for (int column = 0; column < model()->columnCount(); ++column)
    if (column != BenchTable::mend) setColumnWidth(column, neededWidth(column));
  giveTheRest();
}

void BenchView::giveTheRest() {
  int others = 0;
  for (int column = 0; column < model()->columnCount(); ++column)
    if (column != BenchTable::mend && !isColumnHidden(column)) others += columnWidth(column);
  setColumnWidth(BenchTable::mend, std::max(kLeastMend_px, viewport()->width() - others));
}

void BenchView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  giveTheRest();
}

}  // namespace prismwright
