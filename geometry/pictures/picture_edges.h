#pragma once

#include "core/base/progress.h"
#include "geometry/pictures/picture_paint.h"

namespace prismwright {

/// Draws the edges and contours of all parts on a picture of their faces: behind metal they are gone, behind
/// glass the fainter the more glass there is. False when stopped.
bool draw_edges(const PictureScene& scene, const ViewPlane& plane, const PictureFit& fit, double chord_mm,
                PointImage& image, const Progress& progress);

}  // namespace prismwright
