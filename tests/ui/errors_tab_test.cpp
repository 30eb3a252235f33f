#include <qcustomplot.h>

#include <QSignalSpy>
#include <QTabWidget>
#include <QTableWidget>

#include "tests/ui/window_desk.h"
#include "ui/models/errors_words.h"
#include "ui/models/light_numbers.h"
#include "ui/pages/light_page.h"
#include "ui/views/errors_tab.h"
#include "ui/views/loss_bars.h"

namespace prismwright {
namespace {

/// The errors of a lens this small are worked out well within this.
constexpr int kWait_ms = 60000;

/// Four panels of a few rings each, the lamp with a size, and few trials.
LensValues small_lens() {
  LensValues values = starting_values("6", Work::bullseye, 4);
  const Assignment small[] = {{"section.refracting_to_deg", "20"},
                              {"section.upper_to_deg", "20"},
                              {"section.lower_to_deg", "20"},
                              {"lamp.height_mm", "10"},
                              {"lamp.width_mm", "8"},
                              {"light.trials", "20"}};
  const auto changed = with_assignments(values, small);
  EXPECT_TRUE(changed) << (changed ? "" : changed.problem().text);
  return changed ? *changed : values;
}

ErrorsAsk quick_ask() {
  ErrorsAsk ask;
  ask.spots = 800;
  return ask;
}

class ErrorsOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    ASSERT_TRUE(window->openBook(newBook("errors.lensbook", small_lens())));
    bench().stopMaking();
    ASSERT_TRUE(window->pageWidget(Page::light));
    LightAsk light;
    light.grid = {-6, 1, 13, -5, 1, 11};
    light.wanted_error = 0.2;
    light.rays = 200;
    light.lines = 1;
    find<LightPage>("page.light")->maker()->setAsk(light);
    EXPECT_EQ(maker().ask().spots, ErrorsAsk{}.spots) << "as any other caller asks";
    EXPECT_FALSE(maker().isWorking()) << "nobody has looked yet";
    maker().setAsk(quick_ask());
    click("rail.light");
    auto* tabs = find<QTabWidget>("light.tabs");
    int place = 0;
    while (place < tabs->count() && tabs->tabText(place) != "Setting errors") ++place;
    ASSERT_LT(place, tabs->count());
    QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(place).center());
    QCoreApplication::processEvents();
  }

  [[nodiscard]] ErrorsMaker& maker() const { return *find<ErrorsTab>("light.errors")->maker(); }
  [[nodiscard]] const SettingErrors& errors() const { return *maker().errors(); }
  void waitForErrors() const { ASSERT_TRUE(maker().waitUntilDone(kWait_ms)) << qPrintable(maker().reason()); }
  [[nodiscard]] QTableWidget* tolerances() const { return find<QTableWidget>("errors.tolerances"); }
  [[nodiscard]] QTableWidget* turns() const { return find<QTableWidget>("errors.turns"); }

  /// A field of the tab, not of another page.
  void typeHere(const QString& field, const QString& typed) {
    auto* line = find<ErrorsTab>("light.errors")->findChild<QLineEdit*>(field);
    ASSERT_TRUE(line && line->isVisible()) << qPrintable(field);
    QTest::mouseClick(line, Qt::LeftButton);
    line->selectAll();
    QTest::keyClicks(line, typed);
    QTest::keyClick(line, Qt::Key_Return);
    bench().stopMaking();
  }

  std::vector<QStringList> savedLines(const QString& of, const QString& name) {
    return linesOf(saveAs(of, name));
  }
};

TEST_F(ErrorsOnScreen, AreWorkedOutWhenFirstSeenAndAreThoseThatAnyOtherCallerGets) {
  EXPECT_TRUE(maker().isWorking());
  EXPECT_TRUE(find<QWidget>("errors.progress")->isVisible());
  waitForErrors();
  const auto own = setting_errors(*bench().plan(), quick_ask());
  ASSERT_TRUE(own);
  EXPECT_GT(own->peak_share.deviation, 0);
  EXPECT_EQ(errors().peak_share.mean, own->peak_share.mean);
  EXPECT_TRUE(text("errors.words").contains(QString::number(own->peak_share.mean, 'f', 3)));
  EXPECT_TRUE(text("errors.words").contains(candela_text(own->planned.cd)));
  ASSERT_EQ(tolerances()->rowCount(), static_cast<int>(own->tolerances.size()));
  EXPECT_EQ(tolerances()->item(0, 0)->text(), "panel");
  for (int row = 0; row < tolerances()->rowCount(); ++row) {
    const auto& tilt = own->tolerances[static_cast<std::size_t>(row)].deviation[0];
    EXPECT_EQ(tolerances()->item(row, 2)->text(), tilt ? QString::number(*tilt, 'f', 3) : QString("–"));
  }
  const QStringList bars = find<LossBars>("errors.losses")->bars();
  ASSERT_GE(bars.size(), 4);
  EXPECT_EQ(bars.front(),
            QString::fromStdString(own->losses.front().zone) + ", " + error_words(own->losses.front().kind));
}

