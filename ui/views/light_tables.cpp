#include "ui/views/light_tables.h"

#include <QHeaderView>

#include "ui/models/light_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

QString tenth(double value) { return QString::number(value, 'f', 1); }
QString percent(double part, double whole, int decimals = 2) {
  return QString::number(whole > 0 ? 100 * part / whole : 0, 'f', decimals);
}

}  // namespace

FigureTable::FigureTable(const QString& name, const QString& what, const QStringList& heads, QWidget* parent)
    : QTableWidget(0, static_cast<int>(heads.size()), parent) {
  setObjectName(name);
  setAccessibleName(what);
  setHorizontalHeaderLabels(heads);
  setEditTriggers(NoEditTriggers);
  setSelectionMode(NoSelection);
  setFocusPolicy(Qt::ClickFocus);
  setProperty("dense", true);
  setShowGrid(false);
  setAlternatingRowColors(true);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  for (int column = 0; column < columnCount(); ++column)
    horizontalHeaderItem(column)->setTextAlignment((column ? Qt::AlignRight : Qt::AlignLeft) |
                                                   Qt::AlignVCenter);
}

void FigureTable::setLeastRows(int rows) {
  setMinimumHeight(horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() + 4);
}

void FigureTable::clearRows() { setRowCount(0); }

void FigureTable::addRow(const QStringList& cells) {
  const int row = rowCount();
  insertRow(row);
  for (int column = 0; column < cells.size(); ++column) {
    auto* item = new QTableWidgetItem(cells.at(column));
    item->setTextAlignment((column ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    setItem(row, column, item);
  }
}

void fill_ranges(FigureTable& table, const LightReport* report) {
  table.clearRows();
  if (!report) return;
  for (const RangeRow& row : report->ranges)
    table.addRow({tenth(row.visibility_nmi), tenth(row.white_nmi), tenth(row.red_nmi), tenth(row.green_nmi),
                  tenth(row.yellow_nmi)});
}

void fill_budget(FigureTable& table, const LightReport* report) {
  table.clearRows();
  if (!report) return;
  const FluxBudget& budget = report->budget;
  for (int i = 0; i < kLightFates; ++i) {
    const auto fate = static_cast<LightFate>(i);
    const double error = budget.error_lm[static_cast<std::size_t>(i)];
    table.addRow({palette::light_fate_words(fate), tenth(budget.of(fate)),
                  percent(budget.of(fate), budget.flux_lm), percent(error, budget.flux_lm)});
  }
}

void fill_zones(FigureTable& table, const LightReport* report) {
  table.clearRows();
  if (!report) return;
  const FluxBudget& budget = report->budget;
  for (const ZoneFlux& zone : budget.zones)
    table.addRow({QString::fromStdString(zone.zone), tenth(zone.level_lm),
                  percent(zone.level_lm, budget.flux_lm), tenth(zone.stray_lm)});
}

}  // namespace prismwright
