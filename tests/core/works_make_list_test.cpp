#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <sstream>

#include "core/works/casting_count.h"
#include "core/works/make_list.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

/// A ledger written as the book writes it.
class Ledger {
 public:
  void step(const std::string& mark, Stage to, std::optional<Stage> back_to = std::nullopt) {
    LedgerEntry line;
    line.number = static_cast<long long>(lines.size()) + 1;
    line.mark = mark;
    const StageByMark now = stages_from(lines);
    line.from = now.stage_of(mark);
    line.to = to;
    line.back_to = back_to;
    const auto casting = now.serial.find(mark);
    if (to == Stage::cast) line.serial = ++last_serial_;
    if (to > Stage::cast && casting != now.serial.end()) line.serial = casting->second;
    lines.push_back(line);
  }
  /// Every stage up to the given one.
  void bring(const std::string& mark, Stage to) {
    for (int i = static_cast<int>(stages_from(lines).stage_of(mark)) + 1; i <= static_cast<int>(to); ++i)
      step(mark, static_cast<Stage>(i));
  }
  std::vector<LedgerEntry> lines;

 private:
  long long last_serial_ = 0;
};

/// A belt of six equal panels with few zones, its masters and sizes worked out once.
struct Shop {
  LensPlan plan;
  std::vector<Master> masters;
  std::vector<PieceSize> sizes;
  [[nodiscard]] MakeList list(const Ledger& ledger = {}) const {
    return make_list(plan, masters, sizes, ledger.lines);
  }
};

Shop shop_of(LensValues values) {
  values.section.upper_to_deg = 40;
  values.section.lower_to_deg = 36;
  Shop shop{plan_of(values), {}, {}};
  shop.masters = masters_of(shop.plan);
  shop.sizes = piece_sizes(shop.plan, shop.masters);
  return shop;
}

const Shop& belt() {
  static const Shop shop = shop_of(sixth_order_belt(Faces::arc));
  return shop;
}

TEST(CastingNeed, IsTheExpectedNumberRoundedUp) {
  EXPECT_EQ(castings_for(8, 10).castings, 9);    // 8.89
  EXPECT_EQ(castings_for(9, 10).castings, 10);   // 10 exactly
  EXPECT_EQ(castings_for(18, 10).castings, 20);  // 20 exactly
  EXPECT_EQ(castings_for(1, 90).castings, 10);
  EXPECT_EQ(castings_for(7, 0).castings, 7);
  EXPECT_EQ(castings_for(7, 0).chance, 1);
  EXPECT_EQ(castings_for(0, 50).castings, 0);
  EXPECT_EQ(castings_for(0, 50).chance, 1);
}

TEST(CastingNeed, ChanceOfSmallNumbersIsTheBinomialWrittenOut) {
  // 9 poured, 8 wanted, a tenth lost: 0.9^9 + 9 x 0.1 x 0.9^8
  EXPECT_NEAR(castings_for(8, 10).chance, std::pow(0.9, 9) + 0.9 * std::pow(0.9, 8), 1e-12);
  EXPECT_NEAR(chance_of_sound(1, 2, 50), 0.75, 1e-12);
  EXPECT_EQ(chance_of_sound(3, 2, 50), 0);
}

TEST(CastingNeed, ChanceAgreesWithCastingsLostByLot) {
  std::mt19937 engine(5);
  std::bernoulli_distribution lost(0.23);
  const CastingNeed need = castings_for(40, 23);
  int enough = 0;
  constexpr int kTrials = 20000;
  for (int t = 0; t < kTrials; ++t) {
    int sound = 0;
    for (int i = 0; i < need.castings; ++i) sound += lost(engine) ? 0 : 1;
    enough += sound >= need.sound ? 1 : 0;
  }
  EXPECT_NEAR(need.chance, enough / static_cast<double>(kTrials), 0.015);  // four standard deviations
}

TEST(CastingNeed, FewestForAChanceIsEnoughAndOneLessIsNot) {
  for (const double scrap : {0.0, 3.0, 25.0, 90.0}) {
    for (const int sound : {1, 5, 64}) {
      const int castings = castings_for_chance(sound, scrap, 0.95);
      EXPECT_GE(chance_of_sound(sound, castings, scrap), 0.95);
      EXPECT_LT(chance_of_sound(sound, castings - 1, scrap), 0.95);
    }
  }
}

