#include <gtest/gtest.h>

#include <BRepCheck_Analyzer.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <cmath>
#include <fstream>
#include <set>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/lens/quantities.h"
#include "core/lens/trimmed_volume.h"
#include "geometry/flat_solid.h"
#include "geometry/frame_bodies.h"
#include "geometry/plate_solid.h"
#include "geometry/rib_place.h"
#include "geometry/step_writer.h"
#include "tests/support/empty_folder.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

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
  EXPECT_EQ(distinct_in(solid, TopAbs_SOLID), 1);
  EXPECT_EQ(distinct_in(solid, TopAbs_FACE), 2 + 4 + 2 + 3 + 4);
  // 40 x 100 x 5 less a triangle of 75 mm2 and a rectangle of 300 mm2, 3 deep.
  EXPECT_NEAR(kernel_volume_mm3(solid), 20000 - 3 * 375, 1e-6);
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
  EXPECT_NEAR(kernel_volume_mm3(solid), 20000 - 5 * 375, 1e-6);
}

INSTANTIATE_TEST_SUITE_P(EitherSide, PlateWithTwoPockets,
                         ::testing::Values(Side::clockwise, Side::anticlockwise));

struct MadeFrame {
  explicit MadeFrame(Work work)
      : plan(plan_frame(*plan_lens(starting_values("6", work, 6)))), bodies(make_frame(plan)) {}
  FramePlan plan;
  Outcome<std::vector<FrameBody>> bodies;
};

// Made once for all tests.
const MadeFrame& sixth_order(Work work) {
  static const MadeFrame belt(Work::belt);
  static const MadeFrame bullseye(Work::bullseye);
  return work == Work::belt ? belt : bullseye;
}

class SixthOrderFrame : public ::testing::TestWithParam<Work> {
 protected:
  [[nodiscard]] const FlatPart* flat_of(const std::string& mark) const {
    for (const FlatPart& flat : plan.flats) {
      if (flat.mark == mark) return &flat;
    }
    return nullptr;
  }

  const FramePlan& plan = sixth_order(GetParam()).plan;
  const Outcome<std::vector<FrameBody>>& bodies = sixth_order(GetParam()).bodies;
};

TEST_P(SixthOrderFrame, HasASolidForEveryPartInOrder) {
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  std::set<std::string> marks;
  for (const FlatPart& flat : plan.flats) marks.insert(flat.mark);
  for (const RibPlan& rib : plan.ribs) marks.insert(rib.mark);
  for (const RingPlan& ring : plan.rings) marks.insert(ring.mark);
  ASSERT_EQ(bodies->size(), marks.size() + plan.bars.size() + plan.rounds.size());
  for (std::size_t i = 0; i < plan.ribs.size(); ++i) EXPECT_EQ((*bodies)[i].mark, plan.ribs[i].mark);
  EXPECT_EQ((*bodies)[12].mark, "ring-top");
  EXPECT_EQ((*bodies)[13].mark, "ring-bottom");
}

TEST_P(SixthOrderFrame, PassesTheKernelsOwnCheckInEveryPartOfItsOwnShape) {
  ASSERT_TRUE(bodies.ok());
  std::set<const TopoDS_TShape*> checked;
  for (const FrameBody& body : *bodies) {
    if (!checked.insert(body.shape.TShape().get()).second) continue;
    EXPECT_TRUE(BRepCheck_Analyzer(body.shape).IsValid()) << body.mark;
    EXPECT_EQ(distinct_in(body.shape, TopAbs_SOLID), 1) << body.mark;
  }
  EXPECT_LT(checked.size(), 30u) << "congruent parts share their solid";
}

