#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include <Bnd_Box.hxx>
#include <Graphic3d_ArrayOfSegments.hxx>
#include <Graphic3d_ArrayOfTriangles.hxx>
#include <Poly_Triangulation.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

#include "core/base/progress.h"
#include "ui/models/workbench.h"

namespace prismwright {

/// Facets and sharp edges of one distinct solid, mm, before it is moved to its place. Parts that are
/// congruent hold the same mesh.
struct LensMesh {
  Handle(Graphic3d_ArrayOfTriangles) facets;
  Handle(Graphic3d_ArrayOfSegments) edges;  ///< null when the solid has no sharp edge
  Handle(Poly_Triangulation) outside;       ///< the same facets, for picking and cutting
  Bnd_Box box;
  gp_Pnt anchor;  ///< the node of the mesh nearest to the middle: where a mark is pinned
};

/// Glass, brass of a panel, brass of the whole lens.
enum class SceneKind { glass, rib, ring };

/// One part of the lens, ready to be drawn.
struct LensPart {
  std::string mark;
  SceneKind kind = SceneKind::glass;
  int panel = 0;  ///< 0: belongs to no panel
  double axis_deg = 0;
  gp_Trsf place;
  std::shared_ptr<const LensMesh> mesh;
};

/// A lens as meshes, in the lens frame.
struct MeshedLens {
  std::vector<LensPart> parts;
  std::vector<PanelPlace> panels;
  double reach_mm = 1;  ///< greatest distance from the lens axis
  double low_mm = -1;
  double high_mm = 1;
  double focal_mm = 250;

  [[nodiscard]] const LensPart* find(const std::string& mark) const;
};

/// Meshes made lenses. Each distinct solid is meshed once, and what an edit left alone is not meshed again.
///
/// Works on copies of the topology, so that the maker of the solids may go on reading them in another thread.
/// Use from one worker thread at a time.
class LensMesher {
 public:
  /// Null when `progress` stopped it. A solid that cannot be meshed is left out.
  std::shared_ptr<const MeshedLens> mesh(const MadeLens& made, const Progress& progress = {});
  /// Distinct solids that the last call meshed anew.
  [[nodiscard]] int meshedAnew() const { return meshed_anew_; }

 private:
  struct Kept {
    TopoDS_Shape shape;  ///< holds the key's address alive
    std::shared_ptr<const LensMesh> mesh;
  };
  using Cache = std::map<const void*, Kept>;
  std::shared_ptr<const LensMesh> meshOf(const TopoDS_Shape& shape, double chord_mm, Cache& used);

  Cache cache_;
  double chord_mm_ = 0;
  int meshed_anew_ = 0;
};

}  // namespace prismwright
