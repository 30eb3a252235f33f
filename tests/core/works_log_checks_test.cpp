#include "core/works/log_checks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();
constexpr double kEndless = std::numeric_limits<double>::infinity();

std::string refusal(const Done& done) { return done.ok() ? "" : done.problem().text; }

/// Why an entry is refused once it was altered; empty when it is taken.
template <class Entry>
std::string after(Entry entry, Done (*check)(const Entry&), const std::function<void(Entry&)>& alter) {
  alter(entry);
  return refusal(check(entry));
}

const VesselLoad kLoad{0, "", "clear syrup", "lot 7", "", 800, 4, 0, "", ""};
const Measurement kMeasured{0, "", "P01-C", 1, "length", 118.2, "", ""};
const Decision kDecision{0, "", "P01-C", 1, DecisionKind::accept, "", "shows from no side"};
const ShrinkReading kShrink{0, "", "U07", ShrinkDirection::length, 100, 99.6, "", "", "", ""};
const Photograph kPhotograph{0, "", "P01-C", 1, "disc.jpg", "image/jpeg", "\xFF\xD8\xFF\xE0 and so on", "", ""};
const Spending kSpent{0, "", "cast", 2.5, 30, "", ""};

TEST(LogChecks, TakeEntriesThatFit) {
  WorksLog log;
  log.loads = {kLoad};
  log.measurements = {kMeasured};
  log.decisions = {kDecision};
  log.shrink = {kShrink};
  log.photographs = {kPhotograph};
  log.spendings = {kSpent};
  EXPECT_THAT(refusal(check_log(log)), IsEmpty());
  EXPECT_THAT(refusal(check_log({})), IsEmpty());
}

TEST(LogChecks, OneThatDoesNotFitRefusesTheLog) {
  WorksLog log;
  log.spendings = {kSpent, kSpent, kSpent};
  log.spendings[2].hours = kNoNumber;
  EXPECT_THAT(refusal(check_log(log)), HasSubstr("The time is nan h"));
}

TEST(LogChecks, OfALoad) {
  const auto after_load = [](const std::function<void(VesselLoad&)>& alter) {
    return after(kLoad, check_load, alter);
  };
  EXPECT_EQ(after_load([](auto& load) { load.resin = " \t"; }),
            "A load needs the name of its resin. Take it from the can, or set works.resin.");
  EXPECT_EQ(after_load([](auto& load) { load.resin_g = -1; }),
            "The resin is -1 g; it lies between 0 and 1e+06. Read it again.");
  EXPECT_THAT(after_load([](auto& load) { load.resin_g = kEndless; }), HasSubstr("The resin is inf g"));
  EXPECT_THAT(after_load([](auto& load) { load.tint_g = kNoNumber; }), HasSubstr("The tint is nan g"));
  EXPECT_EQ(after_load([](auto& load) { load.initiator_g = 801; }),
            "The initiator is 801 g, more than the resin's 800 g. Weigh it again.");
  EXPECT_THAT(after_load([](auto& load) { load.resin_g = load.initiator_g = load.tint_g = 0; }), IsEmpty())
      << "not weighed";
}

TEST(LogChecks, OfAMeasurement) {
  const auto after_one = [](const std::function<void(Measurement&)>& alter) {
    return after(kMeasured, check_measurement, alter);
  };
  EXPECT_THAT(after_one([](auto& one) { one.mark = ""; }), HasSubstr("needs the mark of its prism"));
  EXPECT_THAT(after_one([](auto& one) { one.feature = ""; }), HasSubstr("needs to say what was measured"));
  EXPECT_THAT(after_one([](auto& one) { one.measured = kNoNumber; }), HasSubstr("What was measured is nan"));
  EXPECT_THAT(after_one([](auto& one) { one.measured = -2e5; }), HasSubstr("-200000"));
  EXPECT_THAT(after_one([](auto& one) { one.serial = -3; }), HasSubstr("Serial number -3 cannot be"));
  EXPECT_THAT(after_one([](auto& one) { one.serial = 0; }), IsEmpty());
}

