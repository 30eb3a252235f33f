#include "ui/views/lens_meshes.h"

#include <algorithm>
#include <cmath>

#include <BRepBuilderAPI_Copy.hxx>
#include <BRepLib.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <Standard_Failure.hxx>
#include <StdPrs_ShadedShape.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS_TShape.hxx>

#include "ui/views/lens_edges.h"

namespace prismwright {
namespace {

// A whole lens is some four focal distances high and seldom over 1000 pixels, so this chord stays under half
// a pixel until it is looked at closely.
double chord_for(const MadeLens& made) { return made.plan->values.brief.focal_mm / 1000.0; }
constexpr double kTurn_rad = 0.3;
// Faces that meet at less than this (17 deg) are one smooth wall: pockets are cut as many small flats.
constexpr double kSmooth_rad = 0.3;

Handle(Poly_Triangulation) triangulation_of(const Handle(Graphic3d_ArrayOfTriangles) & facets) {
  const int nodes = facets->VertexNumber();
  const int corners = facets->EdgeNumber() > 0 ? facets->EdgeNumber() : nodes;
  Handle(Poly_Triangulation) all = new Poly_Triangulation(nodes, corners / 3, false);
  for (int i = 1; i <= nodes; ++i) all->SetNode(i, facets->Vertice(i));
  const bool indexed = facets->EdgeNumber() > 0;
  for (int t = 1; t <= corners / 3; ++t) {
    const int first = 3 * t - 2;
    all->SetTriangle(
        t, indexed ? Poly_Triangle(facets->Edge(first), facets->Edge(first + 1), facets->Edge(first + 2))
                   : Poly_Triangle(first, first + 1, first + 2));
  }
  return all;
}

gp_Pnt node_nearest_to(const Poly_Triangulation& mesh, const gp_Pnt& middle) {
  gp_Pnt best = mesh.Node(1);
  for (int i = 2; i <= mesh.NbNodes(); ++i) {
    if (mesh.Node(i).SquareDistance(middle) < best.SquareDistance(middle)) best = mesh.Node(i);
  }
  return best;
}

std::shared_ptr<const LensMesh> mesh_solid(const TopoDS_Shape& shape, double chord_mm) {
  // A copy of the topology over the same geometry: meshing writes into the topology, and another thread may
  // be measuring distances on the original.
  const TopoDS_Shape own = BRepBuilderAPI_Copy(shape, false, false).Shape();
  BRepMesh_IncrementalMesh mesher(own, chord_mm, false, kTurn_rad, false);
  BRepLib::EncodeRegularity(own, kSmooth_rad);
  auto mesh = std::make_shared<LensMesh>();
  mesh->facets = StdPrs_ShadedShape::FillTriangles(own);
  if (mesh->facets.IsNull() || mesh->facets->VertexNumber() < 3) return nullptr;
  mesh->edges = simplified(StdPrs_ShadedShape::FillFaceBoundaries(own, GeomAbs_C0), chord_mm);
  mesh->outside = triangulation_of(mesh->facets);
  for (int i = 1; i <= mesh->outside->NbNodes(); ++i) mesh->box.Add(mesh->outside->Node(i));
  const gp_Pnt low = mesh->box.CornerMin();
  const gp_Pnt high = mesh->box.CornerMax();
  mesh->anchor = node_nearest_to(*mesh->outside, gp_Pnt((low.XYZ() + high.XYZ()) * 0.5));
  return mesh;
}

const PanelPlace* panel_of(const std::vector<PanelPlace>& panels, int number) {
  const auto at =
      std::find_if(panels.begin(), panels.end(), [&](const PanelPlace& p) { return p.number == number; });
  return at == panels.end() ? nullptr : &*at;
}

/// Panel of every part of the frame that belongs to one.
std::map<std::string, int> panels_of_metal(const MadeLens& made) {
  std::map<std::string, int> panels;
  if (!made.frame) return panels;
  for (const RibPlan& rib : made.frame->ribs) panels[rib.mark] = rib.panel;
  for (const FlatPart& part : made.frame->flats) panels[part.mark] = part.panel;
  for (const RoundPart& part : made.frame->rounds) panels[part.mark] = part.panel;
  for (const TurnedBar& part : made.frame->bars) panels[part.mark] = part.panel;
  return panels;
}

LensPart metal_part(const FrameBody& body, const MadeLens& made, const std::map<std::string, int>& panels) {
  LensPart part{body.mark, SceneKind::ring, 0, 0, {}, nullptr};
  const auto found = panels.find(body.mark);
  if (found == panels.end() || found->second == 0) return part;
  part.kind = SceneKind::rib;
  part.panel = found->second;
  if (const PanelPlace* panel = panel_of(made.plan->panels, part.panel)) part.axis_deg = panel->axis_deg;
  return part;
}

void measure(MeshedLens& lens) {
  if (lens.parts.empty()) return;
  double reach = 0;
  lens.low_mm = 1e300;
  lens.high_mm = -1e300;
  for (const LensPart& part : lens.parts) {
    const Handle(Poly_Triangulation)& mesh = part.mesh->outside;
    for (int i = 1; i <= mesh->NbNodes(); ++i) {
      const gp_Pnt node = mesh->Node(i).Transformed(part.place);
      reach = std::max(reach, std::hypot(node.X(), node.Y()));
      lens.low_mm = std::min(lens.low_mm, node.Z());
      lens.high_mm = std::max(lens.high_mm, node.Z());
    }
  }
  lens.reach_mm = std::max(reach, 1.0);
}

}  // namespace

const LensPart* MeshedLens::find(const std::string& mark) const {
  const auto at = std::find_if(parts.begin(), parts.end(), [&](const LensPart& p) { return p.mark == mark; });
  return at == parts.end() ? nullptr : &*at;
}

std::shared_ptr<const LensMesh> LensMesher::meshOf(const TopoDS_Shape& shape, double chord_mm, Cache& used) {
  const TopoDS_Shape bare = shape.Located(TopLoc_Location());
  const void* key = bare.TShape().get();
  if (const auto at = used.find(key); at != used.end()) return at->second.mesh;
  if (const auto at = cache_.find(key); at != cache_.end())
    return used.emplace(key, at->second).first->second.mesh;
  std::shared_ptr<const LensMesh> mesh;
  try {
    mesh = mesh_solid(bare, chord_mm);
  } catch (const Standard_Failure&) {
    mesh = nullptr;
  }
  ++meshed_anew_;
  used.emplace(key, Kept{bare, mesh});
  return mesh;
}

std::shared_ptr<const MeshedLens> LensMesher::mesh(const MadeLens& made, const Progress& progress) {
  auto lens = std::make_shared<MeshedLens>();
  if (!made.plan || !made.bodies) return lens;
  const double chord_mm = chord_for(made);
  if (chord_mm != chord_mm_) cache_.clear();
  chord_mm_ = chord_mm;
  meshed_anew_ = 0;
  Cache used;
  const std::size_t metal_count = made.metal ? made.metal->size() : 0;
  const double total = static_cast<double>(made.bodies->prisms.size() + metal_count);
  const auto add = [&](LensPart part, const TopoDS_Shape& shape) {
    if (!goes_on(progress, static_cast<double>(lens->parts.size()) / std::max(total, 1.0), part.mark))
      return false;
    part.place = shape.Location().Transformation();
    part.mesh = meshOf(shape, chord_mm, used);
    if (part.mesh) lens->parts.push_back(std::move(part));
    return true;
  };
  for (const PrismBody& body : made.bodies->prisms) {
    const PlannedPrism* prism = made.plan->find(body.mark);
    LensPart part{body.mark, SceneKind::glass, prism ? prism->panel : 0, prism ? prism->axis_deg : 0,
                  {},        nullptr};
    if (!add(std::move(part), body.shape)) return nullptr;
  }
  const std::map<std::string, int> panels = panels_of_metal(made);
  for (std::size_t i = 0; i < metal_count; ++i) {
    const FrameBody& body = (*made.metal)[i];
    if (!add(metal_part(body, made, panels), body.shape)) return nullptr;
  }
  cache_ = std::move(used);
  lens->panels = made.plan->panels;
  lens->focal_mm = made.plan->values.brief.focal_mm;
  measure(*lens);
  return lens;
}

}  // namespace prismwright
