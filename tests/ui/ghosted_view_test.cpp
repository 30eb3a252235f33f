#include "tests/ui/lens_desk.h"

namespace prismwright {
namespace {

/// What the page Frame asks of the 3D view: brass behind ghosted glass, chosen parts, a door that opens.
class BlocksBehindTheGhost : public BlocksOnDesk {
 protected:
  /// Where a place of the lens frame is seen.
  QPoint placeOf(const gp_Pnt& place) const {
    return qobject_cast<LensGl*>(view->picture())->project(place).toPoint();
  }
};

TEST_F(BlocksBehindTheGhost, GlassIsFaintAndBrassIsNot) {
  const QImage plain = picture();
  view->setGhosted(true);
  const QImage ghosted = picture();
  EXPECT_LT(glass_pixels(ghosted), glass_pixels(plain) / 4);
  EXPECT_GT(brass_pixels(ghosted), brass_pixels(plain)) << "what the glass hid is seen";
  view->setGhosted(false);
  EXPECT_LT(differing_pixels(picture(), plain), 50);
}

TEST_F(BlocksBehindTheGhost, ClickGoesThroughGlassToTheBrassBehindIt) {
  // From above the axis the way down to the ring, 240 mm from the axis, goes through a block.
  view->showNamed(LensView::NamedView::plan);
  picture();
  const QPoint over_ring = placeOf(gp_Pnt(240, 0, -150));
  QSignalSpy prisms(view, &LensView::picked);
  QSignalSpy parts(view, &LensView::partPicked);
  clickAt(over_ring);
  ASSERT_EQ(prisms.size(), 1);
  EXPECT_TRUE(prisms.front().at(0).toString().startsWith("P01-"));
  EXPECT_EQ(parts.size(), 0);
  view->setGhosted(true);
  picture();
  clickAt(over_ring);
  ASSERT_EQ(parts.size(), 1) << "the ring lies under the block";
  EXPECT_EQ(parts.front().at(0).toString(), "ring-bottom");
  EXPECT_EQ(prisms.size(), 1);
}

TEST_F(BlocksBehindTheGhost, ChosenPartStandsOut) {
  const QImage plain = picture();
  view->setChosenParts({"ring-bottom"});
  const QImage chosen = picture();
  EXPECT_LT(brass_pixels(chosen), brass_pixels(plain) / 2);
  view->setChosenParts({});
  EXPECT_LT(differing_pixels(picture(), plain), 50);
}

TEST_F(BlocksBehindTheGhost, DoorTurnsItsPartsAboutTheHingeAndNothingElse) {
  // Opened by a right angle the blocks, shut from y -120 to 120, reach seaward to x 505 at y -120 to -90.
  view->showNamed(LensView::NamedView::plan);
  picture();
  const QPoint seaward = placeOf(gp_Pnt(330, -105, 50));
  const QPoint other_side = placeOf(gp_Pnt(-235, 0, 150));
  EXPECT_EQ(view->markAt(seaward), QString());
  EXPECT_EQ(view->markAt(other_side), "P03-U01");
  DoorTurn door;
  door.marks = {"P01-C", "P01-U01"};
  door.hinge = gp_Ax1(gp_Pnt(265, -120, 0), gp::DZ());
  door.angle_deg = -90;
  view->setDoor(door);
  picture();
  EXPECT_TRUE(view->markAt(seaward).startsWith("P01")) << qPrintable(view->markAt(seaward));
  EXPECT_EQ(view->markAt(other_side), "P03-U01");
  door.angle_deg = 0;
  view->setDoor(door);
  picture();
  EXPECT_EQ(view->markAt(seaward), QString());
}

TEST_F(BlocksBehindTheGhost, GapOfADoorPartMovesWithIt) {
  view->showNamed(LensView::NamedView::plan);
  Clearance gap;
  gap.first = "P01-C";
  gap.second = "P01-U01";
  gap.first_point = gp_Pnt(265, 0, 50);
  gap.second_point = gp_Pnt(255, 0, 60);
  view->setGap(gap, "10 mm");
  const QImage shut = picture();
  DoorTurn door;
  door.marks = {"P01-C", "P01-U01"};
  door.hinge = gp_Ax1(gp_Pnt(265, -120, 0), gp::DZ());
  door.angle_deg = -60;
  view->setDoor(door);
  EXPECT_GT(differing_pixels(picture(), shut), 200);
}

}  // namespace
}  // namespace prismwright
