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
  void widenEdge() {
    const Assignment edit{"section.edge_mm", "6"};
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
  for (const auto& [box, name] :
       {std::pair("compare.first", "wide edges"), std::pair("compare.second", "thin edges")}) {
    auto* combo = page->findChild<QComboBox*>(box);
    combo->setFocus();
    const int place = combo->findText(name);
    while (combo->currentIndex() != place)
      QTest::keyClick(combo, combo->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
  }
  const int edge = static_cast<int>(column(0).indexOf("Edge thickness, mm"));
  ASSERT_GE(edge, 0);
  EXPECT_EQ(column(1).at(edge), "6");
  EXPECT_EQ(column(2).at(edge), "4");
}

}  // namespace
}  // namespace prismwright
