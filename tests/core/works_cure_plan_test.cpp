#include "core/works/cure_plan.h"

#include <gmock/gmock.h>

#include <regex>

#include "core/works/works_cautions.h"
#include "tests/support/random_lens.h"

namespace prismwright {
namespace {

/// A vessel whose plate says 6 bar and 120 C, and a resin for it.
WorksSettings plated() {
  WorksSettings works;
  works.vessel_max_bar = 6;
  works.vessel_max_c = 120;
  works.cure_bar = 4;
  works.cure_c = 45;
  works.cure_h = 10;
  return works;
}

std::vector<std::string> words_of(const CurePlan& plan) {
  std::vector<std::string> words = plan.notes;
  for (const CureStep& step : plan.steps) {
    words.push_back(step.what);
    words.push_back(step.source);
  }
  return words;
}

/// Every value of a unit that the words name.
std::vector<double> values_named(const CurePlan& plan, const char* unit) {
  std::vector<double> values;
  const std::regex value("(-?[0-9.]+(?:e[-+]?[0-9]+)?)(?: to (-?[0-9.]+))? ?" + std::string(unit) + "\\b");
  for (const std::string& words : words_of(plan)) {
    for (std::sregex_iterator it(words.begin(), words.end(), value), end; it != end; ++it) {
      values.push_back(std::stod((*it)[1]));
      if ((*it)[2].matched) values.push_back(std::stod((*it)[2]));
    }
  }
  return values;
}

// Rates as trade handbooks of cast sheet print them: 6-9 mm 30 C/h, 12-18 mm 14, 24 mm 10, 38-44 mm 6.7,
// 51 mm 5.6 (published).
TEST(CoolingTable, GivesThePrintedRates) {
  for (const auto& [mm, rate] : {std::pair{6.0, 30.0},
                                 {9.0, 30.0},
                                 {12.0, 14.0},
                                 {15.0, 14.0},
                                 {18.0, 14.0},
                                 {24.0, 10.0},
                                 {38.0, 6.7},
                                 {41.0, 6.7},
                                 {44.0, 6.7},
                                 {51.0, 5.6}})
    EXPECT_NEAR(table_cooling_c_per_h(mm), rate, 1e-12) << mm;
}

TEST(CoolingTable, RunsStraightBetweenThem) {
  EXPECT_NEAR(table_cooling_c_per_h(21), 12, 1e-12);
  EXPECT_NEAR(table_cooling_c_per_h(31), 8.35, 1e-12);
  EXPECT_NEAR(table_cooling_c_per_h(47.5), 6.15, 1e-12);
}

TEST(CoolingTable, NeverSpeedsUpWithThicknessAndFallsByItsSquareBeyond) {
  for (double mm = 1; mm < 200; mm += 0.25)
    EXPECT_LE(table_cooling_c_per_h(mm + 0.25), table_cooling_c_per_h(mm)) << mm;
  EXPECT_NEAR(table_cooling_c_per_h(102), 5.6 / 4, 1e-12);
}

TEST(CurePlan, OfTwentyMillimetresHoldsTwentyHoursAndCoolsFive) {
  // Heating 60 K at 20 C/h; holding 1 h a mm; cooling 30 K at the table's 12.67 C/h would take 2.4 h, but 20 /
  // 4 hours are the least.
  const CurePlan plan = plan_cure(plated(), 20);
  ASSERT_EQ(plan.steps.size(), 7U);
  EXPECT_NEAR(plan.vessel_h, 10, 1e-12);
  EXPECT_NEAR(plan.find(CureAct::heat)->from_h, 10, 1e-12);
  EXPECT_NEAR(plan.find(CureAct::hold)->from_h, 13, 1e-12);
  EXPECT_NEAR(plan.find(CureAct::cool)->from_h, 33, 1e-12);
  EXPECT_NEAR(plan.find(CureAct::take_out)->from_h, 38, 1e-12);
  EXPECT_NEAR(plan.total_h, 38, 1e-12);
  EXPECT_EQ(plan.find(CureAct::cure)->bar, 4);
  EXPECT_EQ(plan.find(CureAct::cure)->to_c, 45);
  EXPECT_EQ(plan.find(CureAct::hold)->to_c, 80);
  EXPECT_EQ(plan.find(CureAct::cool)->to_c, 50);
  EXPECT_THAT(plan.find(CureAct::cool)->source, testing::HasSubstr("tables"));
}

TEST(CurePlan, OfAThinPieceHoldsTheLeastTimeAndCoolsByTheTable) {
  const CurePlan plan = plan_cure(plated(), 1.5);
  EXPECT_NEAR(plan.find(CureAct::hold)->to_h - plan.find(CureAct::hold)->from_h, 2, 1e-12);
  EXPECT_NEAR(plan.find(CureAct::cool)->to_h - plan.find(CureAct::cool)->from_h, 1, 1e-12);
}

TEST(CurePlan, FollowsTheMakersCoolingRateBeforeTheTables) {
  auto works = plated();
  works.cooling_c_per_h = 15;
  const CurePlan plan = plan_cure(works, 60);
  EXPECT_NEAR(plan.find(CureAct::cool)->to_h - plan.find(CureAct::cool)->from_h, 2, 1e-12);
  EXPECT_THAT(plan.find(CureAct::cool)->source, testing::HasSubstr("maker's sheet"));
  EXPECT_THAT(plan.notes, testing::Not(testing::Contains(testing::HasSubstr("tables of cooling end"))));
}

TEST(CurePlan, SaysThatTheTablesEnd) {
  EXPECT_THAT(plan_cure(plated(), 60).notes,
              testing::Contains(testing::HasSubstr("tables of cooling end at 51")));
  EXPECT_THAT(plan_cure(plated(), 51).notes,
              testing::Not(testing::Contains(testing::HasSubstr("tables of cooling end"))));
}

TEST(CurePlan, WithoutTheVesselsPlateNamesNoPressureAndNoTemperature) {
  for (const bool with_bar : {false, true}) {
    auto works = plated();
    (with_bar ? works.vessel_max_c : works.vessel_max_bar).reset();
    const CurePlan plan = plan_cure(works, 20);
    EXPECT_THAT(values_named(plan, "bar"), testing::IsEmpty());
    EXPECT_THAT(values_named(plan, "C"), testing::IsEmpty());
    EXPECT_NEAR(plan.total_h, 38, 1e-12);
    EXPECT_THAT(plan.notes, testing::Contains(testing::HasSubstr("plate is not entered")));
    for (const CureStep& step : plan.steps) {
      EXPECT_FALSE(step.bar.has_value());
      EXPECT_FALSE(step.from_c.has_value() || step.to_c.has_value());
    }
  }
}

TEST(CurePlan, LeavesOutACureBeyondThePlateAndSaysSo) {
  auto works = plated();
  works.cure_bar = 6.5;
  const CurePlan plan = plan_cure(works, 20);
  EXPECT_FALSE(plan.find(CureAct::cure)->bar.has_value());
  EXPECT_EQ(plan.find(CureAct::cure)->to_c, 45);
  EXPECT_THAT(plan.notes, testing::Contains(testing::HasSubstr("cure pressure entered lies beyond")));
}

TEST(CurePlan, LeavesOutAnAnnealingBeyondThePlateAndSaysSo) {
  auto works = plated();
  works.vessel_max_c = 60;
  const CurePlan plan = plan_cure(works, 20);
  EXPECT_FALSE(plan.find(CureAct::hold)->to_c.has_value());
  EXPECT_FALSE(plan.find(CureAct::take_out)->to_c.has_value());
  EXPECT_EQ(plan.find(CureAct::cure)->to_c, 45);
  EXPECT_THAT(plan.notes, testing::Contains(testing::HasSubstr("annealing entered lies beyond")));
}

TEST(CurePlan, SeesAValueThatItsOwnWordsName) {
  // The reader of the tests below does find what a plan names.
  const CurePlan plan = plan_cure(plated(), 20);
  EXPECT_THAT(values_named(plan, "bar"), testing::ElementsAre(4));
  EXPECT_THAT(values_named(plan, "C"), testing::IsSupersetOf({45.0, 20.0, 80.0, 50.0}));
}

WorksSettings drawn_works(Lot& lot) {
  WorksSettings works;
  const auto blank = [&](double low, double high) {
    return lot.once_in(4) ? std::nullopt : std::optional(lot.between(low, high));
  };
  works.vessel_max_bar = blank(0, 12);
  works.vessel_max_c = blank(0, 160);
  works.cure_bar = blank(0, 12);
  works.cure_c = blank(0, 160);
  works.cooling_c_per_h = blank(0.1, 200);
  works.cure_h = lot.between(0, 100);
  works.anneal_c = lot.between(20, 150);
  works.take_out_c = lot.between(0, 150);
  works.room_c = lot.between(-20, 50);
  works.heating_c_per_h = lot.between(0.1, 200);
  works.anneal_h_per_mm = lot.between(0, 20);
  return works;
}

TEST(CurePlan, NeverGoesBeyondWhatWasEnteredForTheVessel) {
  Lot lot(73);
  int named = 0;
  for (int i = 0; i < 800; ++i) {
    const WorksSettings works = drawn_works(lot);
    const CurePlan plan = plan_cure(works, lot.between(0.5, 120));
    const bool plate = works.vessel_max_bar && works.vessel_max_c;
    const double bar = plate ? *works.vessel_max_bar : -1e9;
    const double heat = plate ? *works.vessel_max_c : -1e9;
    // Words round to six digits.
    for (const double value : values_named(plan, "bar")) EXPECT_LE(value, bar * (1 + 1e-5));
    for (const double value : values_named(plan, "C")) EXPECT_LE(value, heat * (1 + 1e-5));
    double before = 0;
    for (const CureStep& step : plan.steps) {
      EXPECT_LE(step.bar.value_or(bar), bar);
      EXPECT_LE(step.from_c.value_or(heat), heat);
      EXPECT_LE(step.to_c.value_or(heat), heat);
      EXPECT_EQ(step.from_h, before);
      EXPECT_GE(step.to_h, step.from_h);
      before = step.to_h;
      named += step.to_c.has_value();
    }
    EXPECT_EQ(plan.total_h, before);
  }
  EXPECT_GT(named, 400);  // the plan is not kept safe by saying nothing
}

TEST(WorksCautions, NameVapourFlashPointExothermCodeAndCompetentPerson) {
  std::string all;
  for (const Caution& caution : casting_cautions())
    all += std::string(caution.head) + std::string(caution.text);
  for (const char* word : {"vapour", "11.5 C", "1.7 %", "100 ppm", "heats itself", "0.5 bar", "250 bar litre",
                           "Local code", "competent person"})
    EXPECT_THAT(all, testing::HasSubstr(word));
}

}  // namespace
}  // namespace prismwright
