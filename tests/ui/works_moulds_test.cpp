#include <QImage>
#include <QTabWidget>

#include "core/light/bench_check.h"
#include "core/works/congruence.h"
#include "tests/ui/window_desk.h"
#include "ui/models/colouring.h"
#include "ui/models/works_desk.h"
#include "ui/views/moulds_tab.h"
#include "ui/views/panel_chart.h"
#include "ui/views/sheet_picture.h"

namespace prismwright {
namespace {

/// The page Works over a belt lens of few zones, whose moulds are soon worked out.
class WorksMoulds : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    bench().stopMaking();
    const std::vector<Assignment> few = {{"section.refracting_to_deg", "8"},
                                         {"section.upper_to_deg", "12"},
                                         {"section.lower_to_deg", "8"},
                                         {"brief.panels", "16"}};
    ASSERT_TRUE(bench().assign(few, {}));
    bench().stopMaking();
    click("rail.works");
    QCoreApplication::processEvents();
  }

  void lookAt(const QString& words) {
    auto* tabs = find<QTabWidget>("works.tabs");
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == words)
        QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(i).center());
    EXPECT_EQ(tabs->tabText(tabs->currentIndex()), words);
    QCoreApplication::processEvents();
  }
  [[nodiscard]] WorksDesk& desk() const { return *window->findChild<WorksDesk*>(); }
  void waitForMoulds() {
    ASSERT_TRUE(desk().mouldsMaker()->waitUntilDone(120000)) << qPrintable(desk().mouldsMaker()->reason());
    QCoreApplication::processEvents();
  }
  void set(const char* key, const char* value) {
    const std::vector<Assignment> one = {{key, value}};
    ASSERT_TRUE(bench().assign(one, {}));
    bench().stopMaking();
    QCoreApplication::processEvents();
  }
  [[nodiscard]] QStringList drawn() const {
    QStringList words;
    if (const auto& sheet = find<SheetPicture>("works.mould")->sheet())
      for (const DrawnText& text : sheet->texts) words << QString::fromStdString(text.words);
    return words;
  }
  [[nodiscard]] QString cell(const QString& table, int row, int column) const {
    return find<QTableView>(table)->model()->index(row, column).data().toString();
  }
  void clickRow(const QString& table, int row) {
    auto* view = find<QTableView>(table);
    const QModelIndex index = view->model()->index(row, 0);
    view->scrollTo(index);
    QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, view->visualRect(index).center());
    QCoreApplication::processEvents();
  }
  void recordAll(Stage stage) {
    StepRequest request;
    for (const PlannedPrism& prism : bench().plan()->prisms) request.marks.push_back(prism.mark);
    request.to = stage;
    ASSERT_TRUE(bench().record(request));
  }
};

TEST_F(WorksMoulds, AreWorkedOutWhenLookedAtAndTheirUndercutsDrawnLetteredAndLabelled) {
  set("works.mould_draft_deg", "20");
  lookAt("Moulds");
  waitForMoulds();
  const int masters = static_cast<int>(masters_of(*bench().plan()).size());
  EXPECT_EQ(find<QTableView>("works.moulds")->model()->rowCount(), masters);
  const auto& moulds = *desk().mouldsMaker()->moulds();
  const auto undercut = std::find_if(moulds.begin(), moulds.end(), [](const WorkedMould& mould) {
    return !mould.answer.draw.undercuts.empty();
  });
  ASSERT_NE(undercut, moulds.end()) << "twenty degrees of draft is more than some face has";
  clickRow("works.moulds", static_cast<int>(undercut - moulds.begin()));
  EXPECT_EQ(bench().selection().front().toStdString(), undercut->marks.front());
  const DrawFacts& draw = undercut->answer.draw;
  EXPECT_TRUE(drawn().contains("a"));
  EXPECT_TRUE(drawn().contains(QString::fromStdString(undercut_label(draw, 0, false))))
      << qPrintable(drawn().join('|'));
  EXPECT_TRUE(text("works.mould.told").contains(QString::fromStdString(draw.undercuts[0].face)));
  const QString file = saveAs("works.mould", "mould.pdf");
  EXPECT_GT(QFileInfo(file).size(), 2000);
  const QString keep = qEnvironmentVariable("PICTURES");
  if (!keep.isEmpty()) window->grab().save(keep + "/moulds.png");
}

