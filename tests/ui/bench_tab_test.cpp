#include "ui/pages/bench_tab.h"

#include <QTabWidget>

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
