#include "ui/views/facet_words.h"

#include <QStringList>
#include <cmath>

namespace prismwright {
namespace {

QString number(double value, int decimals) {
  return QString::number(value, 'f', decimals).replace('-', QChar(0x2212));
}

}  // namespace

FacetWords::FacetWords(Workbench* bench, QWidget* parent) : QLabel(parent) {
  setObjectName(QStringLiteral("proof.facets"));
  setWordWrap(true);
  const auto follow_bench = [this, bench] {
    const std::vector<FacetDeparture>& facets = bench->facets();
    const FacetDeparture* worst = worst_of(facets);
    setVisible(worst != nullptr);
    if (!worst) return clear();
    QStringList zones;
    for (const FacetDeparture& facet : facets) {
      zones << QStringLiteral("%1 %2").arg(QString::fromStdString(facet.zone),
                                           number(facet.worst.departure_deg, 3));
    }
    setText(
        tr("Flat inner faces: the curves are right at the middle of each panel. Towards its sides focal light "
           "departs up to %1 deg from its aim (%2, %3 deg from the panel's axis) and is turned towards the "
           "axis: what enters up to %4 deg from it leaves up to %5 deg, and the horizon between gets none. "
           "Worst by zone, deg: %6.")
            .arg(number(std::abs(worst->worst.departure_deg), 3), QString::fromStdString(worst->zone),
                 number(worst->worst.azimuth_deg, 1), number(worst->side_deg, 1), number(lit_to_deg(facets), 1),
                 zones.join(QStringLiteral(", "))));
  };
  connect(bench, &Workbench::bookChanged, this, follow_bench);
  connect(bench, &Workbench::valuesChanged, this, follow_bench);
  follow_bench();
}

}  // namespace prismwright
