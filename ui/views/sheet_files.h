#pragma once

#include <QString>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"

namespace prismwright {

/// Writes one sheet of a drawing, whole or not at all: PDF or SVG by the ending of the name. Any other ending
/// is refused (code "ending").
Done save_sheet(const Drawing& drawing, std::size_t sheet, const QString& path);

}  // namespace prismwright
