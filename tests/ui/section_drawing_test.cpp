#include <QImage>
#include <QWheelEvent>
#include <chrono>

#include "tests/ui/section_desk.h"
#include "ui/style/palette.h"

namespace prismwright {
namespace {

class SectionDrawn : public SectionDesk {
 protected:
  [[nodiscard]] QPointF middleOf(const char* zone) const {
    const SectionPoint middle = centroid(bench.plan()->section.find(zone)->profile);
    return drawing()->map().toView(middle);
  }
  void turnWheel(QPointF place, int notches) {
    QWheelEvent event(place, drawing()->mapToGlobal(place), {}, QPoint(0, 120 * notches), Qt::NoButton, {},
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(drawing(), &event);
  }
};

TEST_F(SectionDrawn, OpensWithAllTheGlassInSight) {
  for (const Zone& zone : bench.plan()->section.zones)
    for (const SectionPoint& point : polygon_of(zone.profile, 0.1))
      EXPECT_TRUE(drawing()->rect().contains(drawing()->map().toView(point).toPoint())) << zone.mark;
}

TEST_F(SectionDrawn, WheelKeepsThePointUnderThePointer) {
  const QPointF place = middleOf("U03");
  const SectionPoint before = drawing()->map().toSection(place);
  const double scale = drawing()->map().pixelsPerMm();
  turnWheel(place, 3);
  EXPECT_GT(drawing()->map().pixelsPerMm(), 1.5 * scale);
  EXPECT_LT(distance(drawing()->map().toSection(place), before), 1e-9);
}

TEST_F(SectionDrawn, DragPansAndDoubleClickBringsAllBack) {
  const SectionMap fitted = drawing()->map();
  const QPoint empty = fitted.toView({60, -120}).toPoint();
  const SectionPoint held = fitted.toSection(empty);
  drag(empty, empty + QPoint(50, -30));
  EXPECT_LT(distance(drawing()->map().toSection(empty + QPoint(50, -30)), held), 1e-9);
  EXPECT_DOUBLE_EQ(drawing()->map().pixelsPerMm(), fitted.pixelsPerMm());
  QTest::mouseDClick(drawing(), Qt::LeftButton, {}, empty);
  EXPECT_EQ(drawing()->map(), fitted);
}

TEST_F(SectionDrawn, HomeBringsAllBack) {
  const SectionMap fitted = drawing()->map();
  turnWheel(middleOf("R2"), 5);
  QTest::keyClick(drawing(), Qt::Key_Home);
  EXPECT_EQ(drawing()->map(), fitted);
}

TEST_F(SectionDrawn, ClickOnGlassSelectsItsZoneAndMovesNothing) {
  const SectionMap before = drawing()->map();
  QTest::mouseClick(drawing(), Qt::LeftButton, {}, middleOf("U04").toPoint());
  EXPECT_FALSE(bench.selection().isEmpty());
  for (const QString& mark : bench.selection()) EXPECT_TRUE(mark.endsWith("U04")) << mark.toStdString();
  QTest::mouseClick(drawing(), Qt::LeftButton, Qt::ControlModifier, middleOf("U05").toPoint());
  bool both = false;
  for (const QString& mark : bench.selection()) both = both || mark.endsWith("U05");
  EXPECT_TRUE(both);
  EXPECT_EQ(drawing()->map(), before);
  QTest::mouseClick(drawing(), Qt::LeftButton, {}, before.toView({60, -120}).toPoint());
  EXPECT_TRUE(bench.selection().isEmpty()) << "a click beside the glass lets go";
}

TEST_F(SectionDrawn, LowerImageOfARingSelectsTheSameZone) {
  const SectionPoint middle = centroid(bench.plan()->section.find("R2")->profile);
  EXPECT_EQ(drawing()->zoneAt(drawing()->map().toView(mirrored(middle))), "R2");
}

TEST_F(SectionDrawn, SelectedGlassTakesTheColourOfSelection) {
  const QPoint place = middleOf("U04").toPoint();
  laser()->point(-80);  // out of the way
  const QColor before = drawing()->grab().toImage().pixelColor(place);
  bench.select({QStringLiteral("P01-U04")});
  const QColor after = drawing()->grab().toImage().pixelColor(place);
  const auto from_sea = [](const QColor& colour) {
    return std::abs(colour.red() - palette::sea().red()) + std::abs(colour.blue() - palette::sea().blue());
  };
  EXPECT_LT(from_sea(after), from_sea(before));
}

TEST_F(SectionDrawn, SectionThatCannotBeIsRefusedAndTheDrawingStays) {
  QSignalSpy refused(&bench, &Workbench::refused);
  const QImage before = drawing()->grab().toImage();
  // Lands as wide as the chord leave no entry face: each value is in range, the section cannot be.
  const Assignment edits[] = {{"section.land_mm", "5"}, {"section.reflecting_chord_mm", "6"}};
  EXPECT_FALSE(bench.assign(edits, {}));
  ASSERT_EQ(refused.count(), 1);
  EXPECT_TRUE(refused.front().front().toString().contains("U01")) << "the sentence names the zone";
  EXPECT_EQ(drawing()->grab().toImage(), before);
  EXPECT_FALSE(page->findChild<QLabel*>("section.problem")->isVisible());
}

TEST_F(SectionDrawn, EditKeepsTheViewAPersonHasChosen) {
  turnWheel(middleOf("U03"), 4);
  const SectionMap chosen = drawing()->map();
  const Assignment edit{"section.edge_mm", "5"};
  ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  EXPECT_EQ(drawing()->map(), chosen);
}

TEST_F(SectionDrawn, LaserFrameReusesTheStandingPicture) {
  open("1", Work::bullseye, 8, QSize(1140, 700));
  QPixmap target(drawing()->size());
  drawing()->render(&target);
  const auto frames = [&](auto&& change) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 20; ++i) {
      change();
      drawing()->render(&target);
    }
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count() / 20;
  };
  const double laser_ms = frames([&] { laser()->turn(0.1); });
  const double whole_ms = frames([&] { drawing()->zoom(1.001); });
  double edge = 10;
  const double edit_ms = frames([&] {
    const Assignment edit{"section.edge_mm", number_text(edge += 0.01)};
    ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  });
  RecordProperty("edit_ms", std::to_string(edit_ms));
  RecordProperty("laser_frame_ms", std::to_string(laser_ms));
  RecordProperty("whole_frame_ms", std::to_string(whole_ms));
  EXPECT_LT(laser_ms, whole_ms) << "turning the laser must not draw the glass anew";
}

}  // namespace
}  // namespace prismwright
