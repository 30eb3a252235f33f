#include <gtest/gtest.h>

#include <BRepAdaptor_Surface.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/plate_step.h"
#include "geometry/flat_solid.h"
#include "geometry/hole_site.h"
#include "geometry/part_solid.h"
#include "geometry/round_solid.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

int surfaces_of(const TopoDS_Shape& shape, GeomAbs_SurfaceType type) {
  TopTools_IndexedMapOfShape faces;
  TopExp::MapShapes(shape, TopAbs_FACE, faces);
  int count = 0;
  for (int i = 1; i <= faces.Extent(); ++i) {
    if (BRepAdaptor_Surface(TopoDS::Face(faces(i))).GetType() == type) ++count;
  }
  return count;
}

bool holds(const TopoDS_Shape& solid, double x, double y, double z) {
  return BRepClass3d_SolidClassifier(solid, gp_Pnt(x, y, z), 1e-7).State() == TopAbs_IN;
}

PlateChain rectangle(double left, double low, double right, double high) {
  return straight_chain({{left, low}, {right, low}, {right, high}, {left, high}});
}

// A level slot of two half circles of radius 5, 20 between their centres.
PlateChain slot(double left, double level) {
  return {straight_step({left, level - 5}, {left + 20, level - 5}),
          {{left + 20, level - 5}, {left + 20, level + 5}, kPi, {left + 20, level}, 5},
          straight_step({left + 20, level + 5}, {left, level + 5}),
          {{left, level + 5}, {left, level - 5}, kPi, {left, level}, 5}};
}

PlateHole hole_at(double u, double v, double diameter, double sink = 0, bool in_back = true) {
  return {{u, v}, diameter, sink, in_back, ""};
}

FlatPart bar() {
  FlatPart part;
  part.mark = "bar";
  part.thickness_mm = 6;
  part.outline = rectangle(0, 0, 120, 40);
  return part;
}

// Closed form of the volume and the kernel's own check of every face, edge and corner.
void expect_sound(const FlatPart& part, double volume_mm3) {
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_EQ(solid.ShapeType(), TopAbs_SOLID);
  EXPECT_NEAR(kernel_volume_mm3(solid), volume_mm3, 1e-9 * volume_mm3);
  EXPECT_NEAR(flat_volume_mm3(part), volume_mm3, 1e-12 * volume_mm3);
  const auto checked = checked_solid(part);
  ASSERT_TRUE(checked.ok()) << checked.problem().text;
  EXPECT_NEAR(checked->volume_mm3, volume_mm3, 1e-9 * volume_mm3);
}

TEST(FlatSolid, OfARectangleIsABox) {
  expect_sound(bar(), 120 * 40 * 6);
  EXPECT_EQ(distinct_in(flat_solid(bar()), TopAbs_FACE), 6);
  EXPECT_EQ(distinct_in(flat_solid(bar()), TopAbs_EDGE), 12);
}

TEST(FlatSolid, KeepsRoundEndsAsTrueCylinders) {
  FlatPart part = bar();
  part.outline = slot(0, 0);
  expect_sound(part, (20 * 10 + kPi * 25) * 6);
  EXPECT_EQ(surfaces_of(flat_solid(part), GeomAbs_Cylinder), 2);
}

TEST(FlatSolid, FollowsAnArcThatBendsIntoThePlate) {
  FlatPart part = bar();
  const PlateStep bay{{80, 40}, {40, 40}, -kPi, {60, 40}, 20};
  part.outline = {straight_step({0, 0}, {120, 0}),    straight_step({120, 0}, {120, 40}),
                  straight_step({120, 40}, {80, 40}), bay,
                  straight_step({40, 40}, {0, 40}),   straight_step({0, 40}, {0, 0})};
  expect_sound(part, (120 * 40 - kPi * 200) * 6);
  EXPECT_FALSE(holds(flat_solid(part), 60, 25, 3));
  EXPECT_TRUE(holds(flat_solid(part), 60, 15, 3));
}

TEST(FlatSolid, OpensPocketsInTheFrontAndOpeningsThrough) {
  FlatPart part = bar();
  part.openings = {rectangle(5, 5, 15, 35)};
  part.pockets = {{slot(30, 20), 4, {}}, {rectangle(70, 10, 80, 30), 6, {}}};
  expect_sound(part, 6.0 * (4800 - 300 - 200) - 4 * (200 + kPi * 25));
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_FALSE(holds(solid, 10, 20, 1)) << "opening";
  EXPECT_TRUE(holds(solid, 40, 20, 1.9)) << "brass under the pocket";
  EXPECT_FALSE(holds(solid, 40, 20, 2.1)) << "pocket";
  EXPECT_FALSE(holds(solid, 75, 20, 0.1)) << "a seat right through";
}

