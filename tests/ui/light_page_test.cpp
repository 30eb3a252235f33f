#include <qcustomplot.h>

#include <QFileDialog>
#include <QImage>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTableWidget>
#include <QXmlStreamReader>

#include "core/lens/generic_lamps.h"
#include "tests/ui/window_desk.h"
#include "ui/models/light_numbers.h"
#include "ui/pages/light_page.h"
#include "ui/views/beam_plot.h"
#include "ui/views/budget_plot.h"
#include "ui/views/flash_plot.h"
#include "ui/views/range_plot.h"

namespace prismwright {
namespace {

/// A light is worked out well within this.
constexpr int kWait_ms = 60000;

/// Eight panels of a few rings each, with a lamp that has a size, turning once in 40 s.
LensValues small_light() {
  LensValues values = starting_values("6", Work::bullseye, 8);
  const Assignment small[] = {{"section.refracting_to_deg", "20"},
                              {"section.upper_to_deg", "20"},
                              {"section.lower_to_deg", "20"},
                              {"lamp.height_mm", "10"},
                              {"lamp.width_mm", "8"},
                              {"light.turn_s", "40"},
                              {"brief.character", "Fl 5s"}};
  const auto changed = with_assignments(values, small);
  EXPECT_TRUE(changed) << (changed ? "" : changed.problem().text);
  return changed ? *changed : values;
}

/// Rough but quick: what is judged here is the page, not the light.
LightAsk quick_ask() {
  LightAsk ask;
  ask.grid = {-6, 0.5, 25, -5, 0.5, 21};
  ask.wanted_error = 0.1;
  ask.rays = 400;
  ask.lines = 1;
  return ask;
}

class LightOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    ASSERT_TRUE(window->openBook(newBook("light.lensbook", small_light())));
    bench().stopMaking();
    ASSERT_TRUE(window->pageWidget(Page::light));
    EXPECT_EQ(maker().ask().wanted_error, LightAsk{}.wanted_error) << "as any other caller asks";
    EXPECT_FALSE(maker().isWorking()) << "nobody has looked yet";
    maker().setAsk(quick_ask());
    click("rail.light");
    QCoreApplication::processEvents();
  }

  [[nodiscard]] LightMaker& maker() const { return *find<LightPage>("page.light")->maker(); }
  [[nodiscard]] const LightReport& report() const { return *maker().report(); }
  void waitForLight() const { ASSERT_TRUE(maker().waitUntilDone(kWait_ms)) << qPrintable(maker().reason()); }
  void showTab(int index) {
    auto* tabs = find<QTabWidget>("light.tabs");
    QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(index).center());
    QCoreApplication::processEvents();
    ASSERT_EQ(tabs->currentIndex(), index);
  }
  void set(const char* key, const char* value) {
    const Assignment one{key, value};
    ASSERT_TRUE(bench().assign({&one, 1}, {}));
    bench().stopMaking();
  }
};

TEST_F(LightOnScreen, FiguresAreThoseOfTheReportThatAnyOtherCallerGets) {
  waitForLight();
  const auto own = light_report(*bench().plan(), quick_ask());
  ASSERT_TRUE(own);
  EXPECT_EQ(report().beam.peak_cd, own->beam.peak_cd);
  EXPECT_GT(own->beam.peak_cd, 1000);
  EXPECT_EQ(text("figure.light.peak"), candela_text(own->rhythm.peak_cd));
  EXPECT_EQ(text("figure.light.service"), candela_text(own->service_cd));
  EXPECT_EQ(text("figure.light.blondelRey"), candela_text(own->effective.blondel_rey_cd));
  EXPECT_EQ(text("figure.light.nominal"), miles_text(own->nominal_range_nmi));
  EXPECT_EQ(text("figure.light.character"), "Fl 5s");
  EXPECT_TRUE(find<QLabel>("light.differs")->isHidden()) << "the brief wishes Fl 5s";
  EXPECT_TRUE(text("light.sun").contains("keep the lens covered"));
  EXPECT_FALSE(find<QWidget>("light.stop")->isVisible());
  const auto* fates = find<QTableWidget>("light.fates");
  ASSERT_EQ(fates->rowCount(), kLightFates);
  EXPECT_EQ(fates->item(0, 1)->text(), QString::number(own->budget.of(LightFate::level), 'f', 1));
}

