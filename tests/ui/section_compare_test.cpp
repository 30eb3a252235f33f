#include <QComboBox>
#include <QListWidget>
#include <QPushButton>
#include <QTabWidget>
#include <QTableWidget>

#include "tests/ui/section_desk.h"

namespace prismwright {
namespace {

class SectionsCompared : public SectionDesk {
 protected:
  void SetUp() override {
    SectionDesk::SetUp();
    auto* tabs = page->findChild<QTabWidget*>("section.tabs");
    tabs->setCurrentIndex(tabs->count() - 1);
    QCoreApplication::processEvents();
  }
  void keep(const QString& name) {
    auto* line = page->findChild<QLineEdit*>("variant.name");
    QTest::mouseClick(line, Qt::LeftButton);
    QTest::keyClicks(line, name);
    press("variant.keep");
  }
  void press(const char* name) {
    auto* button = page->findChild<QPushButton*>(name);
    ASSERT_TRUE(button && button->isVisible() && button->isEnabled()) << name;
    QTest::mouseClick(button, Qt::LeftButton);
  }
  void choose(const char* box, const char* name) {
    auto* combo = page->findChild<QComboBox*>(box);
    combo->setFocus();
    const int place = combo->findText(name);
    ASSERT_GE(place, 0) << name;
    while (combo->currentIndex() != place)
      QTest::keyClick(combo, combo->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
  }
  void widenEdge(const char* mm = "6") {
    const Assignment edit{"section.edge_mm", mm};
    ASSERT_TRUE(bench.assign({&edit, 1}, {}));
  }
  [[nodiscard]] QListWidget* list() const { return page->findChild<QListWidget*>("variants"); }
  [[nodiscard]] QStringList column(int which) const {
    auto* table = page->findChild<QTableWidget*>("compare.table");
    QStringList texts;
    for (int row = 0; row < table->rowCount(); ++row) texts << table->item(row, which)->text();
    return texts;
  }
};

TEST_F(SectionsCompared, KeptSectionIsListedAndComparedWithThePresentOne) {
  keep("thin edges");
  ASSERT_EQ(list()->count(), 1);
  EXPECT_EQ(list()->item(0)->text(), "thin edges");
  EXPECT_EQ(label("compare.words"), "The two are alike.");
  widenEdge();
  const QStringList what = column(0);
  const int edge = static_cast<int>(what.indexOf("Edge thickness, mm"));
  ASSERT_GE(edge, 0) << what.join(";").toStdString();
  EXPECT_EQ(column(1).at(edge), "6");
  EXPECT_EQ(column(2).at(edge), "4");
  EXPECT_TRUE(what.contains("Figures"));
  EXPECT_TRUE(what.contains("R1"));
}

TEST_F(SectionsCompared, OtherSectionLiesOverTheDrawingWhileItIsLookedAt) {
  keep("thin edges");
  const QImage alone = drawing()->grab().toImage();
  widenEdge();
  const QImage both = drawing()->grab().toImage();
  page->findChild<QTabWidget*>("section.tabs")->setCurrentIndex(0);
  QCoreApplication::processEvents();
  const QImage without = drawing()->grab().toImage();
  EXPECT_NE(both, without);
  EXPECT_NE(alone, without);
}

TEST_F(SectionsCompared, VariantIsTakenOverAndUndone) {
  keep("thin edges");
  widenEdge();
  press("variant.take");
  EXPECT_DOUBLE_EQ(bench.values().section.edge_mm, 4);
  ASSERT_TRUE(bench.undo());
  EXPECT_DOUBLE_EQ(bench.values().section.edge_mm, 6);
  EXPECT_EQ(list()->count(), 1);
}

TEST_F(SectionsCompared, DroppedVariantComesBackByUndo) {
  keep("thin edges");
  press("variant.drop");
  EXPECT_EQ(list()->count(), 0);
  EXPECT_TRUE(bench.book().variants().empty());
  ASSERT_TRUE(bench.undo());
  EXPECT_EQ(list()->count(), 1);
}

TEST_F(SectionsCompared, NameIsTypedAnewInTheList) {
  keep("thin edges");
  QListWidgetItem* item = list()->item(0);
  list()->setFocus();
  list()->setCurrentItem(item);
  list()->editItem(item);
  auto* editor = list()->viewport()->findChild<QLineEdit*>();
  ASSERT_TRUE(editor);
  editor->selectAll();
  QTest::keyClicks(editor, "first thoughts");
  QTest::keyClick(editor, Qt::Key_Return);
  QCoreApplication::processEvents();
  ASSERT_EQ(bench.book().variants().size(), 1u);
  EXPECT_EQ(bench.book().variants().front().name, "first thoughts");
}

TEST_F(SectionsCompared, NameThatIsTakenIsRefused) {
  keep("thin edges");
  QSignalSpy refused(&bench, &Workbench::refused);
  page->findChild<QLineEdit*>("variant.name")->clear();
  keep("thin edges");
  EXPECT_EQ(refused.count(), 1);
  EXPECT_EQ(list()->count(), 1);
}

TEST_F(SectionsCompared, AnyTwoAreChosen) {
  keep("thin edges");
  widenEdge();
  page->findChild<QLineEdit*>("variant.name")->clear();
  keep("wide edges");
  choose("compare.first", "wide edges");
  choose("compare.second", "thin edges");
  const int edge = static_cast<int>(column(0).indexOf("Edge thickness, mm"));
  ASSERT_GE(edge, 0);
  EXPECT_EQ(column(1).at(edge), "6");
  EXPECT_EQ(column(2).at(edge), "4");
}

TEST_F(SectionsCompared, TwoVariantsLieOverThePresentSectionEachInItsOwnLine) {
  keep("thin edges");
  widenEdge("6");
  page->findChild<QLineEdit*>("variant.name")->clear();
  keep("wide edges");
  widenEdge("9");
  choose("compare.first", "present");
  choose("compare.second", "thin edges");
  const QImage with_thin = drawing()->grab().toImage();
  choose("compare.second", "wide edges");
  const QImage with_wide = drawing()->grab().toImage();
  choose("compare.first", "thin edges");
  const QImage with_both = drawing()->grab().toImage();
  EXPECT_NE(with_thin, with_wide);
  EXPECT_NE(with_both, with_thin);
  EXPECT_NE(with_both, with_wide);
  EXPECT_TRUE(label("compare.words").contains("thin edges dashed, wide edges dotted"))
      << label("compare.words").toStdString();
}

}  // namespace
}  // namespace prismwright
