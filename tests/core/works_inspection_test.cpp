#include "core/works/inspection.h"

#include <gmock/gmock.h>

#include <fmt/format.h>

#include <cmath>

#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

const LensPlan& small_lens() {
  static const LensPlan plan = plan_of(sixth_order_belt(Faces::true_curve));
  return plan;
}
const PlannedPrism& some_prism() { return small_lens().prisms.front(); }

/// What was written down of one prism, in the order in which it happened, an hour apart.
class Record {
 public:
  void cast(long long serial) { step(Stage::cast, serial); }
  void scrap() {
    step(Stage::scrapped, 0);
    ledger_.back().back_to = Stage::moulded;
  }
  void measure(const std::string& key, double value, long long serial = 0) {
    Measurement m;
    m.mark = some_prism().mark;
    m.serial = serial;
    m.feature = key;
    m.measured = value;
    m.by = "E. Marsh";
    m.when_utc = next_hour();
    measurements_.push_back(m);
  }
  void measure_all_as_drawn(const std::string& but = {}) {
    for (const Feature& feature : features_of(some_prism(), small_lens().values.works))
      if (feature.needed && feature.key != but) measure(feature.key, feature.drawn);
  }
  void decide(DecisionKind kind, const std::string& note) {
    Decision decision;
    decision.mark = some_prism().mark;
    decision.kind = kind;
    decision.note = note;
    decision.when_utc = next_hour();
    decisions_.push_back(decision);
  }
  [[nodiscard]] InspectionRecord record() const { return {measurements_, decisions_, ledger_, {}, nullptr}; }
  [[nodiscard]] InspectedPrism seen() const {
    return inspect(some_prism(), small_lens().values.works, record());
  }

 private:
  void step(Stage to, long long serial) {
    LedgerEntry line;
    line.mark = some_prism().mark;
    line.to = to;
    line.serial = serial;
    line.when_utc = next_hour();
    ledger_.push_back(line);
  }
  std::string next_hour() {
    ++hour_;
    return fmt::format("2027-03-{:02}T{:02}:00:00Z", 1 + hour_ / 24, hour_ % 24);
  }

  int hour_ = 0;
  std::vector<Measurement> measurements_;
  std::vector<Decision> decisions_;
  std::vector<LedgerEntry> ledger_;
};

/// The prism's first feature of that kind; which letters its corners have is not the matter here.
std::string first_key(FeatureKind kind) {
  for (const Feature& feature : features_of(some_prism(), small_lens().values.works))
    if (feature.kind == kind) return feature.key;
  return "none";
}

double drawn(const std::string& key) { return inspect(some_prism(), {}, {}).find(key)->feature.drawn; }

TEST(Inspection, OfNothingMeasuredSaysWhatToMeasure) {
  const InspectedPrism prism = Record().seen();
  EXPECT_FALSE(prism.fit);
  EXPECT_EQ(prism.out, 0);
  EXPECT_GT(prism.missing, 5);
  EXPECT_THAT(prism.words, HasSubstr("Still to be measured: width."));
  for (const CheckedFeature& checked : prism.features)
    EXPECT_EQ(checked.verdict, InspectionVerdict::not_measured) << checked.feature.key;
}

TEST(Inspection, OfAllAsDrawnIsFitToGlaze) {
  Record record;
  record.cast(7);
  record.measure_all_as_drawn();
  const InspectedPrism prism = record.seen();
  EXPECT_TRUE(prism.fit) << prism.words;
  EXPECT_EQ(prism.serial, 7);
  EXPECT_EQ(prism.missing, 0);
  EXPECT_EQ(prism.find("thickness")->verdict, InspectionVerdict::not_measured);
}

