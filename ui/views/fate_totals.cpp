#include "ui/views/fate_totals.h"

#include <QLabel>
#include <QVBoxLayout>

#include "ui/models/shown_numbers.h"
#include "ui/models/slow_pace.h"

namespace prismwright {

FateTotals::FateTotals(Workbench* bench, QWidget* parent)
    : QWidget(parent),
      bench_(bench),
      bar_(new FateBar(this)),
      key_(new FateKey(this)),
      sums_(new QLabel(this)) {
  key_->setObjectName(QStringLiteral("totals.key"));
  sums_->setObjectName(QStringLiteral("totals.sums"));
  sums_->setWordWrap(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  column->addWidget(bar_);
  column->addWidget(key_);
  column->addWidget(sums_);
  SlowPace::of(bench_)->add(this, [this] { follow(); });
  connect(bench_, &Workbench::unitsChanged, this, &FateTotals::follow);
  follow();
}

void FateTotals::follow() {
  const auto proof = bench_->proof();
  proof ? bar_->setShares(proof->share) : bar_->clear();
  key_->setProof(proof);
  if (!proof) {
    sums_->clear();
    return;
  }
  QStringList parts;
  parts << tr("Takes %1 of all the light of the source").arg(share_text(proof->share_of_source))
        << tr("%1 of the level light comes through the faces").arg(share_text(proof->through))
        << tr("worst departure %1 deg (%2)")
               .arg(proof->worst_departure_deg, 0, 'f', 3)
               .arg(QString::fromStdString(proof->worst_zone));
  if (proof->least_margin_deg) parts << tr("least margin %1 deg").arg(*proof->least_margin_deg, 0, 'f', 2);
  double dark = 0;
  for (const BeamStrip& strip : proof->dark_strips) dark += strip.to_mm - strip.from_mm;
  parts << (proof->dark_strips.empty() ? tr("no dark strips")
                                       : tr("dark strips in the beam: %1, together %2")
                                             .arg(proof->dark_strips.size())
                                             .arg(length_text(dark, bench_->inches())));
  sums_->setText(parts.join(QStringLiteral("; ")) + QLatin1Char('.'));
}

}  // namespace prismwright
