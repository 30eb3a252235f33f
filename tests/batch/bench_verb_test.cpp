#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

class BenchVerb : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_book({"--order", "6", "--work", "belt", "--panels", "4"});
  }
  nlohmann::json list(std::vector<std::string> more = {}) {
    more.insert(more.begin(), {"bench", book_, "list", "--json"});
    return ask(more).json();
  }
  Answer record(std::vector<std::string> words) {
    words.insert(words.begin(), {"bench", book_, "record"});
    return ask(words);
  }

  std::string book_;
};

TEST_F(BenchVerb, EveryPrismHasASpotAndTheLaserItsCaution) {
  const Answer answer = ask({"bench", book_, "list"});
  ASSERT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("Never look into the beam or its reflections"));
  EXPECT_THAT(answer.out, HasSubstr("board 5000 mm from it"));
  const auto bench = list();
  EXPECT_EQ(bench.at("prisms").size(), bench.at("summary").at("prisms").get<std::size_t>());
  EXPECT_EQ(bench.at("summary").at("read"), 0);
  for (const auto& prism : bench.at("prisms")) {
    EXPECT_EQ(prism.at("trouble"), "");
    EXPECT_TRUE(prism.at("now").is_null());
  }
  EXPECT_NEAR(row_where(bench.at("prisms"), "mark", "P02-U03").at("azimuth_deg").get<double>(), 90, 1e-9);
  EXPECT_THAT(ask({"bench", "--help"}).out, HasSubstr("Never look into the beam"));
  EXPECT_THAT(ask({"bench", book_, "record", "--help"}).out, HasSubstr("Never look into the beam"));
}

TEST_F(BenchVerb, AReadingGivesItsShimAndIsKept) {
  const Answer answer =
      record({"P01-U03", "-17.2", "--aside", "0.5", "--by", "bench 1", "--note", "as glazed"});
  EXPECT_EQ(answer.code, 1) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("P01-U03: the beam goes 0.203 deg too low"));
  EXPECT_THAT(answer.out, HasSubstr("shim the outer edge 0.03 mm"));
  const auto bench = list();
  ASSERT_EQ(bench.at("readings").size(), 1u);
  const auto& reading = bench.at("readings")[0];
  EXPECT_EQ(reading.at("mark"), "P01-U03");
  EXPECT_EQ(reading.at("height_mm"), -17.2);
  EXPECT_EQ(reading.at("aside_mm"), 0.5);
  EXPECT_EQ(reading.at("board_mm"), 5000);
  EXPECT_EQ(reading.at("by"), "bench 1");
  EXPECT_EQ(reading.at("note"), "as glazed");
  const auto prism = row_where(bench.at("prisms"), "mark", "P01-U03");
  const auto& now = prism.at("now");
  const double tilt_deg = -now.at("error_deg").get<double>() / prism.at("turn_per_tilt").get<double>();
  EXPECT_NEAR(now.at("tilt_deg").get<double>(), tilt_deg, 1e-12);
  EXPECT_NEAR(now.at("shim_mm").get<double>(),
              std::tan(tilt_deg * 3.14159265358979 / 180) * prism.at("seat_mm").get<double>(), 1e-9);
}

TEST_F(BenchVerb, BeforeAndAfterTheShimAreTold) {
  record({"P01-U03", "-17.2"});
  record({"P01-C", "1"});
  EXPECT_EQ(ask({"bench", book_, "list"}).code, 1) << "a last reading is out of tolerance";
  EXPECT_EQ(record({"P01-U03", "1.5"}).code, 0);
  const Answer after = ask({"bench", book_, "list"});
  EXPECT_EQ(after.code, 0);
  EXPECT_THAT(after.out, HasSubstr("leave it"));
  const auto sum = list().at("summary");
  EXPECT_EQ(sum.at("read"), 2);
  EXPECT_EQ(sum.at("within"), 2);
  EXPECT_EQ(sum.at("worst"), "P01-U03");
  EXPECT_GT(sum.at("rms_before_deg").get<double>(), 5 * sum.at("rms_now_deg").get<double>());
  EXPECT_EQ(ask({"bench", book_, "list", "--within", "0.01"}).code, 1);
  EXPECT_EQ(list().at("readings").size(), 3u);
}

