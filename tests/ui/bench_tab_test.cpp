#include "ui/pages/bench_tab.h"

#include <QTabWidget>
#include <algorithm>

#include "tests/ui/window_desk.h"
#include "ui/models/bench_table.h"
#include "ui/pages/light_page.h"

namespace prismwright {
namespace {

class BenchOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    bench().stopMaking();
    click("rail.light");
    find<LightPage>("page.light")->maker()->stop();
    auto* tabs = find<QTabWidget>("light.tabs");
    int place = 0;
    while (place < tabs->count() && tabs->tabText(place) != "Bench") ++place;
    ASSERT_LT(place, tabs->count());
    QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(place).center());
    QCoreApplication::processEvents();
    ASSERT_TRUE(maker().waitUntilDone(30000)) << qPrintable(maker().reason());
  }

  [[nodiscard]] BenchMaker& maker() const { return *find<BenchTab>("bench")->maker(); }
  [[nodiscard]] QTableView* table() const { return find<QTableView>("bench.table"); }
  [[nodiscard]] QString cell(const QString& mark, int column) const {
    const QAbstractItemModel* model = table()->model();
    for (int row = 0; row < model->rowCount(); ++row)
      if (model->index(row, BenchTable::mark).data().toString() == mark)
        return model->index(row, column).data().toString();
    return {};
  }
  void record(const QString& mark, const QString& height, const std::function<void(QDialog&)>& more = {}) {
    bench().select({mark});
    whileOpen(
        QStringLiteral("reading"), [&] { click("bench.record"); },
        [&](QDialog& dialog) {
          type(dialog, "reading.height", height);
          if (more) more(dialog);
          QTest::mouseClick(dialog.findChild<QAbstractButton*>("reading.record"), Qt::LeftButton);
        });
  }
  std::vector<QStringList> saved(const QString& button, const QString& dialog_name, const QString& name) {
    return linesOf(saveAs(button, dialog_name, name));
  }
  static void type(QDialog& dialog, const QString& field, const QString& typed) {
    auto* line = dialog.findChild<QLineEdit*>(field);
    ASSERT_TRUE(line) << qPrintable(field);
    QTest::mouseClick(line, Qt::LeftButton);
    line->selectAll();
    QTest::keyClicks(line, typed);
  }
};

TEST_F(BenchOnScreen, ListsEveryPrismWithItsSpotAndTheCaution) {
  EXPECT_EQ(table()->model()->rowCount(), static_cast<int>(bench().plan()->prisms.size()));
  EXPECT_TRUE(text("bench.caution").contains("Never look into the beam"));
  const BenchAim& aim = *maker().plan()->find("P01-U02");
  EXPECT_EQ(cell("P01-U02", BenchTable::spot_up), QString::number(aim.spot_at(5000).height_mm, 'f', 1));
  EXPECT_TRUE(text("bench.summary").startsWith("0 of")) << qPrintable(text("bench.summary"));
}

TEST_F(BenchOnScreen, FirstReadingStaysBeforeAndTheLastIsNow) {
  record("P01-U02", "20", [](QDialog& dialog) {
    EXPECT_TRUE(dialog.findChild<QLabel*>("reading.result")->text().contains("shim"));
    type(dialog, "reading.note", "bench 2");
  });
  record("P01-U02", "1");
  const auto kept = bench().book().readings();
  ASSERT_EQ(kept.size(), 2u);
  EXPECT_EQ(kept.front().note, "bench 2");
  EXPECT_EQ(kept.front().height_mm, 20);
  const BenchedPrism* prism = maker().find("P01-U02");
  ASSERT_TRUE(prism && prism->before && prism->now);
  EXPECT_EQ(cell("P01-U02", BenchTable::off_now), QString::number(prism->now->off_deg(), 'f', 3));
  EXPECT_EQ(cell("P01-U02", BenchTable::off_before), QString::number(prism->before->off_deg(), 'f', 3));
  // The light leaves the prism some way before the focus, so that the angle is a little more than over all 5 m.
  EXPECT_GT(prism->before->off_deg(), 20 / 5000.0 * 57.29);
  EXPECT_LT(prism->before->off_deg(), 20 / 4700.0 * 57.30);
  EXPECT_TRUE(text("bench.summary").startsWith("1 of")) << qPrintable(text("bench.summary"));
}

TEST_F(BenchOnScreen, ReadingFarOffTheBoardIsRefusedInTheDialog) {
  bench().select({"P01-U02"});
  whileOpen(
      QStringLiteral("reading"), [&] { click("bench.record"); },
      [&](QDialog& dialog) {
        type(dialog, "reading.height", "4000");
        QTest::keyClick(dialog.findChild<QLineEdit*>("reading.height"), Qt::Key_Return);
        EXPECT_TRUE(dialog.isVisible());
        EXPECT_TRUE(dialog.findChild<QLabel*>("reading.refusal")->text().contains("4000"));
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("reading.cancel"), Qt::LeftButton);
      });
  EXPECT_TRUE(bench().book().readings().empty());
}

TEST_F(BenchOnScreen, ReturnOnARowOpensTheDialogAndReturnInItRecords) {
  bench().select({"P01-U02"});
  table()->setFocus();
  whileOpen(
      QStringLiteral("reading"), [&] { QTest::keyClick(table(), Qt::Key_Return); },
      [&](QDialog& dialog) {
        EXPECT_EQ(dialog.findChild<QLineEdit*>("reading.mark")->text(), "P01-U02");
        type(dialog, "reading.aside", "-3");
        type(dialog, "reading.height", "2.5");
        QTest::keyClick(dialog.findChild<QLineEdit*>("reading.height"), Qt::Key_Return);
      });
  const auto kept = bench().book().readings();
  ASSERT_EQ(kept.size(), 1u);
  EXPECT_EQ(kept[0].height_mm, 2.5);
  EXPECT_EQ(kept[0].aside_mm, -3);
  EXPECT_EQ(kept[0].board_mm, 5000);
  EXPECT_EQ(cell("P01-U02", BenchTable::read_left), "-3.0");
}

