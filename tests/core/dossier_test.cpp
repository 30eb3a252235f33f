#include "core/papers/dossier.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <algorithm>

#include "core/drawing/lengths.h"
#include "core/light/bench_check.h"
#include "core/papers/dossier_parts.h"
#include "tests/support/hand_light.h"
#include "tests/support/paper_words.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::Not;

/// A lens that came as far as its record says.
struct Owned {
  LensPlan plan;
  std::vector<Master> masters;
  Proof proof;
  LightReport light;
  std::vector<LedgerEntry> ledger;
  WorksLog log;

  [[nodiscard]] DossierFacts facts() const {
    DossierFacts facts{plan, masters};
    facts.proof = &proof;
    facts.light = &light;
    facts.ledger = ledger;
    facts.log = &log;
    facts.glass_kg = 41.26;
    facts.brass_kg = 18.27;
    return facts;
  }
};

Owned owned(LensValues values) {
  if (values.brief.work == Work::bullseye) values.light.turn_s = 40;
  Owned lens{plan_of(values), {}, {}, {}, {}, {}};
  lens.masters = masters_of(lens.plan);
  lens.proof = prove(lens.plan.section, 200);
  lens.light = hand_light(lens.plan);
  return lens;
}

/// Brings a mark stage by stage to `to`, as casting `serial` of a load.
void bring(Owned& lens, const std::string& mark, Stage to, long long serial, long long load) {
  for (const Stage stage : kStages) {
    if (stage == Stage::drawn || stage > to) continue;
    LedgerEntry line;
    line.number = static_cast<long long>(lens.ledger.size()) + 1;
    line.when_utc = "2027-03-02T10:00:00Z";
    line.mark = mark;
    line.from = static_cast<Stage>(static_cast<int>(stage) - 1);
    line.to = stage;
    line.serial = stage >= Stage::cast ? serial : 0;
    line.load = stage == Stage::cast ? load : 0;
    lens.ledger.push_back(line);
  }
}

/// The first 12 prisms glazed, the next 3 proved, a spare cast; two loads, the third unknown.
Owned half_made() {
  Owned lens = owned(fourth_order_bullseye(Faces::arc));
  lens.log.loads = {{1, "2027-03-01T09:00:00Z", "clear syrup", "2027-14", "", 2400, 12, 0, "", ""},
                    {2, "2027-03-04T09:00:00Z", "clear syrup", "2027-15", "ruby", 2400, 12, 0, "", ""}};
  for (int i = 0; i < 15; ++i)
    bring(lens, lens.plan.prisms[static_cast<std::size_t>(i)].mark, i < 12 ? Stage::glazed : Stage::proved,
          i + 1,
          i < 5    ? 1
          : i < 10 ? 2
                   : 0);
  bring(lens, "S01-U03", Stage::polished, 16, 2);
  bring(lens, "S02-U04", Stage::moulded, 0, 0);
  return lens;
}

Drawing paper_of(const DossierFacts& facts, const HouseWords& words) {
  const auto paper = dossier(facts, words);
  EXPECT_TRUE(paper.ok()) << (paper.ok() ? "" : paper.problem().text);
  return paper.ok() ? *paper : Drawing{};
}
Drawing paper_of(const Owned& lens) {
  return paper_of(lens.facts(), house_words(lens.plan.values, "2027-05-01", "A"));
}

std::shared_ptr<PointImage> grey(int wide, int high) {
  auto image = std::make_shared<PointImage>();
  image->wide = wide;
  image->high = high;
  image->rgb.assign(static_cast<std::size_t>(wide) * static_cast<std::size_t>(high) * 3, 128);
  return image;
}

TEST(Dossier, ListsEveryPrismOnceWithKindCastingLoadAndStage) {
  const Owned lens = half_made();
  const Drawing paper = paper_of(lens);
  for (const PlannedPrism& prism : lens.plan.prisms) EXPECT_EQ(texts_alike(paper, prism.mark), 1) << prism.mark;
  const std::string words = words_of(paper);
  const PlannedPrism& glazed = lens.plan.prisms[6];
  EXPECT_THAT(words, HasSubstr(fmt::format("{} {} {} 7 2 glazed", glazed.mark, name_of(glazed.kind),
                                           master_of_mark(lens.masters, glazed.mark)->name)));
  const PlannedPrism& drawn = lens.plan.prisms.back();
  EXPECT_THAT(words, HasSubstr(fmt::format("{} {} {} drawn", drawn.mark, name_of(drawn.kind),
                                           master_of_mark(lens.masters, drawn.mark)->name)));
}