TEST_F(LightOnScreen, TwiceTheFluxGivesTwiceThePeakOnceTheValuesStandStill) {
  waitForLight();
  const double before = report().beam.peak_cd;
  typeInto("field.lamp.flux_lm", "4000");
  bench().stopMaking();
  EXPECT_TRUE(maker().isStale());
  EXPECT_EQ(report().beam.peak_cd, before) << "the last light stays until the next is known";
  waitForLight();
  EXPECT_NEAR(report().beam.peak_cd / before, 2, 1e-6);
  EXPECT_EQ(text("figure.light.beamPeak"), candela_text(report().beam.peak_cd));
}

TEST_F(LightOnScreen, HiddenPageWorksNothingOutUntilItIsSeenAgain) {
  waitForLight();
  click("rail.brief");
  set("lamp.flux_lm", "1000");
  QTest::qWait(500);
  EXPECT_TRUE(maker().isStale());
  EXPECT_FALSE(maker().isWorking());
  click("rail.light");
  EXPECT_TRUE(maker().isWorking());
  waitForLight();
  EXPECT_EQ(report().flux_lm, 1000);
}

TEST_F(LightOnScreen, WordsAloneLeaveTheLightAsItIs) {
  waitForLight();
  set("brief.client", "Harbour trustees");
  EXPECT_FALSE(maker().isStale());
}

TEST_F(LightOnScreen, FirstMapIsSeenWhileItSharpensAndStopEndsTheWork) {
  waitForLight();
  ASSERT_TRUE(window->openBook(newBook("other.lensbook", small_light())));
  bench().stopMaking();
  ASSERT_TRUE(maker().isWorking());
  EXPECT_FALSE(maker().report()) << "nothing of the book before";
  EXPECT_FALSE(find<QAbstractButton>("light.beam.save")->isEnabled()) << "there is nothing to save yet";
  EXPECT_TRUE(find<QWidget>("light.progress")->isVisible());
  EXPECT_TRUE(find<QWidget>("light.beam")->isVisible());
  QSignalSpy sharper(&maker(), &LightMaker::sharpened);
  ASSERT_TRUE(sharper.wait(kWait_ms));
  EXPECT_FALSE(find<BeamPlot>("light.beam")->reading().isEmpty()) << "read at its peak already";
  if (maker().isWorking()) click("light.stop");
  QTest::qWait(200);
  EXPECT_FALSE(maker().isWorking());
}

TEST_F(LightOnScreen, StoppedWorkSaysSoAndGoesOnWhenAsked) {
  waitForLight();
  set("lamp.flux_lm", "3000");
  ASSERT_TRUE(maker().isWorking());
  click("light.stop");
  EXPECT_FALSE(maker().isWorking());
  EXPECT_TRUE(maker().isStale());
  EXPECT_TRUE(text("light.words").contains("earlier values"));
  QTest::qWait(400);
  EXPECT_NE(report().flux_lm, 3000) << "nothing came after the stop";
  click("light.stop");
  waitForLight();
  EXPECT_EQ(report().flux_lm, 3000);
}

TEST_F(LightOnScreen, LampWithoutSizeIsSaidInASentenceInPlaceOfPlots) {
  waitForLight();
  set("lamp.height_mm", "0");
  QTRY_VERIFY_WITH_TIMEOUT(!maker().isWorking(), kWait_ms);
  EXPECT_TRUE(find<QLabel>("light.reason")->isVisible());
  EXPECT_TRUE(text("light.reason").endsWith('.')) << qPrintable(text("light.reason"));
  EXPECT_FALSE(find<QWidget>("light.beam")->isVisible());
  set("lamp.height_mm", "10");
  waitForLight();
  EXPECT_TRUE(find<QWidget>("light.beam")->isVisible());
}

