#include <gmock/gmock.h>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class WorksVerb : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "4"});
  }
  nlohmann::json list() { return ask({"works", book_, "list", "--json"}).json(); }

  std::string book_;
};

TEST_F(WorksVerb, EveryPrismStartsDrawn) {
  const auto works = list();
  EXPECT_EQ(works.at("counts").at("drawn"), works.at("total"));
  EXPECT_EQ(works.at("prisms").size(), works.at("total").get<std::size_t>());
  EXPECT_TRUE(works.at("ledger").empty());
}

TEST_F(WorksVerb, ManyPrismsAreRecordedAtOnce) {
  const Answer answer = ask({"works", book_, "record", "P01-*", "P02-C", "mastered", "--by", "print room"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  const auto works = list();
  const int mastered = works.at("counts").at("mastered").get<int>();
  EXPECT_GT(mastered, 2);
  EXPECT_EQ(works.at("ledger").size(), static_cast<std::size_t>(mastered));
  EXPECT_EQ(row_where(works.at("prisms"), "mark", "P02-C").at("stage"), "mastered");
  EXPECT_EQ(works.at("ledger")[0].at("by"), "print room");
  EXPECT_EQ(row_where(works.at("zones"), "zone", "C").at("counts").at("mastered"), 2);
  int over_zones = 0;
  for (const auto& zone : works.at("zones")) over_zones += zone.at("counts").at("mastered").get<int>();
  EXPECT_EQ(over_zones, mastered);
}

TEST_F(WorksVerb, AStepIsNotSkippedWithoutAReason) {
  const std::string before = bytes_of(book_);
  const Answer refused = ask({"works", book_, "record", "P01-C", "cast"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("P01-C"));
  EXPECT_EQ(bytes_of(book_), before);
  EXPECT_EQ(ask({"works", book_, "record", "P01-C", "cast", "--note", "cut from stock, no mould"}).code, 0);
  EXPECT_EQ(list().at("ledger")[0].at("note"), "cut from stock, no mould");
}

TEST_F(WorksVerb, OneRefusedPrismKeepsAllBack) {
  ASSERT_EQ(ask({"works", book_, "record", "P01-C", "mastered"}).code, 0);
  const Answer refused = ask({"works", book_, "record", "P01-*", "mastered"});
  EXPECT_EQ(refused.code, 2) << "P01-C is there already";
  EXPECT_EQ(list().at("counts").at("mastered"), 1);
}

TEST_F(WorksVerb, ScrapSaysWhereThePrismStartsAgain) {
  for (const char* stage : {"mastered", "moulded", "cast"}) {
    ASSERT_EQ(ask({"works", book_, "record", "P01-C", stage}).code, 0) << stage;
  }
  ASSERT_EQ(
      ask({"works", book_, "record", "P01-C", "scrapped", "--note", "crazed", "--back-to", "mastered"}).code,
      0);
  EXPECT_EQ(list().at("ledger").back().at("back_to"), "mastered");
  EXPECT_EQ(list().at("counts").at("scrapped"), 1);
  EXPECT_EQ(ask({"works", book_, "record", "P01-C", "mastered"}).code, 0);
}

TEST_F(WorksVerb, UndoLeavesTheLedgerAlone) {
  ASSERT_EQ(ask({"set", book_, "brief.title=Tallow Ness"}).code, 0);
  ASSERT_EQ(ask({"works", book_, "record", "P01-C", "mastered"}).code, 0);
  ASSERT_EQ(ask({"undo", book_}).code, 0);
  EXPECT_EQ(list().at("ledger").size(), 1u);
}

TEST_F(WorksVerb, WhatIsNoStageOrNoMarkIsRefused) {
  const Answer stage = ask({"works", book_, "record", "P01-C", "varnished"});
  EXPECT_EQ(stage.code, 2);
  EXPECT_THAT(stage.err, HasSubstr("varnished"));
  EXPECT_THAT(stage.err, HasSubstr("annealed")) << "the stages are named";
  const Answer mark = ask({"works", book_, "record", "P88-C", "mastered"});
  EXPECT_EQ(mark.code, 2);
  EXPECT_THAT(mark.err, HasSubstr("P88-C"));
}

TEST_F(WorksVerb, TheTableCountsByZoneAndTheLedgerIsListedOnRequest) {
  ASSERT_EQ(ask({"works", book_, "record", "P01-C", "mastered", "--by", "bench 4"}).code, 0);
  const Answer counts = ask({"works", book_, "list"});
  EXPECT_THAT(counts.out, HasSubstr("0 of "));
  EXPECT_THAT(counts.out, HasSubstr("mastered"));
  EXPECT_THAT(counts.out, testing::Not(HasSubstr("bench 4")));
  EXPECT_THAT(ask({"works", book_, "list", "--ledger"}).out, HasSubstr("bench 4"));
}

}  // namespace
}  // namespace prismwright
