#include <qcustomplot.h>

#include <QTabWidget>
#include <QTableWidget>

#include "tests/ui/window_desk.h"
#include "ui/pages/light_page.h"
#include "ui/views/chromaticity_plot.h"
#include "ui/views/colour_tab.h"
#include "ui/views/transmittance_plot.h"

namespace prismwright {
namespace {

/// A light this rough is worked out well within this.
constexpr int kWait_ms = 60000;

/// Four panels of a few rings each, one of them red.
LensValues small_lens() {
  LensValues values = starting_values("6", Work::bullseye, 4);
  const Assignment small[] = {{"section.refracting_to_deg", "20"},
                              {"section.upper_to_deg", "20"},
                              {"section.lower_to_deg", "20"},
                              {"lamp.height_mm", "10"},
                              {"lamp.width_mm", "8"},
                              {"panels.red", "2"}};
  const auto changed = with_assignments(values, small);
  EXPECT_TRUE(changed) << (changed ? "" : changed.problem().text);
  return changed ? *changed : values;
}

class ColourOnScreen : public WindowDesk {
 protected:
  void SetUp() override {
    WindowDesk::SetUp();
    ASSERT_TRUE(window->openBook(newBook("colour.lensbook", small_lens())));
    bench().stopMaking();
    ASSERT_TRUE(window->pageWidget(Page::light));
    LightAsk ask;
    ask.grid = {-6, 1, 13, -5, 1, 11};
    ask.wanted_error = 0.2;
    ask.rays = 200;
    ask.lines = 1;
    maker().setAsk(ask);
    click("rail.light");
    auto* tabs = find<QTabWidget>("light.tabs");
    int place = 0;
    while (place < tabs->count() && tabs->tabText(place) != "Colour") ++place;
    ASSERT_LT(place, tabs->count());
    QTest::mouseClick(tabs->tabBar(), Qt::LeftButton, {}, tabs->tabBar()->tabRect(place).center());
    waitForLight();
  }

