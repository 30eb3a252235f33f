#include <QAction>
#include <QMenu>
#include <QToolButton>

#include "tests/ui/section_desk.h"
#include "ui/models/zone_selection.h"

namespace prismwright {
namespace {

class ZonesByHand : public SectionDesk {
 protected:
  void selectRow(const char* zone) {
    const QModelIndex index = table()->model()->index(rowOf(zone), ZoneTable::kind);
    table()->scrollTo(index);
    QTest::mouseClick(table()->viewport(), Qt::LeftButton, {}, table()->visualRect(index).center());
  }
  [[nodiscard]] QToolButton* tool(const char* name) const {
    return page->findChild<QToolButton*>(QStringLiteral("tool.zone.") + name);
  }
  void press(const char* name) { QTest::mouseClick(tool(name), Qt::LeftButton); }
  [[nodiscard]] const Zone& zone(const char* mark) const { return *bench.plan()->section.find(mark); }
  [[nodiscard]] std::size_t zones() const { return bench.plan()->section.zones.size(); }
  [[nodiscard]] QString undoText() const {
    return QString::fromStdString(bench.book().undo_text().value_or(""));
  }
};

TEST_F(ZonesByHand, ToolsWaitForOneZone) {
  EXPECT_FALSE(tool("lock")->isEnabled());
  EXPECT_FALSE(tool("split")->isEnabled());
  EXPECT_FALSE(tool("remove")->isEnabled());
  EXPECT_TRUE(tool("add")->isEnabled());
  selectRow("U03");
  EXPECT_TRUE(tool("lock")->isEnabled());
  EXPECT_TRUE(tool("split")->isEnabled());
  EXPECT_TRUE(tool("remove")->isEnabled());
  select_zones(bench, {"U03", "U04"}, "U03");
  EXPECT_FALSE(tool("split")->isEnabled()) << "each step is said of one zone";
}

TEST_F(ZonesByHand, LockedZoneCarriesAMarkAndTheWordAndIsNotEdited) {
  selectRow("U03");
  press("lock");
  ASSERT_TRUE(zone("U03").locked);
  EXPECT_EQ(undoText(), "lock U03");
  const QModelIndex index = table()->model()->index(rowOf("U03"), ZoneTable::lock);
  EXPECT_EQ(index.data().toString(), "locked");
  EXPECT_FALSE(index.data(Qt::DecorationRole).value<QIcon>().isNull());
  for (const int column : {ZoneTable::to, ZoneTable::breadth, ZoneTable::thickness})
    EXPECT_FALSE(table()->model()->flags(index.siblingAtColumn(column)) & Qt::ItemIsEditable);
  EXPECT_FALSE(tool("split")->isEnabled());
  EXPECT_EQ(tool("lock")->text(), "Free");
  press("lock");
  EXPECT_FALSE(zone("U03").locked);
  EXPECT_EQ(undoText(), "free U03");
}

TEST_F(ZonesByHand, SplitMakesTwoZonesThatEndWhereOneEnded) {
  const std::size_t before = zones();
  const double end = zone("R2").to_deg;
  selectRow("R2");
  press("split");
  EXPECT_EQ(zones(), before + 1);
  EXPECT_NEAR(zone("R3").to_deg, end, 1e-6);
  EXPECT_NEAR(zone("R2").to_deg - zone("R2").from_deg, zone("R3").to_deg - zone("R3").from_deg, 0.2)
      << "but for the setting gap";
  EXPECT_EQ(undoText(), "split R2");
  ASSERT_TRUE(bench.undo());
  EXPECT_EQ(zones(), before);
}

TEST_F(ZonesByHand, KeysDoWhatTheToolsDo) {
  const std::size_t before = zones();
  selectRow("U04");
  QTest::keyClick(table(), Qt::Key_T, Qt::ControlModifier);
  EXPECT_EQ(zones(), before + 1);
  EXPECT_EQ(undoText(), "split U04");
  QTest::keyClick(table(), Qt::Key_Delete);
  EXPECT_EQ(zones(), before);
  EXPECT_EQ(undoText(), "remove U04");
  QTest::keyClick(table(), Qt::Key_L, Qt::ControlModifier);
  EXPECT_EQ(undoText(), "lock U04");
  QTest::keyClick(table(), Qt::Key_Insert);
  EXPECT_EQ(zones(), before + 1);
  EXPECT_EQ(undoText(), "add a zone to the upper prisms");
}

TEST_F(ZonesByHand, AddedZoneIsSelectedAtTheOuterEndOfItsBand) {
  selectRow("L02");
  press("add");
  const Zone& last = bench.plan()->section.zones.back();
  EXPECT_EQ(last.kind, ZoneKind::lower);
  EXPECT_EQ(selected_zones(bench), QSet<QString>{QString::fromStdString(last.mark)});
  page->findChild<QAction*>("zone.add.upper")->trigger();
  EXPECT_EQ(undoText(), "add a zone to the upper prisms");
}

TEST_F(ZonesByHand, RefusalSaysWhyAndChangesNothing) {
  QSignalSpy refused(&bench, &Workbench::refused);
  typeIntoCell(rowOf("R1"), ZoneTable::to, "0");
  ASSERT_EQ(refused.count(), 1);
  EXPECT_FALSE(bench.book().undo_text());
}

TEST_F(ZonesByHand, RightClickOnGlassOpensTheMenuOfThatZone) {
  const QPoint place = drawing()->map().toView(centroid(bench.plan()->section.find("U05")->profile)).toPoint();
  QContextMenuEvent event(QContextMenuEvent::Mouse, place, drawing()->mapToGlobal(place));
  QApplication::sendEvent(drawing(), &event);
  auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
  ASSERT_TRUE(menu);
  EXPECT_EQ(selected_zones(bench), QSet<QString>{"U05"});
  QAction* split = page->findChild<QAction*>("zone.split");
  ASSERT_TRUE(menu->actions().contains(split));
  QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(split).center());
  EXPECT_EQ(undoText(), "split U05");
}

TEST_F(ZonesByHand, PrismIsSizedByItsEntrySideOrItsThickness) {
  const double neighbour = zone("U02").side_mm;
  typeIntoCell(rowOf("U03"), ZoneTable::breadth, "25");
  EXPECT_NEAR(zone("U03").side_mm, 25, 1e-6);
  EXPECT_NEAR(zone("U02").side_mm, neighbour, 1e-6);
  typeIntoCell(rowOf("U03"), ZoneTable::thickness, "9");
  EXPECT_NEAR(zone("U03").section_thickness_mm, 9, 1e-4);
  EXPECT_TRUE(undoText().startsWith("thickness of U03")) << undoText().toStdString();
}

}  // namespace
}  // namespace prismwright
