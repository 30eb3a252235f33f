#include <QAbstractItemModel>
#include <QComboBox>
#include <QTableWidget>
#include <algorithm>

#include "tests/ui/section_desk.h"

namespace prismwright {
namespace {

using ZonesOfSection = SectionDesk;

TEST_F(ZonesOfSection, EveryZoneIsListedFromTheTopDownWithTheProofsFigures) {
  ASSERT_EQ(table()->model()->rowCount(), static_cast<int>(bench.plan()->section.zones.size()));
  for (int row = 1; row < table()->model()->rowCount(); ++row)
    EXPECT_GT(number(row - 1, ZoneTable::to), number(row, ZoneTable::to));
  for (const ZoneProof& proof : bench.proof()->zones) {
    const int row = rowOf(QString::fromStdString(proof.mark));
    ASSERT_GE(row, 0);
    EXPECT_NEAR(number(row, ZoneTable::from), proof.from_deg, 0.0051);
    EXPECT_NEAR(number(row, ZoneTable::to), proof.to_deg, 0.0051);
    EXPECT_NEAR(number(row, ZoneTable::share), 100 * proof.share, 0.0051);
    EXPECT_NEAR(number(row, ZoneTable::through), 100 * proof.through, 0.051);
    EXPECT_EQ(cell(row, ZoneTable::reflection).isEmpty(), !proof.least_margin_deg.has_value());
  }
}

TEST_F(ZonesOfSection, LimitTypedIntoTheTableMovesThatZoneAloneAndUndoTakesItBack) {
  const int row = rowOf("R2");
  const double before = number(row, ZoneTable::to);
  const double next = number(rowOf("R3"), ZoneTable::to);
  typeIntoCell(row, ZoneTable::to, QString::number(before + 0.5));
  EXPECT_NEAR(number(rowOf("R2"), ZoneTable::to), before + 0.5, 0.0101);
  EXPECT_NEAR(number(rowOf("R3"), ZoneTable::from), before + 0.5, 0.2)
      << "its neighbour begins there, the setting gap apart";
  EXPECT_NEAR(number(rowOf("R3"), ZoneTable::to), next, 0.0051);
  ASSERT_TRUE(bench.book().undo_text());
  EXPECT_TRUE(QString::fromStdString(*bench.book().undo_text()).startsWith("end of R2"));
  ASSERT_TRUE(bench.undo());
  EXPECT_NEAR(number(rowOf("R2"), ZoneTable::to), before, 0.0051);
}

TEST_F(ZonesOfSection, LowerLimitIsTypedAsItIsShown) {
  const int row = rowOf("L02");
  const double before = number(row, ZoneTable::from);
  ASSERT_LT(before, 0);
  typeIntoCell(row, ZoneTable::from, QString::number(before + 0.5));
  EXPECT_NEAR(number(rowOf("L02"), ZoneTable::from), before + 0.5, 0.0101);
}

TEST_F(ZonesOfSection, RingMarginMovesOnlyThatRing) {
  const int row = rowOf("R2");
  const double r1 = number(rowOf("R1"), ZoneTable::margin);
  const double r3 = number(rowOf("R3"), ZoneTable::margin);
  const double wanted = number(row, ZoneTable::margin) + 2;
  typeIntoCell(row, ZoneTable::margin, QString::number(wanted));
  EXPECT_NEAR(number(rowOf("R2"), ZoneTable::margin), wanted, 0.0051);
  EXPECT_NEAR(number(rowOf("R1"), ZoneTable::margin), r1, 0.0051);
  EXPECT_NEAR(number(rowOf("R3"), ZoneTable::margin), r3, 0.0051);
  EXPECT_TRUE(QString::fromStdString(*bench.book().undo_text()).contains("R2"));
}

TEST_F(ZonesOfSection, InchesAreTypedWhereInchesAreShown) {
  bench.setInches(true);
  typeIntoCell(rowOf("U02"), ZoneTable::breadth, "1.25");
  EXPECT_NEAR(bench.plan()->section.find("U02")->side_mm, 31.75, 1e-9);
  typeIntoCell(rowOf("U02"), ZoneTable::breadth, "30 mm");
  EXPECT_NEAR(bench.plan()->section.find("U02")->side_mm, 30, 1e-9);
}

TEST_F(ZonesOfSection, RefusedLimitLeavesTheBookAndSaysWhy) {
  const double before = number(rowOf("R2"), ZoneTable::to);
  QSignalSpy refused(&bench, &Workbench::refused);
  typeIntoCell(rowOf("R2"), ZoneTable::to, "700");
  EXPECT_FALSE(bench.book().undo_text());
  ASSERT_EQ(refused.count(), 1);
  EXPECT_TRUE(refused.front().front().toString().contains("700"))
      << refused.front().front().toString().toStdString();
  EXPECT_NEAR(number(rowOf("R2"), ZoneTable::to), before, 0.0051);
}

TEST_F(ZonesOfSection, TextThatIsNoNumberIsRefusedToo) {
  QSignalSpy refused(&bench, &Workbench::refused);
  typeIntoCell(rowOf("R1"), ZoneTable::margin, "wide");
  ASSERT_EQ(refused.count(), 1);
  EXPECT_TRUE(refused.front().front().toString().contains("wide"));
  EXPECT_FALSE(bench.book().undo_text());
}

TEST_F(ZonesOfSection, CellsThatFollowFromOthersAreNotEdited) {
  const QAbstractItemModel* model = table()->model();
  const auto editable = [&](const char* zone, int column) {
    return (model->flags(model->index(rowOf(zone), column)) & Qt::ItemIsEditable) != 0;
  };
  EXPECT_FALSE(editable("U02", ZoneTable::from));
  EXPECT_FALSE(editable("U02", ZoneTable::margin));
  EXPECT_FALSE(editable("L02", ZoneTable::to));
  EXPECT_FALSE(editable("R1", ZoneTable::thickness));
  EXPECT_FALSE(editable("R1", ZoneTable::breadth));
  EXPECT_TRUE(editable("R1", ZoneTable::margin));
  EXPECT_TRUE(editable("R1", ZoneTable::to));
  EXPECT_TRUE(editable("U02", ZoneTable::to));
  EXPECT_TRUE(editable("U02", ZoneTable::breadth));
  EXPECT_TRUE(editable("U02", ZoneTable::thickness));
  EXPECT_TRUE(editable("L02", ZoneTable::from));
}

TEST_F(ZonesOfSection, SelectedRowSelectsItsPrismsInEveryPanel) {
  const QModelIndex index = table()->model()->index(rowOf("U03"), ZoneTable::kind);
  table()->scrollTo(index);
  QTest::mouseClick(table()->viewport(), Qt::LeftButton, {}, table()->visualRect(index).center());
  int pieces = 0;
  for (const PlannedPrism& prism : bench.plan()->prisms) pieces += prism.zone == "U03";
  EXPECT_EQ(bench.selection().size(), pieces);
  EXPECT_GE(pieces, 8);
  for (const QString& mark : bench.selection()) EXPECT_TRUE(mark.contains("U03")) << mark.toStdString();
}

TEST_F(ZonesOfSection, SelectionFromElsewhereShowsInTheTableAndMovesNoView) {
  const SectionMap before = drawing()->map();
  const auto half = std::find_if(bench.plan()->prisms.begin(), bench.plan()->prisms.end(),
                                 [](const PlannedPrism& prism) { return prism.mark.ends_with("a"); });
  ASSERT_NE(half, bench.plan()->prisms.end()) << "a ring that crosses the panel's sides falls in two";
  bench.select({QStringLiteral("P01-U03"), QString::fromStdString(half->mark)});
  QStringList rows;
  for (const QModelIndex& index : table()->selectionModel()->selectedRows()) rows << index.data().toString();
  rows.sort();
  EXPECT_EQ(rows, (QStringList{QString::fromStdString(half->zone), "U03"}));
  EXPECT_EQ(bench.selection().size(), 2) << "showing a selection does not widen it";
  EXPECT_EQ(drawing()->map(), before);
}

TEST_F(ZonesOfSection, LimitThatCannotBeMetIsSaidInANote) {
  EXPECT_FALSE(page->findChild<QLabel*>("section.notes")->isVisible());
  const Assignment edit{"section.upper_to_deg",
                        "70"};  // a quarter of a degree over U09: no prism is that small
  ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  ASSERT_FALSE(bench.plan()->section.notes.empty());
  EXPECT_TRUE(page->findChild<QLabel*>("section.notes")->isVisible());
  EXPECT_EQ(label("section.notes").toStdString(), bench.plan()->section.notes.front());
}

TEST_F(ZonesOfSection, RowsComeAndGoWithoutLosingTheSelection) {
  bench.select({QStringLiteral("P01-U03")});
  const int before = table()->model()->rowCount();
  const Assignment fewer{"section.upper_to_deg", "60"};
  ASSERT_TRUE(bench.assign({&fewer, 1}, {}));
  EXPECT_LT(table()->model()->rowCount(), before);
  ASSERT_EQ(table()->selectionModel()->selectedRows().size(), 1);
  EXPECT_EQ(table()->selectionModel()->selectedRows().front().data().toString(), "U03");
  ASSERT_TRUE(bench.undo());
  EXPECT_EQ(table()->model()->rowCount(), before);
  for (std::size_t i = 0; i < bench.plan()->section.zones.size(); ++i)
    EXPECT_GE(rowOf(QString::fromStdString(bench.plan()->section.zones[i].mark)), 0);
  EXPECT_EQ(bench.selection(), QStringList{QStringLiteral("P01-U03")});
}

TEST_F(ZonesOfSection, DarkStripsAreListedFromTheTop) {
  auto* strips = page->findChild<QTableWidget*>("section.strips");
  const auto& dark = bench.proof()->dark_strips;
  ASSERT_EQ(strips->rowCount(), static_cast<int>(dark.size()));
  ASSERT_FALSE(dark.empty()) << "gaps of half a millimetre leave dark strips";
  EXPECT_NEAR(strips->item(0, 1)->text().toDouble(), dark.back().to_mm, 0.0051);
  EXPECT_NEAR(strips->item(0, 2)->text().toDouble(), dark.back().to_mm - dark.back().from_mm, 0.0051);
}

TEST_F(ZonesOfSection, SettingsFormEditsTheSection) {
  auto* faces = page->findChild<QComboBox*>("field.section.faces");
  ASSERT_TRUE(faces);
  ASSERT_EQ(bench.values().section.faces, Faces::true_curve);
  faces->setCurrentIndex(faces->findData(QStringLiteral("arc")));
  emit faces->activated(faces->currentIndex());
  EXPECT_EQ(bench.values().section.faces, Faces::arc);
  EXPECT_GT(bench.proof()->worst_departure_deg, 0.001);
  EXPECT_NEAR(number(rowOf("R1"), ZoneTable::departure), bench.proof()->zones[1].worst_departure_deg, 0.00051);
}

}  // namespace
}  // namespace prismwright
