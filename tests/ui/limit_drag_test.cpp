#include "core/base/angle.h"
#include "tests/ui/section_desk.h"
#include "ui/models/zone_selection.h"

namespace prismwright {
namespace {

/// A zone's limit taken by its grip in the drawing.
class LimitDragged : public SectionDesk {
 protected:
  void choose(const char* zone) {
    select_zones(bench, {zone}, zone);
    ASSERT_TRUE(drawing()->limitGrip()) << zone;
  }
  [[nodiscard]] QPoint grip() const { return drawing()->map().toView(drawing()->limitGrip()->place).toPoint(); }
  /// Where the limit of the chosen zone would be dragged to an elevation, at the same distance.
  [[nodiscard]] QPoint placeAt(double deg) const {
    const SectionPoint at = drawing()->limitGrip()->place;
    const double reach = std::hypot(at.r, at.z);
    return drawing()->map().toView({reach * std::cos(radians(deg)), reach * std::sin(radians(deg))}).toPoint();
  }
  [[nodiscard]] const Zone& zone(const char* mark) const { return *bench.plan()->section.find(mark); }
  void moveTo(QPoint place) {
    QTest::mouseMove(drawing(), place);
    QCoreApplication::processEvents();
  }
};

TEST_F(LimitDragged, SectionFollowsTheHandAndTheBookIsWrittenOnce) {
  choose("R2");
  const double before = zone("R2").to_deg;
  const std::string book_before = value_text(bench.values(), "section.refracting_rows");
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  for (int step = 1; step <= 4; ++step) {
    moveTo(placeAt(before + 0.2 * step));
    EXPECT_EQ(value_text(bench.values(), "section.refracting_rows"), book_before) << "only shown so far";
  }
  EXPECT_NEAR(zone("R2").to_deg, before + 0.8, 0.25) << "what is shown follows";
  QTest::qWait(200);
  EXPECT_NEAR(number(rowOf("R2"), ZoneTable::to), zone("R2").to_deg, 0.0051) << "the table too, a moment later";
  EXPECT_FALSE(bench.book().undo_text());
  const double shown = zone("R2").to_deg;
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(before + 0.8));
  EXPECT_NEAR(zone("R2").to_deg, shown, 0.25);
  EXPECT_NE(value_text(bench.values(), "section.refracting_rows"), book_before);
  ASSERT_TRUE(bench.book().undo_text());
  EXPECT_TRUE(bench.book().undo_text()->starts_with("end of R2")) << *bench.book().undo_text();
  ASSERT_TRUE(bench.undo());
  EXPECT_FALSE(bench.book().undo_text()) << "one step for the whole drag";
  EXPECT_NEAR(zone("R2").to_deg, before, 1e-9);
}

TEST_F(LimitDragged, LowerPrismIsDraggedDownward) {
  choose("L02");
  const double before = zone("L02").from_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before + 1));
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(before + 1));
  EXPECT_NEAR(zone("L02").from_deg, before + 1, 0.3);
}

TEST_F(LimitDragged, EscapePutsItBack) {
  choose("U03");
  const double before = zone("U03").to_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before - 1.5));
  EXPECT_LT(zone("U03").to_deg, before - 0.5);
  QTest::keyClick(drawing(), Qt::Key_Escape);
  EXPECT_DOUBLE_EQ(zone("U03").to_deg, before);
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(before - 1.5));
  EXPECT_FALSE(bench.book().undo_text());
}

TEST_F(LimitDragged, PlaceWhereNoSectionCanBeSaysWhyAndKeepsTheLastGoodOne) {
  choose("R2");
  const double before = zone("R2").to_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before + 0.4));
  const double good = zone("R2").to_deg;
  moveTo(placeAt(1));  // under the ring below it
  EXPECT_FALSE(drawing()->limits()->refusal().isEmpty());
  EXPECT_DOUBLE_EQ(zone("R2").to_deg, good);
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(1));
  EXPECT_NEAR(zone("R2").to_deg, good, 1e-6) << "the last limit that could be is taken";
}

TEST_F(LimitDragged, LockedZoneHasNoGrip) {
  choose("U03");
  const auto edit = lock_zone(bench.values(), bench.plan()->section, "U03", true);
  ASSERT_TRUE(bench.edit(edit));
  EXPECT_FALSE(drawing()->limitGrip());
}

TEST_F(LimitDragged, SelectionOutlivesADragThatDropsZones) {
  choose("U03");
  const QStringList before = bench.selection();
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(zone("U03").to_deg + 1));
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(zone("U03").to_deg));
  EXPECT_EQ(bench.selection(), before);
}

}  // namespace
}  // namespace prismwright