TEST(CastingCount, ScrappedCastingsCountAndMistakesDoNot) {
  Ledger ledger;
  ledger.bring("P01-C", Stage::polished);
  ledger.step("P01-C", Stage::scrapped, Stage::moulded);
  ledger.step("P01-C", Stage::moulded);
  ledger.step("P01-C", Stage::cast);
  ledger.bring("P02-C", Stage::cast);
  ledger.step("P02-C", Stage::moulded);  // it was never cast
  ledger.bring("P03-C", Stage::mastered);
  ledger.step("P03-C", Stage::scrapped, Stage::drawn);
  ledger.bring("P04-C", Stage::proved);
  ledger.step("P04-C", Stage::scrapped, Stage::annealed);  // polished again, not lost
  const auto counts = count_castings(ledger.lines);
  EXPECT_EQ(counts.at("P01-C").made, 2);
  EXPECT_EQ(counts.at("P01-C").scrapped, 1);
  EXPECT_EQ(counts.at("P02-C").made, 0);
  EXPECT_FALSE(counts.contains("P03-C"));
  EXPECT_EQ(counts.at("P04-C").made, 1);
  EXPECT_EQ(counts.at("P04-C").scrapped, 0);
}

TEST(CastingCount, ACastingThatChangesItsPlaceIsOne) {
  Ledger ledger;
  ledger.bring("S01-C", Stage::proved);
  LedgerEntry line = ledger.lines.back();
  line.mark = "P02-C";
  line.from = Stage::moulded;
  ledger.lines.push_back(line);
  const auto counts = count_castings(ledger.lines);
  EXPECT_EQ(counts.at("S01-C").made, 1);
  EXPECT_FALSE(counts.contains("P02-C"));
}

TEST(MakeList, NothingMadeYetNeedsEveryMasterMouldAndCasting) {
  const MakeList list = belt().list();
  ASSERT_EQ(list.rows.size(), belt().masters.size());
  for (const MakeRow& row : list.rows) {
    EXPECT_EQ(row.marks.size(), 6U);
    EXPECT_EQ(row.at[static_cast<std::size_t>(Stage::drawn)], 6);
    EXPECT_FALSE(row.has_master);
    EXPECT_EQ(row.moulds_to_make, 1);
    EXPECT_EQ(row.need.sound, 6);
    EXPECT_EQ(row.short_of, 7);  // 6 / 0.9
    EXPECT_EQ(row.next, "print the master");
    EXPECT_EQ(row.holds_up, (std::vector<int>{1, 2, 3, 4, 5, 6}));
  }
  EXPECT_EQ(list.totals.prisms, static_cast<int>(belt().plan.prisms.size()));
  EXPECT_EQ(list.totals.masters_to_make, list.totals.masters);
  EXPECT_EQ(list.totals.short_of, 7 * list.totals.masters);
  EXPECT_NEAR(list.totals.chance, std::pow(list.rows[0].need.chance, list.totals.masters), 1e-12);
}

TEST(MakeList, OneRowFollowsItsPrismsThroughTheShop) {
  Ledger ledger;
  const auto row = [&] { return *belt().list(ledger).find("C"); };
  ledger.bring("P01-C", Stage::mastered);
  EXPECT_TRUE(row().has_master);
  EXPECT_EQ(row().next, "make the mould");
  ledger.bring("P01-C", Stage::moulded);
  EXPECT_EQ(row().next, "cast 7");
  EXPECT_EQ(row().moulds_to_make, 0);
  for (int panel = 1; panel <= 6; ++panel) ledger.bring("P0" + std::to_string(panel) + "-C", Stage::cast);
  EXPECT_EQ(row().next, "anneal 6");
  EXPECT_EQ(row().castings_made, 6);
  EXPECT_EQ(row().short_of, 0);
  ledger.bring("P02-C", Stage::proved);
  ledger.step("P03-C", Stage::scrapped, Stage::moulded);
  EXPECT_EQ(row().next, "cast 2");  // 1 / 0.9, rounded up
  EXPECT_EQ(row().castings_scrapped, 1);
  EXPECT_EQ(row().at[static_cast<std::size_t>(Stage::scrapped)], 1);
  ledger.bring("S01-C", Stage::annealed);
  EXPECT_EQ(row().spares_on_shelf, 1);
  EXPECT_EQ(row().next, "take 1 from the shelf");
  ledger.step("P03-C", Stage::moulded);
  ledger.step("P03-C", Stage::cast);
  for (int panel = 1; panel <= 6; ++panel) ledger.bring("P0" + std::to_string(panel) + "-C", Stage::glazed);
  EXPECT_EQ(row().next, "done");
  EXPECT_EQ(row().hours_left, 0);
  EXPECT_TRUE(row().holds_up.empty());
}