TEST(Inspection, TakesALimitAsWithinAndAHairMoreAsOut) {
  Record record;
  const double size = drawn("length.outer");
  record.measure("length.outer", size + 0.3);
  EXPECT_EQ(record.seen().find("length.outer")->verdict, InspectionVerdict::within);
  record.measure("length.outer", size - 0.3001);
  const InspectedPrism prism = record.seen();
  EXPECT_EQ(prism.find("length.outer")->verdict, InspectionVerdict::out);
  EXPECT_NEAR(prism.find("length.outer")->off, -0.3001, 1e-9);
  EXPECT_THAT(prism.words, HasSubstr("Out of tolerance: length.outer by -0.3 mm"));
}

TEST(Inspection, CountsTheLatestReadingAndKeepsCount) {
  Record record;
  const std::string angle = first_key(FeatureKind::angle);
  record.measure(angle, drawn(angle) + 0.5);
  record.measure(angle, drawn(angle) + 0.05);
  const CheckedFeature checked = *record.seen().find(angle);
  EXPECT_EQ(checked.readings, 2);
  EXPECT_NEAR(checked.off, 0.05, 1e-12);
  EXPECT_EQ(checked.verdict, InspectionVerdict::within);
  EXPECT_EQ(checked.by, "E. Marsh");
}

TEST(Inspection, LetsAReasonAcceptWhatIsOutUntilItIsMeasuredAgain) {
  Record record;
  record.measure_all_as_drawn("laser");
  record.measure("laser", 0.3);
  EXPECT_FALSE(record.seen().fit);
  EXPECT_EQ(record.seen().unsettled, 1);
  record.decide(DecisionKind::accept, "blind sector");
  const InspectedPrism accepted = record.seen();
  EXPECT_TRUE(accepted.fit);
  EXPECT_EQ(accepted.out, 1);
  EXPECT_EQ(accepted.unsettled, 0);
  EXPECT_THAT(accepted.words, HasSubstr("accepted: blind sector"));
  record.measure("laser", -0.4);
  EXPECT_FALSE(record.seen().fit);
  record.decide(DecisionKind::shim, "0.2 mm under the lower edge");
  EXPECT_TRUE(record.seen().fit);
  EXPECT_THAT(record.seen().words, HasSubstr("with a shim: 0.2 mm"));
}

TEST(Inspection, AcceptsNothingThatWasNotMeasured) {
  Record record;
  record.measure_all_as_drawn("length.outer");
  record.decide(DecisionKind::accept, "looks right");
  EXPECT_FALSE(record.seen().fit);
  EXPECT_THAT(record.seen().words, HasSubstr("Still to be measured: length.outer"));
}

TEST(Inspection, OfAScrappedCastingDoesNotPassToTheNextOne) {
  Record record;
  record.cast(7);
  record.measure_all_as_drawn();
  record.decide(DecisionKind::scrap, "bubble in the middle");
  EXPECT_FALSE(record.seen().fit);
  EXPECT_EQ(record.seen().words, "Scrapped: bubble in the middle");
  record.scrap();
  EXPECT_EQ(record.seen().out + record.seen().within, 0);
  record.cast(9);
  const InspectedPrism anew = record.seen();
  EXPECT_EQ(anew.serial, 9);
  EXPECT_FALSE(anew.decision.has_value());
  EXPECT_EQ(anew.within, 0);
  const std::string width = first_key(FeatureKind::width);
  record.measure(width, drawn(width), 7);  // a late note on the old one
  EXPECT_EQ(record.seen().within, 0);
  record.measure(width, drawn(width), 9);
  EXPECT_EQ(record.seen().within, 1);
}

