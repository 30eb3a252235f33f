#include <gtest/gtest.h>

#include <BRepCheck_Analyzer.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/lens/quantities.h"
#include "geometry/frame_bodies.h"
#include "geometry/plate_solid.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

double kernel_volume(const TopoDS_Shape& shape) {
  GProp_GProps props;
  BRepGProp::VolumeProperties(shape, props);
  return props.Mass();
}

int count_of(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  TopTools_IndexedMapOfShape map;
  TopExp::MapShapes(shape, kind, map);
  return map.Extent();
}

bool holds(const TopoDS_Shape& solid, const gp_Pnt& p) {
  return BRepClass3d_SolidClassifier(solid, p, 1e-7).State() == TopAbs_IN;
}

class PlateWithTwoPockets : public ::testing::TestWithParam<Side> {
 protected:
  PlateShape plate{{{20, -50}, {60, -50}, {60, 50}, {20, 50}},
                   {{{30, -20}, {40, -20}, {35, -5}}, {{30, 5}, {50, 5}, {50, 20}, {30, 20}}},
                   5,
                   3,
                   GetParam()};
  // Depth runs along -Y for an anticlockwise side.
  double towards = GetParam() == Side::clockwise ? 1 : -1;
};

TEST_P(PlateWithTwoPockets, IsOneValidSolidOfItsOutlinesVolume) {
  const TopoDS_Shape solid = plate_solid(plate);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_EQ(count_of(solid, TopAbs_SOLID), 1);
  EXPECT_EQ(count_of(solid, TopAbs_FACE), 2 + 4 + 2 + 3 + 4);
  // 40 x 100 x 5 less a triangle of 75 mm2 and a rectangle of 300 mm2, 3 deep.
  EXPECT_NEAR(kernel_volume(solid), 20000 - 3 * 375, 1e-6);
  EXPECT_NEAR(plate_volume_mm3(plate), 20000 - 3 * 375, 1e-9);
}

TEST_P(PlateWithTwoPockets, OpensItsPocketsInTheInnerFace) {
  const TopoDS_Shape solid = plate_solid(plate);
  EXPECT_TRUE(holds(solid, gp_Pnt(40, towards * 1.9, 10))) << "brass under the pocket";
  EXPECT_FALSE(holds(solid, gp_Pnt(40, towards * 2.1, 10))) << "pocket";
  EXPECT_FALSE(holds(solid, gp_Pnt(40, towards * 5.1, 10)));
  EXPECT_TRUE(holds(solid, gp_Pnt(25, towards * 4.9, 0))) << "brass beside the pockets";
  EXPECT_FALSE(holds(solid, gp_Pnt(25, -towards * 0.1, 0)));
}

TEST_P(PlateWithTwoPockets, GoesThroughWhereAPocketIsAsDeepAsThePlate) {
  plate.pocket_mm = 5;
  const TopoDS_Shape solid = plate_solid(plate);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_NEAR(kernel_volume(solid), 20000 - 5 * 375, 1e-6);
}

INSTANTIATE_TEST_SUITE_P(EitherSide, PlateWithTwoPockets,
                         ::testing::Values(Side::clockwise, Side::anticlockwise));

class SixthOrderFrame : public ::testing::TestWithParam<Work> {
 protected:
  SixthOrderFrame()
      : plan(plan_frame(*plan_lens(starting_values("6", GetParam(), 6)))), bodies(make_frame(plan)) {}

  FramePlan plan;
  Outcome<std::vector<FrameBody>> bodies;
};

TEST_P(SixthOrderFrame, HasASolidForEveryPartInOrder) {
  ASSERT_TRUE(bodies.ok());
  ASSERT_EQ(bodies->size(), 14u);
  for (std::size_t i = 0; i < plan.ribs.size(); ++i) EXPECT_EQ((*bodies)[i].mark, plan.ribs[i].mark);
  EXPECT_EQ((*bodies)[12].mark, "ring-top");
  EXPECT_EQ((*bodies)[13].mark, "ring-bottom");
}

// The kernel's own check of a face takes seconds over a thousand edges: one rib of each side, and the rings.
TEST_P(SixthOrderFrame, PassesTheKernelsOwnCheck) {
  ASSERT_TRUE(bodies.ok());
  for (const std::size_t i : {0u, 1u, 12u, 13u}) {
    EXPECT_TRUE(BRepCheck_Analyzer((*bodies)[i].shape).IsValid()) << (*bodies)[i].mark;
    EXPECT_EQ(count_of((*bodies)[i].shape, TopAbs_SOLID), 1);
  }
}

TEST_P(SixthOrderFrame, WeighsWhatItsOutlinesSay) {
  ASSERT_TRUE(bodies.ok());
  for (std::size_t i = 0; i < plan.ribs.size(); ++i) {
    const double expected = plate_volume_mm3(plate_of(plan.ribs[i]));
    EXPECT_NEAR((*bodies)[i].volume_mm3, expected, 1e-6 * expected);
    EXPECT_NEAR((*bodies)[i].mass_g, expected * 8.49e-3, 1e-6 * expected);
  }
  const RingPlan& ring = plan.rings.front();
  const double expected =
      kPi * (std::pow(ring.outer_radius_mm, 2) - std::pow(ring.inner_radius_mm, 2)) * ring.thickness_mm;
  EXPECT_NEAR((*bodies)[12].volume_mm3, expected, 1e-9 * expected);
}

TEST_P(SixthOrderFrame, MakesCongruentRibsOnceAndTurnsThem) {
  ASSERT_TRUE(bodies.ok());
  EXPECT_TRUE((*bodies)[0].shape.IsPartner((*bodies)[2].shape));
  EXPECT_FALSE((*bodies)[0].shape.IsPartner((*bodies)[1].shape)) << "mirror images are two plates";
  // A place of the left rib, 1 mm inside its outer face, stands 1 mm within the side plane of its panel.
  const RibPlan& rib = plan.ribs[4];
  const double u = (rib.outline.front().u + rib.outline[rib.outline.size() / 2].u) / 2;
  const double azimuth = radians(rib.azimuth_deg);
  const gp_Pnt outside(u * std::cos(azimuth) - std::sin(azimuth), u * std::sin(azimuth) + std::cos(azimuth), 0);
  EXPECT_FALSE(holds((*bodies)[4].shape, outside)) << "the neighbouring panel";
}

INSTANTIATE_TEST_SUITE_P(EitherWork, SixthOrderFrame, ::testing::Values(Work::bullseye, Work::belt));

TEST(MakeFrame, CanBeStopped) {
  const FramePlan plan = plan_frame(*plan_lens(starting_values("6", Work::belt, 6)));
  int told = 0;
  const auto bodies = make_frame(plan, [&](double, std::string_view) { return ++told < 3; });
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problem().trouble, Trouble::stopped);
  EXPECT_EQ(told, 3);
}

}  // namespace
}  // namespace prismwright
