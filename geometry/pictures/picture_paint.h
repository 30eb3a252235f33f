#pragma once

#include <optional>

#include "core/base/progress.h"
#include "geometry/pictures/picture_shade.h"
#include "geometry/pictures/view_plane.h"

namespace prismwright {

/// How a thing lies on a picture: the point (x, y) from the picture's upper left corner shows the place
/// (left_mm + x * mm_per_point, top_mm - y * mm_per_point) of the plane of view.
struct PictureFit {
  int wide = 0;
  int high = 0;
  double mm_per_point = 1;
  double left_mm = 0;
  double top_mm = 0;
  double near_mm = 0;  ///< of the thing along the view, measured towards the eye
  double far_mm = 0;

  [[nodiscard]] PaperPoint point(PaperPoint flat) const {
    return {(flat.x - left_mm) / mm_per_point, (top_mm - flat.y) / mm_per_point};
  }
};

/// The whole scene in the middle, as large as a margin of a twentieth of the picture's shorter side lets it be.
PictureFit fit_picture(const PictureScene& scene, const ViewPlane& plane, int wide, int high);

/// The faces without their edges: each point is the mean of four places where it shows more than one face,
/// else of one. Blank when stopped.
std::optional<PointImage> painted_faces(const PictureScene& scene, const ViewPlane& plane,
                                        const PictureFit& fit, const Progress& progress);

}  // namespace prismwright
