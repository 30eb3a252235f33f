#include "geometry/mould_halves.h"

#include <array>

#include <BRep_Builder.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shell.hxx>
#include <gp_Pln.hxx>

#include "geometry/solid_check.h"

namespace prismwright {

namespace {

const std::array<gp_Dir, 4> kOutward = {gp_Dir(0, -1, 0), gp_Dir(1, 0, 0), gp_Dir(0, 1, 0), gp_Dir(-1, 0, 0)};

/// Gathers the faces of one half.
class HalfMaker {
 public:
  HalfMaker() { builder_.MakeShell(shell_); }
  void add(const TopoDS_Shape& face) { builder_.Add(shell_, face); }
  Outcome<TopoDS_Solid> take(const std::string& mark) {
    shell_.Closed(Standard_True);
    TopoDS_Solid solid;
    builder_.MakeSolid(solid);
    builder_.Add(solid, shell_);
    return sound_solid(solid, mark);
  }

 private:
  BRep_Builder builder_;
  TopoDS_Shell shell_;
};

/// The four walls and the floor (or, above, the ceiling) of one half.
void add_walls(HalfMaker& half, const PartingSheet& sheet, const BlockPlan& plan, double level_mm, bool above,
               SharedEdges& edges) {
  const std::array<int, 4> corners = {
      edges.add(gp_Pnt(plan.x0, plan.y0, level_mm)), edges.add(gp_Pnt(plan.x1, plan.y0, level_mm)),
      edges.add(gp_Pnt(plan.x1, plan.y1, level_mm)), edges.add(gp_Pnt(plan.x0, plan.y1, level_mm))};
  for (std::size_t side = 0; side < 4; ++side) {
    const int from = corners[side], to = corners[(side + 1) % 4];
    std::vector<int> walk = sheet.walls[side];
    if (above) {
      walk.insert(walk.end(), {to, from});
    } else {
      std::vector<int> back(walk.rbegin(), walk.rend());
      walk = {from, to};
      walk.insert(walk.end(), back.begin(), back.end());
    }
    half.add(edges.flat_face(walk, gp_Pln(edges.place(from), kOutward[side])));
  }
  std::vector<int> walk(corners.begin(), corners.end());
  if (!above) walk.assign(corners.rbegin(), corners.rend());
  half.add(edges.flat_face(walk, gp_Pln(edges.place(corners[0]), gp_Dir(0, 0, above ? 1 : -1))));
}

}  // namespace

Outcome<MouldHalves> mould_halves(const RimmedMaster& master, const PartingSheet& sheet, const BlockPlan& plan,
                                  double bottom_mm, double top_mm, SharedEdges& edges,
                                  const std::string& mark) {
  HalfMaker lower, upper;
  for (const TopoDS_Face& face : master.below) lower.add(face.Reversed());
  for (const TopoDS_Face& face : master.above) upper.add(face.Reversed());
  for (const TopoDS_Face& face : sheet.faces) {
    lower.add(face);
    upper.add(face.Reversed());
  }
  add_walls(lower, sheet, plan, bottom_mm, false, edges);
  add_walls(upper, sheet, plan, top_mm, true, edges);
  auto one = lower.take(mark);
  if (!one) return one.problem();
  auto other = upper.take(mark);
  if (!other) return other.problem();
  return MouldHalves{*one, *other};
}

}  // namespace prismwright
