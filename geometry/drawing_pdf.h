#pragma once

#include <string>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"

namespace prismwright {

/// The drawing as a PDF file's bytes, one page a sheet, true to size; words can be searched and copied. The
/// same drawing gives the same bytes where it has a date. Pictures keep every point and lose nothing;
/// one without three bytes for each point is left out. Refused (code "pdf") when the library reports a
/// failure.
Outcome<std::string> pdf_bytes(const Drawing& drawing);

}  // namespace prismwright
