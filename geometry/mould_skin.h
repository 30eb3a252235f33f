#pragma once

#include <array>
#include <string>
#include <vector>

#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>
#include <gp_Vec.hxx>

#include "core/base/space.h"
#include "core/lens/plan.h"

namespace prismwright {

inline SpacePoint place_of(const gp_Pnt& p) { return {p.X(), p.Y(), p.Z()}; }

/// One face of a master's skin: what it is called, and the normals that its draft is judged by.
struct SkinFace {
  std::string word;      ///< "inner", "upper joint", "end clockwise", ...
  bool optical = false;  ///< light passes it or is thrown back by it
  double area_mm2 = 0;
  std::vector<gp_Vec> normals;  ///< true outward unit normals at the corners and middles of its triangles
};

struct SkinTriangle {
  std::array<int, 3> corners{};  ///< indices into `points`, anticlockwise seen from outside
  int face = 0;
  gp_Vec normal;  ///< true outward unit normal of the face at its middle
  double area_mm2 = 0;
};

/// The skin of a master in triangles whose corners lie on the true faces; neighbouring faces share corners.
struct MouldSkin {
  std::vector<gp_Pnt> points;
  std::vector<SkinTriangle> triangles;
  std::vector<SkinFace> faces;  ///< in the order in which the solid's faces are explored
  [[nodiscard]] gp_Pnt middle(const SkinTriangle& t) const;
};

/// Divides the skin of a master; no triangle departs by more than `chord_mm`. The solid itself is not changed.
/// Throws the kernel's Standard_Failure where it cannot.
MouldSkin mould_skin(const TopoDS_Shape& master, const PlannedPrism& prism, double chord_mm);

/// What a face of a prism or of its master is called, by a place on it and its outward normal there. The
/// master may be longer by its shrinkage and thicker by its stock.
struct FaceWord {
  std::string word;
  bool optical = false;
};
FaceWord face_word(const PlannedPrism& prism, const gp_Pnt& place, const gp_Vec& normal);

}  // namespace prismwright