TEST(MakeList, AMouldThatHasGivenItsCastingsIsReplaced) {
  LensValues values = sixth_order_belt(Faces::arc);
  values.works.mould_life = 3;
  const Shop shop = shop_of(values);
  Ledger ledger;
  EXPECT_EQ(shop.list().find("C")->moulds_needed, 3);  // 7 castings
  for (int panel = 1; panel <= 3; ++panel) ledger.bring("P0" + std::to_string(panel) + "-C", Stage::cast);
  const MakeList list = shop.list(ledger);
  const MakeRow& row = *list.find("C");
  EXPECT_FALSE(row.has_mould);
  EXPECT_EQ(row.short_of, 4);  // 3 / 0.9
  EXPECT_EQ(row.moulds_needed, 3);
  EXPECT_EQ(row.moulds_to_make, 2);
  EXPECT_EQ(row.next, "make the mould");
}

TEST(MakeList, OrderPutsTheLongestWayFirstAndLeavesOutWhatIsDone) {
  Ledger ledger;
  for (int panel = 1; panel <= 6; ++panel) ledger.bring("P0" + std::to_string(panel) + "-C", Stage::glazed);
  const MakeList list = belt().list(ledger);
  EXPECT_EQ(list.order.size(), list.rows.size() - 1);
  for (std::size_t i = 1; i < list.order.size(); ++i)
    EXPECT_GE(list.rows[list.order[i - 1]].hours_left, list.rows[list.order[i]].hours_left);
  for (const std::size_t i : list.order) EXPECT_NE(list.rows[i].master, "C");
}

TEST(MakeList, APanelIsHeldUpByItsPrismsThatAreFurthestBehind) {
  Ledger ledger;
  for (const PlannedPrism& prism : belt().plan.prisms) ledger.bring(prism.mark, Stage::polished);
  ledger.step("P04-C", Stage::scrapped, Stage::moulded);
  const MakeList list = belt().list(ledger);
  EXPECT_EQ(list.find("C")->holds_up, (std::vector<int>{1, 2, 3, 4, 5, 6}));
  EXPECT_EQ(list.find("R1a")->holds_up, (std::vector<int>{1, 2, 3, 5, 6}));
}

TEST(MakeList, HoursOfOneMasterAreThoseOfItsSteps) {
  LensValues values = sixth_order_belt(Faces::arc);
  values.works.cooling_c_per_h = 10;
  const Shop shop = shop_of(values);
  const WorksSettings& w = values.works;
  const MakeRow row = shop.list().rows.front();
  const double hold = std::max(w.anneal_least_h, w.anneal_h_per_mm * row.thickness_mm);
  const double oven = (w.anneal_c - w.room_c) / w.heating_c_per_h + hold + (w.anneal_c - w.take_out_c) / 10;
  const double hands = w.master_h + w.mould_h + w.anneal_hand_h +
                       6 * (w.polish_h_per_dm2 * row.optical_mm2 / 1e4 + w.prove_h + w.glaze_h);
  const double machines = row.volume_mm3 / 1000 / w.print_cm3_per_h + 7 * (w.cure_h + w.load_h) + oven;
  EXPECT_NEAR(row.hours_left, hands + machines, 1e-6 * row.hours_left);
}

TEST(MakeList, TotalsAndCsvAgreeWithTheRows) {
  Ledger ledger;
  ledger.bring("P01-C", Stage::cast);
  ledger.bring("S01-R1a", Stage::cast);
  const MakeList list = belt().list(ledger);
  std::istringstream csv(make_list_csv(list));
  std::string line;
  std::vector<std::string> lines;
  while (std::getline(csv, line)) lines.push_back(line);
  ASSERT_EQ(lines.size(), list.rows.size() + 2);
  const auto commas = std::count(lines[0].begin(), lines[0].end(), ',');
  for (const std::string& text : lines) EXPECT_EQ(std::count(text.begin(), text.end(), ','), commas) << text;
  int castings = 0;
  for (const MakeRow& row : list.rows) castings += row.castings_made;
  EXPECT_EQ(list.totals.castings_made, castings);
  EXPECT_EQ(castings, 2);
  EXPECT_EQ(list.totals.spares_on_shelf, 1);
}

TEST(MakeList, ForeignMarksAreLeftOut) {
  Ledger ledger;
  ledger.bring("P77-C", Stage::glazed);
  ledger.bring("S01-Q9", Stage::glazed);
  const MakeList list = belt().list(ledger);
  EXPECT_EQ(list.totals.castings_made, 0);
  EXPECT_EQ(list.totals.spares_on_shelf, 0);
}

}  // namespace
}  // namespace prismwright