TEST_F(ErrorsOnScreen, AnotherTiltMakesThemStaleAndTheyAreWorkedOutAnew) {
  waitForErrors();
  const double before = errors().peak_share.mean;
  typeHere("field.light.tilt_error_deg", "1.5");
  EXPECT_TRUE(maker().isStale());
  EXPECT_TRUE(maker().isWorking()) << "once the values have stood still";
  EXPECT_EQ(errors().peak_share.mean, before) << "the last ones stay until the next are known";
  waitForErrors();
  EXPECT_EQ(errors().deviations[0], 1.5);
  EXPECT_LT(errors().peak_share.mean, before);
  EXPECT_TRUE(text("errors.words").contains("tilt 1.5 deg"));
}

TEST_F(ErrorsOnScreen, HowTheLightIsJudgedLeavesThemAsTheyAre) {
  waitForErrors();
  const Assignment judged[] = {{"light.visibility_nmi", "5"}, {"light.red_screen", "600:0.1, 640:0.8"}};
  ASSERT_TRUE(bench().assign(judged, {}));
  EXPECT_FALSE(maker().isStale());
}

TEST_F(ErrorsOnScreen, StoppedWorkSaysSoAndGoesOnWhenAsked) {
  waitForErrors();
  typeHere("field.light.seed", "99");
  ASSERT_TRUE(maker().isWorking());
  EXPECT_EQ(find<QAbstractButton>("errors.work")->text(), "Stop");
  click("errors.work");
  EXPECT_FALSE(maker().isWorking());
  EXPECT_TRUE(text("errors.told").contains("earlier values"));
  QTest::qWait(400);
  EXPECT_NE(errors().seed, 99) << "nothing came after the stop";
  click("errors.work");
  waitForErrors();
  EXPECT_EQ(errors().seed, 99);
  EXPECT_FALSE(find<QAbstractButton>("errors.work")->isEnabled()) << "there is nothing to be worked out anew";
}

TEST_F(ErrorsOnScreen, SizeBeyondItsBoundsIsRefusedWithTheReason) {
  waitForErrors();
  typeHere("field.light.trials", "3");
  EXPECT_EQ(bench().values().light.trials, 20);
  const auto* refusal = find<ErrorsTab>("light.errors")->findChild<QLabel*>("refusal.light.trials");
  ASSERT_TRUE(refusal && refusal->isVisible());
  EXPECT_TRUE(refusal->text().contains("10")) << qPrintable(refusal->text());
  EXPECT_FALSE(maker().isStale());
}

TEST_F(ErrorsOnScreen, SelectionIsSharedWithTheRestOfTheWindow) {
  waitForErrors();
  auto* losses = find<LossBars>("errors.losses");
  QTest::mouseClick(losses->plot(), Qt::LeftButton, {}, losses->middleOf(0).toPoint());
  const std::string zone = errors().losses.front().zone;
  ASSERT_FALSE(bench().selection().isEmpty());
  EXPECT_TRUE(bench().selection().front().endsWith(QString::fromStdString(zone)));
  // A prism of another panel brings that panel's turns.
  EXPECT_TRUE(turns()->item(0, 0)->text().startsWith("P01"));
  bench().select({"P03-C"});
  EXPECT_TRUE(turns()->item(0, 0)->text().startsWith("P03"));
  const auto selected = turns()->selectionModel()->selectedRows();
  ASSERT_EQ(selected.size(), 1);
  EXPECT_EQ(turns()->item(selected.front().row(), 0)->text(), "P03-C");
  const QModelIndex other = turns()->model()->index(0, 0);
  QTest::mouseClick(turns()->viewport(), Qt::LeftButton, {}, turns()->visualRect(other).center());
  EXPECT_EQ(bench().selection(), QStringList{turns()->item(0, 0)->text()});
}

TEST_F(ErrorsOnScreen, TablesAndBarsAreSavedWholeAsNumbers) {
  waitForErrors();
  const auto losses = savedLines("errors.losses", "losses.csv");
  ASSERT_EQ(losses.size(), errors().losses.size() + 1) << "not only the bars that there is room for";
  EXPECT_EQ(losses[1].at(2).toDouble(), errors().losses[0].loss_percent);
  const auto tolerances = savedLines("errors.tolerances", "tolerances.csv");
  ASSERT_EQ(tolerances.size(), errors().tolerances.size() + 1);
  EXPECT_EQ(tolerances[0].at(2), "tilt_deg");
  EXPECT_EQ(tolerances[1].at(2).toDouble(), errors().tolerances[0].deviation[0].value_or(0));
  const auto turns = savedLines("errors.turns", "turns.csv");
  ASSERT_GT(turns.size(), 1U);
  EXPECT_EQ(turns[0].at(10), "index_round_deg_per_thousandth");
  EXPECT_DOUBLE_EQ(turns[1].at(10).toDouble(),
                   0.001 * errors().prisms[0].spread_deg[at_of(SettingMove::index)]);
}

}  // namespace
}  // namespace prismwright
