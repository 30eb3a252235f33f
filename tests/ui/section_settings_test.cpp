#include <QComboBox>
#include <QPushButton>
#include <QTabWidget>
#include <QToolButton>

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
