#include "core/book/sqlite_api.h"
#include "tests/book/book_fixture.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::MatchesRegex;

class BookLedger : public BookTest {
 protected:
  BookLedger() : book_(well(Lensbook::create(file("lens.lensbook"), {}))) {
    const std::vector<LedgerEntry> lines = {
        line("P01-C", Stage::drawn, Stage::mastered),
        line("P01-U01", Stage::drawn, Stage::cast, "trial\nin \xC2\xB5 resin")};
    well(book_.record(lines));
  }
  void reopen() {
    { const Lensbook closed = std::move(book_); }
    book_ = well(Lensbook::open(file("lens.lensbook")));
  }

  Lensbook book_;
};

TEST_F(BookLedger, GivesNumbersAndTimes) {
  ASSERT_EQ(book_.ledger().size(), 2u);
  EXPECT_EQ(book_.ledger()[0].number, 1);
  EXPECT_EQ(book_.ledger()[1].number, 2);
  EXPECT_EQ(book_.ledger()[0].when_utc, book_.ledger()[1].when_utc);
  EXPECT_THAT(book_.ledger()[0].when_utc, MatchesRegex("20[0-9-]+T[0-9:]+Z"));
}

TEST_F(BookLedger, ReadsBackWhatWasRecorded) {
  LedgerEntry scrapped = line("P01-U01", Stage::cast, Stage::scrapped, "cracked");
  scrapped.back_to = Stage::mastered;
  well(book_.record({&scrapped, 1}));
  const std::vector<LedgerEntry> before = book_.ledger();
  reopen();
  ASSERT_EQ(book_.ledger().size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(book_.ledger()[i].number, before[i].number);
    EXPECT_EQ(book_.ledger()[i].when_utc, before[i].when_utc);
    EXPECT_EQ(book_.ledger()[i].mark, before[i].mark);
    EXPECT_EQ(book_.ledger()[i].from, before[i].from);
    EXPECT_EQ(book_.ledger()[i].to, before[i].to);
    EXPECT_EQ(book_.ledger()[i].by, before[i].by);
    EXPECT_EQ(book_.ledger()[i].note, before[i].note);
    EXPECT_EQ(book_.ledger()[i].back_to, before[i].back_to);
  }
  EXPECT_EQ(book_.ledger()[2].back_to, Stage::mastered);
}

TEST_F(BookLedger, IsNoStepAndIsNeverUndone) {
  EXPECT_FALSE(book_.undo_text());
  well(book_.edit(with_edge(5), "edge"));
  const LedgerEntry later = line("P01-C", Stage::mastered, Stage::moulded);
  well(book_.record({&later, 1}));
  EXPECT_EQ(well(book_.undo()), "edge");
  EXPECT_EQ(book_.ledger().size(), 3u);
  well(book_.redo());
  well(book_.undo());
  reopen();
  EXPECT_EQ(book_.ledger().size(), 3u);
  EXPECT_EQ(stages_from(book_.ledger()).stage_of("P01-C"), Stage::moulded);
}

TEST_F(BookLedger, LeavesRedoAlone) {
  well(book_.edit(with_edge(5), "edge"));
  well(book_.undo());
  const LedgerEntry later = line("P01-C", Stage::mastered, Stage::moulded);
  well(book_.record({&later, 1}));
  EXPECT_EQ(well(book_.redo()), "edge");
}

TEST_F(BookLedger, TakesNoLineAsNothing) {
  const std::string before = bytes_of(file("lens.lensbook"));
  well(book_.record({}));
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
}

TEST_F(BookLedger, IsOnlyAddedToEvenBySql) {
  SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
  for (const char* sql :
       {"UPDATE ledger SET to_stage = 'glazed'", "UPDATE ledger SET number = 9 WHERE number = 1",
        "DELETE FROM ledger", "DELETE FROM ledger WHERE number = 2",
        "INSERT OR REPLACE INTO ledger SELECT 1, when_utc, mark, from_stage, 'glazed', by_name, "
        "note, back_to_stage, serial, load FROM ledger WHERE number = 1",
        "REPLACE INTO ledger SELECT * FROM ledger"}) {
    try {
      db.exec(sql);
      ADD_FAILURE() << "taken: " << sql;
    } catch (const SQLite::Exception& error) {
      EXPECT_THAT(error.what(), HasSubstr("a line of the ledger is never")) << sql;
    }
  }
  reopen();
  EXPECT_EQ(book_.ledger().size(), 2u);
}

TEST_F(BookLedger, HoldsThousandsOfLines) {
  std::vector<LedgerEntry> lines(3000, line("P01-C", Stage::drawn, Stage::mastered, "one of many"));
  well(book_.record(lines));
  reopen();
  EXPECT_EQ(book_.ledger().size(), 3002u);
  EXPECT_EQ(book_.ledger().back().number, 3002);
}

}  // namespace
}  // namespace prismwright
