#include <array>
#include <cmath>
#include <random>

#include "tests/book/book_fixture.h"
#include "tests/book/failing_disk.h"
#include "tests/book/other_process.h"

namespace prismwright {
namespace {

using testing::AnyOf;

constexpr int kEdits = 200;

/// The state after edit `number`: two values of two tables, so that half an edit would show.
LensValues state(int number) {
  LensValues values = with_edge(4 + 0.005 * number);
  values.frame.ring_mm = 8 + 0.01 * number;
  return values;
}

int number_of(const LensValues& values) {
  return static_cast<int>(std::lround((values.frame.ring_mm - 8) / 0.01));
}

class KilledProcess : public BookTest {
 protected:
  explicit KilledProcess(const std::filesystem::path& place = quick_place())
      : BookTest(place), path_(file("lens.lensbook")) {}

  /// Edits until it is killed, telling the number of each edit that has returned.
  static int edit_away(const std::string& path, int pipe) {
    Lensbook book = well(Lensbook::open(path));
    for (int number = number_of(book.values()) + 1; number <= kEdits; ++number) {
      well(book.edit(state(number), "edit " + std::to_string(number)));
      tell(pipe, number);
    }
    ::pause();
    return 0;
  }

  /// Kills an editor some microseconds after edit `wanted` has returned and checks what the book then holds.
  void kill_and_look(int wanted, unsigned long wait_us);

  std::string path_;
};

void KilledProcess::kill_and_look(int wanted, unsigned long wait_us) {
  std::filesystem::remove(path_);
  well(Lensbook::create(path_, state(0)));
  OtherProcess editor([&](int pipe) { return edit_away(path_, pipe); });
  int returned = 0;
  while (returned < wanted) returned = editor.next_number();
  ::usleep(static_cast<useconds_t>(wait_us));  // somewhere in the edits that follow
  editor.kill();
  editor.wait();
  for (int number = editor.next_number(); number > 0; number = editor.next_number()) returned = number;

  Lensbook book = well(Lensbook::open(path_));
  EXPECT_FALSE(book.read_only()) << book.read_only_reason();
  const int found = number_of(book.values());
  // The edit after the last that returned may have been on disk already.
  EXPECT_THAT(found, AnyOf(returned, returned + 1));
  EXPECT_THAT(book.values(), HasValuesOf(state(found)));
  if (found == 0) return;
  EXPECT_EQ(well(book.undo()), "edit " + std::to_string(found));
  EXPECT_THAT(book.values(), HasValuesOf(state(found - 1)));
}

TEST_F(KilledProcess, LosesNoEditThatReturned) {
  std::mt19937 random(411);  // fixed; only the moments within an edit differ from run to run
  for (int kill = 0; kill < 30; ++kill) kill_and_look(static_cast<int>(random() % kEdits), random() % 4000);
}

class KilledProcessOnDisk : public KilledProcess {
 protected:
  KilledProcessOnDisk() : KilledProcess(std::filesystem::temp_directory_path()) {}
};

TEST_F(KilledProcessOnDisk, LosesNoEditThatReturned) {
  std::mt19937 random(412);
  for (int kill = 0; kill < 5; ++kill) kill_and_look(static_cast<int>(random() % 40), random() % 60000);
}

TEST_F(KilledProcess, AtEveryActOfWritingLeavesTheStateBeforeOrAfter) {
  std::array<int, 2> found{};  // how often the state before and the state after the edit
  int rolled_back = 0;
  for (int acts = 0;; ++acts) {
    ASSERT_LT(acts, 200) << "the edit never came to its end";
    std::filesystem::remove(path_);
    well(Lensbook::create(path_, state(0)));
    OtherProcess editor([&](int) {
      const FailingDisk disk(FailingDisk::Fault::power_cut, acts);
      Lensbook book = well(Lensbook::open(path_));
      well(book.edit(state(1), "edit 1"));
      return 0;
    });
    const int code = editor.wait();
    rolled_back += std::filesystem::exists(path_ + "-journal") ? 1 : 0;
    // Readers first: they must see the same state without writing.
    const std::string left = bytes_of(path_);
    const Lensbook reader = well(Lensbook::open(path_, Lensbook::Access::read_only));
    EXPECT_EQ(bytes_of(path_), left) << "act " << acts;
    Lensbook book = well(Lensbook::open(path_));
    EXPECT_FALSE(book.read_only()) << book.read_only_reason();
    ASSERT_THAT(number_of(book.values()), AnyOf(0, 1)) << "act " << acts;
    EXPECT_THAT(book.values(), HasValuesOf(state(number_of(book.values()))));
    EXPECT_THAT(reader.values(), HasValuesOf(book.values()));
    EXPECT_EQ(book.undo_text().has_value(), number_of(book.values()) == 1);
    EXPECT_FALSE(std::filesystem::exists(path_ + "-journal"));
    if (code == 0) {
      EXPECT_EQ(number_of(book.values()), 1);
      break;
    }
    ASSERT_EQ(code, FailingDisk::kCut);
    ++found.at(static_cast<std::size_t>(number_of(book.values())));
  }
  EXPECT_GT(found[0], 5);
  EXPECT_GT(rolled_back, 5);
}

TEST_F(KilledProcess, InTheMiddleOfMakingLeavesNoBookOrAWholeOne) {
  bool made = false;
  for (int acts = 0; !made; acts += 3) {
    ASSERT_LT(acts, 400) << "the making never came to its end";
    OtherProcess maker([&](int) {
      const FailingDisk disk(FailingDisk::Fault::power_cut, acts);
      well(Lensbook::create(path_, state(7)));
      return 0;
    });
    made = maker.wait() == 0;
    if (std::filesystem::exists(path_)) {
      EXPECT_THAT(well(Lensbook::open(path_)).values(), HasValuesOf(state(7)));
      std::filesystem::remove(path_);
    }
    if (!made) continue;
    // What the killed ones left behind is no hindrance, and the last one cleared it away.
    EXPECT_EQ(names().size(), 0u) << testing::PrintToString(names());
  }
}

}  // namespace
}  // namespace prismwright
