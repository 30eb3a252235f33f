#include "ui/views/lamp_light.h"

#include <QLabel>
#include <QVBoxLayout>

#include "core/optics/lamp_line.h"
#include "ui/models/shown_numbers.h"
#include "ui/style/palette.h"
#include "ui/views/fate_bar.h"

namespace prismwright {

namespace {

QString departure(double deg) {
  QString text = QString::number(deg, 'f', 2);
  if (text.startsWith('-') && text.toDouble() == 0) text.remove(0, 1);
  return text.replace('-', QChar(0x2212));
}

}  // namespace

LampLightPanel::LampLightPanel(Workbench* bench, QWidget* parent)
    : QWidget(parent), bench_(bench), bar_(new FateBar(this)), words_(new QLabel(this)) {
  bar_->setObjectName(QStringLiteral("proof.lamp"));
  words_->setObjectName(QStringLiteral("proof.lamp.words"));
  words_->setWordWrap(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addWidget(bar_);
  column->addWidget(words_);
  connect(bench_, &Workbench::bookChanged, this, &LampLightPanel::follow);
  connect(bench_, &Workbench::valuesChanged, this, &LampLightPanel::follow);
  connect(bench_, &Workbench::unitsChanged, this, &LampLightPanel::follow);
}

void LampLightPanel::follow() {
  behind_ = true;
  if (isVisible()) fill();
}

void LampLightPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (behind_) fill();
}

void LampLightPanel::fill() {
  behind_ = false;
  const auto plan = bench_->plan();
  if (!plan) {
    bar_->clear();
    words_->clear();
    return;
  }
  const Lamp& lamp = bench_->values().lamp;
  const LampLineProof proof = prove_lamp(plan->section, {lamp.height_mm, lamp.above_mm});
  bar_->setShares(proof.share);
  QStringList parts;
  for (int fate = 0; fate < kFates; ++fate)
    if (proof.share[fate] > 0)
      parts << QStringLiteral("%1 %2").arg(palette::fate_words(static_cast<Fate>(fate)),
                                           share_text(proof.share[fate]));
  const QString shape = lamp.height_mm > 0
                            ? tr("Lamp %1 high").arg(length_text(lamp.height_mm, bench_->inches(), 1))
                            : tr("Point lamp");
  words_->setText(
      tr("%1: the section takes %2 of its light: %3. What leaves by the zones' own way spreads %4 to "
         "%5 deg from its aim (rms %6).")
          .arg(shape, share_text(proof.share_of_lamp), parts.join(QStringLiteral(", ")),
               departure(proof.lowest_departure_deg), departure(proof.highest_departure_deg),
               QString::number(proof.rms_departure_deg, 'f', 2)));
}

}  // namespace prismwright
