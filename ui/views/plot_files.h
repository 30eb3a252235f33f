#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/base/outcome.h"

class QCustomPlot;

namespace prismwright {

/// The numbers behind a plot, as they are saved: a head with its unit for each column.
struct PlotNumbers {
  QStringList heads;  ///< "azimuth_deg", "intensity_cd"
  std::vector<QStringList> rows;
};

/// A number that reads back exactly, for a row.
QString plot_number(double value);

/// Words fit for a cell of a row: in quotes where they hold a comma, a quote or a line end.
QString quoted_for_csv(const QString& words);

/// Writes the plot under this name, whole or not at all: a picture of twice the pixels (.png), a drawing (.svg)
/// or its numbers (.csv) by its ending. Any other ending is refused.
Done save_plot(QCustomPlot& plot, const QString& title, const PlotNumbers& numbers, const QString& path);

/// Writes numbers alone, whole or not at all; any ending but .csv is refused.
Done save_numbers(const PlotNumbers& numbers, const QString& path);

}  // namespace prismwright
