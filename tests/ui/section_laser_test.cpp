#include <QTableWidget>
#include <QToolButton>
#include <cmath>

#include "core/base/angle.h"
#include "tests/ui/section_desk.h"

namespace prismwright {
namespace {

class LaserOnSection : public SectionDesk {
 protected:
  [[nodiscard]] QTableWidget* meetings() const { return page->findChild<QTableWidget*>("laser.meetings"); }
  [[nodiscard]] double shown(int row, int column) const {
    return meetings()->item(row, column)->text().replace(QChar(0x2212), '-').toDouble();
  }

  /// Every face of the read-out against the ray followed by the tracer itself.
  void expectReadoutOf(double elevation_deg) {
    const RayPath path = bench.tracer()->trace(elevation_deg);
    for (std::size_t i = 0; i < path.meetings.size(); ++i) {
      const RayMeeting& meeting = path.meetings[i];
      const int row = static_cast<int>(i);
      EXPECT_EQ(meetings()->item(row, 1)->text().toStdString(), meeting.zone);
      EXPECT_NEAR(shown(row, 3), meeting.place.r, 0.0051);
      EXPECT_NEAR(shown(row, 4), meeting.place.z, 0.0051);
      EXPECT_NEAR(shown(row, 5), meeting.incidence_deg, 0.00051);
      if (meeting.refraction_deg) {
        EXPECT_NEAR(shown(row, 6), *meeting.refraction_deg, 0.00051);
      }
      EXPECT_NEAR(shown(row, 7), 100 * meeting.loss, 0.0051);
      EXPECT_NEAR(shown(row, 8), meeting.direction_deg, 0.00051);
    }
    for (int row = static_cast<int>(path.meetings.size()); row < meetings()->rowCount(); ++row)
      EXPECT_TRUE(meetings()->item(row, 1)->text().isEmpty());
  }
};

TEST_F(LaserOnSection, OpensOnARayThatShowsSomething) {
  EXPECT_FALSE(laser()->zone().isEmpty());
  EXPECT_NE(laser()->elevation_deg(), 0);
  expectReadoutOf(laser()->elevation_deg());
}

TEST_F(LaserOnSection, DraggedRoundTheFocusItReadsWhatTheTracerFinds) {
  const auto grip = drawing()->grip();
  ASSERT_TRUE(grip);
  const double wanted_deg = 48;  // among the upper reflecting prisms
  const double reach = QLineF(drawing()->map().toView({0, 0}), *grip).length();
  const QPointF target = drawing()->map().toView({0, 0}) +
                         QPointF(reach * std::cos(radians(wanted_deg)), -reach * std::sin(radians(wanted_deg)));
  drag(grip->toPoint(), target.toPoint());
  EXPECT_NEAR(laser()->elevation_deg(), wanted_deg, 0.6) << "a pixel at the grip is about half a degree";
  EXPECT_TRUE(laser()->zone().startsWith('U')) << laser()->zone().toStdString();
  expectReadoutOf(laser()->elevation_deg());
  EXPECT_TRUE(label("laser.sums").contains("least margin"));
  EXPECT_EQ(bench.selection().size(), 0) << "dragging the laser selects nothing";
}

TEST_F(LaserOnSection, TypedElevationIsTaken) {
  auto* field = page->findChild<QLineEdit*>("laser.elevation");
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, "12.34");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(laser()->elevation_deg(), 12.34);
  expectReadoutOf(12.34);
}

TEST_F(LaserOnSection, RefusedElevationSaysWhyAndStays) {
  const double before = laser()->elevation_deg();
  auto* field = page->findChild<QLineEdit*>("laser.elevation");
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, "120");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(laser()->elevation_deg(), before);
  const QString refusal = label("laser.elevation.refusal");
  EXPECT_TRUE(refusal.contains("120") && refusal.contains("-90 to 90")) << refusal.toStdString();
  QTest::keyClick(field, Qt::Key_Escape);
  EXPECT_TRUE(label("laser.elevation.refusal").isEmpty());
}

