#include "geometry/despatch/pack_lock.h"

#include <gmock/gmock.h>
#include <unistd.h>

#include "tests/support/empty_folder.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Outcome<PackReport> pack(const DespatchSource& source, const std::string& folder,
                         const Progress& progress = {}) {
  DespatchDesk desk(source, papers_on("2026-03-31"));
  return write_pack(desk, {folder, {DespatchGroup::record}}, progress);
}

/// Packs, and in the midst of it does something else once.
Outcome<PackReport> pack_with(const std::string& folder, const std::function<void()>& in_the_midst) {
  bool done = false;
  return pack(few_prisms_made(), folder, [&](double share, std::string_view) {
    if (share > 0.5 && !done) {
      done = true;
      in_the_midst();
    }
    return true;
  });
}

TEST(PackLock, TellsASecondRunWhoPacksAndLetsItPackAfterwards) {
  const EmptyFolder folder;
  bool asked = false;
  const auto first = pack_with(folder.path(), [&] {
    asked = true;
    const auto second = pack(few_prisms_made(), folder.path());
    ASSERT_FALSE(second.ok());
    EXPECT_EQ(second.problem().code, "busy");
    EXPECT_EQ(second.problem().trouble, Trouble::file);
    EXPECT_THAT(second.problem().text,
                AllOf(HasSubstr("low-head"), HasSubstr(folder.path()),
                      HasSubstr("process " + std::to_string(::getpid()) + " of "), HasSubstr(", since 20"),
                      HasSubstr("Wait until that pack is finished or stop it there, and pack again.")));
  });
  ASSERT_TRUE(asked);
  ASSERT_TRUE(first.ok()) << first.problem().text;
  EXPECT_EQ(first->manifest.number, 1);
  EXPECT_THAT(folder.names(), ElementsAre("low-head-2026-03-31")) << "the lock is gone with the run";
  const auto after = pack(few_prisms_made(), folder.path());
  ASSERT_TRUE(after.ok());
  EXPECT_EQ(after->manifest.number, 2);
}

TEST(PackLock, IsOfOneBookInOneFolder) {
  const EmptyFolder folder;
  const EmptyFolder other;
  DespatchSource another = few_prisms_made();
  another.book_name = "high-head";
  const auto first = pack_with(folder.path(), [&] {
    EXPECT_TRUE(pack(another, folder.path()).ok());
    EXPECT_TRUE(pack(few_prisms_made(), other.path()).ok());
  });
  ASSERT_TRUE(first.ok()) << first.problem().text;
  EXPECT_THAT(folder.names(), testing::UnorderedElementsAre("low-head-2026-03-31", "high-head-2026-03-31"));
}

TEST(PackLock, ThatAKilledRunLeftHoldsNobodyUp) {
  const EmptyFolder folder;
  std::ofstream(folder.file(".low-head.lock")) << "prismwright-batch, process 1 of someone";
  ASSERT_TRUE(pack(few_prisms_made(), folder.path()).ok());
  EXPECT_THAT(folder.names(), ElementsAre("low-head-2026-03-31"));
}

TEST(PackLock, SaysAnotherProgramWhereTheHolderHasNotSpokenYet) {
  const EmptyFolder folder;
  const LockFile silent = LockFile::take(folder.file(".low-head.lock"));
  EXPECT_THAT(lock_packs(folder.path(), "low-head").problem().text, HasSubstr("by another program. Wait"));
  silent.say("\n");
  EXPECT_THAT(lock_packs(folder.path(), "low-head").problem().text, HasSubstr("by another program. Wait"));
}

TEST(PackLock, IsRefusedWhereNoFileCanBe) {
  const EmptyFolder folder;
  const auto nowhere = lock_packs(folder.file("none"), "low-head");
  ASSERT_FALSE(nowhere.ok());
  EXPECT_EQ(nowhere.problem().code, "folder");
  EXPECT_THAT(nowhere.problem().text, HasSubstr("Choose another folder"));
}

}  // namespace
}  // namespace prismwright
