#include "core/drawing/table_pages.h"

#include <gtest/gtest.h>

#include "core/drawing/text_box.h"

namespace prismwright {
namespace {

TEST(BrokenWords, AreNoWiderThanTheRoomAndLoseNoLetter) {
  constexpr double kSize_mm = 2.4;
  constexpr double kRoom_mm = 12;
  const auto lines = broken_words("brass of the catadioptricpanelframe", kSize_mm, kRoom_mm);
  std::string letters;
  for (const std::string& line : lines) {
    EXPECT_LE(text_width_mm(line, kSize_mm, false), kRoom_mm) << line;
    for (const char letter : line)
      if (letter != ' ') letters += letter;
  }
  EXPECT_EQ(letters, "brassofthecatadioptricpanelframe");
}

TEST(BrokenWords, EndWhereThereIsNoRoomAtAll) {
  EXPECT_EQ(broken_words("rib to", 2.4, -1), (std::vector<std::string>{"r", "i", "b", "t", "o"}));
  EXPECT_EQ(broken_words("ab", 2.4, 0), (std::vector<std::string>{"a", "b"}));
  EXPECT_TRUE(broken_words("", 2.4, -1).empty());
}

}  // namespace
}  // namespace prismwright