TEST_F(LaserOnSection, KeysTurnItAndStepByZone) {
  drawing()->setFocus();
  laser()->point(10);
  QTest::keyClick(drawing(), Qt::Key_Up);
  EXPECT_NEAR(laser()->elevation_deg(), 10.1, 1e-12);
  QTest::keyClick(drawing(), Qt::Key_Down, Qt::ShiftModifier);
  EXPECT_NEAR(laser()->elevation_deg(), 9.1, 1e-12);
  laser()->pointAtZone("C");
  QStringList met;
  for (std::size_t i = 0; i < bench.plan()->section.zones.size(); ++i) {
    met << laser()->zone();
    QTest::keyClick(drawing(), Qt::Key_PageUp);
  }
  for (const Zone& zone : bench.plan()->section.zones) {
    if (zone.kind == ZoneKind::lower) continue;
    EXPECT_TRUE(met.contains(QString::fromStdString(zone.mark))) << zone.mark;
  }
}

TEST_F(LaserOnSection, ButtonsStepByZoneToo) {
  laser()->pointAtZone("U02");
  QTest::mouseClick(page->findChild<QToolButton*>("laser.up"), Qt::LeftButton);
  EXPECT_EQ(laser()->zone(), "U03");
  QTest::mouseClick(page->findChild<QToolButton*>("laser.down"), Qt::LeftButton);
  EXPECT_EQ(laser()->zone(), "U02");
}

/// The stacks have focal points of their own, 12 mm above and 20 mm below the principal one.
class LaserInBands : public LaserOnSection {
 protected:
  void SetUp() override {
    LaserOnSection::SetUp();
    const Assignment edits[] = {{"section.upper_focus_mm", "12"}, {"section.lower_focus_mm", "-20"}};
    ASSERT_TRUE(bench.assign(edits, {}));
    drawing()->setFocus();
  }
};

TEST_F(LaserInBands, StepsGoBandByBandFromEachBandsFocalPoint) {
  const Section& section = bench.plan()->section;
  const std::vector<LaserStop> stops = laser_stops(section);
  laser()->pointAtZone(QString::fromStdString(stops.front().zone));
  for (std::size_t i = 0; i < stops.size(); ++i) {
    EXPECT_EQ(laser()->zone().toStdString(), stops[i].zone);
    EXPECT_DOUBLE_EQ(laser()->elevation_deg(), stops[i].elevation_deg);
    const double focus_z = band_aim(section.input, stops[i].band).focus_z_mm;
    EXPECT_NEAR(laser()->path()->points.front().z, focus_z, 1e-9) << stops[i].zone;
    EXPECT_LT(std::abs(laser()->path()->departure_deg), 1e-3) << stops[i].zone << " is met as it was made";
    QTest::keyClick(drawing(), Qt::Key_PageUp);
  }
  EXPECT_EQ(laser()->zone().toStdString(), stops.back().zone) << "no further up";
  for (std::size_t i = stops.size() - 1; i-- > 0;) {
    QTest::mouseClick(page->findChild<QToolButton*>("laser.down"), Qt::LeftButton);
    EXPECT_EQ(laser()->zone().toStdString(), stops[i].zone);
    EXPECT_DOUBLE_EQ(laser()->elevation_deg(), stops[i].elevation_deg);
  }
}

TEST_F(LaserInBands, ReadoutNamesTheFocalPointWhereItIsNotThePrincipalOne) {
  laser()->pointAtZone("U02");
  EXPECT_TRUE(label("laser.sums").contains("upper prisms' focal point, 12"))
      << label("laser.sums").toStdString();
  EXPECT_TRUE(label("laser.sums").contains("above the principal one. Departs"));
  laser()->pointAtZone("L01");
  EXPECT_TRUE(label("laser.sums").contains("lower prisms' focal point, 20"))
      << label("laser.sums").toStdString();
  EXPECT_TRUE(label("laser.sums").contains("below"));
  laser()->pointAtZone("R2");
  EXPECT_FALSE(label("laser.sums").contains("focal point")) << label("laser.sums").toStdString();
}

