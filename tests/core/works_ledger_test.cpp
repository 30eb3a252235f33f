#include "core/works/ledger.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Pair;
using testing::UnorderedElementsAre;

/// Panels 2 and 3 of a small lens: a disc, a ring that the panel sides cut in two, one upper prism.
const std::vector<std::string> kMarks = {"P02-C", "P02-R2a", "P02-R2b", "P02-U07",
                                         "P03-C", "P03-R2a", "P03-R2b", "P03-U07"};

StepRequest step(std::vector<std::string> marks, Stage to, std::string note = "") {
  return {std::move(marks), to, "E. Marsh", std::move(note), std::nullopt};
}

/// A works that follows its own ledger, as the book does.
class Shop {
 public:
  Outcome<std::vector<LedgerEntry>> take(const StepRequest& request) {
    auto lines = plan_steps(request, now(), kMarks);
    if (lines) ledger_.insert(ledger_.end(), lines->begin(), lines->end());
    return lines;
  }
  void bring_to(const std::string& mark, Stage stage) {
    for (Stage at = now().stage_of(mark); at != stage; at = now().stage_of(mark))
      ASSERT_TRUE(take(step({mark}, *next_stage(at))).ok());
  }
  [[nodiscard]] StageByMark now() const { return stages_from(ledger_); }

 private:
  std::vector<LedgerEntry> ledger_;
};

std::string refusal(const Outcome<std::vector<LedgerEntry>>& outcome) {
  return outcome.ok() ? "taken" : outcome.problem().text;
}

TEST(PlanSteps, TheNextStageNeedsNoNote) {
  Shop shop;
  const auto lines = shop.take(step({"P03-U07", "P03-C"}, Stage::mastered));
  ASSERT_TRUE(lines.ok());
  ASSERT_EQ(lines->size(), 2u);
  EXPECT_EQ((*lines)[0].mark, "P03-U07");
  EXPECT_EQ((*lines)[0].from, Stage::drawn);
  EXPECT_EQ((*lines)[0].to, Stage::mastered);
  EXPECT_EQ((*lines)[0].by, "E. Marsh");
  EXPECT_FALSE((*lines)[0].back_to);
}

TEST(PlanSteps, ASkippedStageNeedsANote) {
  Shop shop;
  EXPECT_EQ(
      refusal(shop.take(step({"P03-U07"}, Stage::cast))),
      "P03-U07 is drawn; cast skips mastered and moulded. Write in a note why, or record those stages first.");
  EXPECT_EQ(refusal(shop.take(step({"P03-U07"}, Stage::moulded))),
            "P03-U07 is drawn; moulded skips mastered. Write in a note why, or record that stage first.");
  EXPECT_THAT(refusal(shop.take(step({"P03-U07"}, Stage::annealed))), HasSubstr("mastered, moulded and cast"));
  EXPECT_TRUE(shop.take(step({"P03-U07"}, Stage::cast, "cast in the mould of P02-U07")).ok());
  EXPECT_EQ(shop.now().stage_of("P03-U07"), Stage::cast);
}

TEST(PlanSteps, ANoteOfBlanksIsNoNote) {
  Shop shop;
  EXPECT_EQ(shop.take(step({"P03-U07"}, Stage::cast, " \t\n")).problem().code, "skipped_stage");
}

TEST(PlanSteps, ABackwardStageNeedsANote) {
  Shop shop;
  shop.bring_to("P03-C", Stage::polished);
  EXPECT_EQ(refusal(shop.take(step({"P03-C"}, Stage::annealed))),
            "P03-C is polished; annealed lies behind that. Write in a note why it goes back.");
  EXPECT_TRUE(shop.take(step({"P03-C"}, Stage::annealed, "crazed, annealed again")).ok());
}

TEST(PlanSteps, TheStageItStandsAtIsRefusedEvenWithANote) {
  Shop shop;
  shop.bring_to("P03-C", Stage::cast);
  EXPECT_EQ(refusal(shop.take(step({"P03-C"}, Stage::cast, "again"))),
            "P03-C is cast already. Its next stage is annealed.");
  shop.bring_to("P03-C", Stage::glazed);
  EXPECT_EQ(refusal(shop.take(step({"P03-C"}, Stage::glazed))), "P03-C is glazed already. Leave it out.");
}

TEST(PlanSteps, OneBadMarkKeepsAllOut) {
  Shop shop;
  const auto lines = shop.take(step({"P03-C", "P03-U99"}, Stage::mastered));
  EXPECT_EQ(refusal(lines), "P03-U99 is no prism of this lens. Take a mark from its list of prisms.");
  EXPECT_EQ(lines.problem().where, "P03-U99");
  EXPECT_TRUE(shop.now().empty());
}

TEST(PlanSteps, AMarkNamedTwiceMakesOneLine) {
  Shop shop;
  EXPECT_EQ(shop.take(step({"P03-C", "P03-C"}, Stage::mastered))->size(), 1u);
}

TEST(PlanSteps, NoMarkAtAllIsRefused) {
  Shop shop;
  EXPECT_EQ(shop.take(step({}, Stage::mastered)).problem().code, "no_mark");
}