TEST_F(BenchVerb, UndoLeavesTheReadingsAlone) {
  ASSERT_EQ(ask({"set", book_, "light.board_mm=4000"}).code, 0);
  record({"P01-U03", "2"});
  ASSERT_EQ(ask({"undo", book_}).code, 0);
  EXPECT_EQ(list().at("readings")[0].at("board_mm"), 4000);
  EXPECT_EQ(list().at("board_mm"), 5000);
}

TEST_F(BenchVerb, AReadingAtAnotherBoardKeepsItsDistance) {
  record({"P01-U03", "2", "--board", "3000"});
  EXPECT_EQ(list().at("readings")[0].at("board_mm"), 3000);
}

TEST_F(BenchVerb, ThePlanIsWrittenAsATable) {
  record({"P01-U03", "-17.2"});
  ASSERT_EQ(ask({"bench", book_, "list", "--csv", at("bench.csv")}).code, 1);
  const std::string csv = bytes_of(at("bench.csv"));
  std::istringstream lines(csv);
  std::string line;
  std::size_t count = 0;
  std::string read;
  while (std::getline(lines, line)) {
    EXPECT_EQ(std::count(line.begin(), line.end(), ','), 16) << line;
    if (line.starts_with("P01-U03,")) read = line;
    ++count;
  }
  EXPECT_EQ(count, 1 + list().at("prisms").size());
  EXPECT_THAT(read, HasSubstr(",-17.2,0,-0.203"));
  EXPECT_EQ(ask({"bench", book_, "list", "--csv", at("no/folder.csv")}).code, 3);
}

TEST_F(BenchVerb, ABandWithItsOwnFocalPointSaysWhereTheLaserStands) {
  ASSERT_EQ(ask({"set", book_, "section.upper_focus_mm=3"}).code, 0);
  EXPECT_THAT(ask({"bench", book_, "list"}).out,
              HasSubstr("the laser stands off the principal focus: 3 mm above it on the lens axis"));
  EXPECT_EQ(row_where(list().at("prisms"), "mark", "P01-U03").at("stands_over_mm"), 3);
}

TEST_F(BenchVerb, TheLasersOwnWavelengthMovesTheSpots) {
  const auto spot = [](const nlohmann::json& bench) {
    return row_where(bench.at("prisms"), "mark", "P01-R6a").at("spot").at("height_mm").get<double>();
  };
  EXPECT_GT(spot(list({"--laser-nm", "650"})), spot(list()) + 5);
  EXPECT_LT(spot(list({"--laser-nm", "532"})), spot(list()) - 5);
}

TEST_F(BenchVerb, WhatCannotBeReadIsRefusedAndNothingIsKept) {
  const std::string before = bytes_of(book_);
  const Answer mark = record({"P09-U03", "1"});
  EXPECT_EQ(mark.code, 2);
  EXPECT_THAT(mark.err, HasSubstr("P09-U03"));
  const Answer height = record({"P01-U03", "1300"});
  EXPECT_EQ(height.code, 2);
  EXPECT_THAT(height.err, HasSubstr("1300 mm"));
  EXPECT_THAT(height.err, HasSubstr("1250 mm"));
  EXPECT_EQ(record({"P01-U03", "-1300"}).code, 2);
  EXPECT_EQ(record({"P01-U03", "0", "--aside", "2000"}).code, 2);
  EXPECT_EQ(record({"P01-U03", "high"}).code, 2);
  EXPECT_EQ(record({"P01-U03", "nan"}).code, 2);
  EXPECT_EQ(record({"P01-U03"}).code, 2);
  EXPECT_EQ(bytes_of(book_), before);
  EXPECT_EQ(ask({"bench", at("none.lensbook"), "list"}).code, 3);
}

}  // namespace
}  // namespace prismwright