TEST_F(WorksMoulds, OfAnEarlierDraftAreDrawnAsTheyWereJudged) {
  set("works.mould_draft_deg", "20");
  // Another one is shown when they are ready: what is clicked was not drawn before.
  bench().select({QString::fromStdString(masters_of(*bench().plan()).back().uses.front().mark)});
  lookAt("Moulds");
  desk().mouldsMaker()->start();
  EXPECT_EQ(text("works.moulds.told").toStdString(), "Working out the moulds") << "before any is in hand";
  waitForMoulds();
  const auto moulds = desk().mouldsMaker()->moulds();
  const auto undercut = std::find_if(moulds->begin(), moulds->end() - 1, [](const WorkedMould& mould) {
    return !mould.answer.draw.undercuts.empty();
  });
  ASSERT_NE(undercut, moulds->end() - 1);
  set("works.mould_draft_deg", "0.1");
  bench().select({QString::fromStdString(undercut->marks.front())});  // as a click on the chart does
  QCoreApplication::processEvents();
  ASSERT_TRUE(desk().mouldsMaker()->isStale());
  ASSERT_EQ(desk().mouldsMaker()->moulds(), moulds);
  const DrawFacts& draw = undercut->answer.draw;
  for (std::size_t i = 0; i < draw.undercuts.size(); ++i)
    EXPECT_TRUE(drawn().contains(QString::fromStdString(undercut_label(draw, i, false))))
        << qPrintable(text("works.mould.told") + " / " + drawn().join('|'));
  EXPECT_TRUE(find<QWidget>("works.mould.save")->isEnabled());
}

TEST_F(WorksMoulds, OnceDrawnAreNotDrawnAnewAtEachClick) {
  lookAt("Moulds");
  waitForMoulds();
  ASSERT_GT(find<QTableView>("works.moulds")->model()->rowCount(), 1) << "the first is drawn without a click";
  const auto pictures_made = [&] { return window->findChild<MouldsTab*>()->property("picturesMade").toInt(); };
  const int first = pictures_made();
  EXPECT_GT(first, 0);
  clickRow("works.moulds", 1);
  EXPECT_EQ(pictures_made(), first + 1);
  clickRow("works.moulds", 0);
  clickRow("works.moulds", 1);
  EXPECT_EQ(pictures_made(), first + 1);
}

TEST_F(WorksMoulds, CountInLoadsAndCostsOnceTheyAreWorkedOutAndNotWhenTheLensIsAnother) {
  lookAt("Loads");
  EXPECT_TRUE(text("works.loads.told").contains("are not worked out")) << qPrintable(text("works.loads.told"));
  lookAt("Plan");
  EXPECT_TRUE(text("works.plan.told").contains("a guess from the prisms' sizes"))
      << qPrintable(text("works.plan.told"));
  lookAt("Moulds");
  waitForMoulds();
  lookAt("Plan");
  EXPECT_FALSE(text("works.plan.told").contains("a guess from the prisms' sizes"));
  lookAt("Loads");
  EXPECT_TRUE(text("works.loads.told").contains("Every mould stands with its gate up"))
      << qPrintable(text("works.loads.told"));
  set("works.mould_wall_mm", "15");
  EXPECT_TRUE(text("works.loads.told").contains("are not worked out")) << "those of other walls count no more";
  waitForMoulds();
  EXPECT_TRUE(text("works.loads.told").contains("Every mould stands with its gate up"))
      << "they are worked out anew by themselves";
}

TEST_F(WorksMoulds, ChartShowsByNameAndFillWhichPrismsShareAMaster) {
  auto* chart = find<PanelChart>("panelChart");
  const QImage by_stage = chart->grab().toImage();
  auto* choice = find<QComboBox>("works.chart.colour");
  choice->setFocus();
  QTest::keyClick(choice, Qt::Key_Down);
  EXPECT_EQ(choice->currentText(), "by master");
  EXPECT_EQ(chart->colouring(), Colouring::master);
  EXPECT_NE(chart->grab().toImage(), by_stage);
  for (const Master& master : masters_of(*bench().plan())) {
    for (const MasterUse& use : master.uses) {
      const PrismLook look = look_of(bench(), use.mark, Colouring::master);
      EXPECT_EQ(look.sign.toStdString(), master.name);
      EXPECT_TRUE(look.meaning.contains(QString::number(master.uses.size()))) << qPrintable(look.meaning);
    }
  }
  const QString keep = qEnvironmentVariable("PICTURES");
  if (!keep.isEmpty()) window->grab().save(keep + "/chart.png");
  QTest::keyClick(choice, Qt::Key_Up);
  EXPECT_EQ(chart->grab().toImage(), by_stage);
}

