#include <cmath>

#include "core/book/schema.h"
#include "core/book/sqlite_api.h"
#include "tests/book/golden_story.h"
#include "tests/book/works_entries.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

/// Everything that the story writes down, as one log.
WorksLog whole_log() {
  WorksLog log = golden_log();
  log.loads = golden_loads();
  return log;
}
WorksLog without_bytes(WorksLog log) {
  for (Photograph& photograph : log.photographs) photograph.bytes.clear();
  return log;
}

class BookWorks : public BookTest {
 protected:
  BookWorks() : book_(well(Lensbook::create(file("lens.lensbook"), {}))) {
    const LedgerEntry casting = golden_casting();
    well(book_.record({&casting, 1}, whole_log()));
  }
  void close() { const Lensbook closed = std::move(book_); }
  void reopen(Lensbook::Access access = Lensbook::Access::read_write) {
    close();
    book_ = well(Lensbook::open(file("lens.lensbook"), access));
  }
  /// Writes the book after some SQL by another program and answers how it is refused.
  std::string refusal_after(const std::string& whole, const std::string& sql) {
    write_bytes(file("lens.lensbook"), whole);
    {
      SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
      db.exec(sql);
    }
    const std::string altered = bytes_of(file("lens.lensbook"));
    const auto opened = Lensbook::open(file("lens.lensbook"));
    EXPECT_EQ(bytes_of(file("lens.lensbook")), altered) << sql;
    return opened.ok() ? "taken" : opened.problem().text;
  }

  Lensbook book_;
};

TEST_F(BookWorks, ReadsBackWhatWasWrittenAfterTheBookWasShut) {
  EXPECT_THAT(book_.works_log(), SaysWhat(without_bytes(whole_log())));
  reopen();
  EXPECT_THAT(book_.works_log(), SaysWhat(without_bytes(whole_log())));
  EXPECT_EQ(well(book_.photograph_bytes(1)), golden_picture());
  EXPECT_EQ(book_.ledger().at(0).serial, 1);
  EXPECT_EQ(book_.ledger().at(0).load, 1);
}

TEST_F(BookWorks, ReadsPhotographsFromAReadOnlyBookWithoutTouchingIt) {
  const std::string before = bytes_of(file("lens.lensbook"));
  reopen(Lensbook::Access::read_only);
  EXPECT_EQ(well(book_.photograph_bytes(1)), golden_picture());
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
  EXPECT_EQ(names(), std::vector<std::string>{"lens.lensbook"});
}

TEST_F(BookWorks, RefusesAPhotographThatIsNotThere) {
  const auto bytes = book_.photograph_bytes(2);
  ASSERT_FALSE(bytes.ok());
  EXPECT_EQ(bytes.problem().text, "Photograph 2 is not in this book. Take a number from its list.");
}

TEST_F(BookWorks, CountsOnInEachTableAndCastsInTheNewLoad) {
  const std::vector<LedgerEntry> castings(2, golden_casting());
  LedgerEntry in_the_first = golden_casting();
  in_the_first.load = 1;
  WorksLog more;
  more.loads = {golden_loads().front()};
  more.measurements = golden_log().measurements;
  well(book_.record(castings, more));
  well(book_.record({&in_the_first, 1}));
  ASSERT_EQ(book_.ledger().size(), 4u);
  EXPECT_EQ(book_.ledger()[1].serial, 2);
  EXPECT_EQ(book_.ledger()[2].serial, 3);
  EXPECT_EQ(book_.ledger()[2].load, 3) << "the story's two loads came before";
  EXPECT_EQ(book_.ledger()[3].serial, 4);
  EXPECT_EQ(book_.ledger()[3].load, 1);
  EXPECT_EQ(book_.works_log().measurements.back().number, 4);
}

TEST_F(BookWorks, SerialNumbersRiseThroughTheWholeBookEvenPastOnesBroughtAlong) {
  LedgerEntry brought = golden_casting();
  brought.load = 0;
  brought.serial = 40;
  LedgerEntry next = brought;
  next.serial = 0;
  const std::vector<LedgerEntry> both = {next, brought};
  well(book_.record(both));
  EXPECT_EQ(book_.ledger()[1].serial, 41);
  reopen();
  well(book_.record({&next, 1}));
  EXPECT_EQ(book_.ledger().back().serial, 42);
}

TEST_F(BookWorks, OneEntryThatDoesNotFitKeepsAllBack) {
  WorksLog bad = golden_log();
  bad.measurements.back().measured = std::nan("");
  const LedgerEntry casting = golden_casting();
  const std::string before = bytes_of(file("lens.lensbook"));
  const Done refused = book_.record({&casting, 1}, bad);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "works.number");
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
  EXPECT_EQ(book_.ledger().size(), 1u);
  EXPECT_THAT(book_.works_log(), SaysWhat(without_bytes(whole_log())));
}

TEST_F(BookWorks, IsNoStepAndIsNeverUndone) {
  EXPECT_FALSE(book_.undo_text());
  well(book_.edit(with_edge(5), "edge"));
  well(book_.undo());
  well(book_.record({}, golden_log()));
  EXPECT_EQ(well(book_.redo()), "edge");
  EXPECT_EQ(well(book_.undo()), "edge");
  EXPECT_EQ(book_.works_log().decisions.size(), 2u);
  reopen();
  EXPECT_EQ(book_.works_log().decisions.size(), 2u);
}

