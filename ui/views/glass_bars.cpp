#include "ui/views/glass_bars.h"

#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

#include "geometry/glass_by_zone.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr int kRowHeight = 25;
constexpr int kZone = 0, kPieces = 1, kVolume = 2, kMass = 3, kBar = 4, kColumns = 5;
constexpr double kMm3PerCm3 = 1000;

/// A bar of the share that the cell holds.
class BarCells : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    QStyledItemDelegate::paint(painter, option, index);
    const QRectF room = QRectF(option.rect).adjusted(4, 6, -4, -6);
    QRectF bar = room;
    bar.setWidth(room.width() * index.data(Qt::UserRole).toDouble());
    painter->fillRect(bar, palette::glass_fill());
    painter->setPen(palette::glass_edge());
    painter->drawRect(bar);
  }
};

}  // namespace

GlassBars::GlassBars(Workbench* bench, QLabel* sums, QWidget* parent)
    : QTableWidget(0, kColumns, parent), bench_(bench), sums_(sums) {
  setObjectName(QStringLiteral("proof.glass"));
  setAccessibleName(tr("Glass by zone"));
  setEditTriggers(NoEditTriggers);
  setSelectionMode(NoSelection);
  setProperty("dense", true);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setTabKeyNavigation(false);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(kRowHeight);
  setHorizontalHeaderLabels({tr("Zone"), tr("Pieces"), tr("cm³"), tr("Mass"), QString()});
  horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  horizontalHeader()->setSectionResizeMode(kBar, QHeaderView::Stretch);
  for (int column = 0; column < kColumns; ++column)
    horizontalHeaderItem(column)->setTextAlignment(Qt::AlignVCenter |
                                                   (column == kZone ? Qt::AlignLeft : Qt::AlignRight));
  setItemDelegateForColumn(kBar, new BarCells(this));
  connect(bench_, &Workbench::bookChanged, this, &GlassBars::follow);
  connect(bench_, &Workbench::valuesChanged, this, &GlassBars::follow);
}

void GlassBars::follow() {
  behind_ = true;
  if (isVisible()) fill();
}

void GlassBars::showEvent(QShowEvent* event) {
  QTableWidget::showEvent(event);
  if (behind_) fill();
}

void GlassBars::fill() {
  behind_ = false;
  const auto plan = bench_->plan();
  const std::vector<ZoneGlass> zones = plan ? glass_by_zone(*plan) : std::vector<ZoneGlass>();
  double greatest = 0, sum = 0;
  int pieces = 0;
  for (const ZoneGlass& zone : zones) {
    greatest = std::max(greatest, zone.volume_mm3);
    sum += zone.volume_mm3;
    pieces += zone.pieces;
  }
  const double g_per_mm3 = bench_->values().material.density_g_cm3 / kMm3PerCm3;
  setRowCount(static_cast<int>(zones.size()));
  for (int row = 0; row < rowCount(); ++row) {
    const ZoneGlass& zone = zones[static_cast<std::size_t>(row)];
    const QString texts[] = {QString::fromStdString(zone.mark), QString::number(zone.pieces),
                             QString::number(zone.volume_mm3 / kMm3PerCm3, 'f', 1),
                             mass_text(zone.volume_mm3 * g_per_mm3), QString()};
    for (int column = 0; column < kColumns; ++column) {
      auto* item = new QTableWidgetItem(texts[column]);
      item->setTextAlignment(Qt::AlignVCenter | (column == kZone ? Qt::AlignLeft : Qt::AlignRight));
      if (column == kBar && greatest > 0) item->setData(Qt::UserRole, zone.volume_mm3 / greatest);
      setItem(row, column, item);
    }
  }
  sums_->setText(tr("%1 pieces, %2 cm³, %3 in the whole lens.")
                     .arg(pieces)
                     .arg(sum / kMm3PerCm3, 0, 'f', 0)
                     .arg(mass_text(sum * g_per_mm3)));
}

}  // namespace prismwright
