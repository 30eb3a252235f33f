#include "core/drawing/chart_sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <tuple>

#include "core/drawing/chart_panel.h"
#include "core/drawing/stage_legend.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_books.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

HouseWords words_for(const LensValues& values, std::optional<Paper> paper, bool inches = false) {
  HouseWords words = house_words(values, "2027-03-01", "B");
  words.paper = paper;
  words.inches = inches;
  return words;
}

/// How often each word stands on the sheets.
std::map<std::string, int> times_written(const Drawing& drawing) {
  std::map<std::string, int> times;
  for (const Sheet& sheet : drawing.sheets)
    for (const DrawnText& text : sheet.texts) ++times[text.words];
  return times;
}

void expect_sound_chart(const LensPlan& plan, const Drawing& drawing) {
  for (const Sheet& sheet : drawing.sheets) {
    expect_texts_apart(sheet);
    for (const DrawnText& text : sheet.texts) EXPECT_GE(text.size_mm, kLeastMark_mm) << text.words;
  }
  const auto times = times_written(drawing);
  for (const PlannedPrism& prism : plan.prisms) {
    const auto found = times.find(prism.mark);
    ASSERT_NE(found, times.end()) << prism.mark;
    EXPECT_EQ(found->second, 1) << prism.mark;
  }
}

class SampleCharts : public testing::TestWithParam<std::tuple<const char*, Paper, bool>> {};

TEST_P(SampleCharts, SayEveryMarkOnceAndKeepTheirTextsApart) {
  const auto [name, paper, inches] = GetParam();
  const SampleBook book = sample_book(name);
  const LensPlan& plan = framed_once(name, book.values).plan;
  const auto drawing = chart_sheets(plan, book.stages, words_for(book.values, paper, inches));
  ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
  expect_sound_chart(plan, *drawing);
  for (const Sheet& sheet : drawing->sheets) EXPECT_EQ(sheet.size.paper, paper);
}

INSTANTIATE_TEST_SUITE_P(OnEveryPaper, SampleCharts,
                         testing::Combine(testing::ValuesIn(kSampleBooks),
                                          testing::Values(Paper::a4, Paper::a3, Paper::letter),
                                          testing::Bool()));

TEST(ChartSheet, SaysEveryMarkOnceOfRandomLenses) {
  Lot lot(20270301);
  for (int made = 0; made < 8;) {
    const LensValues values = random_lens(lot);
    if (!check_values(values)) continue;
    const auto plan = plan_lens(values);
    if (!plan || plan->prisms.empty()) continue;
    ++made;
    const auto drawing = chart_sheets(*plan, {}, words_for(values, made % 2 ? Paper::a4 : Paper::a3));
    ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
    expect_sound_chart(*plan, *drawing);
  }
}

TEST(ChartSheet, HoldsPanelsOfEveryKind) {
  for (const LensValues& values : {lopsided_belt(), lopsided_bullseye(), two_panels(Work::bullseye, Faces::arc),
                                   first_order_unequal(Faces::arc), every_band_its_own_way()}) {
    const LensPlan plan = plan_of(values);
    const auto drawing = chart_sheets(plan, {}, words_for(values, std::nullopt));
    ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
    expect_sound_chart(plan, *drawing);
  }
}

TEST(ChartSheet, DrawsAPanelAgainWhereItsColumnOfMarksIsTooLong) {
  LensValues values = starting_values("4", Work::bullseye, 6);
  values.section.reflecting_chord_mm = 6;
  values.section.ring_growth_mm = 1.5;
  values.section.land_mm = values.section.gap_mm = 0.1;
  const LensPlan plan = plan_of(values);
  ASSERT_GT(plan.prisms.size(), 600u);
  const auto drawing = chart_sheets(plan, {}, words_for(values, Paper::a4));
  ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
  expect_sound_chart(plan, *drawing);
  EXPECT_GT(times_written(*drawing)["P01, 60\u00B0"], 2);
}

