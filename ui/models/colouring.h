#pragma once

#include <QColor>
#include <QString>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// What the colour of a prism tells, in the 3D view and on the panel chart.
enum class Colouring { material, departure, clearance, stage, master };

/// Fill and meaning for one prism. Colour is never alone: `sign` is drawn or written with it.
struct PrismLook {
  QColor fill;
  QString sign;     ///< the stage's or verdict's mark, one or two characters; the master's name; may be empty
  QString meaning;  ///< words for the tip: "polished", "0.42 mm, tight", "0.003 deg"
  bool hatched = false;
  QString short_sign = {};  ///< where there is no room for the sign; may be empty
};
PrismLook look_of(const Workbench& bench, const std::string& mark, Colouring colouring);

/// Rows of the legend of a colouring, in order.
struct LegendRow {
  QColor fill;
  QString sign;
  QString words;
  bool hatched = false;
};
std::vector<LegendRow> legend_of(const Workbench& bench, Colouring colouring);

}  // namespace prismwright
