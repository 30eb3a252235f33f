#include "core/papers/light_paper.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <limits>

#include "core/drawing/lengths.h"
#include "core/papers/plot_frame.h"
#include "tests/support/hand_light.h"
#include "tests/support/paper_words.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::Not;

LensValues turning(LensValues values) {
  values.light.turn_s = 40;
  return values;
}

const LensPlan& fourth() {
  static const LensPlan plan = plan_of(turning(fourth_order_bullseye(Faces::true_curve)));
  return plan;
}
const Proof& fourth_proof() {
  static const Proof proof = prove(fourth().section, 300);
  return proof;
}
HouseWords plain_words() { return house_words(fourth().values, "2027-05-01", "A"); }

TEST(LightPaper, HoldsTheNumbersOfEveryZoneOfTheProof) {
  const std::string words =
      words_of(light_paper(fourth(), fourth_proof(), hand_light(fourth()), plain_words()));
  ASSERT_FALSE(fourth_proof().zones.empty());
  for (const ZoneProof& zone : fourth_proof().zones)
    EXPECT_THAT(words, HasSubstr(fmt::format("{} {} {} {}", zone.mark, name_of(zone.kind),
                                             decimals(zone.from_deg, 3), decimals(zone.to_deg, 3))));
  EXPECT_THAT(words, HasSubstr(decimals(100 * fourth_proof().of(Fate::level), 3) + " %"));
}

TEST(LightPaper, TellsBeamFlashesRangesAndTheSunWithItsCaution) {
  const LightReport light = hand_light(fourth());
  const std::string words = words_of(light_paper(fourth(), fourth_proof(), light, plain_words()));
  for (const char* part : {"20000 cd", "12750 cd", "14.2 nautical miles", "13308 kW/m2", "4.3 kW/m2",
                           "Cover the lens by", "Fl 5s", "33 CFR 66.01-11(5)"})
    EXPECT_THAT(words, HasSubstr(part));
  ASSERT_EQ(light.rhythm.flashes.size(), 1u);
  EXPECT_THAT(words, HasSubstr(fmt::format("{:.2f} s at half", light.rhythm.flashes[0].length_s())));
}

TEST(LightPaper, SaysWhatDiffersFromTheBriefAndEveryWarning) {
  LensPlan plan = fourth();
  plan.values.brief.character = "Fl(2) 10s";
  LightReport light = hand_light(plan);
  light.differs = "2 flashes in a group are wished, 1 is given";
  light.warnings = {"The shortest flash lasts 0.1 s. Turn the lens more slowly"};
  const std::string words = words_of(light_paper(plan, fourth_proof(), light, plain_words()));
  EXPECT_THAT(words, HasSubstr("asked for was Fl(2) 10s: 2 flashes in a group are wished, 1 is given"));
  EXPECT_THAT(words, HasSubstr("The shortest flash lasts 0.1 s. Turn the lens more slowly."));
  EXPECT_THAT(words, Not(HasSubstr("nothing at fault")));
}

// The bells are 2.4 and 3 degrees wide at half, by their making; the map's steps of 0.25 deg cut their corners.
TEST(BeamCuts, MarkTheWidthBetweenHalfPeaks) {
  const Drawing paper = light_paper(fourth(), fourth_proof(), hand_light(fourth()), plain_words());
  EXPECT_EQ(texts_alike(paper, "2.40 deg"), 2);  // the table's and the figure's
  EXPECT_EQ(texts_alike(paper, "3.00 deg"), 2);
}

TEST(BeamCuts, DrawACurveThatPeaksWhereTheBeamDoes) {
  SheetMaker maker({Paper::a4, false});
  PlotFrame plot(maker, {{20, 100}, {120, 170}}, {-5, 5, "across"}, {0, 10, "up"}, 2.2);
  plot.curve({{-5, 0}, {1, 8}, {5, 20}}, PlotFrame::Ground::none);
  const Sheet sheet = maker.take();
  const Stroke& curve = sheet.strokes.back();
  ASSERT_EQ(curve.steps.size(), 2u);
  EXPECT_NEAR(curve.steps[0].to.x, plot.at({1, 8}).x, 1e-9);
  EXPECT_NEAR(curve.steps[0].to.y, plot.at({1, 8}).y, 1e-9);
  // From (1, 8) to (5, 20) the edge at 10 is met a sixth of the way.
  EXPECT_NEAR(curve.steps[1].to.x, plot.at({1 + 4.0 / 6, 10}).x, 1e-9);
  EXPECT_NEAR(curve.steps[1].to.y, plot.field().high.y, 1e-9);
}

TEST(WidthAt, FindsTheCrossingsNextToThePeak) {
  const LevelWidth width = width_at({{0, 6}, {1, 2}, {2, 10}, {3, 0}, {4, 7}}, 5);
  ASSERT_TRUE(width.whole);
  EXPECT_DOUBLE_EQ(width.from, 1.375);
  EXPECT_DOUBLE_EQ(width.to, 2.5);
  EXPECT_FALSE(width_at({{0, 6}, {1, 8}, {2, 1}}, 5).whole);
  EXPECT_FALSE(width_at({}, 5).whole);
}

TEST(RoundTicks, StandOnRoundNumbersWithinTheSpan) {
  EXPECT_THAT(round_ticks(-1.5, 1.5, 6), testing::ElementsAre(-1.5, -1.0, -0.5, 0, 0.5, 1.0, 1.5));
  EXPECT_THAT(round_ticks(0, 168000, 4), testing::ElementsAre(0, 50000, 100000, 150000));
  EXPECT_TRUE(round_ticks(2, 2, 4).empty());
  EXPECT_TRUE(round_ticks(0, std::numeric_limits<double>::infinity(), 4).empty());
}

TEST(LightPaper, KeepsTextsApartOnEveryPaperForEverySample) {
  const std::vector<LensValues> samples = {turning(fourth_order_bullseye(Faces::true_curve)),
                                           sixth_order_belt(Faces::true_curve),
                                           turning(first_order_unequal(Faces::true_curve))};
  for (const LensValues& values : samples) {
    const LensPlan plan = plan_of(values);
    const Proof proof = prove(plan.section, 200);
    const LightReport light = hand_light(plan);
    for (const PaperTrial& trial : paper_trials())
      for (const HouseWords& words : {house_words(values, "2027-05-01", "A"), hard_words(), HouseWords{}})
        for (const Sheet& sheet : light_paper(plan, proof, light, tried(words, trial)).sheets)
          expect_texts_apart(sheet);
  }
}

TEST(LightPaper, StandsWithoutAnyLight) {
  const Drawing paper = light_paper(fourth(), fourth_proof(), LightReport{}, plain_words());
  EXPECT_THAT(words_of(paper), HasSubstr("No light was found in the mapped beam."));
  for (const Sheet& sheet : paper.sheets) expect_texts_apart(sheet);
}

TEST(BeamCsv, ListsEveryDirectionOfTheMapRowByRow) {
  BeamMap beam;
  beam.grid = {-0.5, 0.5, 2, 1, 0.25, 2};
  beam.cd = {10, 20.5, 30, 0};
  EXPECT_EQ(beam_csv(beam),
            "azimuth_deg,elevation_deg,intensity_cd\n-0.5,1,10\n0,1,20.5\n-0.5,1.25,30\n0,1.25,0\n");
}

}  // namespace
}  // namespace prismwright