TEST(Dossier, GivesResinAndLotOfEveryNumberedCasting) {
  const std::string words = words_of(paper_of(half_made()));
  EXPECT_THAT(words, HasSubstr("1 2027-03-01 clear syrup 2027-14 1-5"));
  EXPECT_THAT(words, HasSubstr("2 2027-03-04 clear syrup 2027-15 ruby 6-10"));
  EXPECT_THAT(words, HasSubstr("none not recorded not recorded 11-15"));
}

TEST(Dossier, KeepsSparesThatAreCastAndNoOthers) {
  const std::string words = words_of(paper_of(half_made()));
  EXPECT_THAT(words, HasSubstr("S01-U03 U03 16 2 polished"));
  EXPECT_THAT(words, Not(HasSubstr("S02-U04")));
  EXPECT_THAT(words_of(paper_of(owned(sixth_order_belt(Faces::arc)))), HasSubstr("No spare casting is kept"));
}

TEST(Dossier, SaysWhatWasNotFinishedOrMeasured) {
  const Owned lens = half_made();
  const std::string words = words_of(paper_of(lens));
  const std::size_t all = lens.plan.prisms.size();
  EXPECT_THAT(words, HasSubstr(fmt::format("{} of {} prisms are not glazed: {} drawn, 3 proved.", all - 12, all,
                                           all - 15)));
  EXPECT_THAT(words, HasSubstr("No prism was read on the laser bench."));
  EXPECT_THAT(words, HasSubstr("No casting was measured against its drawing"));
  EXPECT_THAT(words, HasSubstr("For 5 castings no vessel load is recorded"));
  EXPECT_THAT(words, HasSubstr("of the section as drawn, from a point in the focus"));
  EXPECT_THAT(words, HasSubstr("Clearances were not worked out."));
}

TEST(Dossier, LeavesNothingToGuessWhereNothingWasWorkedOut) {
  const Owned lens = owned(fourth_order_bullseye(Faces::arc));
  const DossierFacts bare{lens.plan, lens.masters};
  const Drawing paper = paper_of(bare, HouseWords{});
  const std::string words = words_of(paper);
  for (const char* part :
       {"The proof of the section was not worked out", "The light of this lens was not worked out",
        "The section was not proved.", "The light was not worked out.", "No measurement of a casting",
        "No numbered casting stands in the lens", "the whole lens was not reckoned: weigh it",
        "so take it to be more", "not reckoned"})
    EXPECT_THAT(words, HasSubstr(part));
  for (const Sheet& sheet : paper.sheets) expect_texts_apart(sheet);
}

TEST(Dossier, ShowsTheLastBenchReadingOfEveryPrismReadAndWhatItAsksFor) {
  const Owned lens = owned(sixth_order_belt(Faces::arc));
  const auto bench = bench_plan(lens.plan);
  ASSERT_TRUE(bench.ok());
  std::vector<BenchReading> readings;
  const std::string mark = lens.plan.prisms[2].mark;
  for (const double height : {40.0, 12.0}) {
    BenchReading reading;
    reading.number = static_cast<long long>(readings.size()) + 1;
    reading.when_utc = "2027-04-0" + std::to_string(reading.number) + "T12:00:00Z";
    reading.mark = mark;
    reading.height_mm = height;
    reading.board_mm = 5000;
    readings.push_back(reading);
  }
  DossierFacts facts = lens.facts();
  facts.bench = &*bench;
  facts.readings = readings;
  const std::string words = words_of(paper_of(facts, house_words(lens.plan.values, "2027-05-01", "A")));
  const BenchMend before = mend_of(*bench->find(mark), readings[0]);
  const BenchMend now = mend_of(*bench->find(mark), readings[1]);
  EXPECT_THAT(words, HasSubstr(fmt::format("{} 2027-04-02 12 0 {:.3f} {:.3f} {}", mark, before.off_deg(),
                                           now.off_deg(), now.words)));
  EXPECT_THAT(words, HasSubstr(fmt::format("{} of {} prisms have no reading", lens.plan.prisms.size() - 1,
                                           lens.plan.prisms.size())));
}