TEST_F(LightOnScreen, EveryTabFitsASmallScreen) {
  waitForLight();
  auto* tabs = find<QTabWidget>("light.tabs");
  for (int place = 0; place < tabs->count(); ++place) {
    tabs->setCurrentIndex(place);
    QCoreApplication::processEvents();
    EXPECT_LE(window->minimumSizeHint().width(), 1280) << qPrintable(tabs->tabText(place));
    EXPECT_LE(window->minimumSizeHint().height(), 800) << qPrintable(tabs->tabText(place));
  }
}

TEST_F(LightOnScreen, GenericLampIsOneStepThatUndoTakesBack) {
  waitForLight();
  const Lamp before = bench().values().lamp;
  auto* choice = find<QComboBox>("light.generic");
  EXPECT_EQ(choice->currentIndex(), 0) << "own values";
  const int halogen = choice->findText("Tungsten halogen 100 W");
  ASSERT_GT(halogen, 0);
  choice->setFocus();
  QTest::keyClick(choice, Qt::Key_T);
  EXPECT_EQ(choice->currentIndex(), halogen) << "the first that begins with this letter";
  bench().stopMaking();
  const GenericLamp* generic = find_generic_lamp("halogen-100");
  EXPECT_EQ(bench().values().lamp.flux_lm, generic->lamp.flux_lm);
  EXPECT_EQ(bench().values().lamp.width_mm, generic->lamp.width_mm);
  EXPECT_EQ(bench().values().lamp.height_mm, generic->lamp.height_mm);
  EXPECT_EQ(find<QAction>("action.undo")->text(), "Undo lamp: Tungsten halogen 100 W");
  press(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(bench().values().lamp.flux_lm, before.flux_lm);
  EXPECT_EQ(bench().values().lamp.width_mm, before.width_mm);
  EXPECT_EQ(choice->currentIndex(), 0);
}

TEST_F(LightOnScreen, WantedPeriodSetsTheTurn) {
  waitForLight();
  showTab(1);
  EXPECT_EQ(find<QLineEdit>("light.period")->text(), "5") << "the present one is offered";
  typeInto("light.period", "7.5");
  EXPECT_EQ(bench().values().light.turn_s, 40) << "not before the button";
  click("light.period.set");
  bench().stopMaking();
  EXPECT_DOUBLE_EQ(bench().values().light.turn_s, 60);
  waitForLight();
  EXPECT_NEAR(report().rhythm.period_s, 7.5, 1e-9);
  EXPECT_EQ(text("figure.light.character"), "Fl 7.5s");
  EXPECT_TRUE(find<QLabel>("light.differs")->isVisible()) << "the brief wishes Fl 5s";
}

TEST_F(LightOnScreen, StripShowsTheFlashesInTheColoursOfTheirScreens) {
  set("panels.red", "2 4 6 8");
  waitForLight();
  showTab(1);
  const QStringList strip = find<FlashPlot>("light.flash")->stripWords();
  ASSERT_EQ(strip.size(), 2);
  EXPECT_TRUE(strip.at(0).startsWith("W ") || strip.at(1).startsWith("W "));
  EXPECT_TRUE(strip.at(0).startsWith("R ") || strip.at(1).startsWith("R "));
}

TEST_F(LightOnScreen, PointerClickAndArrowsReadTheMap) {
  waitForLight();
  auto* plot = find<BeamPlot>("light.beam");
  const BeamMap& beam = report().beam;
  const auto words = [&](double azimuth, double elevation) {
    return QStringLiteral("azimuth %1, elevation %2: %3")
        .arg(degrees_text(azimuth), degrees_text(elevation), candela_text(beam.at_deg(azimuth, elevation)));
  };
  const double azimuth = beam.grid.azimuth_deg(beam.peak_azimuth);
  const double elevation = beam.grid.elevation_deg(beam.peak_elevation);
  EXPECT_EQ(plot->reading(), words(azimuth, elevation)) << "opens on the peak";
  QTest::mouseClick(plot->plot(), Qt::LeftButton, {}, plot->pixelOf(azimuth + 1, elevation).toPoint());
  EXPECT_NEAR(plot->place().x(), azimuth + 1, 0.05);
  QTest::keyClick(plot->plot(), Qt::Key_Right);
  EXPECT_NEAR(plot->place().x(), azimuth + 1.5, 1e-9) << "from one direction of the map to the next";
  QTest::keyClick(plot->plot(), Qt::Key_Up);
  EXPECT_EQ(plot->reading(), words(plot->place().x(), plot->place().y()));
}

TEST_F(LightOnScreen, PlotsAreSavedAsPictureDrawingAndNumbers) {
  waitForLight();
  const QString png = saveAs("light.beam", "beam.png");
  const QImage picture(png);
  EXPECT_EQ(picture.width(), 2 * find<BeamPlot>("light.beam")->plot()->width());
  QFile svg(saveAs("light.beam", "beam.svg"));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  QXmlStreamReader reader(&svg);
  while (!reader.atEnd()) reader.readNext();
  EXPECT_FALSE(reader.hasError());
  const auto lines = linesOf(saveAs("light.beam", "beam.csv"));
  const BeamMap& beam = report().beam;
  ASSERT_EQ(lines.size(), beam.grid.size() + 1);
  EXPECT_EQ(lines[0], (QStringList{"azimuth_deg", "elevation_deg", "intensity_cd"}));
  for (const std::size_t at : {std::size_t{0}, beam.grid.at(beam.peak_azimuth, beam.peak_elevation)})
    EXPECT_EQ(lines[at + 1].at(2).toDouble(), beam.cd[at]);
  EXPECT_FALSE(QFile::exists(saveAs("light.beam", "beam.bmp")));
  EXPECT_TRUE(find<BeamPlot>("light.beam")->reading().contains(".bmp")) << "says what endings there are";
}

TEST_F(LightOnScreen, NumbersOfTheOtherPlotsAreThoseOfTheReport) {
  waitForLight();
  const auto flash = find<FlashPlot>("light.flash")->numbers();
  ASSERT_EQ(flash.rows.size(), report().rhythm.light.s.size());
  EXPECT_EQ(flash.rows[7].at(0).toDouble(), report().rhythm.light.s[7]);
  EXPECT_EQ(flash.rows[7].at(1).toDouble(), report().rhythm.light.cd[7]);
  const auto range = find<RangePlot>("light.range")->numbers();
  ASSERT_EQ(range.rows.size(), report().ranges.size());
  EXPECT_EQ(range.rows[4].at(2).toDouble(), report().ranges[4].red_nmi);
  const auto budget = find<BudgetPlot>("light.budget")->numbers();
  double sum = 0;
  for (int i = 0; i < kLightFates; ++i) sum += budget.rows[static_cast<std::size_t>(i)].at(1).toDouble();
  EXPECT_NEAR(sum, report().flux_lm, 1e-6 * report().flux_lm);
}

TEST_F(LightOnScreen, AnotherPanelIsMappedWhenItIsChosen) {
  set("panels.green", "3");
  waitForLight();
  const double white = report().beam.peak_cd;
  auto* panels = find<QComboBox>("light.panel");
  EXPECT_EQ(panels->currentText(), "1");
  panels->setFocus();
  QTest::keyClick(panels, Qt::Key_Down);
  QTest::keyClick(panels, Qt::Key_Down);
  waitForLight();
  EXPECT_EQ(report().panel, 3);
  EXPECT_LT(report().beam.peak_cd, 0.6 * white) << "behind its green screen";
}

}  // namespace
}  // namespace prismwright
