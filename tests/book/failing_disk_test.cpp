#include "tests/book/failing_disk.h"

#include <signal.h>
#include <sys/resource.h>

#include <functional>

#include "tests/book/book_fixture.h"
#include "tests/book/other_process.h"

namespace prismwright {
namespace {

using testing::AnyOf;
using testing::ElementsAre;
using testing::HasSubstr;
using Fault = FailingDisk::Fault;

class DiskTrouble : public BookTest {
 protected:
  DiskTrouble() : path_(file("lens.lensbook")) {
    Lensbook book = well(Lensbook::create(path_, {}));
    well(book.edit(with_edge(5), "first"));
  }
  std::string path_;
};

/// Runs `act` on a disk that fails after 0, 1, 2, ... good acts of writing, until it no longer meets the fault.
/// After each failure the book must say what its file says, on disk and in memory.
void sweep(const std::string& path, Fault fault, const std::function<Done(Lensbook&)>& act) {
  const std::string whole = bytes_of(path);
  int failures = 0;
  for (int acts = 0;; ++acts) {
    ASSERT_LT(acts, 200) << "the act never came to its end";
    std::filesystem::remove(path + "-journal");
    write_bytes(path, whole);
    const FailingDisk disk(fault, acts);
    Lensbook book = well(Lensbook::open(path));
    const LensValues before = book.values();
    const std::size_t lines = book.ledger().size();
    const Done done = act(book);
    if (!FailingDisk::met()) {
      EXPECT_TRUE(done.ok());
      break;
    }
    ++failures;
    ASSERT_FALSE(done.ok()) << "act " << acts;
    EXPECT_EQ(done.problem().trouble, Trouble::file);
    EXPECT_THAT(done.problem().code, AnyOf("disk_full", "disk_error")) << done.problem().text;
    EXPECT_THAT(book.values(), HasValuesOf(before)) << "act " << acts;
    EXPECT_EQ(book.ledger().size(), lines);
    FailingDisk::mend();
    const Lensbook reopened = well(Lensbook::open(path, Lensbook::Access::read_only));
    EXPECT_THAT(reopened.values(), HasValuesOf(before)) << "act " << acts;
    EXPECT_EQ(reopened.ledger().size(), lines);
    EXPECT_TRUE(act(book).ok()) << "again, with room made, act " << acts;
  }
  EXPECT_GT(failures, 3);
}

Done edit_edge(Lensbook& book) { return book.edit(with_edge(6), "second"); }
Done undo_once(Lensbook& book) {
  const auto undone = book.undo();
  return undone ? Done() : Done(undone.problem());
}
Done record_many(Lensbook& book) {
  const std::vector<LedgerEntry> lines(200, line("P01-C", Stage::drawn, Stage::mastered, "one of two hundred"));
  return book.record(lines);
}

TEST_F(DiskTrouble, FullDuringAnEdit) { sweep(path_, Fault::full, edit_edge); }
TEST_F(DiskTrouble, FullDuringAnUndo) { sweep(path_, Fault::full, undo_once); }
TEST_F(DiskTrouble, FullDuringARecord) { sweep(path_, Fault::full, record_many); }
TEST_F(DiskTrouble, BrokenDuringAnEdit) { sweep(path_, Fault::broken, edit_edge); }
TEST_F(DiskTrouble, BrokenDuringARecord) { sweep(path_, Fault::broken, record_many); }

TEST_F(DiskTrouble, IsSaidInASentence) {
  const FailingDisk disk(Fault::full, 0);
  Lensbook book = well(Lensbook::open(path_));
  EXPECT_EQ(edit_edge(book).problem().text,
            "The disk that holds lens.lensbook is full; nothing was changed. Make room and try again.");
}

TEST_F(DiskTrouble, WhileMakingABookLeavesNothing) {
  for (const Fault fault : {Fault::full, Fault::broken}) {
    for (int acts = 0;; acts += 2) {
      ASSERT_LT(acts, 400) << "the making never came to its end";
      const FailingDisk disk(fault, acts);
      const auto made = Lensbook::create(file("new.lensbook"), {});
      if (made.ok()) break;
      EXPECT_EQ(made.problem().trouble, Trouble::file);
      EXPECT_THAT(names(), ElementsAre("lens.lensbook")) << acts;
    }
    std::filesystem::remove(file("new.lensbook"));
  }
}

TEST_F(DiskTrouble, WithALimitThatTheSystemSets) {
  // A real one: the system lets no file of this process grow past its present size.
  const auto size = std::filesystem::file_size(path_);
  OtherProcess limited([&](int) {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{size, size};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    Lensbook book = well(Lensbook::open(path_));
    for (int turn = 0; turn < 3; ++turn) {
      const Done refused = record_many(book);
      if (refused.ok() || refused.problem().trouble != Trouble::file) return 1;
      if (!book.ledger().empty() || !changed_keys(book.values(), with_edge(5)).empty()) return 2;
    }
    return Lensbook::create(path_ + ".new", {}).ok() ? 0 : 3;  // as big as the limit lets it be
  });
  EXPECT_EQ(limited.wait(), 0);
  Lensbook book = well(Lensbook::open(path_));
  EXPECT_THAT(book.values(), HasValuesOf(with_edge(5)));
  EXPECT_EQ(book.ledger().size(), 0u);
  well(record_many(book));
}

TEST_F(DiskTrouble, DuringAMigrationShowsTheOldBookReadOnly) {
  const std::string old = bytes_of(std::string(GOLDEN_FOLDER) + "/v1.lensbook");
  for (const Fault fault : {Fault::full, Fault::broken}) {
    for (int acts = 0;; ++acts) {
      ASSERT_LT(acts, 200) << "the migration never came to its end";
      write_bytes(file("old.lensbook"), old);
      const FailingDisk disk(fault, acts);
      Lensbook book = well(Lensbook::open(file("old.lensbook")));
      if (!FailingDisk::met()) {
        EXPECT_FALSE(book.read_only());
        break;
      }
      EXPECT_TRUE(book.read_only()) << acts;
      EXPECT_NE(book.read_only_reason(), "");
      EXPECT_EQ(bytes_of(file("old.lensbook")), old) << acts;
      EXPECT_THAT(names(), ElementsAre("lens.lensbook", "old.lensbook")) << acts;
    }
    std::filesystem::remove(file("old.v1.lensbook"));
  }
}

}  // namespace
}  // namespace prismwright