TEST(FlatSolid, SinksScrewHeadsInEitherFace) {
  FlatPart part = bar();
  part.holes = {hole_at(20, 20, 3), hole_at(50, 20, 3.4, 6.4), hole_at(80, 20, 3.4, 6.4, false)};
  // A cone of 1.5 depth from 6.4 to 3.4 across, and 4.5 of plain hole.
  const double cone = kPi / 12 * 1.5 * (6.4 * 6.4 + 6.4 * 3.4 + 3.4 * 3.4);
  expect_sound(part, 6 * (4800 - kPi * 2.25) - 2 * (cone + 4.5 * kPi * 1.7 * 1.7));
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_EQ(surfaces_of(solid, GeomAbs_Cone), 2);
  EXPECT_EQ(surfaces_of(solid, GeomAbs_Cylinder), 3);
  EXPECT_FALSE(holds(solid, 50 + 2.9, 20, 0.2)) << "sunk in the back";
  EXPECT_TRUE(holds(solid, 50 + 2.9, 20, 5.8));
  EXPECT_FALSE(holds(solid, 80 + 2.9, 20, 5.8)) << "sunk in the front";
  EXPECT_TRUE(holds(solid, 80 + 2.9, 20, 0.2));
}

TEST(FlatSolid, KeepsARoundHoleAsOneEdgeOnEitherFace) {
  FlatPart part = bar();
  part.holes = {hole_at(20, 20, 3)};
  EXPECT_EQ(distinct_in(flat_solid(part), TopAbs_FACE), 7);
  EXPECT_EQ(distinct_in(flat_solid(part), TopAbs_EDGE), 12 + 2 + 1) << "two circles and the seam";
}

TEST(FlatSolid, EndsAConeThatIsDeeperThanThePlate) {
  FlatPart part = bar();
  part.thickness_mm = 1;
  part.holes = {hole_at(50, 20, 3, 7)};
  expect_sound(part, 4800 - kPi / 12 * (49 + 35 + 25));
}

TEST(FlatSolid, StartsAHoleInThePocketItStandsIn) {
  FlatPart part = bar();
  part.pockets = {{rectangle(30, 10, 60, 30), 4, {}}};
  part.holes = {hole_at(45, 20, 5), hole_at(45, 13, 2, 4, false)};
  const double cone = kPi / 12 * (16 + 8 + 4);
  expect_sound(part, 6 * 4800 - 4 * 600 - 2 * kPi * 6.25 - cone - kPi);
}

TEST(FlatSolid, OfARingIsRound) {
  FlatPart part = bar();
  part.outline = circle_chain({10, 20}, 100);
  part.openings = {circle_chain({10, 20}, 80)};
  for (int i = 0; i < 12; ++i) {
    part.holes.push_back(
        hole_at(10 + 90 * std::cos(radians(30.0 * i)), 20 + 90 * std::sin(radians(30.0 * i)), 3));
  }
  expect_sound(part, 6 * kPi * (100 * 100 - 80 * 80 - 12 * 2.25));
  EXPECT_EQ(surfaces_of(flat_solid(part), GeomAbs_Cylinder), 14);
}

TEST(FlatSolid, TakesBoresInItsEnds) {
  FlatPart part = bar();
  part.bores = {{{0, 20, 3}, {1, 0, 0}, 12, 2.5, "taps M3"}, {{120, 10, 3}, {-1, 0, 0}, 12, 2.5, "taps M3"}};
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  const double expected = 4800 * 6 - 2 * 12 * kPi * 1.25 * 1.25;
  EXPECT_NEAR(kernel_volume_mm3(solid), expected, 1e-6 * expected);
  EXPECT_NEAR(flat_volume_mm3(part), expected, 1e-9);
  EXPECT_FALSE(holds(solid, 11, 20, 3));
  EXPECT_TRUE(holds(solid, 13, 20, 3));
  EXPECT_TRUE(checked_solid(part).ok());
}