TEST_F(LaserInBands, TypedElevationIsTakenByItsBandAfterAStep) {
  laser()->pointAtZone("U02");
  auto* field = page->findChild<QLineEdit*>("laser.elevation");
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, "6");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_TRUE(laser()->zone().startsWith('R') || laser()->zone() == "C") << laser()->zone().toStdString();
  EXPECT_NEAR(laser()->path()->points.front().z, 0, 1e-9);
  expectReadoutOf(6);
}

TEST_F(LaserInBands, GripIsOnTheRayAndIsDraggedRoundItsFocalPoint) {
  laser()->pointAtZone("U02");
  const SectionPoint at = drawing()->map().toSection(*drawing()->grip());
  EXPECT_NEAR(degrees(std::atan2(at.z - 12, at.r)), laser()->elevation_deg(), 1e-6);
  const double before = laser()->elevation_deg();
  const double reach = std::hypot(at.r, at.z - 12);
  const double wanted = radians(before + 3);
  const QPointF target = drawing()->map().toView({reach * std::cos(wanted), 12 + reach * std::sin(wanted)});
  drag(drawing()->grip()->toPoint(), target.toPoint());
  EXPECT_NEAR(laser()->elevation_deg(), before + 3, 0.6);
}

TEST_F(LaserOnSection, BoardTakesADistanceInInchesAndShowsTheSpot) {
  auto* field = page->findChild<QLineEdit*>("laser.board");
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, "60 in");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_DOUBLE_EQ(laser()->board_mm(), 1524);
  const auto spot = laser()->spot();
  ASSERT_TRUE(spot);
  const RayPath path = bench.tracer()->trace(laser()->elevation_deg());
  EXPECT_NEAR(spot->place.z, path.points.back().z, 0.01) << "a true curve sends the ray level";
  EXPECT_TRUE(label("laser.spot").contains(QString::number(spot->place.z, 'f', 2)));
}

TEST_F(LaserOnSection, StillPointsTheSameWayAfterAnEdit) {
  laser()->point(50);
  const Assignment edit{"section.reflecting_chord_mm", "24"};
  ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  EXPECT_DOUBLE_EQ(laser()->elevation_deg(), 50);
  expectReadoutOf(50);
}

TEST_F(LaserOnSection, LengthsFollowTheUnitsOfTheWindow) {
  const double r_mm = shown(0, 3);
  bench.setInches(true);
  EXPECT_NEAR(shown(0, 3) * 25.4, r_mm, 0.01);
  EXPECT_EQ(meetings()->horizontalHeaderItem(3)->text(), "r\nin");
}

TEST_F(LaserOnSection, GripStaysInReachWhenTheFocusIsOutOfSight) {
  laser()->pointAtZone("U03");
  for (int notch = 0; notch < 12; ++notch) drawing()->zoom(1.3);
  const RayPath path = bench.tracer()->trace(laser()->elevation_deg());
  const QPointF place = drawing()->map().toView(path.points[1]);
  // Bring the face that the ray enters into the middle.
  for (int i = 0; i < 60; ++i) {
    const QPointF away = drawing()->map().toView(path.points[1]) - QPointF(drawing()->rect().center());
    if (away.manhattanLength() < 40) break;
    const QPoint empty(60, 40);
    const QPoint step = (-away * std::min(1.0, 200.0 / std::hypot(away.x(), away.y()))).toPoint();
    QTest::mousePress(drawing(), Qt::RightButton, {}, empty);
    QTest::mouseRelease(drawing(), Qt::RightButton, {}, empty);
    QPoint from = drawing()->rect().center();
    drag(from, from + step);
  }
  EXPECT_NE(place, drawing()->map().toView(path.points[1])) << "the drawing has been dragged";
  EXPECT_FALSE(drawing()->rect().contains(drawing()->map().toView({0, 0}).toPoint()));
  const auto grip = drawing()->grip();
  ASSERT_TRUE(grip);
  EXPECT_TRUE(drawing()->rect().contains(grip->toPoint()));
}

}  // namespace
}  // namespace prismwright
