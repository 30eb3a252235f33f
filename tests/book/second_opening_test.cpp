#include "tests/book/book_fixture.h"
#include "tests/book/other_process.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

const char* const kOpenElsewhere = "lens.lensbook is open in another window; this one shows it read-only.";

class SecondOpening : public BookTest {
 protected:
  SecondOpening() { well(Lensbook::create(file("lens.lensbook"), with_edge(5))); }
};

/// A process that has the book open for writing; it says 1 when it has, and waits to be killed.
int hold_open(const std::string& path, int pipe) {
  const Lensbook book = well(Lensbook::open(path));
  tell(pipe, book.read_only() ? 0 : 1);
  ::pause();
  return 0;
}

TEST_F(SecondOpening, InTheSameProgramIsReadOnly) {
  Lensbook first = well(Lensbook::open(file("lens.lensbook")));
  Lensbook second = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_FALSE(first.read_only());
  EXPECT_TRUE(second.read_only());
  EXPECT_EQ(second.read_only_reason(), kOpenElsewhere);
  EXPECT_THAT(second.values(), HasValuesOf(with_edge(5)));
}

TEST_F(SecondOpening, RefusesEveryChangeWithItsReason) {
  Lensbook first = well(Lensbook::open(file("lens.lensbook")));
  well(first.edit(with_edge(6), "edge"));
  Lensbook second = well(Lensbook::open(file("lens.lensbook")));
  const LedgerEntry step = line("P01-C", Stage::drawn, Stage::mastered);
  const BenchReading reading{0, "", "P01-C", 1, 0, 5000, "", ""};
  for (const Problem& problem :
       {second.edit(with_edge(7), "edge").problem(), second.undo().problem(), second.redo().problem(),
        second.record({&step, 1}).problem(), second.record_readings({&reading, 1}).problem()}) {
    EXPECT_EQ(problem.trouble, Trouble::file);
    EXPECT_EQ(problem.code, "read_only");
    EXPECT_EQ(problem.text, kOpenElsewhere);
  }
  EXPECT_EQ(second.undo_text(), "edge");
  EXPECT_THAT(second.values(), HasValuesOf(with_edge(6)));
}

TEST_F(SecondOpening, DoesNotDisturbTheFirst) {
  Lensbook first = well(Lensbook::open(file("lens.lensbook")));
  { const Lensbook second = well(Lensbook::open(file("lens.lensbook"))); }
  well(first.edit(with_edge(6), "edge"));
  const Lensbook third = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_TRUE(third.read_only());
  EXPECT_THAT(third.values(), HasValuesOf(with_edge(6)));
}

TEST_F(SecondOpening, WritesOnceTheFirstIsClosed) {
  { const Lensbook first = well(Lensbook::open(file("lens.lensbook"))); }
  EXPECT_FALSE(well(Lensbook::open(file("lens.lensbook"))).read_only());
}

TEST_F(SecondOpening, InAnotherProcessIsReadOnly) {
  OtherProcess other([&](int pipe) { return hold_open(file("lens.lensbook"), pipe); });
  ASSERT_EQ(other.next_number(), 1);
  const Lensbook here = well(Lensbook::open(file("lens.lensbook")));
  EXPECT_TRUE(here.read_only());
  EXPECT_EQ(here.read_only_reason(), kOpenElsewhere);
}

TEST_F(SecondOpening, WritesOnceTheOtherProcessWasKilled) {
  OtherProcess other([&](int pipe) { return hold_open(file("lens.lensbook"), pipe); });
  ASSERT_EQ(other.next_number(), 1);
  other.kill();
  other.wait();
  EXPECT_THAT(names(), ElementsAre("lens.lensbook", "lens.lensbook.lock"));  // left behind, and no lock
  {
    Lensbook here = well(Lensbook::open(file("lens.lensbook")));
    EXPECT_FALSE(here.read_only());
    well(here.edit(with_edge(6), "edge"));
  }
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));
}

TEST_F(SecondOpening, MayBeAskedToReadOnly) {
  const std::string before = bytes_of(file("lens.lensbook"));
  Lensbook reader = well(Lensbook::open(file("lens.lensbook"), Lensbook::Access::read_only));
  EXPECT_TRUE(reader.read_only());
  EXPECT_THAT(reader.read_only_reason(), HasSubstr("opened to be read only"));
  EXPECT_FALSE(reader.edit(with_edge(6), "edge").ok());
  EXPECT_THAT(names(), ElementsAre("lens.lensbook"));  // nothing beside it, not even a lock
  EXPECT_FALSE(well(Lensbook::open(file("lens.lensbook"))).read_only());
  EXPECT_EQ(bytes_of(file("lens.lensbook")), before);
}

TEST_F(SecondOpening, ReadsAWholeStateWhileTheFirstWrites) {
  OtherProcess writer([&](int pipe) {
    Lensbook book = well(Lensbook::open(file("lens.lensbook")));
    tell(pipe, 1);
    for (int turn = 0;; ++turn) {
      LensValues both = with_edge(4 + turn % 100 * 0.01);  // two values of two tables that always move together
      both.frame.ring_mm = both.section.edge_mm + 4;
      well(book.edit(both, "both"));
    }
    return 0;
  });
  ASSERT_EQ(writer.next_number(), 1);
  for (int turn = 0; turn < 40; ++turn) {
    const auto reader = Lensbook::open(file("lens.lensbook"));
    ASSERT_TRUE(reader.ok()) << reader.problem().text;
    EXPECT_TRUE(reader->read_only());
    if (reader->values().section.edge_mm == 5) continue;  // the state before the first edit
    EXPECT_EQ(reader->values().frame.ring_mm, reader->values().section.edge_mm + 4);
  }
}

}  // namespace
}  // namespace prismwright
