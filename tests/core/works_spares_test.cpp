#include "core/works/spares.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/works/casting_count.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

/// Two panels: U07 is one master; R2a is another solid in each panel.
const std::vector<std::string> kMarks = {"P01-U07", "P01-R2a", "P02-U07", "P02-R2a"};
const std::vector<Master> kMasters = {{"U07", 0, {{"P01-U07", false}, {"P02-U07", false}}, "", ""},
                                      {"R2a-P01", 1, {{"P01-R2a", false}}, "", ""},
                                      {"R2a-P02", 3, {{"P02-R2a", false}}, "", ""}};

/// A works that gives serial numbers as the book does.
class Shop {
 public:
  void record(const std::string& mark, std::initializer_list<Stage> stages) {
    for (const Stage to : stages) {
      StepRequest request;
      request.marks = {mark};
      request.to = to;
      request.note = "trial";
      const auto lines = plan_steps(request, now(), workable_marks(kMarks, ledger, request.marks));
      ASSERT_TRUE(lines.ok()) << lines.problem().text;
      add(*lines);
    }
  }
  void add(const std::vector<LedgerEntry>& lines) {
    for (LedgerEntry line : lines) {
      if (line.to == Stage::cast && line.serial == 0) line.serial = ++serial;
      ledger.push_back(line);
    }
  }
  Outcome<std::vector<LedgerEntry>> give(const std::string& mark, const std::string& spare,
                                         const std::string& note = "") {
    auto lines = give_spare(mark, spare, "E. Marsh", note, now(), kMasters);
    if (lines) add(*lines);
    return lines;
  }
  [[nodiscard]] StageByMark now() const { return stages_from(ledger); }

  std::vector<LedgerEntry> ledger;
  long long serial = 0;
};

std::string refusal(const Outcome<std::vector<LedgerEntry>>& outcome) {
  return outcome.ok() ? "taken" : outcome.problem().text;
}

TEST(SpareMarks, AreToldFromPrismsAndSlips) {
  for (const char* mark : {"S01-U07", "S10-C", "S100-U07", "S02-R2a-P02"})
    EXPECT_TRUE(is_spare_mark(mark)) << mark;
  for (const char* mark : {"P01-U07", "S1-U07", "S001-U07", "S00-U07", "S01-", "S01", "S-U07", "Sx1-U07",
                           "s01-U07", "S99999999999-U07", "S+1-U07", "S-1-U07", ""})
    EXPECT_FALSE(is_spare_mark(mark)) << mark;
}

TEST(SpareMarks, AreNumberedOnForEachPieceAndNeverTwice) {
  Shop shop;
  EXPECT_EQ(next_spare_mark("U07", shop.ledger), "S01-U07");
  shop.record("S01-U07", {Stage::cast});
  shop.record("S03-U07", {Stage::cast});
  shop.record("S01-R2a-P02", {Stage::cast});
  EXPECT_EQ(next_spare_mark("U07", shop.ledger), "S04-U07");
  EXPECT_EQ(next_spare_mark("R2a-P02", shop.ledger), "S02-R2a-P02");
  EXPECT_EQ(next_spare_mark("R2a-P01", shop.ledger), "S01-R2a-P01");
  ASSERT_TRUE(shop.give("P01-U07", "S03-U07").ok());
  EXPECT_EQ(next_spare_mark("U07", shop.ledger), "S04-U07") << "a mark on a label is not used again";
  EXPECT_THAT(spare_marks(shop.ledger), ElementsAre("S01-U07", "S03-U07", "S01-R2a-P02"));
}

TEST(SpareMarks, AreWorkableWhereTheLensHasTheirPiece) {
  Shop shop;
  shop.record("S01-U07", {Stage::cast});
  LedgerEntry of_an_older_lens;
  of_an_older_lens.mark = "S01-U30";
  shop.ledger.push_back(of_an_older_lens);
  const std::vector<std::string> asked = {"S02-U07",     "S02-U07", "S01-R2a-P02",
                                          "S01-R2a-P03", "P09-U07", "S01-L01"};
  EXPECT_THAT(workable_marks(kMarks, shop.ledger, asked),
              ElementsAre("P01-U07", "P01-R2a", "P02-U07", "P02-R2a", "S01-U07", "S02-U07", "S01-R2a-P02"));
  EXPECT_THAT(workable_marks(kMarks, {}), testing::ElementsAreArray(kMarks));
}

TEST(SpareMarks, BelongToTheMasterOfTheirNameElseTheFirstOfTheirPiece) {
  EXPECT_EQ(master_of_spare(kMasters, "S01-U07"), &kMasters[0]);
  EXPECT_EQ(master_of_spare(kMasters, "S01-R2a-P02"), &kMasters[2]);
  EXPECT_EQ(master_of_spare(kMasters, "S01-R2a"), &kMasters[1]);
  EXPECT_EQ(master_of_spare(kMasters, "S01-L01"), nullptr);
}

