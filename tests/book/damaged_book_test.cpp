#include <fcntl.h>
#include <sys/stat.h>

#include <random>

#include "core/book/book_making.h"
#include "core/book/sqlite_api.h"
#include "tests/book/book_fixture.h"

namespace prismwright {
namespace {

using testing::AnyOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

/// A book with steps and a ledger, and its bytes; tests alter copies of it.
class DamagedBook : public BookTest {
 protected:
  DamagedBook() {
    {
      Lensbook book = well(Lensbook::create(file("whole.lensbook"), {}));
      well(book.edit(with_edge(5), "first"));
      well(book.edit(with_edge(6), "second"));
      well(book.undo());
      const std::vector<LedgerEntry> lines(40, line("P01-C", Stage::drawn, Stage::mastered, "from print 7"));
      well(book.record(lines));
    }
    whole_ = bytes_of(file("whole.lensbook"));
    std::filesystem::remove(file("whole.lensbook"));
  }

  /// Opens `bytes` as a book, which must be refused without a trace; answers why.
  Problem refusal(const std::string& bytes) {
    write_bytes(file("lens.lensbook"), bytes);
    const auto outcome = Lensbook::open(file("lens.lensbook"));
    EXPECT_EQ(bytes_of(file("lens.lensbook")), bytes) << "a refused file was written to";
    EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
    if (outcome.ok()) return request_problem("taken", "", "taken");
    EXPECT_EQ(outcome.problem().trouble, Trouble::file);
    EXPECT_EQ(outcome.problem().where, file("lens.lensbook"));
    return outcome.problem();
  }

  /// The whole book after some SQL by another program.
  std::string after(const std::string& sql) {
    write_bytes(file("altered.lensbook"), whole_);
    {
      SQLite::Database db(file("altered.lensbook"), SQLite::OPEN_READWRITE);
      db.exec(sql);
    }
    std::string bytes = bytes_of(file("altered.lensbook"));
    std::filesystem::remove(file("altered.lensbook"));
    return bytes;
  }

