#include <QCheckBox>
#include <QListWidget>
#include <QPlainTextEdit>

#include "tests/ui/window_desk.h"
#include "ui/models/counts_model.h"
#include "ui/models/ledger_model.h"
#include "ui/views/panel_chart.h"

namespace prismwright {
namespace {

class WorksOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    ASSERT_TRUE(window->openBook(newBook("eight.lensbook", starting_values("4", Work::bullseye, 8))));
    bench().stopMaking();
    click("rail.works");
    QCoreApplication::processEvents();
  }

  [[nodiscard]] PanelChart* chart() const { return find<PanelChart>("panelChart"); }
  [[nodiscard]] Stage stageOf(const char* mark) const { return bench().stages().at(mark); }
  [[nodiscard]] QString count(int row, int column) const {
    return find<QTableView>("counts")->model()->index(row, column).data().toString();
  }

  void clickPrism(const QString& mark, Qt::KeyboardModifiers modifiers = {}) {
    QTest::mouseClick(chart(), Qt::LeftButton, modifiers, chart()->placeOf(mark).toPoint());
  }
  void drawBox(const QRectF& box) {
    QTest::mousePress(chart(), Qt::LeftButton, {}, box.topLeft().toPoint());
    QTest::mouseMove(chart(), box.center().toPoint());
    QTest::mouseMove(chart(), box.bottomRight().toPoint());
    QTest::mouseRelease(chart(), Qt::LeftButton, {}, box.bottomRight().toPoint());
  }
  void choose(QDialog& dialog, Stage stage) {
    auto* choice = dialog.findChild<QComboBox*>("record.stage");
    choice->setCurrentIndex(choice->findData(static_cast<int>(stage)));
  }
  void pressRecord(QDialog& dialog) {
    QTest::mouseClick(dialog.findChild<QAbstractButton*>("record.record"), Qt::LeftButton);
  }
};

TEST_F(WorksOnScreen, ClickSelectsControlAddsAndKeysGoOn) {
  clickPrism("P02-C");
  EXPECT_EQ(bench().selection(), QStringList{"P02-C"});
  clickPrism("P03-U01", Qt::ControlModifier);
  EXPECT_EQ(bench().selection(), (QStringList{"P03-U01", "P02-C"}));
  clickPrism("P02-C");
  QTest::keyClick(chart(), Qt::Key_Right);
  EXPECT_EQ(bench().selection(), QStringList{"P03-C"});
  QTest::keyClick(chart(), Qt::Key_Escape);
  EXPECT_TRUE(bench().selection().isEmpty());
  EXPECT_FALSE(find<QAbstractButton>("works.record")->isEnabled());
}

TEST_F(WorksOnScreen, EveryPrismIsDrawnWhereItsMarkIsFound) {
  for (const PlannedPrism& prism : bench().plan()->prisms) {
    const QString mark = QString::fromStdString(prism.mark);
    EXPECT_EQ(chart()->markAt(chart()->placeOf(mark)), mark);
    EXPECT_TRUE(chart()->rect().contains(chart()->placeOf(mark).toPoint())) << prism.mark;
  }
}

TEST_F(WorksOnScreen, WholeTrayDrawnRoundIsRecordedAtOnce) {
  const QPointF first = chart()->placeOf("P01-U01");
  const QPointF last = chart()->placeOf("P04-U01");
  drawBox(QRectF(first - QPointF(3, 3), last + QPointF(3, 3)));
  ASSERT_EQ(bench().selection(), (QStringList{"P01-U01", "P02-U01", "P03-U01", "P04-U01"}));
  whileOpen(
      "record", [this] { click("works.record"); },
      [this](QDialog& dialog) {
        EXPECT_EQ(dialog.findChild<QComboBox*>("record.stage")->currentData().toInt(),
                  static_cast<int>(Stage::mastered))
            << "the step that follows is offered";
        dialog.findChild<QListWidget*>("record.marks")->item(3)->setCheckState(Qt::Unchecked);
        QTest::keyClicks(dialog.findChild<QLineEdit*>("record.by"), "A. Turner");
        pressRecord(dialog);
      });
  EXPECT_EQ(stageOf("P03-U01"), Stage::mastered);
  EXPECT_EQ(stageOf("P04-U01"), Stage::drawn) << "not ticked";
  ASSERT_EQ(bench().book().ledger().size(), 3u);
  EXPECT_EQ(bench().book().ledger().front().by, "A. Turner");
  EXPECT_EQ(count(0, 2), "3") << "the whole lens has three mastered";
}