TEST(Inspection, TakesTheBenchsReadingsAsTheLaser) {
  const auto bench = bench_plan(small_lens());
  ASSERT_TRUE(bench.ok()) << bench.problem().text;
  const BenchAim* aim = nullptr;
  for (const BenchAim& each : bench->aims)
    if (each.trouble.empty() && !aim) aim = &each;
  ASSERT_NE(aim, nullptr);
  // A spot that lies 10 mm high on the board: atan(10 / distance) for a beam that is about level.
  BenchReading reading;
  reading.mark = aim->mark;
  reading.height_mm = 10;
  reading.board_mm = bench->board_mm;
  const std::vector readings = {reading};
  InspectionRecord record;
  record.readings = readings;
  record.bench = &*bench;
  const auto* prism = small_lens().find(aim->mark);
  const CheckedFeature laser = *inspect(*prism, small_lens().values.works, record).find("laser");
  ASSERT_TRUE(laser.measured.has_value());
  EXPECT_NEAR(*laser.measured, std::atan(10 / (bench->board_mm - aim->leaves.x)) * 180 / std::acos(-1.0), 2e-3);
  EXPECT_EQ(laser.readings, 1);
}

TEST(Inspection, OfAWholeLensListsEveryPrismAndSumsUp) {
  Record record;
  record.measure_all_as_drawn();
  const auto prisms = inspect(small_lens(), record.record());
  ASSERT_EQ(prisms.size(), small_lens().prisms.size());
  const InspectionSummary summary = summary_of(prisms);
  EXPECT_EQ(summary.prisms, static_cast<int>(prisms.size()));
  EXPECT_EQ(summary.fit, 1);
  EXPECT_EQ(summary.measured, 1);
  EXPECT_EQ(summary.out, 0);
  for (std::size_t i = 0; i < prisms.size(); ++i) EXPECT_EQ(prisms[i].mark, small_lens().prisms[i].mark);
}

TEST(Inspection, WritesARowForEveryFeature) {
  Record record;
  record.cast(7);
  record.measure("laser", 0.25);
  const std::vector prisms = {record.seen()};
  const std::string csv = inspection_csv(prisms);
  EXPECT_THAT(csv, testing::StartsWith("mark,serial,feature,name,drawn,unit,within,measured,off,verdict,"));
  EXPECT_EQ(static_cast<std::size_t>(std::ranges::count(csv, '\n')), prisms[0].features.size() + 1);
  EXPECT_THAT(csv, HasSubstr(",7,laser,departure of the bench laser's beam,0.0000,deg,0.1,0.25,0.2500,out,1,"));
}

TEST(CheckMeasurement, RefusesMarksFeaturesAndSlipsOfThePen) {
  const auto code_of = [](const std::string& mark, const std::string& key, double value) {
    Measurement m;
    m.mark = mark;
    m.feature = key;
    m.measured = value;
    const Done done = check_measurement(small_lens(), m);
    return done.ok() ? std::string("taken") : done.problem().code;
  };
  const std::string mark = some_prism().mark;
  const double size = drawn("length.outer");
  EXPECT_EQ(code_of(mark, "length.outer", size + 1), "taken");
  EXPECT_EQ(code_of("S01" + mark.substr(3), "length.outer", size + 1), "taken");
  EXPECT_EQ(code_of("P77-U01", "length.outer", size), "inspection.mark");
  EXPECT_EQ(code_of(mark, "lenght.outer", size), "inspection.feature");
  EXPECT_EQ(code_of(mark, "length.outer", 10 * size), "inspection.value");
  EXPECT_EQ(code_of(mark, "length.outer", -size), "inspection.value");
  EXPECT_EQ(code_of(mark, "length.outer", std::nan("")), "inspection.value");
  EXPECT_EQ(code_of(mark, "laser", -0.4), "taken");
  EXPECT_EQ(code_of(mark, "laser", 9), "inspection.value");
}

TEST(CheckDecision, RefusesOneWithoutAReason) {
  Decision decision;
  decision.mark = some_prism().mark;
  decision.note = "  ";
  EXPECT_FALSE(check_decision(small_lens(), decision).ok());
  decision.note = "a scratch on the joint, out of the light";
  EXPECT_TRUE(check_decision(small_lens(), decision).ok());
  decision.mark = "P77-U01";
  EXPECT_FALSE(check_decision(small_lens(), decision).ok());
}

}  // namespace
}  // namespace prismwright
