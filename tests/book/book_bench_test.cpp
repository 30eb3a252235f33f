#include <cmath>

#include "core/book/schema.h"
#include "core/book/sqlite_api.h"
#include "tests/book/golden_story.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::MatchesRegex;

BenchReading reading(const std::string& mark, double height_mm, const std::string& note = "") {
  return {0, "", mark, height_mm, -3.1 - 1.0 / 3.0, 5000, "E. Marsh", note};
}

class BookBench : public BookTest {
 protected:
  BookBench() : book_(well(Lensbook::create(file("lens.lensbook"), {}))) {
    const std::vector<BenchReading> first = {reading("P01-U01", 12.5),
                                             reading("P01-C", 0.1, "at\ndusk \xC2\xB5")};
    well(book_.record_readings(first));
  }
  void reopen() {
    { const Lensbook closed = std::move(book_); }
    book_ = well(Lensbook::open(file("lens.lensbook")));
  }
  void add(const BenchReading& one) { well(book_.record_readings({&one, 1})); }

  Lensbook book_;
};

TEST_F(BookBench, GivesNumbersAndTimes) {
  add(reading("P01-U01", 1));
  ASSERT_EQ(book_.readings().size(), 3u);
  for (long long i = 0; i < 3; ++i) EXPECT_EQ(book_.readings()[static_cast<std::size_t>(i)].number, i + 1);
  EXPECT_THAT(book_.readings()[0].when_utc, MatchesRegex("20[0-9-]+T[0-9:]+Z"));
}

TEST_F(BookBench, ReadsBackWhatWasReadAfterTheBookWasShut) {
  add(reading("P01-U01", 4.1 + 1.0 / 3.0, "after the shim"));
  const std::vector<BenchReading> before = book_.readings();
  reopen();
  ASSERT_EQ(book_.readings().size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(book_.readings()[i].number, before[i].number);
    EXPECT_EQ(book_.readings()[i].when_utc, before[i].when_utc);
    EXPECT_EQ(book_.readings()[i].mark, before[i].mark);
    EXPECT_EQ(book_.readings()[i].height_mm, before[i].height_mm);
    EXPECT_EQ(book_.readings()[i].aside_mm, before[i].aside_mm);
    EXPECT_EQ(book_.readings()[i].board_mm, before[i].board_mm);
    EXPECT_EQ(book_.readings()[i].by, before[i].by);
    EXPECT_EQ(book_.readings()[i].note, before[i].note);
  }
}

TEST_F(BookBench, IsNoStepAndIsNeverUndone) {
  EXPECT_FALSE(book_.undo_text());
  well(book_.edit(with_edge(5), "edge"));
  well(book_.undo());
  add(reading("P01-U01", 1));
  EXPECT_EQ(well(book_.redo()), "edge") << "a reading leaves redo alone";
  EXPECT_EQ(well(book_.undo()), "edge");
  EXPECT_EQ(book_.readings().size(), 3u);
  reopen();
  EXPECT_EQ(book_.readings().size(), 3u);
}

TEST_F(BookBench, TakesNoReadingAsNothing) {
  const std::string before = bytes_of(file("lens.lensbook"));
  well(book_.record_readings({}));
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
}

TEST_F(BookBench, OneReadingThatCannotBeKeepsAllBack) {
  const std::vector<BenchReading> two = {reading("P01-U01", 1), reading("P01-U02", std::nan(""))};
  EXPECT_FALSE(book_.record_readings(two).ok());
  EXPECT_EQ(book_.readings().size(), 2u);
  reopen();
  EXPECT_EQ(book_.readings().size(), 2u);
}