TEST(Dossier, CarriesCareCautionsAndWhatAuthorityDecides) {
  const std::string words = words_of(paper_of(half_made()));
  for (const char* part :
       {"soft cotton", "mild soap", "No solvents", "ammonia or alcohol", "Never wipe dry", "No scouring",
        "common practice", "Ultraviolet", "may be polished", "41.3 kg and brass 18.3 kg, 59.6 kg in all",
        "never of a prism", "13308 kW/m2", "4.3 kW/m2", "authority for aids to navigation", "electrician"})
    EXPECT_THAT(words, HasSubstr(part));
  std::string caution(kLaserCaution);
  EXPECT_THAT(words, HasSubstr(caution));
}

TEST(Dossier, TellsClashesDecisionsAndTheTightestPlace) {
  Owned lens = half_made();
  lens.log.decisions = {
      {1, "2027-03-09T10:00:00Z", "P01-U03", 9, DecisionKind::accept, "", "Edge behind the rib."}};
  DossierFacts facts = lens.facts();
  facts.clearances_known = true;
  facts.tightest_mm = -0.13;
  facts.tightest_between = "a prism and its rib";
  facts.clashes = 2;
  const std::string words = words_of(paper_of(facts, house_words(lens.plan.values, "2027-05-01", "A")));
  EXPECT_THAT(words, HasSubstr("2 pairs clash: these must be settled"));
  EXPECT_THAT(words, HasSubstr("-0.13 mm: a prism and its rib"));
  EXPECT_THAT(words, HasSubstr("P01-U03 9 accept 2027-03-09 Edge behind the rib."));
}

TEST(Dossier, ShowsThePictureInItsProportionsOnTheFirstSheetAndUnderNoWords) {
  const Owned lens = half_made();
  for (const auto& [wide, high] : {std::pair{1600, 900}, {300, 1200}}) {
    DossierFacts facts = lens.facts();
    facts.picture = grey(wide, high);
    for (const PaperTrial& trial : paper_trials()) {
      const Drawing paper = paper_of(facts, tried(hard_words(), trial));
      ASSERT_EQ(paper.sheets.front().pictures.size(), 1u);
      const DrawnPicture& picture = paper.sheets.front().pictures.front();
      const double across = picture.high.x - picture.low.x;
      EXPECT_NEAR((picture.high.y - picture.low.y) / across, static_cast<double>(high) / wide, 1e-9);
      EXPECT_GT(across, 25);
      for (const DrawnText& text : paper.sheets.front().texts)
        EXPECT_FALSE(overlap(box_of(text), {picture.low, picture.high})) << text.words;
    }
  }
  EXPECT_TRUE(paper_of(lens).sheets.front().pictures.empty());
}

TEST(Dossier, KeepsTextsApartOnEveryPaperForEverySample) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::arc), sixth_order_belt(Faces::true_curve),
                                   first_order_unequal(Faces::true_curve)}) {
    Owned lens = owned(values);
    lens.log.loads = {{1, "2027-03-01T09:00:00Z", std::string(90, 'w'),
                       "lot of many words and letters, 2027-14", "\u00C6", 1, 1, 0, "", ""}};
    for (std::size_t i = 0; i < 40; i += 2)
      bring(lens, lens.plan.prisms[i].mark, Stage::cast, static_cast<int>(i) + 100000, 1);
    DossierFacts facts = lens.facts();
    facts.picture = grey(160, 90);
    facts.clearances_known = true;
    facts.tightest_mm = 0.4;
    facts.tightest_between = "P03-U05 and the left rib of the panel that stands beside it";
    for (const PaperTrial& trial : paper_trials())
      for (const HouseWords& words : {house_words(values, "2027-05-01", "A"), hard_words(), HouseWords{}})
        for (const Sheet& sheet : paper_of(facts, tried(words, trial)).sheets) expect_texts_apart(sheet);
  }
}

TEST(Dossier, RefusesALensWithoutPrisms) {
  LensPlan plan = plan_of(fourth_order_bullseye(Faces::arc));
  plan.prisms.clear();
  const auto paper = dossier({plan, {}}, HouseWords{});
  ASSERT_FALSE(paper.ok());
  EXPECT_EQ(paper.problem().code, "prisms");
}

TEST(NumberRanges, JoinNeighbours) {
  EXPECT_EQ(number_ranges({}), "");
  EXPECT_EQ(number_ranges({7}), "7");
  EXPECT_EQ(number_ranges({1, 2, 3, 4, 7, 9, 10}), "1-4, 7, 9-10");
}

}  // namespace
}  // namespace prismwright