TEST_P(SixthOrderFrame, WeighsWhatItsOutlinesSay) {
  ASSERT_TRUE(bodies.ok());
  for (std::size_t i = 0; i < plan.ribs.size(); ++i) {
    const FlatPart* flat = flat_of(plan.ribs[i].mark);
    const double expected = flat ? flat_volume_mm3(*flat) : plate_volume_mm3(plate_of(plan.ribs[i]));
    EXPECT_NEAR((*bodies)[i].volume_mm3, expected, 1e-6 * expected);
    EXPECT_NEAR((*bodies)[i].mass_g, expected * 8.49e-3, 1e-6 * expected);
  }
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

SpaceFrame upright_at(double azimuth_deg, double radius_mm) {
  const double a = radians(azimuth_deg);
  return {{radius_mm * std::cos(a), radius_mm * std::sin(a), 0},
          {std::cos(a), std::sin(a), 0},
          {0, 0, 1},
          {std::sin(a), -std::cos(a), 0}};
}

FlatPart plate_with_hole(const std::string& mark, PartKind kind, int panel) {
  FlatPart part;
  part.mark = mark;
  part.kind = kind;
  part.panel = panel;
  part.thickness_mm = 5;
  part.outline = straight_chain({{0, 0}, {40, 0}, {40, 100}, {0, 100}});
  part.holes = {{{20, 50}, 3, 0, true, ""}};
  part.shape_key = "plate with a hole";
  return part;
}

// Two ribs of one shape, a ring, a latch of steel, two screws of one shape and a turned bar.
class HandMadeFrame : public ::testing::Test {
 protected:
  HandMadeFrame() {
    plan.ribs.resize(2);
    plan.ribs[0].mark = "P01-rib-left";
    plan.ribs[1].mark = "P01-rib-right";
    plan.rings = {{"ring-top", 80, 100, 200, 8}};
    plan.flats = {plate_with_hole("latch", PartKind::latch, 1),
                  plate_with_hole("P01-rib-right", PartKind::side_rib, 1),
                  plate_with_hole("P01-rib-left", PartKind::side_rib, 1)};
    plan.flats[0].metal = PartMetal::steel;
    plan.flats[0].thickness_mm = 3;
    plan.flats[0].shape_key = "latch";
    plan.flats[1].place = upright_at(-30, 100);
    plan.flats[2].place = upright_at(30, 100);
    RoundPart screw;
    screw.length_mm = 12;
    screw.diameter_mm = 3;
    screw.head_mm = 6;
    screw.panel = 1;
    for (const double z : {10.0, 90.0}) {
      screw.mark = "screw-" + std::to_string(plan.rounds.size() + 1);
      screw.from = {100, 0, z};
      screw.along = {0, 1, 0};
      plan.rounds.push_back(screw);
    }
  }

  FramePlan plan;
};

TEST_F(HandMadeFrame, PutsRibsAndRingsFirstAndTellsWhatEachPartIs) {
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  std::vector<std::string> marks;
  for (const FrameBody& body : *bodies) marks.push_back(body.mark);
  EXPECT_EQ(marks, (std::vector<std::string>{"P01-rib-left", "P01-rib-right", "ring-top", "latch", "screw-1",
                                             "screw-2"}));
  EXPECT_EQ((*bodies)[0].kind, PartKind::side_rib);
  EXPECT_EQ((*bodies)[2].kind, PartKind::ring);
  EXPECT_EQ((*bodies)[3].metal, PartMetal::steel);
  EXPECT_EQ((*bodies)[4].making, PartMaking::bought);
  EXPECT_EQ((*bodies)[4].panel, 1);
}

TEST_F(HandMadeFrame, WeighsEachPartByItsMetal) {
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok());
  const double hole_mm2 = kPi * 2.25;
  EXPECT_NEAR((*bodies)[0].mass_g, (4000 - hole_mm2) * 5 * 8.49e-3, 1e-6);
  EXPECT_NEAR((*bodies)[2].mass_g, kPi * (10000 - 6400) * 8 * 8.49e-3, 1e-6);
  EXPECT_NEAR((*bodies)[3].mass_g, (4000 - hole_mm2) * 3 * 7.9e-3, 1e-6);
}

TEST_F(HandMadeFrame, SharesOneSolidBetweenPartsOfOneShape) {
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok());
  EXPECT_TRUE((*bodies)[0].shape.IsPartner((*bodies)[1].shape));
  EXPECT_TRUE((*bodies)[4].shape.IsPartner((*bodies)[5].shape));
  EXPECT_FALSE((*bodies)[0].shape.IsPartner((*bodies)[3].shape));
}

TEST_F(HandMadeFrame, StandsEachPartInItsPlace) {
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok());
  const SpacePoint inside = plan.flats[2].place.out_of(SpacePoint{10, 90, 4.9});
  const SpacePoint hole = plan.flats[2].place.out_of(SpacePoint{20, 50, 2});
  EXPECT_TRUE(holds((*bodies)[0].shape, gp_Pnt(inside.x, inside.y, inside.z)));
  EXPECT_FALSE(holds((*bodies)[0].shape, gp_Pnt(hole.x, hole.y, hole.z)));
  EXPECT_TRUE(holds((*bodies)[5].shape, gp_Pnt(101, 11.9, 90)));
  EXPECT_TRUE(holds((*bodies)[2].shape, gp_Pnt(-90, 0, 207.9)));
}

TEST_F(HandMadeFrame, NamesThePartThatCannotBeMade) {
  plan.flats[0].outline = straight_chain({{0, 0}, {0, 100}, {40, 100}, {40, 0}});
  const auto bodies = make_frame(plan);
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problem().where, "latch");
}

