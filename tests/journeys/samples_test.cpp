#include <cstdlib>

#include "tests/journeys/whole_job.h"

namespace prismwright {
namespace {

/// The samples are what their script makes.
class Samples : public WholeJob {
 protected:
  /// What a book holds, without the times of its ledger and readings.
  static nlohmann::json content(const std::string& book) {
    const Answer keys = ask({"keys", book, "--json"});
    EXPECT_EQ(keys.code, 0) << keys.err;
    auto works = ask({"works", book, "list", "--json"}).json();
    for (auto& line : works.at("ledger")) line.erase("when_utc");
    auto readings = ask({"bench", book, "list", "--json"}).json().at("readings");
    for (auto& reading : readings) reading.erase("when_utc");
    return {{"keys", keys.json()}, {"works", works}, {"readings", readings}};
  }
};

constexpr const char* kSamples[] = {"fourth-order-bullseye.lensbook", "sixth-order-belt.lensbook",
                                    "first-order-group-flashing.lensbook"};

TEST_F(Samples, AreWhatTheScriptMakes) {
  const std::string folder = std::string(SOURCE_FOLDER) + "/sample-projects/";
  const std::string command =
      "bash '" + folder + "make' '" + at("made") + "' '" BATCH_PROGRAM "' >'" + at("said") + "' 2>&1";
  ASSERT_EQ(std::system(command.c_str()), 0) << bytes_of(at("said"));
  for (const char* name : kSamples) {
    EXPECT_EQ(content(folder + name), content(at("made/") + name)) << name;
  }
}

TEST_F(Samples, AreWellProvedAndShowAStartedJob) {
  for (const char* name : kSamples) {
    const std::string book = std::string(SOURCE_FOLDER) + "/sample-projects/" + name;
    EXPECT_EQ(ask({"prove", book}).code, 0) << name;
    EXPECT_FALSE(ask({"works", book, "list", "--json"}).json().at("ledger").empty()) << name;
    EXPECT_EQ(value_of(book, "brief.client"), "Ostrenny Harbour Board") << name;
  }
}

TEST_F(Samples, AreNotChangedByBeingRead) {
  for (const char* name : kSamples) {
    const std::string book = std::string(SOURCE_FOLDER) + "/sample-projects/" + name;
    const std::string before = bytes_of(book);
    ask({"keys", book});
    ask({"prove", book});
    ask({"works", book, "list"});
    EXPECT_EQ(bytes_of(book), before) << name;
  }
}

}  // namespace
}  // namespace prismwright
