#include <QCheckBox>
#include <QImage>
#include <QTabWidget>

#include "tests/ui/window_desk.h"
#include "ui/models/works_desk.h"
#include "ui/views/bars_picture.h"
#include "ui/views/history_tab.h"
#include "ui/views/panel_chart.h"
#include "ui/views/vessel_picture.h"

namespace prismwright {
namespace {

/// The page Works with its tabs over a sixth-order belt lens of two panels.
class WorksTabs : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    bench().stopMaking();
    click("rail.works");
    QCoreApplication::processEvents();
  }

  void lookAt(const QString& words) {
    auto* tabs = find<QTabWidget>("works.tabs");
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == words) tabs->setCurrentIndex(i);
    EXPECT_EQ(tabs->tabText(tabs->currentIndex()), words);
    QCoreApplication::processEvents();
  }

  [[nodiscard]] QString cell(const QString& table, int row, const QString& head) const {
    const auto* model = find<QTableView>(table)->model();
    for (int column = 0; column < model->columnCount(); ++column) {
      const QString words = model->headerData(column, Qt::Horizontal).toString().replace('\n', ' ');
      if (words == head) return model->index(row, column).data().toString();
    }
    ADD_FAILURE() << qPrintable(table) << " has no column " << qPrintable(head);
    return {};
  }
  [[nodiscard]] int rows(const QString& table) const { return find<QTableView>(table)->model()->rowCount(); }

  void clickRow(const QString& table, int row) {
    auto* view = find<QTableView>(table);
    const QModelIndex index = view->model()->index(row, 0);
    view->scrollTo(index);
    QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, view->visualRect(index).center());
  }

  void recordAll(Stage stage) {
    StepRequest request;
    for (const PlannedPrism& prism : bench().plan()->prisms) request.marks.push_back(prism.mark);
    request.to = stage;
    ASSERT_TRUE(bench().record(request));
  }
  [[nodiscard]] const WorksLog& log() const { return bench().book().works_log(); }
};

TEST_F(WorksTabs, ValueTypedUnderValuesIsAStepOfTheBook) {
  EXPECT_TRUE(find<PanelChart>("panelChart")->isVisible()) << "the page opens on the chart";
  lookAt("Values");
  typeInto("field.works.scrap_percent", "25");
  EXPECT_EQ(bench().values().works.scrap_percent, 25);
}

TEST_F(WorksTabs, MakeListHasARowForEachMasterAndSelectsItsPrisms) {
  lookAt("Make list");
  const std::size_t zones = bench().plan()->prisms.size() / 2;
  ASSERT_EQ(rows("works.make"), static_cast<int>(zones)) << "two panels alike: one master for each zone piece";
  EXPECT_EQ(cell("works.make", 0, "Prisms"), "2");
  clickRow("works.make", 1);
  EXPECT_EQ(bench().selection().size(), 2);
  EXPECT_TRUE(text("works.make.told").contains("masters")) << qPrintable(text("works.make.told"));
}

TEST_F(WorksTabs, MoreScrapAsksForMoreCastings) {
  lookAt("Make list");
  const int before = cell("works.make", 0, "To pour").toInt();
  const std::vector<Assignment> more = {{"works.scrap_percent", "60"}};
  ASSERT_TRUE(bench().assign(more, {}));
  QCoreApplication::processEvents();
  EXPECT_GT(cell("works.make", 0, "To pour").toInt(), before);
}