TEST(LogChecks, ADecisionNeedsAReason) {
  for (const DecisionKind kind : {DecisionKind::accept, DecisionKind::shim, DecisionKind::scrap}) {
    Decision decision = kDecision;
    decision.kind = kind;
    EXPECT_TRUE(check_decision(decision).ok());
    decision.note = "  \n";
    EXPECT_EQ(refusal(check_decision(decision)), "A decision needs a reason. Write in its note why.");
  }
}

TEST(LogChecks, OfAShrinkReading) {
  const auto after_one = [](const std::function<void(ShrinkReading&)>& alter) {
    return after(kShrink, check_shrink_reading, alter);
  };
  EXPECT_THAT(after_one([](auto& one) { one.piece = ""; }), HasSubstr("needs the name of its master"));
  EXPECT_THAT(after_one([](auto& one) { one.master_mm = 0; }), HasSubstr("The master is 0 mm"));
  EXPECT_THAT(after_one([](auto& one) { one.casting_mm = kNoNumber; }), HasSubstr("The casting is nan mm"));
  EXPECT_EQ(
      after_one([](auto& one) { one.casting_mm = 60; }),
      "A casting of 60 mm from a master of 100 mm has shrunk 40.0 %; resins shrink -5 to 20 %. Measure both "
      "again, between the same two places.");
  EXPECT_THAT(after_one([](auto& one) { one.casting_mm = 106; }), HasSubstr("has shrunk -6.0 %"));
}

TEST(LogChecks, OfAPhotograph) {
  const auto after_one = [](const std::function<void(Photograph&)>& alter) {
    return after(kPhotograph, check_photograph, alter);
  };
  EXPECT_EQ(after_one([](auto& one) { one.bytes = "GIF89a"; }),
            "disc.jpg is neither a JPEG nor a PNG picture. Save it as one of these.");
  EXPECT_THAT(after_one([](auto& one) { one.bytes = ""; }), HasSubstr("is neither a JPEG nor a PNG"));
  EXPECT_EQ(after_one([](auto& one) { one.media = "image/png"; }),
            "disc.jpg holds image/jpeg, not \"image/png\". Name its kind by what it holds.");
  EXPECT_THAT(after_one([](auto& one) { one.name = ""; }), HasSubstr("needs a name"));
  EXPECT_THAT(after_one([](auto& one) { one.bytes.resize(kMostPhotograph_bytes); }), IsEmpty());
  EXPECT_EQ(after_one([](auto& one) { one.bytes.resize(kMostPhotograph_bytes + 100'000); }),
            "disc.jpg has 20.1 MB; the book takes photographs up to 20 MB. Save it smaller.");
}

TEST(LogChecks, TellPicturesByTheirFirstBytes) {
  EXPECT_EQ(media_of("\xFF\xD8\xFF\xDB"), "image/jpeg");
  EXPECT_EQ(media_of("\x89PNG\r\n\x1A\n...."), "image/png");
  EXPECT_EQ(media_of("\x89PNG\n\x1A\n...."), "") << "line ends were changed on the way";
  EXPECT_EQ(media_of("\xFF\xD8"), "");
  EXPECT_EQ(media_of(""), "");
}

TEST(LogChecks, OfHoursAndMoney) {
  const auto after_one = [](const std::function<void(Spending&)>& alter) {
    return after(kSpent, check_spending, alter);
  };
  EXPECT_THAT(after_one([](auto& one) { one.step = ""; }), HasSubstr("needs the step that it went into"));
  EXPECT_THAT(after_one([](auto& one) { one.hours = one.money = 0; }), HasSubstr("Neither hours nor money"));
  EXPECT_THAT(after_one([](auto& one) { one.money = kEndless; }), HasSubstr("The money is inf"));
  EXPECT_EQ(after_one([](auto& one) { one.hours = -2; }),
            "Hours or money below nought take an earlier entry back. Write in a note which and why.");
  EXPECT_THAT(after_one([](auto& one) {
                one.hours = -2;
                one.note = "entry 4 was two hours too long";
              }),
              IsEmpty());
}

}  // namespace
}  // namespace prismwright
