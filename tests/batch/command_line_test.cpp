#include <gmock/gmock.h>

#include <ostream>
#include <streambuf>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class CommandLine : public BatchDesk {};

TEST_F(CommandLine, HelpIsAnAnswerAndListsEveryVerb) {
  const Answer answer = ask({"--help"});
  EXPECT_EQ(answer.code, 0);
  for (const char* verb :
       {"new", "set", "undo", "redo", "keys", "show", "prove", "section", "bodies", "clearances", "works"}) {
    EXPECT_THAT(answer.out, HasSubstr(verb));
  }
  EXPECT_THAT(answer.err, IsEmpty());
}

TEST_F(CommandLine, HelpOfAVerbTellsItsOptions) {
  const Answer answer = ask({"bodies", "--help"});
  EXPECT_EQ(answer.code, 0);
  for (const char* option : {"FILE", "--out", "--step", "--stl", "--master", "--only"}) {
    EXPECT_THAT(answer.out, HasSubstr(option));
  }
}

struct WrongRequest {
  const char* situation;
  std::vector<std::string> words;
};

class WrongRequests : public testing::TestWithParam<WrongRequest> {};

TEST_P(WrongRequests, EndWithTwoAndASentence) {
  const Answer answer = ask(GetParam().words);
  EXPECT_EQ(answer.code, 2) << answer.err;
  EXPECT_THAT(answer.err, testing::Not(IsEmpty()));
  EXPECT_THAT(answer.out, IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(
    CommandLine, WrongRequests,
    testing::Values(WrongRequest{"NoVerb", {}}, WrongRequest{"UnknownVerb", {"grind", "a.lensbook"}},
                    WrongRequest{"NoFile", {"prove"}}, WrongRequest{"NoOrder", {"new", "a.lensbook"}},
                    WrongRequest{"UnknownOption", {"prove", "a.lensbook", "--loudly"}},
                    WrongRequest{"NoFolder", {"bodies", "a.lensbook"}},
                    WrongRequest{"TooFewRays", {"prove", "a.lensbook", "--elevations", "3"}},
                    WrongRequest{"WorksWithoutAnything", {"works", "a.lensbook"}},
                    WrongRequest{"SectionWithoutAnything", {"section", "a.lensbook"}},
                    WrongRequest{"RecordWithoutStage", {"works", "a.lensbook", "record", "P01-C"}},
                    WrongRequest{"NothingToSet", {"set", "a.lensbook"}}),
    [](const auto& request) { return request.param.situation; });

class Missing : public testing::TestWithParam<std::vector<std::string>> {};

TEST_P(Missing, AFileThatIsNotThereEndsWithThreeAndItsPath) {
  const Answer answer = ask(GetParam());
  EXPECT_EQ(answer.code, 3) << answer.err;
  EXPECT_THAT(answer.err, HasSubstr("nowhere.lensbook"));
  EXPECT_FALSE(std::filesystem::exists("nowhere.lensbook"));
}

INSTANTIATE_TEST_SUITE_P(
    CommandLine, Missing,
    testing::Values(std::vector<std::string>{"keys", "nowhere.lensbook"},
                    std::vector<std::string>{"show", "nowhere.lensbook"},
                    std::vector<std::string>{"prove", "nowhere.lensbook"},
                    std::vector<std::string>{"set", "nowhere.lensbook", "section.edge_mm=5"},
                    std::vector<std::string>{"undo", "nowhere.lensbook"},
                    std::vector<std::string>{"bodies", "nowhere.lensbook", "--out", "/nowhere"},
                    std::vector<std::string>{"clearances", "nowhere.lensbook"},
                    std::vector<std::string>{"works", "nowhere.lensbook", "list"},
                    std::vector<std::string>{"works", "nowhere.lensbook", "record", "P01-C", "mastered"}));

/// A place that takes a few letters and then no more, as a full disk does.
class FullDisk : public std::streambuf {
 protected:
  int_type overflow(int_type letter) override { return ++taken_ > 10 ? traits_type::eof() : letter; }

 private:
  int taken_ = 0;
};

TEST_F(CommandLine, AnAnswerThatCouldNotBeWrittenIsFileTrouble) {
  const std::string book = make_book({"--order", "4"});
  FullDisk full;
  std::ostream out(&full);
  std::ostringstream err;
  EXPECT_EQ(run_batch({"keys", book, "--json"}, out, err), 3);
  EXPECT_THAT(err.str(), HasSubstr("could not be written"));
}

TEST_F(CommandLine, NothingIsSaidOfProgressUnlessATerminalWatches) {
  const std::string book = make_book({"--order", "6", "--work", "belt", "--panels", "4"});
  EXPECT_THAT(ask({"show", book}).err, IsEmpty());
  std::ostringstream out;
  std::ostringstream err;
  EXPECT_EQ(run_batch({"show", book}, out, err, true), 0);
  EXPECT_THAT(err.str(), HasSubstr("Prisms"));
  EXPECT_TRUE(err.str().ends_with("\r\033[K")) << "the line is wiped at the end";
}

}  // namespace
}  // namespace prismwright
