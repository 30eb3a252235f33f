#include <gmock/gmock.h>

#include "core/book/lensbook.h"
#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class WorksRecordAct : public WorksDeskTest {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "4"});
  }
  void bring_to_moulded(const std::string& marks) {
    for (const char* stage : {"mastered", "moulded"}) ASSERT_EQ(works({"record", marks, stage}).code, 0);
  }
};

TEST_F(WorksRecordAct, ATrayThatIsCastGetsNumbersAndTheirLoadIsKept) {
  bring_to_moulded("P0*-C");
  const Answer cast = works({"record", "P0*-C", "cast", "--lot", "A-7", "--resin", "clear", "--resin-g", "3100",
                             "--tint", "none", "--by", "shop"});
  ASSERT_EQ(cast.code, 0) << cast.err;
  EXPECT_THAT(cast.out, HasSubstr("8 prisms recorded as cast, castings nos. 1 to 8, load 1."));
  const auto list = works({"list", "--json"}).json();
  EXPECT_EQ(row_where(list.at("prisms"), "mark", "P03-C").at("serial"), 3);
  EXPECT_EQ(list.at("ledger").back().at("load"), 1);
  EXPECT_TRUE(row_where(list.at("prisms"), "mark", "P01-R1").at("serial").is_null());
  const auto book = Lensbook::open(book_, Lensbook::Access::read_only);
  ASSERT_TRUE(book.ok());
  ASSERT_EQ(book->works_log().loads.size(), 1u);
  EXPECT_EQ(book->works_log().loads[0].resin_lot, "A-7");
  EXPECT_EQ(book->works_log().loads[0].resin_g, 3100);
}

TEST_F(WorksRecordAct, ALaterTrayMayBeOfALoadRecordedBeforeButOfNoOther) {
  bring_to_moulded("P0*-C");
  ASSERT_EQ(works({"record", "P01-C", "cast", "--resin", "clear"}).code, 0);
  ASSERT_EQ(works({"record", "P02-C", "cast", "--load", "1"}).code, 0);
  const Answer refused = works({"record", "P03-C", "cast", "--load", "9"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("No load 9"));
  EXPECT_EQ(works({"record", "P03-C", "cast", "--load", "1", "--lot", "B"}).code, 2) << "one or the other";
  EXPECT_EQ(works({"record", "P04-C", "mastered", "--load", "1", "--note", "again"}).code, 2)
      << "only castings come of a load";
}

TEST_F(WorksRecordAct, ANumberOrAScannedCodeStandsForItsPrism) {
  bring_to_moulded("P0*-C");
  ASSERT_EQ(works({"record", "P0*-C", "cast"}).code, 0);
  ASSERT_EQ(works({"record", "3", "PRISMWRIGHT a lens of some name P05-C 5", "annealed"}).code, 0);
  const auto list = works({"list", "--json"}).json();
  EXPECT_EQ(row_where(list.at("prisms"), "mark", "P03-C").at("stage"), "annealed");
  EXPECT_EQ(row_where(list.at("prisms"), "mark", "P05-C").at("stage"), "annealed");
  EXPECT_EQ(list.at("counts").at("annealed"), 2);
  const Answer refused = works({"record", "99", "annealed"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.err, HasSubstr("casting no. 99"));
}

TEST_F(WorksRecordAct, ACorrectionIsANewLineThatSaysWhy) {
  ASSERT_EQ(works({"record", "P01-C", "mastered"}).code, 0);
  EXPECT_EQ(works({"correct", "P01-C", "drawn"}).code, 2) << "without a note";
  EXPECT_EQ(works({"correct", "P01-C", "drawn", "--note", " "}).code, 2) << "a blank is no note";
  ASSERT_EQ(works({"correct", "P01-C", "drawn", "--note", "it was P02"}).code, 0);
  const auto ledger = works({"list", "--json"}).json().at("ledger");
  ASSERT_EQ(ledger.size(), 2u);
  EXPECT_EQ(ledger[1].at("to"), "drawn");
  EXPECT_EQ(ledger[1].at("note"), "correction: it was P02");
  EXPECT_EQ(works({"correct", "P01-C", "scrapped", "--note", "it broke"}).code, 2);
}

TEST_F(WorksRecordAct, TheWholeLifeOfAPrismIsToldScrappedCastingsToo) {
  bring_to_moulded("P01-C");
  ASSERT_EQ(works({"record", "P01-C", "cast", "--resin", "clear", "--lot", "A-7"}).code, 0);
  ASSERT_EQ(works({"record", "P01-C", "scrapped", "--note", "crazed"}).code, 0);
  ASSERT_EQ(works({"record", "P01-C", "moulded"}).code, 0);
  ASSERT_EQ(works({"record", "P01-C", "cast", "--load", "1"}).code, 0);
  const Answer life = works({"life", "P01-C", "--json", "--csv", at("life.csv")});
  ASSERT_EQ(life.code, 0) << life.err;
  EXPECT_GE(life.json().size(), 6u);
  EXPECT_THAT(life.out, HasSubstr("crazed"));
  EXPECT_THAT(life.out, HasSubstr("A-7"));
  EXPECT_THAT(bytes_of(at("life.csv")), HasSubstr("crazed"));
  const Answer first = works({"life", "1", "--json"});
  ASSERT_EQ(first.code, 0) << first.err;
  EXPECT_THAT(first.out, HasSubstr("crazed"));
  EXPECT_LT(first.json().size(), life.json().size());
  EXPECT_EQ(works({"life", "77"}).code, 2);
}

TEST_F(WorksRecordAct, ASpareGoesThroughTheStagesAndIsGivenToAPrismWithItsNumber) {
  for (const char* stage : {"mastered", "moulded", "cast"})
    ASSERT_EQ(works({"record", "S01-C", stage}).code, 0) << stage;
  const auto list = works({"spare", "list", "--json", "--csv", at("spares.csv")}).json();
  EXPECT_THAT(bytes_of(at("spares.csv")), testing::StartsWith("mark,stage,serial\nS01-C,cast,1\n"));
  EXPECT_EQ(row_where(list.at("spares"), "mark", "S01-C").at("serial"), 1);
  EXPECT_EQ(list.at("next_marks").at("C"), "S02-C");
  const Answer wrong = works({"spare", "give", "S01-C", "P01-R1"});
  EXPECT_EQ(wrong.code, 2) << "of another master";
  const Answer given = works({"spare", "give", "S01-C", "P02-C", "--by", "shop"});
  ASSERT_EQ(given.code, 0) << given.err;
  EXPECT_EQ(given.out, "P02-C is casting no. 1 now, that was S01-C.\n");
  const auto prisms = works({"list", "--json"}).json().at("prisms");
  EXPECT_EQ(row_where(prisms, "mark", "P02-C").at("stage"), "cast");
  EXPECT_EQ(row_where(prisms, "mark", "P02-C").at("serial"), 1);
}

TEST_F(WorksRecordAct, TheLedgerIsSavedAsATable) {
  ASSERT_EQ(works({"record", "P01-C", "mastered", "--by", "bench, 4"}).code, 0);
  ASSERT_EQ(works({"list", "--prisms", "--csv", at("ledger.csv")}).code, 0);
  const std::string table = bytes_of(at("ledger.csv"));
  EXPECT_THAT(table, testing::StartsWith("number,when_utc,mark,from,to,by,note,back_to,serial,load\n"));
  EXPECT_THAT(table, HasSubstr("\"bench, 4\""));
}

}  // namespace
}  // namespace prismwright
