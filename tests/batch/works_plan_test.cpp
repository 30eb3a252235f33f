#include <gmock/gmock.h>

#include <fmt/format.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class WorksPlanning : public WorksDeskTest {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "4"});
  }
};

TEST_F(WorksPlanning, TheMakeListNamesOneMasterForEveryZonePieceOfEightEqualPanels) {
  const Answer answer = works({"make", "--json", "--csv", at("make.csv")});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto list = answer.json();
  std::set<std::string> pieces;
  const auto prisms = works({"list", "--json"}).json().at("prisms");
  for (const auto& prism : prisms) pieces.insert(prism.at("mark").get<std::string>().substr(4));
  EXPECT_EQ(list.at("totals").at("masters"), pieces.size());
  EXPECT_EQ(list.at("totals").at("prisms"), prisms.size());
  int served = 0;
  for (const auto& master : list.at("masters")) served += static_cast<int>(master.at("marks").size());
  EXPECT_EQ(served, list.at("totals").at("prisms"));
  EXPECT_GE(list.at("totals").at("castings_to_pour"), list.at("totals").at("sound_wanted"));
  EXPECT_THAT(bytes_of(at("make.csv")), testing::StartsWith("master,"));
  EXPECT_THAT(works({"make"}).out, HasSubstr("First to do: "));
}

TEST_F(WorksPlanning, TheChanceOfEnoughCastingsIsAPlainPercentage) {
  ASSERT_EQ(ask({"set", book_, "works.scrap_percent=0"}).code, 0);
  EXPECT_THAT(works({"make"}).out, HasSubstr("(enough for every master at once: 100 % chance)"));
  ASSERT_EQ(ask({"set", book_, "works.scrap_percent=0.001"}).code, 0);
  EXPECT_THAT(works({"make"}).out, HasSubstr("over 99.9 % chance)"));
  ASSERT_EQ(ask({"set", book_, "works.scrap_percent=90"}).code, 0);
  EXPECT_THAT(works({"make"}).out, HasSubstr("under 0.1 % chance)"));
}

TEST_F(WorksPlanning, LoadsAreNotWellUntilTheVesselsPlateIsEntered) {
  book_ = make_book({"--order", "6", "--work", "belt", "--panels", "3"}, "small.lensbook");
  ASSERT_EQ(ask({"set", book_, "section.refracting_to_deg=15", "section.upper_to_deg=30",
                 "section.lower_to_deg=15", "works.vessel_diameter_mm=900", "works.vessel_height_mm=900"})
                .code,
            0);
  const Answer bare = works({"loads", "--json"});
  EXPECT_EQ(bare.code, 1) << bare.err;
  for (const auto& load : bare.json().at("loads")) {
    for (const auto& step : load.at("cure").at("steps"))
      EXPECT_TRUE(step.at("bar").is_null()) << "no pressure beyond what was entered: none was";
  }
  ASSERT_EQ(ask({"set", book_, "works.vessel_max_bar=6", "works.vessel_max_c=120", "works.cure_bar=4",
                 "works.cure_c=60"})
                .code,
            0);
  const Answer full = works({"loads", "--json", "--csv", at("loads.csv"), "--card", at("cards.pdf")});
  EXPECT_EQ(full.code, 0) << full.err;
  const auto json = full.json();
  int castings = 0;
  for (const auto& load : json.at("loads")) castings += load.at("castings").get<int>();
  EXPECT_EQ(castings, json.at("castings"));
  EXPECT_EQ(castings, works({"make", "--json"}).json().at("totals").at("castings_to_pour"));
  EXPECT_THAT(bytes_of(at("loads.csv")), testing::StartsWith("load,master,castings,"));
  EXPECT_THAT(bytes_of(at("cards.pdf")), testing::StartsWith("%PDF-"));
  EXPECT_EQ(works({"loads", "--card", at("x.pdf"), "--load", "9999"}).code, 2);
  EXPECT_THAT(works({"loads", "--steps"}).out, HasSubstr("Never open one under pressure"));
}

TEST_F(WorksPlanning, WhatFitsInNoVesselIsNamedAndNotWell) {
  ASSERT_EQ(ask({"set", book_, "works.vessel_diameter_mm=120", "works.vessel_height_mm=120",
                 "works.vessel_max_bar=6", "works.vessel_max_c=120"})
                .code,
            0);
  const Answer answer = works({"loads", "--json"});
  EXPECT_EQ(answer.code, 1);
  const auto unfit = answer.json().at("unfit");
  ASSERT_FALSE(unfit.empty());
  for (const auto& piece : unfit)
    EXPECT_TRUE(piece.at("needs_diameter_mm") > 120 || piece.at("needs_height_mm") > 120);
}

