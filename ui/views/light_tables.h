#pragma once

#include <QTableWidget>

#include "core/light/light_report.h"

namespace prismwright {

/// A quiet table of figures, words left and numbers right, with the unit in the head. Nothing is edited in it.
class FigureTable : public QTableWidget {
  Q_OBJECT

 public:
  FigureTable(const QString& name, const QString& what, const QStringList& heads, QWidget* parent);
  void clearRows();
  /// Never lower than so many rows, which then need no scrolling.
  void setLeastRows(int rows);
  /// The first column stands left, the others right.
  void addRow(const QStringList& cells);
};

/// Range by visibility and colour, nautical miles.
void fill_ranges(FigureTable& table, const LightReport* report);
/// What becomes of the lamp's light: lm, share and standard error.
void fill_budget(FigureTable& table, const LightReport* report);
/// The light of each zone: by the prisms' own ways and stray, lm and share.
void fill_zones(FigureTable& table, const LightReport* report);

}  // namespace prismwright