// A cross rib of a bull's-eye panel, with a tapped hole in one end.
TEST(TurnedBars, AreTurnedToTheirPanelAndBored) {
  TurnedBar bar;
  bar.mark = "P02-upper-rib";
  bar.panel = 2;
  bar.shape.mark = bar.mark;
  bar.shape.turning = TurningAxis::lens;
  bar.shape.trim = {-30, 30, 5, Half::whole, 0, std::nullopt};
  bar.shape.axis_deg = 60;
  bar.shape.profile.faces = {
      straight_face(FaceRole::land, {100, 10}, {110, 10}), straight_face(FaceRole::land, {110, 10}, {110, 20}),
      straight_face(FaceRole::land, {110, 20}, {100, 20}), straight_face(FaceRole::land, {100, 20}, {100, 10})};
  // Square to the clockwise end, half way along it.
  const double a = radians(-30);
  const SpaceVector in{-std::sin(a), std::cos(a), 0};
  const SpacePoint end{105 * std::cos(a) + 5 * in.x, 105 * std::sin(a) + 5 * in.y, 15};
  bar.bores = {{end, in, 10, 2.5, "taps M3"}};
  FramePlan plan;
  plan.bars = {bar};
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  const double expected = trimmed_volume_mm3(bar.shape) - 10 * kPi * 1.25 * 1.25;
  EXPECT_NEAR(bodies->front().volume_mm3, expected, 1e-6 * expected);
  EXPECT_EQ(bodies->front().making, PartMaking::machined);
  const gp_Pnt in_bore = gp_Pnt(end.x + 9 * in.x, end.y + 9 * in.y, 15).Transformed(turn_about_lens(60));
  const gp_Pnt beyond = gp_Pnt(end.x + 11 * in.x, end.y + 11 * in.y, 15).Transformed(turn_about_lens(60));
  EXPECT_FALSE(holds(bodies->front().shape, in_bore));
  EXPECT_TRUE(holds(bodies->front().shape, beyond));
}

// A door's rib is thinner at the back: its pockets and inner face stand where those of all other ribs do.
TEST(MakeFrame, SetsARibBackFromItsSidePlane) {
  FramePlan plan;
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    RibPlan rib;
    rib.mark = side == Side::clockwise ? "P01-rib-right" : "P01-rib-left";
    rib.side = side;
    rib.set_back_mm = 0.5;
    rib.outline = {{20, -50}, {60, -50}, {60, 50}, {20, 50}};
    plan.ribs.push_back(rib);
  }
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok());
  for (std::size_t i = 0; i < 2; ++i) {
    const double inward = i == 0 ? 1 : -1;
    EXPECT_NEAR((*bodies)[i].volume_mm3, 40 * 100 * 4.5, 1e-6);
    EXPECT_FALSE(holds((*bodies)[i].shape, gp_Pnt(40, inward * 0.4, 0)));
    EXPECT_TRUE(holds((*bodies)[i].shape, gp_Pnt(40, inward * 0.6, 0)));
    EXPECT_TRUE(holds((*bodies)[i].shape, gp_Pnt(40, inward * 4.9, 0)));
  }
}

TEST_F(HandMadeFrame, CanBeStopped) {
  int told = 0;
  const auto bodies = make_frame(plan, [&](double, std::string_view) { return ++told < 3; });
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problem().trouble, Trouble::stopped);
  EXPECT_EQ(told, 3);
}

// Every part under its mark, congruent parts as one solid with several places.
TEST_F(HandMadeFrame, IsReadBackFromAStepFileWhole) {
  const auto bodies = make_frame(plan);
  ASSERT_TRUE(bodies.ok());
  std::vector<StepPart> parts;
  double volume_mm3 = 0;
  for (const FrameBody& body : *bodies) {
    parts.push_back({body.mark, body.shape, PartStuff::metal});
    volume_mm3 += body.volume_mm3;
  }
  const auto text = step_text("frame", parts);
  ASSERT_TRUE(text.ok()) << text.problem().text;
  for (const FrameBody& body : *bodies) {
    EXPECT_NE(text->find("PRODUCT('" + body.mark + "'"), std::string::npos) << body.mark;
  }
  const EmptyFolder folder;
  const std::string path = folder.file("frame.step");
  std::ofstream(path, std::ios::binary) << *text;
  STEPControl_Reader reader;
  ASSERT_EQ(reader.ReadFile(path.c_str()), IFSelect_RetDone);
  reader.TransferRoots();
  int solids = 0;
  std::set<const TopoDS_TShape*> different;
  for (TopExp_Explorer at(reader.OneShape(), TopAbs_SOLID); at.More(); at.Next()) {
    ++solids;
    different.insert(at.Current().TShape().get());
  }
  EXPECT_EQ(solids, 6);
  EXPECT_EQ(different.size(), 4u) << "a rib, a ring, a latch and a screw";
  EXPECT_NEAR(kernel_volume_mm3(reader.OneShape()), volume_mm3, 1e-7 * volume_mm3);
}

}  // namespace
}  // namespace prismwright
