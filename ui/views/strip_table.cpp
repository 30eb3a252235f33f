#include "ui/views/strip_table.h"

#include <QHeaderView>

#include "ui/models/shown_numbers.h"
#include "ui/models/slow_pace.h"

namespace prismwright {
namespace {
constexpr int kRowHeight = 25;
}  // namespace

StripTable::StripTable(Workbench* bench, QWidget* parent) : QTableWidget(0, 3, parent), bench_(bench) {
  setObjectName(QStringLiteral("section.strips"));
  setAccessibleName(tr("Dark strips of the level beam"));
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionMode(QAbstractItemView::NoSelection);
  setProperty("dense", true);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setTabKeyNavigation(false);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  horizontalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
  SlowPace::of(bench_)->add(this, [this] { follow(); });
  connect(bench_, &Workbench::unitsChanged, this, &StripTable::follow);
  follow();
}

void StripTable::follow() {
  const auto proof = bench_->proof();
  const std::vector<BeamStrip> strips = proof ? proof->dark_strips : std::vector<BeamStrip>();
  const bool inches = bench_->inches();
  const QString unit = length_unit(inches);
  setHorizontalHeaderLabels(
      {tr("Dark from z\n%1").arg(unit), tr("to z\n%1").arg(unit), tr("height\n%1").arg(unit)});
  setRowCount(static_cast<int>(strips.size()));
  for (int row = 0; row < rowCount(); ++row) {
    const BeamStrip& strip = strips[strips.size() - 1 - static_cast<std::size_t>(row)];
    const double lengths[] = {strip.from_mm, strip.to_mm, strip.to_mm - strip.from_mm};
    for (int column = 0; column < 3; ++column) {
      auto* item = new QTableWidgetItem(length_number(lengths[column], inches).replace('-', QChar(0x2212)));
      item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      setItem(row, column, item);
    }
  }
}

}  // namespace prismwright
