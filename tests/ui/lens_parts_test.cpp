// The parts of the 3D view that need no screen: meshes, cut lines, the eye.
#include <BRep_Tool.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "tests/ui/lens_desk.h"
#include "ui/views/lens_camera.h"
#include "ui/views/lens_cut.h"
#include "ui/views/lens_edges.h"
#include "ui/views/lens_rose.h"
#include "ui/views/lens_words.h"

namespace prismwright {
namespace {

TEST(LensMeshes, CongruentPrismsShareOneMesh) {
  LensMesher mesher;
  const auto lens = mesher.mesh(*block_lens());
  ASSERT_TRUE(lens);
  ASSERT_EQ(lens->parts.size(), 9u) << "eight blocks and the ring";
  EXPECT_EQ(mesher.meshedAnew(), 3);
  EXPECT_EQ(lens->find("P01-C")->mesh, lens->find("P03-C")->mesh);
  EXPECT_NE(lens->find("P01-C")->mesh, lens->find("P01-U01")->mesh);
  EXPECT_EQ(lens->find("P02-C")->kind, SceneKind::glass);
  EXPECT_EQ(lens->find("ring-bottom")->kind, SceneKind::ring);
}

TEST(LensMeshes, WhatAnEditLeftAloneIsNotMeshedAgain) {
  LensMesher mesher;
  const auto made = block_lens();
  mesher.mesh(*made);
  mesher.mesh(*made);
  EXPECT_EQ(mesher.meshedAnew(), 0);
}

TEST(LensMeshes, MeshStandsWhereTheSolidDoes) {
  LensMesher mesher;
  const auto lens = mesher.mesh(*block_lens());
  // Outer corners of the lower block: r = hypot(265, 120); the ring reaches 270 and lies from -180 up; the
  // upper block ends at 150.
  EXPECT_NEAR(lens->reach_mm, std::hypot(265, 120), 1e-4);
  EXPECT_NEAR(lens->low_mm, -180, 1e-4);
  EXPECT_NEAR(lens->high_mm, 150, 1e-4);
  const LensPart* second = lens->find("P02-C");
  EXPECT_NEAR(gp_Pnt(250, 0, 0).Transformed(second->place).Y(), 250, 1e-9);
}

TEST(LensMeshes, SolidsAreLeftUnmeshed) {
  // Another thread may be reading them: the mesher must work on a copy of the topology.
  LensMesher mesher;
  const auto made = block_lens();
  ASSERT_TRUE(mesher.mesh(*made));
  for (TopExp_Explorer face(made->bodies->prisms[0].shape, TopAbs_FACE); face.More(); face.Next()) {
    TopLoc_Location place;
    EXPECT_TRUE(BRep_Tool::Triangulation(TopoDS::Face(face.Current()), place).IsNull());
  }
}

TEST(LensMeshes, StoppedWorkGivesNothing) {
  LensMesher mesher;
  EXPECT_EQ(mesher.mesh(*block_lens(), [](double, std::string_view) { return false; }), nullptr);
}

double length_of(const Handle(Graphic3d_ArrayOfSegments) & lines) {
  double sum = 0;
  for (int i = 1; i + 1 <= lines->VertexNumber(); i += 2)
    sum += lines->Vertice(i).Distance(lines->Vertice(i + 1));
  return sum;
}

/// A circle of radius 100 mm as a polygon of so many sides, drawn as single segments.
Handle(Graphic3d_ArrayOfSegments) circle_of_sides(int sides) {
  Handle(Graphic3d_ArrayOfSegments) lines = new Graphic3d_ArrayOfSegments(2 * sides);
  for (int i = 0; i < sides; ++i)
    for (const int corner : {i, (i + 1) % sides}) {
      const double a = 2 * kPi * corner / sides;
      lines->AddVertex(gp_Pnt(100 * std::cos(a), 100 * std::sin(a), 5));
    }
  return lines;
}

TEST(LensEdges, ShortSidesGiveWayToFewLongOnes) {
  const auto fewer = simplified(circle_of_sides(2000), 0.25);
  // A chord 0.25 mm off a circle of 100 mm spans 2 acos(1 - 0.25/100) = 8.1 deg: 44 would do, halving needs
  // up to twice as many.
  EXPECT_LE(fewer->VertexNumber() / 2, 90);
  EXPECT_GE(fewer->VertexNumber() / 2, 44);
  EXPECT_NEAR(length_of(fewer), 2 * kPi * 100, 2 * kPi * 100 * 0.002);
}

TEST(LensEdges, CornersForksAndTwiceDrawnLinesStay) {
  Handle(Graphic3d_ArrayOfSegments) lines = new Graphic3d_ArrayOfSegments(10);
  const gp_Pnt a(0, 0, 0), b(10, 0, 0), c(10, 10, 0), d(10, -7, 0), middle(5, 0, 0);
  for (const auto& [from, to] :
       {std::pair(a, middle), std::pair(middle, b), std::pair(b, c), std::pair(b, d), std::pair(c, b)}) {
    lines->AddVertex(from);
    lines->AddVertex(to);
  }
  const auto fewer = simplified(lines, 0.1);
  EXPECT_EQ(fewer->VertexNumber() / 2, 3) << "a-b, b-c, b-d";
  EXPECT_NEAR(length_of(fewer), 10 + 10 + 7, 1e-4);
  EXPECT_TRUE(simplified(nullptr, 0.1).IsNull());
}

TEST(LensCuts, LevelPlaneMeetsABlockInItsOutline) {
  LensMesher mesher;
  const auto lens = mesher.mesh(*block_lens());
  const LensPart* block = lens->find("P02-C");
  const auto lines = cut_lines({LensCut::Kind::level, 0.3, 0}, {{block->mesh.get(), block->place}});
  ASSERT_FALSE(lines.IsNull());
  EXPECT_NEAR(length_of(lines), 2 * (30 + 240), 1e-3);
  EXPECT_TRUE(cut_lines({LensCut::Kind::level, 60, 0}, {{block->mesh.get(), block->place}}).IsNull());
}

TEST(LensCuts, UprightPlaneGoesThroughTheAxisAtItsAzimuth) {
  LensMesher mesher;
  const auto lens = mesher.mesh(*block_lens());
  const LensPart* block = lens->find("P02-C");
  const auto lines = cut_lines({LensCut::Kind::upright, 0, 90}, {{block->mesh.get(), block->place}});
  ASSERT_FALSE(lines.IsNull());
  EXPECT_NEAR(length_of(lines), 2 * (30 + 200), 1e-3);
  const gp_Vec away = LensCut{LensCut::Kind::upright, 0, 90}.away();
  EXPECT_NEAR(away.X(), 1, 1e-12) << "the half clockwise of the plane goes";
}

class Eye : public testing::Test {
 protected:
  /// Where a point is drawn, -1 to 1 each way.
  gp_Pnt seen(const gp_Pnt& point) const {
    const Handle(Graphic3d_Camera) camera = new Graphic3d_Camera();
    eye.apply(camera);
    camera->SetAspect(800.0 / 600.0);
    return camera->Project(point);
  }
  LensCamera eye;
};

TEST_F(Eye, FramedPointsFillThePictureAndLieInside) {
  const std::vector<gp_Pnt> points = {{300, 0, -100}, {-300, 0, 500}, {0, 250, 0}, {0, -400, 100}};
  for (const double azimuth_deg : {0.0, 37.0, -120.0}) {
    eye.standOutside(azimuth_deg, 20);
    eye.frame(points, 800, 600);
    double widest = 0;
    for (const gp_Pnt& point : points) {
      const gp_Pnt at = seen(point);
      widest = std::max({widest, std::abs(at.X()), std::abs(at.Y())});
    }
    EXPECT_LT(widest, 1);
    EXPECT_GT(widest, 0.85) << "no more room than the margin";
  }
}

TEST_F(Eye, TurningKeepsTheFocusWhereItIs) {
  eye.standOutside(10, 15);
  eye.pan(80, -40, 600);
  const gp_Pnt before = seen({0, 0, 0});
  EXPECT_GT(std::abs(before.X()), 0.05);
  eye.turn(130, 60, 600);
  EXPECT_NEAR(seen({0, 0, 0}).X(), before.X(), 1e-9);
  EXPECT_NEAR(seen({0, 0, 0}).Y(), before.Y(), 1e-9);
}

TEST_F(Eye, ZoomKeepsWhatIsUnderThePointer) {
  eye.standOutside(0, 0);
  const gp_Pnt point(0, 90, 60);  // in the plane of the focus, square to the line of sight
  const gp_Pnt before = seen(point);
  eye.zoom(1.5, before.X() * 400, -before.Y() * 300, 600);
  EXPECT_NEAR(seen(point).X(), before.X(), 1e-9);
  EXPECT_NEAR(seen(point).Y(), before.Y(), 1e-9);
  EXPECT_GT(seen({0, 180, 60}).X(), 1.2 * seen({0, 90, 60}).X()) << "and everything is larger";
}

TEST_F(Eye, SeenFromTheSeaAnticlockwisePanelsLieToTheRight) {
  eye.standOutside(0, 0);
  EXPECT_GT(seen({200, 100, 0}).X(), 0);
  EXPECT_GT(seen({200, 0, 100}).Y(), 0);
  eye.standInFocus(0, 0, 70);
  EXPECT_LT(seen({200, 100, 0}).X(), 0) << "from the lamp, to the left";
}

TEST_F(Eye, FromTheLampTheGlassUnderThePointerFollowsIt) {
  eye.standInFocus(0, 0, 60);
  eye.turn(0, 0, 600);
  const double before = seen({300, 0, 0}).X();
  eye.turn(60, 0, 600);
  // 60 of 600 pixels: 0.15 of half the picture's width.
  EXPECT_NEAR(seen({300, 0, 0}).X() - before, 0.15, 0.03);
}

TEST_F(Eye, LooksStraightUpAndDownWithoutATumble) {
  eye.standOutside(30, 0);
  eye.turn(0, 10000, 600);
  EXPECT_DOUBLE_EQ(eye.elevation_deg(), 90);
  eye.turn(0, -100000, 600);
  EXPECT_DOUBLE_EQ(eye.elevation_deg(), -90);
  EXPECT_TRUE(std::isfinite(seen({10, 20, 30}).X()));
}

TEST(Rose, ArrowPointsAlongTheAxisOfItsPanel) {
  LensRose rose;
  rose.radius_mm = 100;
  rose.panels = place_panels(equal_panels(4));
  rose.arrow_panel = 2;
  EXPECT_NEAR(rose.arrowTip().X(), 0, 1e-9);
  EXPECT_GT(rose.arrowTip().Y(), 100);
  EXPECT_NEAR(rose.numberPlace(rose.panels[0]).Y(), 0, 1e-9);
}

TEST(LensWords, StandBesideTheirPlaceAboveOrBelow) {
  const auto boxes =
      lay_out_words({{{200, 200}, {60, 20}, false}, {{200, 200}, {60, 20}, true}}, {0, 0, 400, 400}, {});
  ASSERT_EQ(boxes.size(), 2u);
  EXPECT_LT(boxes[0].bottom(), 200);
  EXPECT_GT(boxes[1].top(), 200);
  EXPECT_GT(boxes[0].left(), 200);
  EXPECT_EQ(boxes[0].size(), QSizeF(60, 20));
}

TEST(LensWords, TwelveMarksOfOnePlaceStayClearOfEachOther) {
  const QRectF room(0, 0, 500, 400);
  const std::vector<PinnedWords> words(12, {{250, 200}, {60, 20}, false});
  const auto boxes = lay_out_words(words, room, {});
  ASSERT_EQ(boxes.size(), words.size());
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    EXPECT_TRUE(room.contains(boxes[i])) << i;
    for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(boxes[i].intersects(boxes[k])) << i << " and " << k;
  }
}

TEST(LensWords, AMarkBehindTheLegendStandsOutsideIt) {
  const QRectF room(0, 0, 500, 400);
  const QRectF legend(0, 280, 120, 120);
  const auto boxes = lay_out_words({{{20, 390}, {60, 20}, false}}, room, {legend});
  ASSERT_EQ(boxes.size(), 1u);
  EXPECT_TRUE(room.contains(boxes[0]));
  EXPECT_FALSE(boxes[0].intersects(legend));
}

TEST(LensWords, NearThePictureEdgeTheyStandOnItsInnerSide) {
  const QRectF room(0, 0, 300, 300);
  const auto boxes = lay_out_words({{{295, 5}, {80, 20}, false}}, room, {});
  ASSERT_EQ(boxes.size(), 1u);
  EXPECT_TRUE(room.contains(boxes[0]));
  EXPECT_FALSE(boxes[0].contains(QPointF(295, 5))) << "the place itself stays in sight";
}

}  // namespace
}  // namespace prismwright
