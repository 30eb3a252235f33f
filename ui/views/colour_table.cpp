#include "ui/views/colour_table.h"

#include <QHeaderView>

#include "core/lens/zone_colours.h"

namespace prismwright {
namespace {

constexpr int kRowHeight = 25;

QString departure(const std::optional<double>& deg) {
  if (!deg) return QStringLiteral("–");
  QString text = QString::number(*deg, 'f', 3);
  if (text.startsWith('-') && text.toDouble() == 0) text.remove(0, 1);
  return text.replace('-', QChar(0x2212));
}

}  // namespace

ColourTable::ColourTable(Workbench* bench, QWidget* parent) : QTableWidget(0, 4, parent), bench_(bench) {
  setObjectName(QStringLiteral("proof.colours"));
  setAccessibleName(tr("Colour fan by zone"));
  setEditTriggers(NoEditTriggers);
  setSelectionMode(NoSelection);
  setProperty("dense", true);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setTabKeyNavigation(false);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  setHorizontalHeaderLabels({tr("Zone"), tr("F, deg"), tr("d, deg"), tr("C, deg")});
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  const double lines_nm[] = {0, kLineF_nm, kLineD_nm, kLineC_nm};
  for (int column = 0; column < 4; ++column) {
    horizontalHeaderItem(column)->setTextAlignment(Qt::AlignVCenter |
                                                   (column ? Qt::AlignRight : Qt::AlignLeft));
    if (column) horizontalHeaderItem(column)->setToolTip(tr("Light of %1 nm").arg(lines_nm[column]));
  }
  connect(bench_, &Workbench::bookChanged, this, &ColourTable::follow);
  connect(bench_, &Workbench::valuesChanged, this, &ColourTable::follow);
}

void ColourTable::follow() {
  behind_ = true;
  if (isVisible()) fill();
}

void ColourTable::showEvent(QShowEvent* event) {
  QTableWidget::showEvent(event);
  if (behind_) fill();
}

void ColourTable::fill() {
  behind_ = false;
  std::vector<ZoneColours> zones;
  if (const auto plan = bench_->plan()) {
    zones = zone_colours(plan->section, bench_->values().material);
  }
  setRowCount(static_cast<int>(zones.size()));
  for (int row = 0; row < rowCount(); ++row) {
    const ZoneColours& zone = zones[static_cast<std::size_t>(row)];
    const auto put = [&](int column, const QString& text, const QString& tip) {
      auto* item = new QTableWidgetItem(text);
      item->setTextAlignment(Qt::AlignVCenter | (column ? Qt::AlignRight : Qt::AlignLeft));
      item->setToolTip(tip);
      setItem(row, column, item);
    };
    const auto put_line = [&](int column, std::optional<double> OfLines<std::optional<double>>::*line) {
      put(column, departure(zone.middle.*line),
          tr("From %1 deg at the foot of the zone to %2 deg at its head")
              .arg(departure(zone.low.*line), departure(zone.high.*line)));
    };
    put(0, QString::fromStdString(zone.mark), {});
    put_line(1, &ColourDepartures::f);
    put_line(2, &ColourDepartures::d);
    put_line(3, &ColourDepartures::c);
  }
}

}  // namespace prismwright
