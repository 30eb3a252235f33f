#pragma once

#include <QString>
#include <vector>

#include "ui/models/workbench.h"

namespace prismwright {

/// One of the main figures of a lens, in words.
struct MainFigure {
  QString name;   ///< for object names: "prisms"
  QString label;  ///< "Height"
  QString value;  ///< "612 mm"
};

/// Prisms, height, inside diameter, index, share of the light taken; glass, brass and the longest prism when
/// the solids are made ("being made" until then).
std::vector<MainFigure> main_figures_of(const Workbench& bench);

}  // namespace prismwright