TEST_F(WorksMoulds, ChartHatchesMirrorImagesAndTellsThemInTheLegend) {
  const QString file = folder.filePath("flashing.lensbook");
  ASSERT_TRUE(
      QFile::copy(QStringLiteral(SOURCE_FOLDER "/sample-projects/first-order-group-flashing.lensbook"), file));
  QFile::setPermissions(file, QFile::ReadOwner | QFile::WriteOwner);
  ASSERT_TRUE(window->openBook(file));
  bench().stopMaking();
  auto* choice = find<QComboBox>("works.chart.colour");
  choice->setFocus();
  QTest::keyClick(choice, Qt::Key_Down);
  QCoreApplication::processEvents();
  bool any = false;
  for (const Master& master : masters_of(*bench().plan())) {
    const PrismLook look = look_of(bench(), master.uses.front().mark, Colouring::master);
    EXPECT_EQ(look.hatched, !master.mirror_of.empty()) << master.name;
    EXPECT_FALSE(look.short_sign.isEmpty()) << "for pieces without room for the name";
    any = any || look.hatched;
  }
  EXPECT_TRUE(any) << "the outer panels of a group mirror each other";
  const auto legend = legend_of(bench(), Colouring::master);
  EXPECT_TRUE(std::ranges::any_of(
      legend, [](const LegendRow& row) { return row.hatched && row.words.contains("mirror image"); }));
  const QString keep = qEnvironmentVariable("PICTURES");
  if (!keep.isEmpty()) window->grab().save(keep + "/chart-mirrors.png");
}

TEST_F(WorksMoulds, BenchReadingCountsAsTheLaserOfTheCastingThatStandsOnly) {
  for (const Stage stage : {Stage::mastered, Stage::moulded, Stage::cast}) recordAll(stage);
  const std::string mark = "P01-U01";
  lookAt("Inspection");
  bench().select({QString::fromStdString(mark)});
  const auto laser = [&]() -> const CheckedFeature& {
    const auto& prisms = desk().inspected();
    const auto prism = std::ranges::find(prisms, mark, &InspectedPrism::mark);
    EXPECT_NE(prism, prisms.end());
    return *prism->find("laser");
  };
  EXPECT_FALSE(laser().measured);
  const Outcome<BenchPlan> plan = bench_plan(*bench().plan());
  ASSERT_TRUE(plan);
  BenchReading reading;
  reading.mark = mark;
  reading.height_mm = 20;
  reading.board_mm = 5000;
  ASSERT_TRUE(bench().recordReading(*plan, reading));
  QCoreApplication::processEvents();
  ASSERT_TRUE(desk().benchMaker()->waitUntilDone(60000));
  QCoreApplication::processEvents();
  ASSERT_TRUE(laser().measured);
  // 20 mm on a board five metres away.
  EXPECT_NEAR(*laser().measured, 0.229, 0.02);
  auto* features = find<QTableView>("works.features")->model();
  bool shown = false;
  for (int row = 0; row < features->rowCount(); ++row)
    shown =
        shown || (cell("works.features", row, 0).contains("laser") &&
                  !cell("works.features", row, 4).isEmpty() && cell("works.features", row, 6).contains("out"));
  EXPECT_TRUE(shown) << "the table of the tab says so";
  QTest::qWait(1100);  // the book's clock has whole seconds
  StepRequest scrapped;
  scrapped.marks = {mark};
  scrapped.to = Stage::scrapped;
  scrapped.note = "cracked";
  ASSERT_TRUE(bench().record(scrapped));
  StepRequest again;
  again.marks = {mark};
  again.to = Stage::cast;
  again.note = "poured anew";
  ASSERT_TRUE(bench().record(again));
  EXPECT_FALSE(laser().measured) << "the reading was of the casting before";
}

}  // namespace
}  // namespace prismwright