TEST_F(BenchOnScreen, MarkThatTheLensHasNotIsRefusedInTheWordsOfTheCheck) {
  whileOpen(
      QStringLiteral("reading"), [&] { click("bench.record"); },
      [&](QDialog& dialog) {
        type(dialog, "reading.mark", "P99-U01");
        type(dialog, "reading.height", "1");
        BenchReading unknown;
        unknown.mark = "P99-U01";
        unknown.board_mm = 5000;
        const Done fit = check_reading(*maker().plan(), unknown);
        ASSERT_FALSE(fit);
        EXPECT_EQ(dialog.findChild<QLabel*>("reading.refusal")->text().toStdString(), fit.problem().text);
        type(dialog, "reading.mark", "p01-u02");
        EXPECT_TRUE(dialog.findChild<QLabel*>("reading.refusal")->text().isEmpty());
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("reading.cancel"), Qt::LeftButton);
      });
  EXPECT_TRUE(bench().book().readings().empty());
}

TEST_F(BenchOnScreen, InchesAreShownAndTypedAndMillimetresKept) {
  bench().setInches(true);
  const BenchAim& aim = *maker().plan()->find("P01-U02");
  EXPECT_EQ(cell("P01-U02", BenchTable::spot_up), QString::number(aim.spot_at(5000).height_mm / 25.4, 'f', 3));
  record("P01-U02", "0.5");
  ASSERT_EQ(bench().book().readings().size(), 1u);
  EXPECT_NEAR(bench().book().readings().front().height_mm, 12.7, 1e-9);
}

TEST_F(BenchOnScreen, TableIsSavedAsItIsShownAndTheBoardWithItsReadings) {
  record("P01-U02", "20", [](QDialog& dialog) { type(dialog, "reading.note", "as cast"); });
  record("P01-U02", "1");
  typeInto("bench.filter", "P01-U");
  const std::vector<QStringList> lines = saved("bench.save", "bench.saveTo", "bench.csv");
  ASSERT_EQ(static_cast<int>(lines.size()), table()->model()->rowCount() + 1);
  const qsizetype mark = lines[0].indexOf("mark");
  const qsizetype read = lines[0].indexOf("read_height_mm");
  const qsizetype before = lines[0].indexOf("off_before_deg");
  ASSERT_GE(std::min({mark, read, before}), 0);
  const auto line = std::find_if(lines.begin(), lines.end(),
                                 [&](const QStringList& cells) { return cells[mark] == "P01-U02"; });
  ASSERT_NE(line, lines.end());
  EXPECT_EQ((*line)[read], "1");
  EXPECT_DOUBLE_EQ((*line)[before].toDouble(), maker().find("P01-U02")->before->off_deg());

  const std::vector<QStringList> board = saved("light.board.save", "light.board.saveTo", "board.csv");
  const auto is = [&](const QString& what, const QString& height) {
    return std::any_of(board.begin(), board.end(), [&](const QStringList& cells) {
      return cells[0] == "P01-U02" && cells[1] == what && cells[2] == height;
    });
  };
  EXPECT_TRUE(is("first reading over expected", "20"));
  EXPECT_TRUE(is("last reading over expected", "1"));
}

TEST_F(BenchOnScreen, ReadOnlyBookTakesNoReading) {
  const QString copy = newBook("other.lensbook", starting_values("6", Work::belt, 2));
  const Outcome<Lensbook> first = Lensbook::open(copy.toStdString());
  ASSERT_TRUE(first);
  ASSERT_TRUE(window->openBook(copy));
  bench().stopMaking();
  ASSERT_TRUE(bench().book().read_only());
  ASSERT_TRUE(maker().waitUntilDone(30000));
  EXPECT_FALSE(find<QAbstractButton>("bench.record")->isEnabled());
  BenchReading reading;
  reading.mark = "P01-U02";
  reading.height_mm = 1;
  reading.board_mm = 5000;
  EXPECT_FALSE(bench().recordReading(*maker().plan(), reading));
  EXPECT_TRUE(bench().book().readings().empty());
}

TEST_F(BenchOnScreen, FilterKeepsTheMarksAndSelectionIsShared) {
  auto* filter = find<QLineEdit>("bench.filter");
  QTest::mouseClick(filter, Qt::LeftButton);
  QTest::keyClicks(filter, "P02");
  const QAbstractItemModel* model = table()->model();
  ASSERT_GT(model->rowCount(), 0);
  for (int row = 0; row < model->rowCount(); ++row)
    EXPECT_TRUE(model->index(row, BenchTable::mark).data().toString().startsWith("P02"));
  QTest::mouseClick(table()->viewport(), Qt::LeftButton, {}, table()->visualRect(model->index(1, 0)).center());
  EXPECT_EQ(bench().selection().value(0), model->index(1, BenchTable::mark).data().toString());
}

TEST_F(BenchOnScreen, AnotherBoardMovesTheSpots) {
  const double before = cell("P01-U02", BenchTable::spot_up).toDouble();
  typeInto("field.light.board_mm", "10000");
  ASSERT_TRUE(maker().waitUntilDone(30000));
  EXPECT_EQ(maker().plan()->board_mm, 10000);
  EXPECT_NEAR(cell("P01-U02", BenchTable::spot_up).toDouble(), before, 1) << "a level beam stays at its height";
}

}  // namespace
}  // namespace prismwright
