#include "core/works/prism_life.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/works/works_csv.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::string minute(int number) {
  return std::string("2027-03-01T10:") + (number < 10 ? "0" : "") + std::to_string(number) + ":00Z";
}

/// A prism whose first casting was scrapped and that was then given a spare, as the book holds it:
/// casting 1 of P01-C (load 1), casting 2 the spare S01-C (load 2), and casting 3 of P02-C.
class PrismLife : public testing::Test {
 protected:
  PrismLife() {
    line(1, "P01-C", Stage::moulded, Stage::cast, 1, 1);
    line(2, "S01-C", Stage::drawn, Stage::cast, 2, 2, "a spare");
    line(3, "P02-C", Stage::moulded, Stage::cast, 3, 1);
    line(9, "P01-C", Stage::cast, Stage::scrapped, 1, 0, "bubble");
    ledger_.back().back_to = Stage::moulded;
    line(12, "P01-C", Stage::scrapped, Stage::cast, 2, 0, "given the spare S01-C");
    line(12, "S01-C", Stage::cast, Stage::drawn, 2, 0, "given to P01-C");
    log_.loads = {{1, minute(1), "clear syrup", "7", "", 800, 4, 0, "E. Marsh", ""},
                  {2, minute(2), "clear syrup", "8", "straw", 0, 0, 0, "", ""}};
    log_.measurements = {{1, minute(4), "P01-C", 1, "length", 118.25, "E. Marsh", ""},
                         {2, minute(5), "S01-C", 2, "length", 118.3, "", ""},
                         {3, minute(20), "P01-C", 0, "laser", -0.02, "", "no number named"},
                         {4, minute(5), "P02-C", 3, "length", 118, "", ""}};
    log_.decisions = {{1, minute(8), "P01-C", 1, DecisionKind::scrap, "E. Marsh", "bubble, \"big\""}};
    log_.photographs = {{1, minute(7), "P01-C", 1, "disc.jpg", "image/jpeg", "", "", ""}};
    readings_ = {{1, minute(21), "P01-C", 1.5, -0.5, 5000, "", ""}};
  }
  void line(int when, const std::string& mark, Stage from, Stage to, long long serial, long long load,
            const std::string& note = "") {
    LedgerEntry entry;
    entry.number = static_cast<long long>(ledger_.size()) + 1;
    entry.when_utc = minute(when);
    entry.mark = mark;
    entry.from = from;
    entry.to = to;
    entry.serial = serial;
    entry.load = load;
    entry.note = note;
    ledger_.push_back(entry);
  }
  [[nodiscard]] WorksRecord record() const { return {ledger_, log_, readings_}; }
  static std::vector<std::string> whats(const std::vector<LifeEvent>& life) {
    std::vector<std::string> sentences;
    for (const LifeEvent& event : life) sentences.push_back(event.what);
    return sentences;
  }

  std::vector<LedgerEntry> ledger_;
  WorksLog log_;
  std::vector<BenchReading> readings_;
};

TEST_F(PrismLife, OfAMarkTellsBothCastingsInOrderOfTime) {
  const std::vector<LifeEvent> life = life_of_mark(record(), "P01-C");
  EXPECT_THAT(
      whats(life),
      ElementsAre("P01-C went from moulded to cast, casting 1, in load 1.",
                  "Load 1 was filled: clear syrup, lot 7, no tint; 800 g resin, 4 g initiator, 0 g tint.",
                  "S01-C went from drawn to cast, casting 2, in load 2.",
                  "Load 2 was filled: clear syrup, lot 8, tint straw.",
                  "P01-C, casting 1: length was measured as 118.25.",
                  "S01-C, casting 2: length was measured as 118.3.",
                  "P01-C, casting 1: photograph 1, disc.jpg.", "P01-C, casting 1: to be scrapped.",
                  "P01-C went from cast to scrapped, casting 1; it starts again from moulded.",
                  "P01-C went from scrapped to cast, casting 2.", "Casting 2 left S01-C, which is drawn again.",
                  "P01-C: laser was measured as -0.02.",
                  "P01-C: its spot stood 1.5 mm high and -0.5 mm to the left on a board at 5000 mm."));
  EXPECT_EQ(life[0].kind, LifeKind::stage);
  EXPECT_EQ(life[1].kind, LifeKind::load);
  EXPECT_EQ(life[1].by, "E. Marsh");
  EXPECT_EQ(life[7].note, "bubble, \"big\"");
  EXPECT_EQ(life.back().kind, LifeKind::bench);
}