// The plan takes no time for what no vessel takes: it must promise no day, call nothing done, and say so.
TEST_F(WorksPlanning, APlanWithoutAVesselForItsCastingsPromisesNoDay) {
  ASSERT_EQ(ask({"set", book_, "works.vessel_diameter_mm=60", "works.vessel_height_mm=60"}).code, 0);
  const Answer answer = works({"plan"});
  EXPECT_EQ(answer.code, 1);
  EXPECT_THAT(answer.out, testing::StartsWith("Not ready before "));
  EXPECT_THAT(answer.out, HasSubstr("fit no load of the vessel"));
  EXPECT_THAT(answer.out, testing::Not(HasSubstr("done")));
  const Answer told = works({"plan", "--json"});
  EXPECT_EQ(told.code, 1);
  const auto json = told.json();
  EXPECT_TRUE(json.at("finish").is_null());
  EXPECT_GT(json.at("not_ready_before"), json.at("start"));
  EXPECT_EQ(json.at("unplaced"), works({"make", "--json"}).json().at("totals").at("castings_to_pour"));
}

TEST_F(WorksPlanning, WhatIsSpentStandsBesideTheEstimate) {
  ASSERT_EQ(works({"spend", "mould", "--hours", "5.5", "--money", "120", "--note", "silicone"}).code, 0);
  const Answer answer = works({"plan", "--json", "--csv", at("plan.csv")});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto json = answer.json();
  const auto mould = row_where(json.at("steps"), "step", "mould");
  EXPECT_DOUBLE_EQ(mould.at("spent_h"), 5.5);
  EXPECT_DOUBLE_EQ(mould.at("spent_money"), 120);
  EXPECT_DOUBLE_EQ(mould.at("actual_money"), 120 + 5.5 * 45) << "hours at works.hour_cost, 45 to begin with";
  EXPECT_GT(mould.at("estimated_money"), 0);
  EXPECT_GT(row_where(json.at("costs"), "item", "brass").at("quantity"), 0) << "the frame is weighed";
  EXPECT_LT(json.at("start"), json.at("finish"));
  EXPECT_EQ(json.at("not_ready_before"), json.at("finish"));
  EXPECT_EQ(json.at("unplaced"), 0);
  EXPECT_THAT(bytes_of(at("plan.csv")), HasSubstr("step,"));
  EXPECT_THAT(works({"plan"}).out, HasSubstr("Ready on "));
  EXPECT_EQ(works({"spend", "varnish", "--hours", "1"}).code, 2);
  EXPECT_EQ(works({"spend", "mould"}).code, 2) << "nothing was spent";
  EXPECT_EQ(works({"spend", "mould", "--money", "-20"}).code, 2) << "without a note";
}

TEST_F(WorksPlanning, ShrinkageIsFittedFromLengthsAndTakenWhenAsked) {
  ASSERT_EQ(ask({"set", book_, "works.resin=clear", "works.resin_batch=A-7"}).code, 0);
  EXPECT_EQ(works({"shrink", "fit", "--take"}).code, 2) << "no readings yet";
  // Castings 0.6 % shorter than their masters.
  for (const char* master_mm : {"200", "150", "100"}) {
    const double casting_mm = std::stod(master_mm) * 0.994;
    ASSERT_EQ(works({"shrink", "record", "C", "length", master_mm, fmt::format("{:.4f}", casting_mm)}).code, 0);
  }
  const auto fits = works({"shrink", "fit", "--json", "--csv", at("shrink.csv")}).json();
  const auto length = row_where(fits[0].at("factors"), "direction", "length");
  EXPECT_NEAR(length.at("percent"), 0.6, 1e-9);
  EXPECT_EQ(length.at("readings"), 3);
  EXPECT_TRUE(row_where(fits[0].at("factors"), "direction", "depth").at("percent").is_null());
  const Answer taken = works({"shrink", "fit", "--take"});
  ASSERT_EQ(taken.code, 0) << taken.err;
  const auto keys = ask({"keys", book_, "--json"}).json().at("keys");
  EXPECT_NEAR(row_where(keys, "key", "works.shrink_length_percent").at("value"), 0.6, 1e-4);
  EXPECT_EQ(row_where(keys, "key", "works.shrink_depth_percent").at("value"), 0.4) << "not measured, as it was";
  EXPECT_EQ(works({"shrink", "record", "XX", "length", "100", "99"}).code, 2);
  EXPECT_EQ(works({"shrink", "record", "C", "sideways", "100", "99"}).code, 2);
  EXPECT_EQ(works({"shrink", "record", "C", "length", "100", "50"}).code, 2)
      << "half of it: a slip of the rule";
}

}  // namespace
}  // namespace prismwright
