#pragma once

#include <optional>

#include "core/base/progress.h"
#include "core/drawing/line_view.h"
#include "geometry/pictures/picture_scene.h"
#include "geometry/pictures/view_plane.h"

namespace prismwright {

/// The edges and contours of a scene that the eye sees, part by part, within 0.05 mm of where they run on the
/// facets. Blank when stopped.
std::optional<LineView> visible_lines(const PictureScene& scene, const ViewPlane& plane, double chord_mm,
                                      const Progress& progress);

}  // namespace prismwright
