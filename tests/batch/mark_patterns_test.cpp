#include "app/batch/mark_patterns.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace prismwright {
namespace {

using testing::ElementsAre;

TEST(FitsPattern, StarStandsForAnyRunOfLetters) {
  EXPECT_TRUE(fits_pattern("P01-C", "P01-C"));
  EXPECT_FALSE(fits_pattern("P01-C", "P01-C2"));
  EXPECT_FALSE(fits_pattern("P01-R", "P01-R2a"));
  EXPECT_TRUE(fits_pattern("P01-R*", "P01-R2a"));
  EXPECT_TRUE(fits_pattern("P01-R*", "P01-R"));
  EXPECT_TRUE(fits_pattern("*-U07", "P12-U07"));
  EXPECT_FALSE(fits_pattern("*-U07", "P12-U08"));
  EXPECT_TRUE(fits_pattern("P*-R*b", "P03-R2b"));
  EXPECT_FALSE(fits_pattern("P*-R*b", "P03-R2a"));
  EXPECT_TRUE(fits_pattern("**", ""));
}

TEST(NamedMarks, EachOnceInTheOrderOfTheLens) {
  const std::vector<std::string> known = {"P01-U01", "P01-C", "P02-U01", "P02-C"};
  const auto marks = named_marks(std::vector<std::string>{"P02-C", "*-U01", "P02-*"}, known);
  ASSERT_TRUE(marks.ok());
  EXPECT_THAT(*marks, ElementsAre("P01-U01", "P02-U01", "P02-C"));
}

TEST(NamedMarks, APatternThatNamesNothingIsRefused) {
  const std::vector<std::string> known = {"P01-C"};
  const auto marks = named_marks(std::vector<std::string>{"P01-C", "P09-*"}, known);
  ASSERT_FALSE(marks.ok());
  EXPECT_EQ(marks.problem().where, "P09-*");
  EXPECT_THAT(marks.problem().text, testing::HasSubstr("P09-*"));
}

}  // namespace
}  // namespace prismwright
