#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "tests/bench/bench_vector.h"

namespace prismwright::bench {

/// How far a mesh departs from the surfaces that it stands for, glass only, weighted by area: taken at the
/// middle of every triangle, where both errors are about greatest.
struct MeshError {
  double normal_rms_deg = 0;  ///< of the interpolated normal from the surface's own
  double normal_most_deg = 0;
  double place_rms_mm = 0;  ///< of the triangle from the surface
  double place_most_mm = 0;
};

/// A solid of a mesh.
struct MeshPart {
  std::string mark;
  bool glass = true;
};

/// All solids of a lens as triangles in the lens frame, mm, wound so that their own normals point outward.
/// A corner is shared inside a face only, never across an edge, because it carries the normal of its face.
struct LensMesh {
  struct Triangle {
    std::uint32_t a = 0, b = 0, c = 0;
    std::uint32_t part = 0;
  };
  struct Corner {
    Vector place;
    Vector normal;  ///< of the exact surface there, outward, unit
  };
  std::vector<MeshPart> parts;
  std::vector<Corner> corners;
  std::vector<Triangle> triangles;
  MeshError error;
};

/// Divides the solids into triangles that lie within `deflection_mm` of their faces and turn by no more than
/// `turn_rad` from one to the next. Congruent prisms are divided once and turned to their places.
///
/// With the normals interpolated between the corners, what is left is an error of the normal of the second
/// order in the triangle's size, and the depth of the surface over the triangle, which moves the place of
/// refraction: both are measured and given in `error`.
Outcome<LensMesh> mesh_lens(const LensBodies& glass, const std::vector<FrameBody>& metal, double deflection_mm,
                            double turn_rad);

}  // namespace prismwright::bench
