#include "geometry/solid_gap.h"

#include <gtest/gtest.h>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepTools.hxx>
#include <BRep_Builder.hxx>

namespace prismwright {
namespace {

TopoDS_Shape kept_solid(const std::string& name) {
  TopoDS_Shape solid;
  BRep_Builder builder;
  EXPECT_TRUE(BRepTools::Read(solid, (std::string(GOLDEN_FOLDER) + "/solids/" + name).c_str(), builder))
      << name;
  return solid;
}

// Share of a grid's places in a cube of 2 mm that lie in both solids, by the kernel's classifier: no boolean.
double counted_mm3(const TopoDS_Shape& first, const TopoDS_Shape& second, const gp_Pnt& middle) {
  constexpr int kAlong = 11;
  BRepClass3d_SolidClassifier in_first(first);
  BRepClass3d_SolidClassifier in_second(second);
  int both = 0;
  for (int i = 0; i < kAlong * kAlong * kAlong; ++i) {
    const auto at = [&](int step) { return -1 + (2 * (step % kAlong) + 1.0) / kAlong; };
    const gp_Pnt place(middle.X() + at(i), middle.Y() + at(i / kAlong), middle.Z() + at(i / kAlong / kAlong));
    in_first.Perform(place, 1e-7);
    if (in_first.State() != TopAbs_IN) continue;
    in_second.Perform(place, 1e-7);
    both += in_second.State() == TopAbs_IN ? 1 : 0;
  }
  return 8.0 * both / (kAlong * kAlong * kAlong);
}

TEST(CommonVolumeNear, IsThatOfBoxesInClosedForm) {
  const TopoDS_Shape low = BRepPrimAPI_MakeBox(gp_Pnt(-50, -50, -10), gp_Pnt(50, 50, 0)).Shape();
  const TopoDS_Shape sunk = BRepPrimAPI_MakeBox(gp_Pnt(-40, -40, -0.05), gp_Pnt(40, 40, 9)).Shape();
  const TopoDS_Shape resting = BRepPrimAPI_MakeBox(gp_Pnt(-40, -40, 0), gp_Pnt(40, 40, 9)).Shape();
  EXPECT_NEAR(common_volume_near_mm3(low, sunk, gp_Pnt(3, 4, 0)), 2 * 2 * 0.05, 1e-9);
  EXPECT_NEAR(common_volume_near_mm3(low, sunk, gp_Pnt(40, 4, 0)), 1 * 2 * 0.05, 1e-9);
  EXPECT_EQ(common_volume_near_mm3(low, resting, gp_Pnt(3, 4, 0)), 0);
}

// A prism sunk 0.05 mm into the wall of its pocket, of a frame drawn by lot. The boolean of the whole solids
// finds nothing there (7.6); should it come to, so much the better.
TEST(CommonVolumeNear, FindsAShallowOverlapThatTheWholeSolidsLose) {
  const TopoDS_Shape prism = kept_solid("quiet-overlap-prism.brep");
  const TopoDS_Shape rib = kept_solid("quiet-overlap-rib.brep");
  const gp_Pnt sunk(204.454333, 44.014414, 219.331487);
  const double counted = counted_mm3(prism, rib, sunk);
  EXPECT_GT(counted, 0.05);
  // The places stand 0.18 mm apart, the overlap is some 0.05 deep: counted roughly.
  EXPECT_NEAR(common_volume_near_mm3(prism, rib, sunk), counted, 0.5 * counted);
}

TEST(ShallowOverlap, IsFoundAtTheEdgesAndIsNoneWhereSolidsRest) {
  const TopoDS_Shape prism = kept_solid("quiet-overlap-prism.brep");
  const TopoDS_Shape rib = kept_solid("quiet-overlap-rib.brep");
  EXPECT_GT(shallow_overlap_mm3(prism, rib), 1e-2);
  const TopoDS_Shape low = BRepPrimAPI_MakeBox(gp_Pnt(-50, -50, -10), gp_Pnt(50, 50, 0)).Shape();
  const TopoDS_Shape resting = BRepPrimAPI_MakeBox(gp_Pnt(-40, -40, 0), gp_Pnt(40, 40, 9)).Shape();
  const TopoDS_Shape sunk = BRepPrimAPI_MakeBox(gp_Pnt(-40, -40, -0.05), gp_Pnt(40, 40, 9)).Shape();
  EXPECT_EQ(shallow_overlap_mm3(low, resting), 0);
  EXPECT_GT(shallow_overlap_mm3(low, sunk), 0.05);
}

}  // namespace
}  // namespace prismwright