  std::string whole_;
};

TEST_F(DamagedBook, ThatIsWholeAfterAllOpens) {
  write_bytes(file("lens.lensbook"), whole_);
  const Lensbook book = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_THAT(book.values(), HasValuesOf(with_edge(5)));
  EXPECT_EQ(book.ledger().size(), 40u);
}

TEST_F(DamagedBook, ThatIsMissing) {
  const auto outcome = Lensbook::open(file("gone.lensbook"));
  ASSERT_FALSE(outcome.ok());
  EXPECT_EQ(outcome.problem().trouble, Trouble::file);
  EXPECT_THAT(outcome.problem().text, HasSubstr("gone.lensbook does not exist. Check its name and folder."));
  EXPECT_EQ(names().size(), 0u);
}

TEST_F(DamagedBook, BelowAFileOrWithoutAName) {
  write_bytes(file("plain"), "x");
  EXPECT_EQ(Lensbook::open(file("plain") + "/lens.lensbook").problem().trouble, Trouble::file);
  EXPECT_EQ(Lensbook::open("").problem().trouble, Trouble::file);
}

TEST_F(DamagedBook, ThatIsAFolder) {
  const auto outcome = Lensbook::open(folder_.string());
  ASSERT_FALSE(outcome.ok());
  EXPECT_THAT(outcome.problem().text, HasSubstr("is a folder, not a lensbook"));
}

TEST_F(DamagedBook, ThatIsADevice) {
  EXPECT_THAT(Lensbook::open("/dev/zero").problem().text, HasSubstr("is a device, not a lensbook"));
  ASSERT_EQ(::mkfifo(file("pipe.lensbook").c_str(), 0600), 0);
  EXPECT_THAT(Lensbook::open(file("pipe.lensbook")).problem().text, HasSubstr("is a device, not a lensbook"));
}

TEST_F(DamagedBook, ThatIsEmpty) {
  EXPECT_EQ(refusal("").text,
            "lens.lensbook is empty (0 bytes), so it is no lensbook. Go back to a copy of it.");
}

TEST_F(DamagedBook, ThatIsAText) {
  EXPECT_EQ(
      refusal("Dear harbour master,\n").text,
      "lens.lensbook is not a lensbook: it does not begin as one does. Open a file that Prismwright has made.");
  EXPECT_EQ(refusal(std::string(9000, 'x')).code, "not_a_lensbook");
}

TEST_F(DamagedBook, ThatIsADatabaseOfAnotherKind) {
  EXPECT_THAT(refusal(after("PRAGMA application_id = 1234")).text,
              HasSubstr("it is a database of another kind"));
}

TEST_F(DamagedBook, OfANewerVersion) {
  EXPECT_EQ(
      refusal(after("PRAGMA user_version = 8")).text,
      "lens.lensbook was written by a newer Prismwright (book version 8; this one reads up to 7). Open it with "
      "the newer program.");
}

TEST_F(DamagedBook, WithoutAVersion) {
  EXPECT_EQ(refusal(after("PRAGMA user_version = 0")).code, "damaged");
  EXPECT_EQ(refusal(after("PRAGMA user_version = -5")).code, "damaged");
}

TEST_F(DamagedBook, ThatOnlySaysItIsOlder) {
  EXPECT_EQ(refusal(after("PRAGMA user_version = 1")).code, "damaged");
}

TEST_F(DamagedBook, CutShortAnywhere) {
  for (std::size_t size = 1; size < whole_.size(); size += 331) {
    const Problem problem = refusal(whole_.substr(0, size));
    EXPECT_THAT(problem.code, AnyOf("truncated", "not_a_lensbook")) << size << " bytes: " << problem.text;
  }
  EXPECT_THAT(refusal(whole_.substr(0, whole_.size() - 1)).text, HasSubstr("is cut short"));
}

TEST_F(DamagedBook, WithATableMissingOrAnother) {
  for (const char* sql : {"DROP TABLE frame", "CREATE TABLE extra (a)", "DROP TRIGGER ledger_loses_no_line",
                          "ALTER TABLE section ADD COLUMN extra", "ALTER TABLE step DROP COLUMN what"})
    EXPECT_THAT(refusal(after(sql)).text, HasSubstr("its tables are not those of a lensbook")) << sql;
}

TEST_F(DamagedBook, AlteredByAnotherProgram) {
  for (const char* sql :
       {"UPDATE section SET edge_mm = 5.5", "DELETE FROM panel WHERE number = 8", "UPDATE step SET undone = 0",
        "UPDATE step SET what = 'nothing' WHERE number = 1",
        "INSERT INTO ledger VALUES (99, '', 'P01-C', 'drawn', 'glazed', '', '', NULL, NULL, NULL)",
        "UPDATE frame SET ring_mm = 'wide'", "DELETE FROM brief", "DELETE FROM seal"})
    EXPECT_THAT(refusal(after(sql)).text, HasSubstr("altered outside Prismwright")) << sql;
}

TEST_F(DamagedBook, InWriteAheadForm) {
  // Merely asking SQLite to read it would leave files beside it.
  EXPECT_EQ(refusal(after("PRAGMA journal_mode = WAL")).code, "damaged");
}

TEST_F(DamagedBook, WithValuesThatNoLensCanHave) {
  // Whole and sealed, as if a program with wider limits had written it.
  well(make_book(BookName(file("made.lensbook")), with_edge(-3)));
  const std::string bytes = bytes_of(file("made.lensbook"));
  std::filesystem::remove(file("made.lensbook"));
  const Problem problem = refusal(bytes);
  EXPECT_EQ(problem.code, "unfit_values");
  EXPECT_THAT(problem.text, HasSubstr("section.edge_mm is -3 mm"));
}

/// What an altered book may do: be refused with a sentence and left alone, or say exactly what it said before
/// (the alteration hit room that holds nothing). Answers whether it was refused.
bool expect_refused_or_same(const std::string& path, const std::string& altered, const std::string& what) {
  write_bytes(path, altered);
  auto outcome = Lensbook::open(path, Lensbook::Access::read_only);
  if (!outcome.ok()) {
    EXPECT_THAT(outcome.problem().text, StartsWith("lens.lensbook ")) << what;
    EXPECT_EQ(outcome.problem().trouble, Trouble::file) << what;
  } else {
    EXPECT_THAT(outcome->values(), HasValuesOf(with_edge(5))) << what;
    EXPECT_EQ(outcome->ledger().size(), 40u) << what;
    EXPECT_EQ(outcome->ledger().back().note, "from print 7") << what;
    EXPECT_EQ(outcome->undo_text(), "first") << what;
    EXPECT_EQ(outcome->redo_text(), "second") << what;
  }
  EXPECT_EQ(bytes_of(path), altered) << what;
  return !outcome.ok();
}

TEST_F(DamagedBook, WithThreeHundredRandomAlterations) {
  std::mt19937 random(20260301);  // fixed: the same alterations every time
  int refused = 0;
  for (int round = 0; round < 300; ++round) {
    std::string altered = whole_;
    const int flips = 1 + static_cast<int>(random() % 4);
    for (int flip = 0; flip < flips; ++flip) altered[random() % altered.size()] = static_cast<char>(random());
    refused += expect_refused_or_same(file("lens.lensbook"), altered, "round " + std::to_string(round)) ? 1 : 0;
  }
  RecordProperty("refused", refused);
  EXPECT_GT(refused, 60);
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
}

TEST_F(DamagedBook, WithOneByteAlteredWhereSomethingStands) {
  // Random places mostly hit empty room; these hit the header and every byte that is not zero, in turn.
  int refused = 0;
  int round = 0;
  for (std::size_t at = 0; at < whole_.size(); at += at < 100 ? 1 : 13) {
    if (at >= 100 && whole_[at] == 0) continue;
    std::string altered = whole_;
    altered[at] = static_cast<char>(altered[at] ^ (1 << (round++ % 8)));
    refused += expect_refused_or_same(file("lens.lensbook"), altered, "byte " + std::to_string(at)) ? 1 : 0;
  }
  RecordProperty("refused", refused);
  RecordProperty("of", round);
  EXPECT_GT(refused, round * 9 / 10) << "of " << round;
}

TEST_F(DamagedBook, RefusedForWritingToo) {
  std::mt19937 random(7);
  for (int round = 0; round < 60; ++round) {
    std::string altered = whole_;
    for (int flip = 0; flip < 40; ++flip) altered[random() % altered.size()] = static_cast<char>(random());
    write_bytes(file("lens.lensbook"), altered);
    const bool opened = Lensbook::open(file("lens.lensbook")).ok();
    EXPECT_FALSE(opened) << "round " << round;
    EXPECT_EQ(bytes_of(file("lens.lensbook")), altered) << "round " << round;
    EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
  }
}

TEST_F(DamagedBook, WithAJournalThatDoesNotBelongToIt) {
  // A journal that is no journal rolls nothing back; the book beside it is whole.
  write_bytes(file("lens.lensbook"), whole_);
  write_bytes(file("lens.lensbook-journal"), std::string(4096, 'j'));
  const auto outcome = Lensbook::open(file("lens.lensbook"));
  ASSERT_TRUE(outcome.ok()) << outcome.problem().text;
  EXPECT_THAT(outcome->values(), HasValuesOf(with_edge(5)));
}

TEST_F(DamagedBook, ThatIsATextBesideAJournal) {
  write_bytes(file("lens.lensbook"), "Dear harbour master,\n");
  for (const std::string& journal : {std::string(), std::string(600, 'j')}) {
    write_bytes(file("lens.lensbook-journal"), journal);
    EXPECT_EQ(Lensbook::open(file("lens.lensbook")).problem().code, "not_a_lensbook");
    EXPECT_EQ(bytes_of(file("lens.lensbook")), "Dear harbour master,\n");
    EXPECT_EQ(bytes_of(file("lens.lensbook-journal")), journal);
  }
}

TEST_F(DamagedBook, BesideAJournalIsStillRefusedAndLeftAsItIs) {
  std::string altered = whole_;
  std::fill(altered.begin() + 4096, altered.begin() + 4096 * 5, 'x');
  write_bytes(file("lens.lensbook"), altered);
  write_bytes(file("lens.lensbook-journal"), std::string(4096, 'j'));
  const auto outcome = Lensbook::open(file("lens.lensbook"));
  ASSERT_FALSE(outcome.ok());
  EXPECT_EQ(outcome.problem().code, "damaged");
  EXPECT_EQ(bytes_of(file("lens.lensbook")), altered);
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.lensbook-journal"));
}

}  // namespace
}  // namespace prismwright