TEST_F(BookBench, IsOnlyAddedToEvenBySql) {
  SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
  for (const char* sql :
       {"UPDATE bench_readings SET height_mm = 0", "UPDATE bench_readings SET number = 9 WHERE number = 1",
        "DELETE FROM bench_readings", "DELETE FROM bench_readings WHERE number = 2",
        "REPLACE INTO bench_readings SELECT * FROM bench_readings",
        "INSERT OR REPLACE INTO bench_readings VALUES (1, '', 'P01-C', 0, 0, 5000, '', '')"}) {
    try {
      db.exec(sql);
      ADD_FAILURE() << "taken: " << sql;
    } catch (const SQLite::Exception& error) {
      EXPECT_THAT(error.what(), HasSubstr("a reading of the bench is never")) << sql;
    }
  }
  reopen();
  EXPECT_EQ(book_.readings().size(), 2u);
}

TEST_F(BookBench, AlteredByAnotherProgramIsRefusedAndLeftAsItIs) {
  { const Lensbook closed = std::move(book_); }
  const std::string whole = bytes_of(file("lens.lensbook"));
  for (const char* sql :
       {"INSERT INTO bench_readings VALUES (99, '', 'P01-C', 0, 0, 5000, '', '')",
        "DROP TRIGGER bench_keeps_its_readings; UPDATE bench_readings SET height_mm = 0.2 WHERE number = 2",
        "DROP TABLE bench_readings"}) {
    write_bytes(file("lens.lensbook"), whole);
    {
      SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
      db.exec(sql);
    }
    const std::string altered = bytes_of(file("lens.lensbook"));
    const auto refused = Lensbook::open(file("lens.lensbook"));
    ASSERT_FALSE(refused.ok()) << sql;
    EXPECT_EQ(refused.problem().code, "damaged") << sql;
    EXPECT_EQ(bytes_of(file("lens.lensbook")), altered) << sql;
  }
}

TEST_F(BookBench, OneBitOfAReadingAlteredInTheFileIsSeen) {
  { const Lensbook closed = std::move(book_); }
  std::string bytes = bytes_of(file("lens.lensbook"));
  const std::size_t at = bytes.find("at\ndusk");
  ASSERT_NE(at, std::string::npos);
  bytes[at] = 'b';
  write_bytes(file("lens.lensbook"), bytes);
  const auto refused = Lensbook::open(file("lens.lensbook"));
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("altered outside Prismwright"));
}

TEST_F(BookBench, ASecondOpeningReadsAndMayNotAdd) {
  Lensbook second = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_TRUE(second.read_only());
  EXPECT_EQ(second.readings().size(), 2u);
  const BenchReading one = reading("P01-U01", 1);
  const Done refused = second.record_readings({&one, 1});
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "read_only");
  EXPECT_EQ(second.readings().size(), 2u);
}

TEST_F(BookBench, AddsToABookOfEveryOlderVersion) {
  for (int version = 1; version < kBookVersion; ++version) {
    const std::string path = file("old" + std::to_string(version) + ".lensbook");
    write_bytes(path, bytes_of(std::string(GOLDEN_FOLDER) + "/v" + std::to_string(version) + ".lensbook"));
    {
      Lensbook old = well(Lensbook::open(path));
      EXPECT_THAT(old.migration_note(), HasSubstr("is kept as"));
      const BenchReading one = reading("P01-U01", 1);
      well(old.record_readings({&one, 1}));
    }
    const Lensbook again = well(Lensbook::open(path));
    EXPECT_EQ(again.migration_note(), "");
    const std::size_t before = version < 5 ? 0 : golden_readings().size();  // the table came with version 5
    EXPECT_EQ(again.readings().size(), before + 1);
    EXPECT_EQ(again.ledger().size(), 4u);
  }
}

TEST_F(BookBench, HoldsThousandsOfReadings) {
  const std::vector<BenchReading> many(3000, reading("P01-C", 0.2, "one of many"));
  well(book_.record_readings(many));
  reopen();
  ASSERT_EQ(book_.readings().size(), 3002u);
  EXPECT_EQ(book_.readings().back().number, 3002);
}

}  // namespace
}  // namespace prismwright