TEST_F(WorksOnScreen, SkippedStepAsksForANoteBeforeItIsRefused) {
  clickPrism("P01-C");
  whileOpen(
      "record", [this] { click("works.record"); },
      [this](QDialog& dialog) {
        auto* advice = dialog.findChild<QLabel*>("record.advice");
        EXPECT_TRUE(advice->text().isEmpty());
        choose(dialog, Stage::cast);
        EXPECT_TRUE(advice->text().contains("note", Qt::CaseInsensitive)) << qPrintable(advice->text());
        pressRecord(dialog);
        EXPECT_TRUE(dialog.isVisible()) << "refused: the dialog stays";
        EXPECT_TRUE(bench().book().ledger().empty());
        QTest::keyClicks(dialog.findChild<QPlainTextEdit*>("record.note"), "mould of the last lens");
        EXPECT_TRUE(advice->text().isEmpty()) << qPrintable(advice->text());
        pressRecord(dialog);
      });
  EXPECT_EQ(stageOf("P01-C"), Stage::cast);
}

TEST_F(WorksOnScreen, ScrappedPrismIsAmissUntilItStartsAgain) {
  clickPrism("P01-C");
  whileOpen(
      "record", [this] { click("works.record"); },
      [this](QDialog& dialog) {
        EXPECT_FALSE(dialog.findChild<QComboBox*>("record.backTo")->isVisible());
        choose(dialog, Stage::scrapped);
        EXPECT_TRUE(dialog.findChild<QComboBox*>("record.backTo")->isVisible());
        QTest::keyClicks(dialog.findChild<QPlainTextEdit*>("record.note"), "bubble");
        pressRecord(dialog);
      });
  EXPECT_EQ(stageOf("P01-C"), Stage::scrapped);
  auto* tale = find<QAbstractButton>("tell.works");
  EXPECT_TRUE(tale->text().contains("1 scrapped"));
  EXPECT_EQ(tale->property("state").toInt(), static_cast<int>(TellTale::State::amiss));
  bench().select({});
  click("tell.works");
  EXPECT_EQ(bench().selection(), QStringList{"P01-C"});
}

TEST_F(WorksOnScreen, LedgerIsNewestFirstAndNarrowsToTheSelection) {
  for (const char* mark : {"P01-C", "P02-C"})
    ASSERT_TRUE(bench().record({{mark}, Stage::mastered, "", "", {}}));
  ASSERT_TRUE(bench().record({{"P01-C"}, Stage::moulded, "", "", {}}));
  const auto* ledger = find<QTableView>("ledger")->model();
  ASSERT_EQ(ledger->rowCount(), 3);
  EXPECT_EQ(ledger->index(0, LedgerModel::to).data().toString(), "moulded");
  QTest::mouseClick(find<QCheckBox>("ledger.onlySelection"), Qt::LeftButton, {}, QPoint(8, 8));
  EXPECT_EQ(ledger->rowCount(), 0);
  clickPrism("P02-C");
  ASSERT_EQ(ledger->rowCount(), 1);
  EXPECT_EQ(ledger->index(0, LedgerModel::prism).data().toString(), "P02-C");
}

TEST_F(WorksOnScreen, CountCellSelectsThePrismsThatItCounts) {
  ASSERT_TRUE(bench().record({{"P01-C", "P05-C"}, Stage::mastered, "", "", {}}));
  auto* counts = find<QTableView>("counts");
  int centre = -1;
  for (int row = 0; row < counts->model()->rowCount(); ++row)
    if (count(row, 0) == "C") centre = row;
  ASSERT_GT(centre, 0);
  const QModelIndex mastered = counts->model()->index(centre, 2);
  counts->scrollTo(mastered);
  QTest::mouseClick(counts->viewport(), Qt::LeftButton, {}, counts->visualRect(mastered).center());
  EXPECT_EQ(bench().selection(), (QStringList{"P01-C", "P05-C"}));
}

TEST_F(WorksOnScreen, UndoNeverTouchesTheLedger) {
  const Assignment edit{"brief.client", "Harbour trustees"};
  ASSERT_TRUE(bench().assign({&edit, 1}, {}));
  ASSERT_TRUE(bench().record({{"P01-C"}, Stage::mastered, "", "", {}}));
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(bench().values().brief.client, "");
  EXPECT_EQ(stageOf("P01-C"), Stage::mastered);
}

}  // namespace
}  // namespace prismwright
