#pragma once

#include <vector>

#include <Graphic3d_ArrayOfSegments.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>

#include "ui/views/lens_meshes.h"

namespace prismwright {

/// A plane that cuts the lens open in the 3D view; what lies on the side of `away` is not drawn.
struct LensCut {
  enum class Kind { none, level, upright };
  Kind kind = Kind::none;
  double height_mm = 0;    ///< level: everything above is cut away
  double azimuth_deg = 0;  ///< upright through the lens axis: the half clockwise of this azimuth is cut away

  [[nodiscard]] gp_Vec away() const;  ///< unit normal, towards what is cut away
  [[nodiscard]] double offset_mm() const { return kind == Kind::level ? height_mm : 0; }
  bool operator==(const LensCut&) const = default;
};

/// A part with the place where it now stands.
struct PlacedPart {
  const LensMesh* mesh;
  gp_Trsf place;
};

/// The lines in which the plane meets the facets of the parts; null when it meets none.
Handle(Graphic3d_ArrayOfSegments) cut_lines(const LensCut& cut, const std::vector<PlacedPart>& parts);

}  // namespace prismwright
