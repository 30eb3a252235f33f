#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include <embree3/rtcore.h>

#include "tests/bench/lens_mesh.h"

namespace prismwright::bench {

/// What a ray meets.
struct Meeting {
  bool met = false;
  double along_mm = 0;
  Vector place;
  Vector facet;   ///< outward normal of the triangle
  Vector normal;  ///< interpolated, outward, unit
  std::uint32_t part = 0;
};

/// The triangles of a lens, ready to be searched by Embree. May be asked from several threads at once.
class TriangleScene {
 public:
  explicit TriangleScene(LensMesh lens);
  ~TriangleScene();
  TriangleScene(const TriangleScene&) = delete;
  TriangleScene& operator=(const TriangleScene&) = delete;

  [[nodiscard]] const LensMesh& mesh() const { return mesh_; }
  /// The nearest triangle farther than `least_mm`. Which one it is and where in it is Embree's answer, in
  /// single precision (within 1e-4 mm); its distance is worked out again in double.
  [[nodiscard]] Meeting nearest(Vector from, Vector along, double least_mm) const;

 private:
  using Short = std::array<float, 3>;
  static Short short_of(Vector v) {
    return {static_cast<float>(v.x), static_cast<float>(v.y), static_cast<float>(v.z)};
  }
  static Vector vector_of(const Short& v) { return {v[0], v[1], v[2]}; }

  /// All that a hit needs of a triangle, side by side: reading it from the mesh, corner by corner, takes as
  /// long as finding the triangle. Directions are in single precision (4e-6 deg).
  struct Facet {
    Vector corner;
    Short across;                      ///< outward, unit
    Short normal, normal_u, normal_v;  ///< at the first corner, and its growth towards the other two
    std::uint32_t part = 0;
  };
  void gather_facets();
  void attach_triangles() const;
  [[nodiscard]] Meeting meeting_at(const RTCRayHit& query, Vector from, Vector along) const;

  LensMesh mesh_;
  std::vector<Facet> facets_;
  RTCDevice device_ = nullptr;
  RTCScene scene_ = nullptr;
};

}  // namespace prismwright::bench
