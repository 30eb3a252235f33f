#include "ui/models/shrink_table.h"

#include <QCoreApplication>

namespace prismwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("ShrinkTable", text); }
QString qt(const std::string& text) { return QString::fromStdString(text); }

Cell percent_cell(std::optional<double> percent) {
  return percent ? number_cell(QString::number(*percent, 'f', 3), *percent) : blank_cell();
}

QString interval_words(const ShrinkFactor& factor) {
  if (!factor.low_percent || !factor.high_percent) return {};
  return tr("%1 to %2").arg(*factor.low_percent, 0, 'f', 3).arg(*factor.high_percent, 0, 'f', 3);
}

int outliers_of(const ShrinkFactor& factor) {
  int count = 0;
  for (const ShrinkPoint& point : factor.points) count += point.outlier ? 1 : 0;
  return count;
}

}  // namespace

QString direction_words(ShrinkDirection direction) {
  switch (direction) {
    case ShrinkDirection::length:
      return tr("length");
    case ShrinkDirection::depth:
      return tr("depth");
    case ShrinkDirection::height:
      return tr("height");
  }
  return {};
}

CellSheet shrink_sheet(const std::vector<ShrinkFit>& fits) {
  CellSheet sheet;
  sheet.heads = {{tr("Resin"), "resin", {}, false},
                 {tr("Lot"), "resin_lot", {}, false},
                 {tr("Direction"), "direction", {}, false},
                 {tr("Readings"), "readings", {}, true},
                 {tr("Shrinkage\n%"), "percent", {}, true},
                 {tr("±\n%"), "standard_percent", tr("Standard uncertainty"), true},
                 {tr("95 %\ninterval"), "interval_percent", {}, false},
                 {tr("Odd ones"), "outliers", tr("Readings that stand out; none is dropped"), true},
                 {tr("Note"), "note", {}, false}};
  for (const ShrinkFit& fit : fits) {
    for (const ShrinkFactor& factor : fit.factors) {
      if (factor.count == 0) continue;
      CellRow row;
      const int odd = outliers_of(factor);
      row.amiss = odd > 0;
      row.cells = {word_cell(qt(fit.resin)),
                   word_cell(qt(fit.resin_lot)),
                   word_cell(direction_words(factor.direction)),
                   number_cell(QString::number(factor.count), factor.count),
                   percent_cell(factor.percent),
                   percent_cell(factor.standard_percent),
                   word_cell(interval_words(factor)),
                   number_cell(QString::number(odd), odd),
                   word_cell(qt(factor.note))};
      sheet.rows.push_back(std::move(row));
    }
  }
  return sheet;
}

}  // namespace prismwright
