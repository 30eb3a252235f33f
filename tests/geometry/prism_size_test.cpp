#include "core/works/prism_size.h"

#include <cmath>

#include <gtest/gtest.h>
#include <BRepMesh_IncrementalMesh.hxx>
#include <Bnd_Box.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <gp_Ax1.hxx>
#include <gp_Trsf.hxx>

#include "core/base/angle.h"
#include "geometry/prism_shape.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

struct Box {
  double length = 0;
  double depth = 0;
  double height = 0;
};

/// Mesh of the kernel: its corners lie on the solid, its flat pieces within this of it.
constexpr double kMesh_mm = 0.02;

/// What the corners of the kernel's mesh take up, turned back by the angle at which the size was taken.
Box mesh_box(const TopoDS_Shape& solid, double turn_deg) {
  BRepMesh_IncrementalMesh(solid, kMesh_mm, false, 0.5);
  gp_Trsf back;
  back.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), -radians(turn_deg));
  Bnd_Box box;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) {
    TopLoc_Location place;
    const auto mesh = BRep_Tool::Triangulation(TopoDS::Face(it.Current()), place);
    for (int i = 1; i <= mesh->NbNodes(); ++i)
      box.Add(mesh->Node(i).Transformed(place.Transformation()).Transformed(back));
  }
  double x0 = 0, y0 = 0, z0 = 0, x1 = 0, y1 = 0, z1 = 0;
  box.Get(x0, y0, z0, x1, y1, z1);
  return {y1 - y0, x1 - x0, z1 - z0};
}

/// The solid's true curves lie within a few ten-thousandths of the section's (chord and B-spline).
constexpr double kSmaller_mm = 5e-4;
/// The farthest place may lie between two corners at either end.
constexpr double kLarger_mm = 2 * kMesh_mm + kSmaller_mm;

void expect_box(const PlannedPrism& prism) {
  SCOPED_TRACE(prism.mark);
  const auto solid = prism_shape(prism);
  ASSERT_TRUE(solid.ok()) << solid.problem().text;
  const PrismSize size = prism_size(prism, 1.19);
  const Box box = mesh_box(*solid, size.turn_deg);
  for (const auto& [own, kernel] :
       {std::pair{size.length_mm, box.length}, {size.depth_mm, box.depth}, {size.height_mm, box.height}}) {
    EXPECT_GE(own, kernel - kSmaller_mm);
    EXPECT_LE(own, kernel + kLarger_mm);
  }
  EXPECT_NEAR(size.volume_mm3, kernel_volume_mm3(*solid), 1e-4 * size.volume_mm3);
}

LensValues flat_inside() {
  LensValues values = starting_values("6", Work::belt, 24);
  values.section.inner_face = InnerFace::flat;
  return values;
}

struct SizeCase {
  const char* name;
  LensValues values;
};

class SizeOfSolids : public ::testing::TestWithParam<SizeCase> {};

TEST_P(SizeOfSolids, IsThatOfTheKernelsBoxAndVolume) {
  const LensPlan plan = plan_of(GetParam().values);
  const auto distinct = distinct_prisms(plan);
  ASSERT_GT(distinct.size(), 4U);
  // Four spread over the lens: the kernel takes its time over each.
  for (std::size_t k = 0; k < 4; ++k) expect_box(*distinct[k * distinct.size() / 4]);
}

INSTANTIATE_TEST_SUITE_P(Lenses, SizeOfSolids,
                         ::testing::Values(SizeCase{"belt", sixth_order_belt(Faces::true_curve)},
                                           SizeCase{"flat_inside", flat_inside()},
                                           SizeCase{"lopsided_belt", lopsided_belt()},
                                           SizeCase{"bullseye", fourth_order_bullseye(Faces::arc)},
                                           SizeCase{"lopsided_bullseye", lopsided_bullseye()},
                                           SizeCase{"every_band_its_own_way", every_band_its_own_way()}),
                         [](const auto& tested) { return std::string(tested.param.name); });

}  // namespace
}  // namespace prismwright
