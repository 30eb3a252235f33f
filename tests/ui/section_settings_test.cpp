#include <QAbstractItemView>
#include <QComboBox>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QToolButton>

#include "core/lens/facet_departure.h"
#include "tests/ui/section_desk.h"

namespace prismwright {
namespace {

class SectionSettingsOnPage : public SectionDesk {
 protected:
  void SetUp() override {
    SectionDesk::SetUp();
    page->findChild<QTabWidget*>("section.tabs")->setCurrentIndex(1);
    QCoreApplication::processEvents();
  }
  void open(const char* fold) {
    auto* head = page->findChild<QToolButton*>(QStringLiteral("fold.") + fold);
    ASSERT_TRUE(head) << fold;
    if (!head->isChecked()) QTest::mouseClick(head, Qt::LeftButton);
    QCoreApplication::processEvents();
  }
  [[nodiscard]] QWidget* field(const char* key) const {
    return page->findChild<QWidget*>(QStringLiteral("field.") + key);
  }
  void choose(const QString& name, int place) {
    auto* box = page->findChild<QComboBox*>(name);
    ASSERT_TRUE(box && box->isVisible()) << name.toStdString();
    box->setFocus();
    while (box->currentIndex() != place)
      QTest::keyClick(box, box->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
  }
  void type(const QString& name, const QString& text) {
    auto* line = page->findChild<QLineEdit*>(name);
    ASSERT_TRUE(line && line->isVisible()) << name.toStdString();
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
  }
};

TEST_F(SectionSettingsOnPage, EveryQuantityOfTheSectionHasAField) {
  for (const Quantity& quantity : quantities()) {
    if (!quantity.key.starts_with("section.")) continue;
    EXPECT_TRUE(field(quantity.key.c_str())) << quantity.key;
  }
}

TEST_F(SectionSettingsOnPage, SubHeadsOpenAndShut) {
  QWidget* rib = field("section.upper_rib_mm");
  EXPECT_FALSE(rib->isVisible());
  open("ribs");
  EXPECT_TRUE(rib->isVisible());
  QTest::mouseClick(page->findChild<QToolButton*>("fold.ribs"), Qt::LeftButton);
  EXPECT_FALSE(rib->isVisible());
}

TEST_F(SectionSettingsOnPage, WhatDoesNotApplyIsDisabledWithTheReason) {
  open("ribs");
  EXPECT_FALSE(field("section.rib_inner_r_mm")->isEnabled());
  EXPECT_EQ(label("range.section.rib_inner_r_mm"), "There is no rib");
  type("field.section.upper_rib_mm", "8");
  ASSERT_DOUBLE_EQ(bench.values().section.upper_rib_mm, 8);
  EXPECT_TRUE(field("section.rib_inner_r_mm")->isEnabled());
  ASSERT_EQ(bench.plan()->section.ribs.size(), 1u);
}

TEST_F(SectionSettingsOnPage, FlatInnerFacesAreChosenByClickingAndTheProofTellsWhatTheyDo) {
  open("refracting");
  EXPECT_FALSE(field("section.inner_face")->isEnabled()) << "a bull's-eye is flat inside anyway";
  SectionDesk::open("4", Work::belt, 24, QSize(1140, 700));
  auto* tabs = page->findChild<QTabWidget*>("section.tabs");
  tabs->setCurrentIndex(1);
  open("refracting");
  auto* box = page->findChild<QComboBox*>("field.section.inner_face");
  ASSERT_TRUE(box && box->isEnabled());
  page->findChild<QScrollArea*>("section.form")->ensureWidgetVisible(box);
  QCoreApplication::processEvents();
  QTest::mouseClick(box, Qt::LeftButton);
  QAbstractItemView* list = box->view();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(list->window()));
  const QModelIndex flat = list->model()->index(1 - box->currentIndex(), 0);
  QTest::mouseMove(list->viewport(), list->visualRect(flat).center());
  QTest::qWait(QApplication::doubleClickInterval());
  QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(flat).center());
  QCoreApplication::processEvents();
  ASSERT_EQ(bench.values().section.inner_face, InnerFace::flat);
  EXPECT_TRUE(bench.plan()->find("P01-C")->trim.flat_inner_mm);
  for (int tab = 0; tab < tabs->count(); ++tab)
    if (tabs->tabText(tab) == "Proof") tabs->setCurrentIndex(tab);
  QCoreApplication::processEvents();
  auto* words = page->findChild<QLabel*>("proof.facets");
  ASSERT_TRUE(words && words->isVisible());
  const auto departures = facet_departures(*bench.plan());
  const double worst = std::abs(worst_of(departures)->worst.departure_deg);
  EXPECT_TRUE(words->text().contains(QString::number(worst, 'f', 3))) << words->text().toStdString();
  ASSERT_TRUE(bench.undo());
  EXPECT_FALSE(words->isVisible());
}

TEST_F(SectionSettingsOnPage, BandIsDividedAnewByRuleAndNumber) {
  open("upper");
  auto* rule = page->findChild<QComboBox*>("divide.upper.rule");
  choose("divide.upper.rule", rule->findData(static_cast<int>(Division::count)));
  auto* number = page->findChild<QLineEdit*>("divide.upper.number");
  number->selectAll();
  QTest::keyClicks(number, "7");
  QTest::mouseClick(page->findChild<QPushButton*>("divide.upper.go"), Qt::LeftButton);
  EXPECT_EQ(bench.values().section.upper.division, Division::count);
  int prisms = 0;
  for (const Zone& zone : bench.plan()->section.zones) prisms += zone.kind == ZoneKind::upper;
  EXPECT_EQ(prisms, 7);
  EXPECT_EQ(*bench.book().undo_text(), "divide upper prisms by count 7");
}

TEST_F(SectionSettingsOnPage, TextThatIsNoNumberDividesNothing) {
  open("lower");
  QSignalSpy refused(&bench, &Workbench::refused);
  type("divide.lower.number", "many");
  EXPECT_EQ(refused.count(), 1);
  EXPECT_FALSE(bench.book().undo_text());
}

TEST_F(SectionSettingsOnPage, PowerOfTheUpperPrismsMovesToTheEntryFace) {
  auto* power = page->findChild<QComboBox*>("field.section.upper_power");
  choose("field.section.upper_power", power->findData("entry"));
  EXPECT_EQ(bench.values().section.upper.power, Power::entry);
  EXPECT_LT(bench.proof()->worst_departure_deg, 0.01);
}

}  // namespace
}  // namespace prismwright
