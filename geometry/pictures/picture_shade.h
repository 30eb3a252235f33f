#pragma once

#include <cstdint>
#include <vector>

#include "geometry/pictures/picture_scene.h"
#include "geometry/pictures/view_plane.h"

namespace prismwright {

/// A colour in shares of full red, green and blue.
struct PointColour {
  float red = 1;
  float green = 1;
  float blue = 1;
};

/// What a line of sight from the eye shows on white paper: glass let through layer by layer, brass solid. Light
/// falls softly from the upper left of the picture and from the eye.
class PictureShade {
 public:
  /// `depth_mm`: of the whole thing along the view. What stands further back is paler.
  PictureShade(const PictureScene& scene, const ViewPlane& plane, double depth_mm);

  /// `met`: on a ray from a plane just before the thing, nearest first.
  [[nodiscard]] PointColour colour(const std::vector<Meeting>& met) const;
  /// Equal for lines of sight that pass the same faces, as far as the eye can tell.
  [[nodiscard]] std::uint64_t faces(const std::vector<Meeting>& met) const;

 private:
  struct Lights {
    SpaceVector eye, key, shine, up;  ///< in the part's own frame, unit
  };
  struct Layer {
    PointColour tint;
    float cover = 0;
  };
  [[nodiscard]] SpaceVector normal(const Meeting& m) const;
  [[nodiscard]] Layer glass(const Meeting& m) const;
  [[nodiscard]] PointColour brass(const Meeting& m) const;
  [[nodiscard]] float paleness(const Meeting& m) const;

  const PictureScene& scene_;
  double depth_mm_;
  std::vector<Lights> lights_;
};

}  // namespace prismwright