// The rail's end follows the curve of a ring: the bore opens in it all the same.
TEST(FlatSolid, TakesABoreInARoundEnd) {
  FlatPart part = bar();
  part.outline = slot(0, 0);
  part.bores = {{{25, 0, 3}, {-1, 0, 0}, 10, 3, ""}};
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_FALSE(holds(solid, 24.7, 1.45, 3)) << "beside the axis the round end stands back";
}

TEST(FlatSolid, CutsAHoleThatRunsOverTheEdge) {
  FlatPart part = bar();
  part.holes = {hole_at(0, 20, 8)};
  EXPECT_FALSE(site_of(part, part.holes[0]).clear);
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_NEAR(kernel_volume_mm3(solid), 6 * (4800 - kPi * 8), 1e-6);
  EXPECT_TRUE(checked_solid(part).ok());
}

TEST(FlatSolid, CutsHolesThatRunIntoEachOther) {
  FlatPart part = bar();
  part.holes = {hole_at(50, 20, 8), hole_at(54, 20, 8)};
  const TopoDS_Shape solid = flat_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  // Two circles of radius 4, 4 apart, have 2 r^2 (pi / 3) - (d / 2) sqrt(4 r^2 - d^2) in common.
  const double common = 32 * kPi / 3 - 2 * std::sqrt(48.0);
  EXPECT_NEAR(kernel_volume_mm3(solid), 6 * (4800 - 2 * kPi * 16 + common), 1e-5);
}

TEST(FlatSolid, IsRefusedWhereItsOutlineRunsClockwise) {
  FlatPart part = bar();
  part.outline = straight_chain({{0, 0}, {0, 40}, {120, 40}, {120, 0}});
  const auto checked = checked_solid(part);
  ASSERT_FALSE(checked.ok());
  EXPECT_EQ(checked.problem().code, "frame-solid");
}

TEST(HoleSite, TellsWhatLiesWithinAChainOfArcs) {
  const PlateChain chain = slot(0, 0);
  EXPECT_TRUE(is_within(chain, {24, 0}));
  EXPECT_TRUE(is_within(chain, {10, 4.9}));
  EXPECT_FALSE(is_within(chain, {24, 4}));
  EXPECT_FALSE(is_within(chain, {-5.1, 0}));
  EXPECT_NEAR(distance_mm(chain, {20, 0}), 5, 1e-12);
  EXPECT_NEAR(distance_mm(chain, {30, 0}), 5, 1e-12);
}

struct RoundCase {
  const char* name;
  double bore_mm;
  double head_mm;
  double volume_mm3;
};

class RoundSolid : public ::testing::TestWithParam<RoundCase> {};

TEST_P(RoundSolid, HasItsClosedFormsVolumeAndStandsWhereItIsPut) {
  RoundPart part;
  part.mark = "screw-1";
  part.from = {10, 20, 30};
  part.along = {0, 0.6, 0.8};
  part.length_mm = 20;
  part.diameter_mm = 4;
  part.bore_mm = GetParam().bore_mm;
  part.head_mm = GetParam().head_mm;
  const TopoDS_Shape solid = round_solid(part);
  EXPECT_TRUE(BRepCheck_Analyzer(solid).IsValid());
  EXPECT_NEAR(kernel_volume_mm3(solid), GetParam().volume_mm3, 1e-9 * GetParam().volume_mm3);
  EXPECT_NEAR(round_volume_mm3(part), GetParam().volume_mm3, 1e-9);
  const TopoDS_Shape placed = solid.Moved(TopLoc_Location(round_place(part)));
  const auto at = [&](double along, double away) {
    return holds(placed, 10 + away, 20 + 0.6 * along, 30 + 0.8 * along);
  };
  EXPECT_TRUE(at(19.9, 1.9));
  EXPECT_FALSE(at(20.1, 1.9));
  EXPECT_FALSE(at(-0.1, 1.9));
  EXPECT_EQ(at(0.3, 3), GetParam().head_mm > 0);
  EXPECT_EQ(at(10, 0), GetParam().bore_mm == 0);
}

INSTANTIATE_TEST_SUITE_P(OfEachKind, RoundSolid,
                         ::testing::Values(RoundCase{"pin", 0, 0, 80 * kPi}, RoundCase{"tube", 2, 0, 60 * kPi},
                                           // Radius 4 to 2 over 2 mm: pi / 3 * 2 * (16 + 8 + 4).
                                           RoundCase{"sunk", 0, 8, kPi*(56.0 / 3 + 72)}),
                         [](const auto& of) { return std::string(of.param.name); });

}  // namespace
}  // namespace prismwright