TEST_F(WorksTabs, LoadIsRecordedWithItsCastingsInOneGesture) {
  const std::vector<Assignment> resin = {{"works.resin", "clear syrup"}, {"works.resin_batch", "K 12"}};
  ASSERT_TRUE(bench().assign(resin, {}));
  recordAll(Stage::mastered);
  recordAll(Stage::moulded);
  lookAt("Loads");
  ASSERT_GE(rows("works.loads"), 1) << qPrintable(text("works.loads.told"));
  EXPECT_EQ(rows("works.madeLoads"), 0);
  const std::size_t lines = bench().book().ledger().size();
  whileOpen(
      "record", [this] { click("works.castLoad"); },
      [](QDialog& dialog) {
        EXPECT_TRUE(dialog.findChild<QCheckBox*>("record.load")->isChecked());
        EXPECT_EQ(dialog.findChild<QLineEdit*>("record.lot")->text(), "K 12");
        EXPECT_GT(dialog.findChild<QLineEdit*>("record.resinG")->text().toDouble(), 0);
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("record.record"), Qt::LeftButton);
      });
  ASSERT_GT(bench().book().ledger().size(), lines);
  ASSERT_EQ(log().loads.size(), 1u);
  EXPECT_EQ(log().loads.front().resin_lot, "K 12");
  for (std::size_t i = lines; i < bench().book().ledger().size(); ++i) {
    const LedgerEntry& line = bench().book().ledger()[i];
    EXPECT_EQ(line.to, Stage::cast);
    EXPECT_EQ(line.load, 1);
    EXPECT_EQ(line.serial, static_cast<long long>(i - lines) + 1) << "every casting has a number of its own";
  }
  EXPECT_EQ(rows("works.madeLoads"), 1);
}

TEST_F(WorksTabs, VesselPictureSelectsThePrismsOfAMould) {
  lookAt("Loads");
  auto* picture = find<VesselPicture>("works.vessel");
  QString master;
  QPoint place;
  for (int x = 4; x < picture->width() && master.isEmpty(); x += 6)
    for (int y = 4; y < picture->height() && master.isEmpty(); y += 6) {
      place = QPoint(x, y);
      master = picture->masterAt(picture->placeAt(place));
    }
  ASSERT_FALSE(master.isEmpty()) << "a mould is drawn somewhere";
  QTest::mouseClick(picture, Qt::LeftButton, {}, place);
  ASSERT_FALSE(bench().selection().isEmpty());
  EXPECT_TRUE(bench().selection().front().endsWith(master)) << qPrintable(bench().selection().front());
}

TEST_F(WorksTabs, ReadingOutOfToleranceIsToldAndAcceptedWithAReason) {
  recordAll(Stage::mastered);
  recordAll(Stage::moulded);
  recordAll(Stage::cast);
  lookAt("Inspection");
  const QString mark = QString::fromStdString(bench().plan()->prisms.front().mark);
  bench().select({mark});
  const double drawn = cell("works.features", 0, "Drawn").toDouble();
  typeInto("works.inspect.reading", QString::number(drawn + 0.4, 'f', 3));
  ASSERT_EQ(log().measurements.size(), 1u) << qPrintable(text("works.inspect.refusal"));
  EXPECT_EQ(log().measurements.front().mark, mark.toStdString());
  EXPECT_NE(log().measurements.front().serial, 0) << "it speaks of the casting that stands";
  EXPECT_TRUE(cell("works.features", 0, "Standing").contains("out"));
  whileOpen(
      "works.decide", [this] { click("works.inspect.accept"); },
      [](QDialog& dialog) {
        QTest::keyClicks(dialog.findChild<QLineEdit*>(), "behind the rib");
        QTest::keyClick(&dialog, Qt::Key_Return);
      });
  ASSERT_EQ(log().decisions.size(), 1u);
  EXPECT_EQ(log().decisions.front().note, "behind the rib");
}

TEST_F(WorksTabs, ReadingThatIsNoNumberIsRefusedAndNothingIsKept) {
  lookAt("Inspection");
  typeInto("works.inspect.reading", "twelve");
  EXPECT_TRUE(log().measurements.empty());
  EXPECT_TRUE(text("works.inspect.refusal").contains("twelve"));
}

TEST_F(WorksTabs, ShrinkageLearnedIsTakenOverWhenTheMakerAgreesAndUndone) {
  lookAt("Shrinkage");
  EXPECT_FALSE(find<QAbstractButton>("works.shrink.take")->isEnabled());
  const double before = bench().values().works.shrink_length_percent;
  for (const char* casting : {"99.3", "99.31", "99.29"}) {
    typeInto("works.shrink.masterLength", "100");
    find<QLineEdit>("works.shrink.masterLength")->setText("100");
    typeInto("works.shrink.castingLength", casting);
  }
  ASSERT_EQ(log().shrink.size(), 3u) << qPrintable(text("works.shrink.refusal"));
  EXPECT_EQ(cell("works.shrink", 0, "Readings"), "3");
  click("works.shrink.take");
  EXPECT_NEAR(bench().values().works.shrink_length_percent, 0.7, 1e-3) << "99.3 mm of 100 mm";
  ASSERT_TRUE(bench().undo());
  EXPECT_EQ(bench().values().works.shrink_length_percent, before);
  EXPECT_EQ(log().shrink.size(), 3u) << "undo never touches what was written down";
}