TEST_F(BookWorks, IsOnlyAddedToEvenBySql) {
  SQLite::Database db(file("lens.lensbook"), SQLite::OPEN_READWRITE);
  for (const std::string table : kGrowingTables) {
    if (table == "bench_readings") continue;  // has a test of its own
    for (const std::string& sql :
         {"UPDATE " + table + " SET note = 'x'", "UPDATE " + table + " SET number = 9 WHERE number = 1",
          "DELETE FROM " + table, "DELETE FROM " + table + " WHERE number = 1",
          "REPLACE INTO " + table + " SELECT * FROM " + table}) {
      try {
        db.exec(sql);
        ADD_FAILURE() << "taken: " << sql;
      } catch (const SQLite::Exception& error) {
        EXPECT_THAT(error.what(), HasSubstr("is never")) << sql;
      }
    }
  }
  reopen();
  EXPECT_THAT(book_.works_log(), SaysWhat(without_bytes(whole_log())));
}

TEST_F(BookWorks, AlteredByAnotherProgramIsRefusedAndLeftAsItIs) {
  close();
  const std::string whole = bytes_of(file("lens.lensbook"));
  for (const char* sql :
       {"INSERT INTO vessel_loads VALUES (9, '', 'syrup', '', '', 1.0, 0.0, 0.0, '', '')",
        "INSERT INTO measurements VALUES (9, '', 'P01-C', 1, 'length', 1.0, '', '')",
        "INSERT INTO decisions VALUES (9, '', 'P01-C', 1, 'accept', '', 'x')",
        "INSERT INTO shrink_readings VALUES (9, '', 'U02', 'length', 1.0, 1.0, '', '', '', '')",
        "INSERT INTO photographs VALUES (9, '', 'P01-C', 1, 'a', 'image/png', x'00', '', '')",
        "INSERT INTO spendings VALUES (9, '', 'cast', 1.0, 1.0, '', '')"})
    EXPECT_THAT(refusal_after(whole, sql), HasSubstr("altered outside Prismwright")) << sql;
  for (const std::string table : kGrowingTables) {
    EXPECT_THAT(refusal_after(whole, "DROP TABLE " + table), HasSubstr("not those of a lensbook"));
    if (table == "bench_readings") continue;
    EXPECT_THAT(refusal_after(whole, "DROP TRIGGER " + table + "_are_kept"),
                HasSubstr("not those of a lensbook"));
    // Even by one that puts the trigger back to the letter.
    const std::string trigger = table + "_are_not_lost";
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    make_schema(db);
    SQLite::Statement text(db, "SELECT sql FROM sqlite_schema WHERE name = ?");
    text.bind(1, trigger);
    ASSERT_TRUE(text.executeStep());
    const std::string sql = "DROP TRIGGER " + trigger + "; DELETE FROM " + table + " WHERE number = 1; " +
                            text.getColumn(0).getString();
    EXPECT_THAT(refusal_after(whole, sql), HasSubstr("altered outside Prismwright")) << sql;
  }
}

TEST_F(BookWorks, OneBitOfAnyEntryAlteredInTheFileIsSeen) {
  close();
  const std::string whole = bytes_of(file("lens.lensbook"));
  // A word of each table: of a load, a measurement, a decision, a reading of shrinkage, a photograph's bytes.
  for (const std::string& words :
       {std::string("straw, 1 drop"), std::string("at\nnoon"), std::string("\"short\""),
        std::string("U02height"), golden_picture().substr(20, 30), std::string("half an hour")}) {
    std::string bytes = whole;
    const std::size_t at = bytes.find(words);
    ASSERT_NE(at, std::string::npos) << words;
    bytes[at + 2] = static_cast<char>(bytes[at + 2] ^ 1);
    write_bytes(file("lens.lensbook"), bytes);
    const auto refused = Lensbook::open(file("lens.lensbook"));
    ASSERT_FALSE(refused.ok()) << words;
    EXPECT_THAT(refused.problem().text, HasSubstr("altered outside Prismwright")) << words;
  }
}

TEST_F(BookWorks, ASecondOpeningReadsAndMayNotAdd) {
  Lensbook second = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_TRUE(second.read_only());
  EXPECT_THAT(second.works_log(), SaysWhat(without_bytes(whole_log())));
  EXPECT_EQ(well(second.photograph_bytes(1)), golden_picture());
  const Done refused = second.record({}, golden_log());
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "read_only");
  EXPECT_EQ(second.works_log().decisions.size(), 1u);
}

TEST_F(BookWorks, AddsToABookOfEveryOlderVersion) {
  for (int version = 1; version < kBookVersion; ++version) {
    const std::string path = file("old" + std::to_string(version) + ".lensbook");
    write_bytes(path, bytes_of(std::string(GOLDEN_FOLDER) + "/v" + std::to_string(version) + ".lensbook"));
    {
      Lensbook old = well(Lensbook::open(path));
      const LedgerEntry casting = golden_casting();
      well(old.record({&casting, 1}, whole_log()));
    }
    const Lensbook again = well(Lensbook::open(path));
    EXPECT_EQ(again.migration_note(), "");
    EXPECT_THAT(again.works_log(), SaysWhat(without_bytes(whole_log()))) << version;
    EXPECT_EQ(again.ledger().size(), version < 7 ? 5u : 6u);
    EXPECT_EQ(again.ledger().back().serial, 1) << "older lines to cast had no serial number";
  }
}

TEST_F(BookWorks, HoldsALargePhotograph) {
  WorksLog log;
  log.photographs = {golden_log().photographs.front()};
  std::string& bytes = log.photographs[0].bytes;
  for (std::uint32_t i = 0; bytes.size() < 5'000'000; ++i) bytes += static_cast<char>(i * 2654435761U >> 24);
  well(book_.record({}, log));
  reopen();
  EXPECT_TRUE(well(book_.photograph_bytes(2)) == bytes);  // not EXPECT_EQ, which would print both
}

}  // namespace
}  // namespace prismwright
