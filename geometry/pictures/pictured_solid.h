#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include <Geom_Surface.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>

#include "core/base/space.h"

namespace prismwright {

/// The exact surface of a face. Asked by several threads at once without harm.
class FaceSurface {
 public:
  explicit FaceSurface(const TopoDS_Face& face);

  struct Point {
    SpacePoint place;
    SpaceVector normal;  ///< unit, out of the solid; zero where the surface has none
  };
  /// At the tip of a cone or the pole of a sphere the normal is taken a hair beside it.
  [[nodiscard]] Point at(double u, double v) const;

 private:
  [[nodiscard]] SpaceVector across(double u, double v, SpacePoint& place) const;

  Handle(Geom_Surface) surface_;
  double side_ = 1;
  double middle_u_ = 0;
  double middle_v_ = 0;
};

/// A solid divided for pictures, in its own frame, mm: facets with the true normals of their faces, and the
/// edges that are drawn.
struct PicturedSolid {
  struct Node {
    SpacePoint place;
    SpaceVector normal;  ///< of the face, outward
    double u = 0;        ///< on the face's surface
    double v = 0;
  };
  struct Facet {
    std::array<std::uint32_t, 3> corners{};  ///< anticlockwise seen from outside; nodes of one face only
    std::uint32_t face = 0;
  };
  /// A corner of an edge's polyline, which runs along sides of facets, with the normals of its two faces.
  struct EdgeNode {
    SpacePoint place;
    SpaceVector first;
    SpaceVector second;
  };
  using Edge = std::vector<EdgeNode>;

  std::vector<Node> nodes;
  std::vector<Facet> facets;  ///< face by face
  std::vector<FaceSurface> faces;
  std::vector<Edge> edges;  ///< where faces meet at more than three degrees; no seams
};

/// No facet departs from its face by more than `chord_mm`. The solid itself is not changed. Throws
/// Standard_Failure where the kernel cannot divide it.
PicturedSolid pictured_solid(const TopoDS_Shape& solid, double chord_mm);

}  // namespace prismwright