TEST(GiveSpare, ThePrismTakesSerialAndStageAndTheMarkIsFreed) {
  Shop shop;
  shop.record("P01-U07", {Stage::cast});  // serial 1
  shop.record("S01-U07", {Stage::cast, Stage::annealed, Stage::polished});
  shop.record("P01-U07", {Stage::scrapped});
  const auto lines = shop.give("P01-U07", "S01-U07", "bubble in the first");
  ASSERT_TRUE(lines.ok()) << lines.problem().text;
  ASSERT_EQ(lines->size(), 2u);
  EXPECT_EQ((*lines)[0].from, Stage::scrapped);
  EXPECT_EQ((*lines)[0].to, Stage::polished);
  EXPECT_EQ((*lines)[0].serial, 2);
  EXPECT_EQ((*lines)[0].by, "E. Marsh");
  EXPECT_EQ((*lines)[0].note, "given the spare S01-U07: bubble in the first");
  EXPECT_EQ((*lines)[1].note, "given to P01-U07: bubble in the first");
  EXPECT_FALSE(gives_away((*lines)[0]));
  EXPECT_TRUE(gives_away((*lines)[1]));
  const StageByMark now = shop.now();
  EXPECT_EQ(now.stage_of("P01-U07"), Stage::polished);
  EXPECT_EQ(now.serial.at("P01-U07"), 2);
  EXPECT_EQ(now.stage_of("S01-U07"), Stage::drawn);
  EXPECT_FALSE(now.serial.contains("S01-U07"));
  EXPECT_FALSE(now.back_to.contains("P01-U07"));
  // And it goes on from there under its own number.
  shop.record("P01-U07", {Stage::proved});
  EXPECT_EQ(shop.ledger.back().serial, 2);
}

TEST(GiveSpare, NoCastingIsMadeOrLostByIt) {
  Shop shop;
  shop.record("P01-U07", {Stage::cast, Stage::scrapped});
  shop.record("S01-U07", {Stage::cast});
  ASSERT_TRUE(shop.give("P01-U07", "S01-U07").ok());
  int made = 0;
  int scrapped = 0;
  for (const auto& [mark, count] : count_castings(shop.ledger)) {
    made += count.made;
    scrapped += count.scrapped;
  }
  EXPECT_EQ(made, 2);
  EXPECT_EQ(scrapped, 1);
}

TEST(GiveSpare, APrismBehindCastTakesOneToo) {
  Shop shop;
  shop.record("S01-U07", {Stage::cast});
  ASSERT_TRUE(shop.give("P02-U07", "S01-U07").ok());
  EXPECT_EQ(shop.now().stage_of("P02-U07"), Stage::cast);
  EXPECT_EQ(shop.now().serial.at("P02-U07"), 1) << "no second number for the same casting";
}

TEST(GiveSpare, IsRefusedWithAReason) {
  Shop shop;
  shop.record("S01-U07", {Stage::cast});
  shop.record("S02-U07", {Stage::moulded});
  shop.record("S03-U07", {Stage::cast, Stage::scrapped});
  shop.record("S01-R2a-P02", {Stage::cast});
  shop.record("P01-U07", {Stage::annealed});
  EXPECT_EQ(refusal(shop.give("P01-U07", "S01-U07")),
            "P01-U07 is annealed and has a casting. Scrap that first if it is to have another.");
  EXPECT_EQ(
      refusal(shop.give("P02-U07", "S02-U07")),
      "S02-U07 is moulded; a spare is given from cast to proved. Take another spare, or record it first.");
  EXPECT_THAT(refusal(shop.give("P02-U07", "S03-U07")), HasSubstr("S03-U07 is scrapped"));
  EXPECT_THAT(refusal(shop.give("P02-U07", "S09-U07")), HasSubstr("S09-U07 is drawn"));
  EXPECT_EQ(refusal(shop.give("P01-R2a", "S01-R2a-P02")),
            "S01-R2a-P02 is a spare of another piece; P01-R2a is cast from R2a-P01. Take a spare of that, for "
            "instance S01-R2a-P01.");
  EXPECT_THAT(refusal(shop.give("P02-R2a", "S01-U07")), HasSubstr("is a spare of another piece"));
  EXPECT_EQ(refusal(shop.give("P07-U07", "S01-U07")),
            "P07-U07 is no prism of this lens. Take a mark from its list of prisms.");
  EXPECT_EQ(refusal(shop.give("P02-U07", "P01-U07")),
            "\"P01-U07\" is no mark of a spare. They are written like S01-U07.");
  EXPECT_EQ(shop.now().stage_of("S01-U07"), Stage::cast) << "nothing moved";
}

}  // namespace
}  // namespace prismwright