TEST(Scrapping, NeedsANote) {
  Shop shop;
  EXPECT_EQ(refusal(shop.take(step({"P03-C"}, Stage::scrapped))),
            "Scrapping P03-C needs a note. Write what is wrong with it.");
}

TEST(Scrapping, ALostCastingStartsAgainFromItsMould) {
  Shop shop;
  shop.bring_to("P03-C", Stage::polished);
  const auto lines = shop.take(step({"P03-C"}, Stage::scrapped, "bubble on the axis"));
  ASSERT_TRUE(lines.ok());
  EXPECT_EQ(lines->front().back_to, Stage::moulded);
  EXPECT_EQ(shop.now().stage_of("P03-C"), Stage::scrapped);
  EXPECT_EQ(refusal(shop.take(step({"P03-C"}, Stage::cast))),
            "P03-C is scrapped and starts again from moulded. Record moulded first, or write in a note why it "
            "is cast.");
  EXPECT_TRUE(shop.take(step({"P03-C"}, Stage::moulded)).ok());
  EXPECT_TRUE(shop.now().back_to.empty());
}

TEST(Scrapping, ALostMouldOrMasterStartsAgainOneStageBefore) {
  Shop shop;
  shop.bring_to("P03-C", Stage::moulded);
  EXPECT_EQ(shop.take(step({"P03-C"}, Stage::scrapped, "mould torn"))->front().back_to, Stage::mastered);
  shop.bring_to("P03-U07", Stage::mastered);
  EXPECT_EQ(shop.take(step({"P03-U07"}, Stage::scrapped, "print warped"))->front().back_to, Stage::drawn);
}

TEST(Scrapping, TheStageToGoBackToMayBeNamed) {
  Shop shop;
  shop.bring_to("P03-C", Stage::annealed);
  StepRequest request = step({"P03-C"}, Stage::scrapped, "master found 0.4 mm short");
  request.back_to = Stage::drawn;
  ASSERT_TRUE(shop.take(request).ok());
  EXPECT_EQ(shop.take(step({"P03-C"}, Stage::moulded)).problem().code, "wrong_restart");
  EXPECT_TRUE(shop.take(step({"P03-C"}, Stage::drawn)).ok());
}

TEST(Scrapping, AStageNotYetPassedCannotBeGoneBackTo) {
  Shop shop;
  shop.bring_to("P03-C", Stage::cast);
  StepRequest request = step({"P03-C"}, Stage::scrapped, "cracked");
  request.back_to = Stage::cast;
  EXPECT_EQ(refusal(shop.take(request)),
            "P03-C is cast, so it cannot start again from cast. Name a stage before cast.");
  request.back_to = Stage::scrapped;
  EXPECT_EQ(shop.take(request).problem().code, "wrong_back_to");
}

TEST(Scrapping, AStageToGoBackToBelongsToScrappingOnly) {
  Shop shop;
  StepRequest request = step({"P03-C"}, Stage::mastered);
  request.back_to = Stage::drawn;
  EXPECT_EQ(shop.take(request).problem().code, "back_to_without_scrap");
}

TEST(Scrapping, APrismIsNotScrappedTwice) {
  Shop shop;
  shop.bring_to("P03-C", Stage::cast);
  ASSERT_TRUE(shop.take(step({"P03-C"}, Stage::scrapped, "cracked")).ok());
  EXPECT_EQ(shop.take(step({"P03-C"}, Stage::scrapped, "cracked")).problem().code, "already_there");
}

TEST(Zones, AMarkGivesItsZoneWithoutPanelAndPart) {
  EXPECT_EQ(zone_of_mark("P03-R2a"), "R2");
  EXPECT_EQ(zone_of_mark("P03-R12b"), "R12");
  EXPECT_EQ(zone_of_mark("P03-C"), "C");
  EXPECT_EQ(zone_of_mark("P11-U07"), "U07");
  EXPECT_EQ(zone_of_mark("L04"), "L04");
  EXPECT_EQ(zone_of_mark(""), "");
}

TEST(Counts, EveryPrismCountsOnceByStageAndByZone) {
  Shop shop;
  shop.bring_to("P03-R2a", Stage::glazed);
  shop.bring_to("P02-R2b", Stage::cast);
  const StageCounts counts = count_stages(shop.now(), kMarks);
  EXPECT_EQ(counts.total, 8);
  EXPECT_THAT(counts.all, ElementsAre(6, 0, 0, 1, 0, 0, 0, 1, 0));
  EXPECT_THAT(counts.by_zone, UnorderedElementsAre(Pair("C", ElementsAre(2, 0, 0, 0, 0, 0, 0, 0, 0)),
                                                   Pair("R2", ElementsAre(2, 0, 0, 1, 0, 0, 0, 1, 0)),
                                                   Pair("U07", ElementsAre(2, 0, 0, 0, 0, 0, 0, 0, 0))));
}

TEST(Counts, APrismThatTheLensNoLongerHasIsLeftOut) {
  StageByMark now;
  now["P09-C"] = Stage::glazed;
  const StageCounts counts = count_stages(now, kMarks);
  EXPECT_EQ(counts.total, 8);
  EXPECT_EQ(counts.all[7], 0);
}

}  // namespace
}  // namespace prismwright
