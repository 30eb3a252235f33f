#include <QPlainTextEdit>
#include <QSpinBox>

#include "tests/ui/window_desk.h"
#include "ui/models/panels_model.h"

namespace prismwright {
namespace {

class BriefOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    ASSERT_TRUE(window->openBook(newBook("eight.lensbook", starting_values("4", Work::bullseye, 8))));
    bench().stopMaking();
  }
  [[nodiscard]] QTableView* panels() const { return find<QTableView>("panels"); }
  [[nodiscard]] QString undoText() const {
    return QString::fromStdString(bench().book().undo_text().value_or(""));
  }
};

TEST_F(BriefOnScreen, UnequalWidthsAreTakenAsOneStepWhenTheyAddUp) {
  typeIntoCell(panels(), 0, PanelsModel::width, "40");
  EXPECT_DOUBLE_EQ(bench().values().panels[0].width_deg, 45) << "held until the widths close";
  EXPECT_TRUE(text("panels.sum").contains("355")) << qPrintable(text("panels.sum"));
  EXPECT_TRUE(find<QAbstractButton>("panels.putBack")->isVisible());
  typeIntoCell(panels(), 3, PanelsModel::width, "50");
  EXPECT_DOUBLE_EQ(bench().values().panels[0].width_deg, 40);
  EXPECT_DOUBLE_EQ(bench().values().panels[3].width_deg, 50);
  EXPECT_FALSE(find<QAbstractButton>("panels.putBack")->isVisible());
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_DOUBLE_EQ(bench().values().panels[0].width_deg, 45);
  EXPECT_DOUBLE_EQ(bench().values().panels[3].width_deg, 45);
}

TEST_F(BriefOnScreen, HeldWidthsSurviveAnotherEditAndCanBePutBack) {
  typeIntoCell(panels(), 0, PanelsModel::width, "40");
  typeInto("field.brief.client", "Harbour trustees");
  EXPECT_EQ(bench().values().brief.client, "Harbour trustees");
  EXPECT_TRUE(text("panels.sum").contains("355"));
  click("panels.putBack");
  EXPECT_TRUE(text("panels.sum").contains("360"));
  EXPECT_EQ(panels()->model()->index(0, PanelsModel::width).data().toString(), "45.000");
}

TEST_F(BriefOnScreen, AxisShiftMovesTheAxisThatTheTableShows) {
  typeIntoCell(panels(), 2, PanelsModel::shift, "5");
  EXPECT_DOUBLE_EQ(bench().values().panels[2].axis_shift_deg, 5);
  EXPECT_EQ(panels()->model()->index(2, PanelsModel::axis).data().toString(), "95.000");
}

TEST_F(BriefOnScreen, BlindPanelHoldsNoPrisms) {
  const auto prisms = bench().plan()->prisms.size();
  const QModelIndex index = panels()->model()->index(7, PanelsModel::blind);
  ASSERT_TRUE(panels()->model()->setData(index, Qt::Checked, Qt::CheckStateRole));
  EXPECT_TRUE(bench().values().panels[7].blind);
  EXPECT_EQ(bench().plan()->prisms.size(), prisms - prisms / 8);
  EXPECT_EQ(text("figure.prisms"), QString::number(prisms - prisms / 8));
}

TEST_F(BriefOnScreen, EqualPanelsAreMadeByTheButton) {
  find<QSpinBox>("panels.count")->setValue(6);
  click("panels.equal");
  EXPECT_EQ(bench().values().panels.size(), 6u);
  EXPECT_DOUBLE_EQ(bench().values().panels[5].width_deg, 60);
  EXPECT_EQ(panels()->model()->rowCount(), 6);
  EXPECT_EQ(undoText(), "panels to 6 equal ones");
}

TEST_F(BriefOnScreen, TextThatIsNoAngleIsRefused) {
  typeIntoCell(panels(), 0, PanelsModel::width, "wide");
  EXPECT_TRUE(notice("notice.refusal")->shown().contains("wide"));
  EXPECT_EQ(panels()->model()->index(0, PanelsModel::width).data().toString(), "45.000");
}

TEST_F(BriefOnScreen, NewOrderBringsItsFocalDistance) {
  auto* order = find<QComboBox>("field.brief.order");
  const int fifth = order->findData("5");
  ASSERT_GE(fifth, 0);
  order->setFocus();
  while (order->currentIndex() != fifth)
    QTest::keyClick(order, order->currentIndex() < fifth ? Qt::Key_Down : Qt::Key_Up);
  EXPECT_DOUBLE_EQ(bench().values().brief.focal_mm, 187.5);
  EXPECT_EQ(find<QLineEdit>("field.brief.focal_mm")->text(), "187.5");
  EXPECT_EQ(text("figure.diameter"), "375 mm");
}

TEST_F(BriefOnScreen, NotesAreKeptWhenTheFieldIsLeft) {
  auto* notes = find<QPlainTextEdit>("field.brief.notes");
  QTest::mouseClick(notes->viewport(), Qt::LeftButton);
  QTest::keyClicks(notes, "Two crates");
  find<QLineEdit>("field.brief.title")->setFocus();
  EXPECT_EQ(bench().values().brief.notes, "Two crates");
}

}  // namespace
}  // namespace prismwright
