#pragma once

#include <vector>

#include "core/drawing/drawing.h"

namespace prismwright {

/// One visible line of a thing seen from afar. Places are mm of the thing itself on the plane of view: x to the
/// right, y up; the lens's focus (of a single prism: the origin of its own frame) is the origin.
struct ViewLine {
  std::vector<PaperPoint> points;
  bool glass = true;     ///< else metal
  bool outline = false;  ///< an edge of the thing's own outline, against nothing behind it
};

/// A thing seen from afar (parallel rays), hidden lines left out.
struct LineView {
  std::vector<ViewLine> lines;
  PaperPoint low;  ///< smallest rectangle round all lines
  PaperPoint high;
};

}  // namespace prismwright
