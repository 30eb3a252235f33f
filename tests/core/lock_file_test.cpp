#include "core/base/lock_file.h"

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>

#include <gtest/gtest.h>

#include "tests/support/empty_folder.h"

namespace prismwright {
namespace {

std::string words_in(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(LockFile, IsHeldByOneOpeningAndGoneWithIt) {
  const EmptyFolder folder;
  const std::string path = folder.file("lock");
  {
    const LockFile first = LockFile::take(path);
    ASSERT_TRUE(first.holds());
    first.say("who is longer\n");
    first.say("who\n");
    EXPECT_EQ(words_in(path), "who\n");
    const LockFile second = LockFile::take(path);
    EXPECT_FALSE(second.holds());
    EXPECT_EQ(second.error(), EWOULDBLOCK);
    EXPECT_EQ(words_in(path), "who\n") << "a refused one changes nothing";
  }
  EXPECT_FALSE(std::filesystem::exists(path));
  EXPECT_TRUE(LockFile::take(path).holds());
}

TEST(LockFile, ThatWasLeftByAKilledProgramIsNone) {
  const EmptyFolder folder;
  std::ofstream(folder.file("lock")) << "someone of long ago";
  EXPECT_TRUE(LockFile::take(folder.file("lock")).holds());
}

TEST(LockFile, GoesAlongWhenItIsMoved) {
  const EmptyFolder folder;
  const std::string path = folder.file("lock");
  std::optional<LockFile> kept;
  {
    LockFile taken = LockFile::take(path);
    kept.emplace(std::move(taken));
  }
  EXPECT_TRUE(kept->holds());
  EXPECT_EQ(LockFile::take(path).error(), EWOULDBLOCK);
  *kept = LockFile::take(folder.file("other"));
  EXPECT_TRUE(LockFile::take(path).holds()) << "the first was let go";
}

TEST(LockFile, TellsWhyItCannotBeHad) {
  const EmptyFolder folder;
  const LockFile nowhere = LockFile::take(folder.file("no/lock"));
  EXPECT_FALSE(nowhere.holds());
  EXPECT_EQ(nowhere.error(), ENOENT);
}

}  // namespace
}  // namespace prismwright
