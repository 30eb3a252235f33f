#include <QTabWidget>
#include <QTableWidget>

#include "core/base/angle.h"
#include "tests/ui/section_desk.h"
#include "ui/models/zone_selection.h"
#include "ui/views/fate_bar.h"
#include "ui/views/proof_panel.h"

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
  [[nodiscard]] QTableWidget* losses() const { return page->findChild<QTableWidget*>("proof.losses"); }
  [[nodiscard]] static QStringList texts(const QTableWidget& table) {
    QStringList all;
    for (int row = 0; row < table.rowCount(); ++row)
      for (int column = 0; column < table.columnCount(); ++column) all << table.item(row, column)->text();
    return all;
  }
  /// The table of losses as the proof of the section shown has them.
  [[nodiscard]] bool lossesAreOfTheProof() const {
    const std::vector<LossByCause>& proved = bench.proof()->losses;
    if (losses()->rowCount() != static_cast<int>(proved.size())) return false;
    for (int row = 0; row < losses()->rowCount(); ++row)
      if (losses()->item(row, 2)->text() != share_text(proved[static_cast<std::size_t>(row)].share))
        return false;
    return true;
  }
};

/// Counts how often a widget is painted.
class Paints : public QObject {
 public:
  explicit Paints(QWidget* of) : QObject(of) { of->installEventFilter(this); }
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::Paint) ++count;
    return QObject::eventFilter(watched, event);
  }
  int count = 0;
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
  EXPECT_TRUE(QTest::qWaitFor([this] {
    return std::abs(number(rowOf("R2"), ZoneTable::to) - zone("R2").to_deg) < 0.0051;
  })) << "the table too, a moment later";
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

TEST_F(LimitDragged, DrawingIsPaintedOnceForEachMove) {
  choose("U03");
  const double before = zone("U03").to_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  QTest::qWait(100);
  const Paints paints(drawing());
  for (int step = 1; step <= 6; ++step) {
    moveTo(placeAt(before - 0.2 * step));
    EXPECT_TRUE(QTest::qWaitFor([&] { return paints.count >= step; })) << step;
  }
  EXPECT_EQ(paints.count, 6);
  EXPECT_LT(zone("U03").to_deg, before - 0.8) << "and each move was a new section";
  QTest::keyClick(drawing(), Qt::Key_Escape);
}

TEST_F(LimitDragged, FiguresOutOfSightWaitForTheEndOfTheDrag) {
  choose("U03");
  const double before = zone("U03").to_deg;
  const QStringList stood = texts(*losses());
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before - 1.5));
  QTest::qWait(300);
  EXPECT_FALSE(lossesAreOfTheProof()) << "the drag has changed them";
  EXPECT_EQ(texts(*losses()), stood);
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(before - 1.5));
  EXPECT_TRUE(lossesAreOfTheProof());
  EXPECT_NE(texts(*losses()), stood);
}

TEST_F(LimitDragged, FiguresOutOfSightAreUpToDateWhenTheyAreShownDuringTheDrag) {
  choose("U03");
  const double before = zone("U03").to_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before - 1.5));
  page->findChild<QTabWidget*>("section.tabs")->setCurrentWidget(page->findChild<ProofPanel*>());
  ASSERT_TRUE(losses()->isVisible());
  EXPECT_TRUE(lossesAreOfTheProof());
  moveTo(placeAt(before - 0.7));
  EXPECT_TRUE(QTest::qWaitFor([this] { return lossesAreOfTheProof(); })) << "a moment later while in sight";
  QTest::keyClick(drawing(), Qt::Key_Escape);
  EXPECT_TRUE(lossesAreOfTheProof()) << "at once when the limit is put back";
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

TEST_F(LimitDragged, UndoInTheMiddleOfADragLeavesNothingToBeWrittenAtItsEnd) {
  const Assignment edge{"section.edge_mm", "5"};
  ASSERT_TRUE(bench.assign({&edge, 1}, {}));
  choose("U03");
  const double before = zone("U03").to_deg;
  QTest::mousePress(drawing(), Qt::LeftButton, {}, grip());
  moveTo(placeAt(before - 1.5));
  ASSERT_TRUE(bench.undo());
  const std::string rows = value_text(bench.values(), "section.upper_rows");
  QTest::mouseRelease(drawing(), Qt::LeftButton, {}, placeAt(before - 1.5));
  EXPECT_EQ(value_text(bench.values(), "section.upper_rows"), rows);
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