  [[nodiscard]] LightMaker& maker() const { return *find<LightPage>("page.light")->maker(); }
  [[nodiscard]] const LightColours& colours() const { return maker().report()->colours; }
  void waitForLight() const {
    ASSERT_TRUE(maker().waitUntilDone(kWait_ms)) << qPrintable(maker().reason());
    QCoreApplication::processEvents();
  }
  [[nodiscard]] QString cell(int row, int column) const {
    const auto* table = find<QTableWidget>("light.colours");
    return table->item(row, column) ? table->item(row, column)->text() : QString();
  }
  void typeHere(const QString& field, const QString& typed) {
    typeInto(field, typed);
    bench().stopMaking();
  }
};

TEST_F(ColourOnScreen, TableHoldsTheColoursOfTheReportAgainstEveryRegion) {
  ASSERT_EQ(find<QTableWidget>("light.colours")->rowCount(), 6) << "the lamp, four lights, red by two rules";
  EXPECT_EQ(cell(0, 3), QString::number(colours().lamp.x, 'f', 4));
  const ScreenColour& red = colours().of(Screen::red);
  ASSERT_EQ(red.regions.size(), 2U);
  EXPECT_EQ(cell(2, 0), "red");
  EXPECT_EQ(cell(2, 1), "1") << "panel 2";
  EXPECT_EQ(cell(1, 1), "3") << "the other three are white";
  EXPECT_EQ(cell(4, 1), "none");
  EXPECT_EQ(cell(2, 2), QString::number(100 * red.factor, 'f', 1));
  EXPECT_EQ(cell(2, 3), QString::number(red.at.x, 'f', 4));
  for (int rule = 0; rule < 2; ++rule) {
    const RegionVerdict& verdict = red.regions[static_cast<std::size_t>(rule)];
    EXPECT_TRUE(cell(2 + rule, 6).contains(verdict.held ? "inside" : "outside"));
    EXPECT_TRUE(cell(2 + rule, 6).endsWith(QString::fromStdString(std::string(verdict.region->rule))));
  }
}

TEST_F(ColourOnScreen, DiagramMarksWhatPanelsShowAndReadsWhatThePointerStandsOn) {
  auto* diagram = find<ChromaticityPlot>("light.chromaticity");
  EXPECT_EQ(diagram->marks(),
            (QStringList{"lamp", "W white", "R red", "G green, on no panel", "Y yellow, on no panel"}));
  const Chromaticity at{0.46, 0.41};
  QTest::mouseClick(diagram->plot(), Qt::LeftButton, {}, diagram->pixelOf(at).toPoint());
  EXPECT_TRUE(diagram->reading().startsWith("x 0.4")) << qPrintable(diagram->reading());
  EXPECT_TRUE(diagram->reading().contains("in white of 33 CFR 66.01-11(5)"));
  const QPointF origin = diagram->pixelOf({0, 0});
  EXPECT_NEAR(diagram->pixelOf({0.5, 0}).x() - origin.x(), origin.y() - diagram->pixelOf({0, 0.5}).y(), 0.5)
      << "one scale on both axes";
}

TEST_F(ColourOnScreen, NumbersAreTheLightsTheRegionsAndTheLines) {
  const PlotNumbers numbers = find<ChromaticityPlot>("light.chromaticity")->numbers();
  EXPECT_EQ(numbers.rows[1], (QStringList{"light", "white", plot_number(colours().of(Screen::none).at.x),
                                          plot_number(colours().of(Screen::none).at.y)}));
  // CIE 1931 table, 2 degrees: the pure colour of 520 nm stands at 0.0743, 0.8338 (published).
  const auto green = std::find_if(numbers.rows.begin(), numbers.rows.end(), [](const QStringList& row) {
    return row.at(0) == "nm" && row.at(1) == "520";
  });
  ASSERT_NE(green, numbers.rows.end());
  EXPECT_NEAR(green->at(2).toDouble(), 0.0743, 1e-4);
  EXPECT_NEAR(green->at(3).toDouble(), 0.8338, 1e-4);
}

TEST_F(ColourOnScreen, ScreenOfOwnPointsIsShownAndChangesTheLight) {
  const double before = colours().of(Screen::red).factor;
  typeHere("field.light.red_screen", "400:0.5, 700:0.5");
  EXPECT_TRUE(maker().isStale());
  auto* curves = find<TransmittancePlot>("light.transmittance");
  const PlotNumbers numbers = curves->numbers();
  EXPECT_EQ(numbers.heads, (QStringList{"wavelength_nm", "tint", "red", "green", "yellow"}));
  EXPECT_EQ(numbers.rows[100].at(2).toDouble(), 0.5) << "480 nm";
  waitForLight();
  EXPECT_NEAR(colours().of(Screen::red).factor, 0.5, 1e-9);
  EXPECT_GT(std::abs(before - 0.5), 0.1);
  EXPECT_EQ(cell(2, 2), "50.0");
}

TEST_F(ColourOnScreen, PointsThatCannotBeReadAreRefusedWithTheReason) {
  typeHere("field.light.red_screen", "600:x");
  EXPECT_EQ(bench().values().light.red_screen, "");
  const auto* refusal = find<QLabel>("refusal.light.red_screen");
  EXPECT_TRUE(refusal->isVisible());
  EXPECT_TRUE(refusal->text().contains("600:x")) << qPrintable(refusal->text());
  EXPECT_EQ(find<QLineEdit>("field.light.red_screen")->text(), "600:x") << "what was typed stays to be mended";
  EXPECT_FALSE(maker().isStale());
}

TEST_F(ColourOnScreen, FormShowsTheOneValueThatTheLampsLightHas) {
  const auto shown = [&](const char* key) { return find<QWidget>(QString("editor.") + key)->isVisible(); };
  const auto choose = [&](const char* light) {
    const Assignment one{"lamp.light", light};
    ASSERT_TRUE(bench().assign({&one, 1}, {}));
    bench().stopMaking();
  };
  choose("black_body");
  EXPECT_TRUE(shown("lamp.temperature_k"));
  EXPECT_FALSE(shown("lamp.line_nm"));
  EXPECT_FALSE(shown("lamp.spectrum"));
  choose("line");
  EXPECT_FALSE(shown("lamp.temperature_k"));
  EXPECT_TRUE(shown("lamp.line_nm"));
}

}  // namespace
}  // namespace prismwright