TEST(ChartSheet, LegendCountsEveryPrismByItsStage) {
  const LensValues values = fourth_order_bullseye(Faces::arc);
  const LensPlan plan = plan_of(values);
  StageByMark stages;
  int glazed = 0;
  int scrapped = 0;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel == 1) stages[prism.mark] = Stage::glazed, ++glazed;
    if (prism.panel == 2 && prism.kind == ZoneKind::upper) stages[prism.mark] = Stage::scrapped, ++scrapped;
  }
  stages["P77-U01"] = Stage::cast;  // a mark that the lens no longer has
  const auto drawing = chart_sheets(plan, stages, words_for(values, Paper::a3));
  ASSERT_TRUE(drawing.ok());
  auto times = times_written(*drawing);
  EXPECT_EQ(times["glazed: " + std::to_string(glazed)], 1);
  EXPECT_EQ(times["scrapped: " + std::to_string(scrapped)], 1);
  EXPECT_EQ(times["drawn: " + std::to_string(static_cast<int>(plan.prisms.size()) - glazed - scrapped)], 1);
  EXPECT_EQ(times["cast: 0"], 1);
}

TEST(ChartSheet, BlindPanelKeepsItsPlaceWithoutMarks) {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.panels[3].blind = true;
  const LensPlan plan = plan_of(values);
  const auto drawing = chart_sheets(plan, {}, words_for(values, Paper::a3));
  ASSERT_TRUE(drawing.ok());
  EXPECT_EQ(times_written(*drawing)["blind"], 1);
}

TEST(ChartSheet, RefusesALensWithoutPrisms) {
  LensPlan plan = plan_of(fourth_order_bullseye(Faces::arc));
  plan.prisms.clear();
  const auto drawing = chart_sheets(plan, {}, words_for(plan.values, Paper::a3));
  ASSERT_FALSE(drawing.ok());
  EXPECT_EQ(drawing.problem().code, "prisms");
}

TEST(ChartPanel, WordsInsideLieInTheirOwnPrism) {
  constexpr double kScale = 0.4;
  for (const LensValues& values : {fourth_order_bullseye(Faces::arc), lopsided_belt(), lopsided_bullseye()}) {
    std::size_t inside = 0;
    for (const UnrolledPanel& panel : unrolled(plan_of(values))) {
      const PanelMarks marks = place_marks(panel, kScale);
      ASSERT_EQ(marks.inside.size(), panel.prisms.size());
      for (std::size_t i = 0; i < panel.prisms.size(); ++i) {
        if (!marks.inside[i]) continue;
        ++inside;
        const InsideWords words = *marks.inside[i];
        const double half = text_width_mm(panel.prisms[i].mark, words.size_mm) / 2 / kScale;
        const double up = words.size_mm / 2 / kScale;
        for (const PlatePoint corner : {PlatePoint{half, up}, {-half, up}, {half, -up}, {-half, -up}, {0, 0}}) {
          int around = 0;
          for (const PlateChain& loop : panel.prisms[i].loops) {
            const PlatePoint at = {words.middle.u + corner.u, words.middle.v + corner.v};
            if (holds(flattened(loop, 0.01), at)) ++around;
          }
          EXPECT_EQ(around % 2, 1) << panel.prisms[i].mark;
        }
      }
    }
    EXPECT_GT(inside, 10u);
  }
}

/// Relative luminance of sRGB: IEC 61966-2-1, as accessible text is judged by it (from memory).
double luminance(PaperColour colour) {
  const auto linear = [](std::uint8_t byte) {
    const double share = byte / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

TEST(StageLegend, TonesDeepenAndLeaveBlackWordsReadable) {
  double last = 1;
  for (const Stage stage : kStages) {
    const double here = luminance(tone_of(stage));
    EXPECT_GE((here + 0.05) / 0.05, 4.5) << name_of(stage);
    // Sand before the casting, sea after it: each deepens by itself.
    if (stage == Stage::scrapped) continue;
    if (stage != Stage::cast) {
      EXPECT_LT(here, last) << name_of(stage);
    }
    last = here;
  }
}

}  // namespace
}  // namespace prismwright
