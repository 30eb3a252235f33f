#pragma once

#include <string>

#include "core/drawing/drawing.h"

namespace prismwright {

/// One sheet as the text of an SVG 1.1 file, true to size, one unit a millimetre of paper. Arcs stay arcs and
/// words stay words: that is why it is written here and not by a library that would turn both into splines.
std::string svg_text(const Sheet& sheet, const std::string& title);

}  // namespace prismwright
