#include <gmock/gmock.h>

#include <sstream>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// A small belt lens without a door.
class ClearancesVerb : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_small_belt();
  }
  std::string book_;
};

TEST_F(ClearancesVerb, GivesPairsOfTheKindsAskedForAlone) {
  const auto prisms = ask({"clearances", book_, "--json", "--kind", "prism-prism"}).json();
  ASSERT_FALSE(prisms.at("pairs").empty());
  for (const auto& pair : prisms.at("pairs")) EXPECT_EQ(pair.at("kind"), "prism-prism");
  EXPECT_EQ(ask({"clearances", book_, "--kind", "wood-wood"}).code, 2);
}

TEST_F(ClearancesVerb, WritesTheSamePairsToAFile) {
  const Answer answer = ask({"clearances", book_, "--json", "--kind", "prism-prism", "--csv", at("gaps.csv")});
  const auto pairs = answer.json().at("pairs");
  std::istringstream lines(bytes_of(at("gaps.csv")));
  std::string line;
  std::getline(lines, line);
  EXPECT_THAT(line, StartsWith("first,second,kind,gap_mm,needed_mm,overlap_mm3,verdict"));
  for (const auto& pair : pairs) {
    ASSERT_TRUE(std::getline(lines, line)) << "fewer lines than pairs";
    EXPECT_THAT(line, StartsWith(pair.at("first").get<std::string>() + "," +
                                 pair.at("second").get<std::string>() + ",prism-prism,"));
    EXPECT_THAT(line, HasSubstr("," + pair.at("verdict").get<std::string>()));
  }
  EXPECT_FALSE(std::getline(lines, line));
}

TEST_F(ClearancesVerb, SaysThatThereIsNoDoorToTurn) {
  const Answer none = ask({"clearances", book_, "--door"});
  EXPECT_EQ(none.code, 2);
  EXPECT_THAT(none.err, HasSubstr("frame.door_panel"));
}

}  // namespace
}  // namespace prismwright
