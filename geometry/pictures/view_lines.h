#pragma once

#include <functional>
#include <vector>

#include "core/base/space.h"
#include "core/drawing/drawing.h"
#include "geometry/pictures/picture_scene.h"

namespace prismwright {

/// A place on a line that may be drawn, in the lens frame.
struct DrawnNode {
  SpacePoint place;
  SpaceVector first;   ///< outward normals of the two faces that meet there
  SpaceVector second;  ///< of a contour: both the same
};

/// A line of a part that may be drawn: an edge, which lies on the facets, or a contour, which lies on the true
/// face.
struct DrawnLine {
  std::vector<DrawnNode> nodes;
  bool contour = false;
};

/// A part's edges, and its contours seen from an eye in that direction (unit).
std::vector<DrawnLine> drawn_lines(const ScenePart& part, SpaceVector eye);

/// A stretch of a line that is in one state all along.
struct LineRun {
  int state = 0;
  std::vector<SpacePoint> places;
};

/// The line parted where its state changes: asked about every `step_mm` and found to a hundredth of that.
std::vector<LineRun> runs_of(const DrawnLine& line, double step_mm,
                             const std::function<int(const DrawnNode&)>& state_at);

/// The polyline with corners left out that lie within `within` of it (Ramer, Douglas and Peucker). Both ends
/// stay.
std::vector<PaperPoint> simplified(const std::vector<PaperPoint>& line, double within);
double length_of(const std::vector<PaperPoint>& line);
double length_of(const std::vector<SpacePoint>& line);

}  // namespace prismwright
