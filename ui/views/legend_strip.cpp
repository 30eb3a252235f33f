#include "ui/views/legend_strip.h"

#include <QPainter>

#include "ui/style/palette.h"

namespace prismwright {
namespace {

constexpr double kSwatchWidth = 26;
constexpr double kSwatchHeight = 18;

}  // namespace

LegendStrip::LegendStrip(Workbench* bench, Colouring colouring, QWidget* parent)
    : QWidget(parent), bench_(bench), colouring_(colouring) {
  setMinimumHeight(28);
  for (const auto signal :
       {&Workbench::bookChanged, &Workbench::valuesChanged, &Workbench::madeChanged, &Workbench::ledgerChanged})
    connect(bench_, signal, this, qOverload<>(&QWidget::update));
}

void LegendStrip::setColouring(Colouring colouring) {
  colouring_ = colouring;
  update();
}

void LegendStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QFontMetricsF metrics(font());
  double left = 1;
  for (const LegendRow& row : legend_of(*bench_, colouring_)) {
    const QRectF swatch(left, (height() - kSwatchHeight) / 2, kSwatchWidth, kSwatchHeight);
    painter.setPen(QPen(palette::glass_edge(), 0.8));
    painter.setBrush(row.hatched ? QBrush(palette::surface()) : QBrush(row.fill));
    painter.drawRect(swatch);
    if (row.hatched) {
      painter.setBrush(QBrush(row.fill, Qt::BDiagPattern));
      painter.drawRect(swatch);
    }
    painter.setPen(row.hatched ? row.fill : palette::ink_on(row.fill));
    painter.drawText(swatch, Qt::AlignCenter, row.sign);
    left += kSwatchWidth + 6;
    painter.setPen(palette::ink());
    const double width = metrics.horizontalAdvance(row.words) + 2;
    painter.drawText(QRectF(left, 0, width, height()), Qt::AlignVCenter | Qt::AlignLeft, row.words);
    left += width + 18;
  }
}

}  // namespace prismwright