TEST_F(PrismLife, OfACastingFollowsItFromMarkToMark) {
  const auto spare = life_of_casting(record(), 2);
  ASSERT_TRUE(spare.ok());
  EXPECT_THAT(
      whats(*spare),
      ElementsAre("S01-C went from drawn to cast, casting 2, in load 2.",
                  "Load 2 was filled: clear syrup, lot 8, tint straw.",
                  "S01-C, casting 2: length was measured as 118.3.",
                  "P01-C went from scrapped to cast, casting 2.", "Casting 2 left S01-C, which is drawn again.",
                  "P01-C: laser was measured as -0.02.",  // names no casting: it stood there then
                  "P01-C: its spot stood 1.5 mm high and -0.5 mm to the left on a board at 5000 mm."));
  const auto scrapped = life_of_casting(record(), 1);
  ASSERT_TRUE(scrapped.ok());
  EXPECT_EQ(scrapped->size(), 6u);
  EXPECT_EQ(scrapped->back().what,
            "P01-C went from cast to scrapped, casting 1; it starts again from moulded.");
}

TEST_F(PrismLife, OfAnUnknownCastingIsRefused) {
  for (const long long serial : {0LL, -1LL, 4LL}) {
    const auto life = life_of_casting(record(), serial);
    ASSERT_FALSE(life.ok());
    EXPECT_THAT(life.problem().text, HasSubstr("No casting has the serial number " + std::to_string(serial)));
  }
}

TEST_F(PrismLife, OfAPrismThatWasNeverTouchedIsEmpty) {
  EXPECT_THAT(life_of_mark(record(), "P05-C"), IsEmpty());
}

TEST_F(PrismLife, SavesAsCsv) {
  const std::string csv = life_csv(life_of_mark(record(), "P02-C"));
  EXPECT_EQ(
      csv,
      "when_utc,kind,what,by,note\n"
      "2027-03-01T10:01:00Z,load,\"Load 1 was filled: clear syrup, lot 7, no tint; 800 g resin, 4 g initiator, "
      "0 g tint.\",E. Marsh,\n"
      "2027-03-01T10:03:00Z,stage,\"P02-C went from moulded to cast, casting 3, in load 1.\",,\n"
      "2027-03-01T10:05:00Z,measurement,\"P02-C, casting 3: length was measured as 118.\",,\n");
}

TEST_F(PrismLife, EveryTableSavesAsCsv) {
  const std::string ledger = ledger_csv(ledger_);
  EXPECT_THAT(ledger, HasSubstr("number,when_utc,mark,from,to,by,note,back_to,serial,load\n"
                                "1,2027-03-01T10:01:00Z,P01-C,moulded,cast,,,,1,1\n"));
  EXPECT_THAT(ledger, HasSubstr("4,2027-03-01T10:09:00Z,P01-C,cast,scrapped,,bubble,moulded,1,\n"));
  EXPECT_EQ(vessel_loads_csv(log_.loads),
            "number,when_utc,resin,resin_lot,tint,resin_g,initiator_g,tint_g,by,note\n"
            "1,2027-03-01T10:01:00Z,clear syrup,7,,800,4,0,E. Marsh,\n"
            "2,2027-03-01T10:02:00Z,clear syrup,8,straw,0,0,0,,\n");
  EXPECT_THAT(measurements_csv(log_.measurements),
              HasSubstr("number,when_utc,mark,serial,feature,measured,by,note\n"
                        "1,2027-03-01T10:04:00Z,P01-C,1,length,118.25,E. Marsh,\n"));
  EXPECT_THAT(measurements_csv(log_.measurements), HasSubstr(",P01-C,,laser,-0.02,,no number named\n"));
  EXPECT_EQ(decisions_csv(log_.decisions),
            "number,when_utc,mark,serial,kind,by,note\n"
            "1,2027-03-01T10:08:00Z,P01-C,1,scrap,E. Marsh,\"bubble, \"\"big\"\"\"\n");
  EXPECT_EQ(photographs_csv(log_.photographs),
            "number,when_utc,mark,serial,name,media,by,note\n"
            "1,2027-03-01T10:07:00Z,P01-C,1,disc.jpg,image/jpeg,,\n");
  const std::vector<ShrinkReading> shrink = {
      {1, minute(1), "U02", ShrinkDirection::depth, 40.1 + 1.0 / 3.0, 40, "syrup", "lot\n7", "", ""}};
  EXPECT_EQ(shrink_readings_csv(shrink),
            "number,when_utc,piece,direction,master_mm,casting_mm,resin,resin_lot,by,note\n"
            "1,2027-03-01T10:01:00Z,U02,depth,40.43333333333334,40,syrup,\"lot\n7\",,\n");
  const std::vector<Spending> spendings = {{1, minute(1), "cast", -0.5, 31.1, "", "one, too many"}};
  EXPECT_EQ(spendings_csv(spendings),
            "number,when_utc,step,hours,money,by,note\n"
            "1,2027-03-01T10:01:00Z,cast,-0.5,31.1,,\"one, too many\"\n");
}

}  // namespace
}  // namespace prismwright