TEST_F(WorksTabs, HoursSpentStandBesideTheEstimate) {
  lookAt("Plan");
  auto* bars = find<BarsPicture>("works.bars");
  EXPECT_GT(bars->barOf(WorkStep::glaze).width(), 0);
  EXPECT_GE(bars->barOf(WorkStep::glaze).right(), bars->barOf(WorkStep::master).right());
  find<QLineEdit>("works.spend.hours")->setText("3.5");
  click("works.spend.record");
  ASSERT_EQ(log().spendings.size(), 1u) << qPrintable(text("works.spend.refusal"));
  EXPECT_EQ(log().spendings.front().step, "master");
  EXPECT_EQ(cell("works.steps", 0, "Hours spent"), "3.5");
}

TEST_F(WorksTabs, PhotographIsKeptInTheBookAndShownWithItsPrism) {
  recordAll(Stage::mastered);
  const QString mark = QString::fromStdString(bench().plan()->prisms.front().mark);
  bench().select({mark});
  lookAt("History");
  EXPECT_EQ(rows("works.history"), 1) << "one line of the ledger";
  QImage picture(64, 48, QImage::Format_RGB32);
  picture.fill(Qt::darkGreen);
  const QString file = folder.filePath("bubble.png");
  ASSERT_TRUE(picture.save(file));
  auto* tab = qobject_cast<HistoryTab*>(find<QTabWidget>("works.tabs")->currentWidget());
  ASSERT_TRUE(tab);
  tab->addPhotograph(file);
  QFile::remove(file);
  ASSERT_EQ(log().photographs.size(), 1u) << qPrintable(text("works.history.refusal"));
  EXPECT_EQ(log().photographs.front().mark, mark.toStdString());
  EXPECT_FALSE(find<QLabel>("works.photo")->pixmap(Qt::ReturnByValue).isNull()) << "it lives in the book";
  EXPECT_EQ(rows("works.history"), 2);
  tab->addPhotograph(path);
  EXPECT_EQ(log().photographs.size(), 1u) << "a lensbook is no photograph";
  EXPECT_FALSE(text("works.history.refusal").isEmpty());
}

TEST_F(WorksTabs, SpareTakesThePlaceOfAScrappedPrism) {
  recordAll(Stage::mastered);
  recordAll(Stage::moulded);
  recordAll(Stage::cast);
  const std::string mark = bench().plan()->prisms.front().mark;
  const QString piece = QString::fromStdString(mark).section('-', 1);
  lookAt("Make list");
  clickRow("works.make", 0);
  whileOpen(
      "record", [this] { click("works.recordSpare"); },
      [](QDialog& dialog) {
        auto* stage = dialog.findChild<QComboBox*>("record.stage");
        stage->setCurrentIndex(stage->findData(static_cast<int>(Stage::cast)));
        QTest::keyClicks(dialog.findChild<QWidget*>("record.note"), "poured with the others");
        QTest::mouseClick(dialog.findChild<QAbstractButton*>("record.record"), Qt::LeftButton);
      });
  ASSERT_EQ(bench().book().ledger().back().mark, "S01-" + piece.toStdString());
  const long long spare = bench().book().ledger().back().serial;
  ASSERT_NE(spare, 0);
  StepRequest scrapped;
  scrapped.marks = {mark};
  scrapped.to = Stage::scrapped;
  scrapped.note = "cracked";
  ASSERT_TRUE(bench().record(scrapped));
  bench().select({QString::fromStdString(mark)});
  lookAt("History");
  click("works.spare.give");
  EXPECT_EQ(bench().stages().stage_of(mark), Stage::cast) << qPrintable(text("works.history.refusal"));
  EXPECT_EQ(bench().stages().serial.at(mark), spare);
}

}  // namespace
}  // namespace prismwright
