#include "core/papers/estimate.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>

#include "core/drawing/lengths.h"
#include "core/papers/estimate_parts.h"
#include "core/works/work_hours.h"
#include "tests/support/paper_words.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

using testing::HasSubstr;
using testing::Not;

/// A lens and its works, from nothing, with brass of 18.3 kg.
struct Reckoned {
  LensPlan plan;
  WorksReckoning works;
};
Reckoned reckoned(const LensValues& values, double brass_kg = 18.3) {
  Reckoned job{plan_of(values), {}};
  WorksFacts facts;
  facts.brass_kg = brass_kg;
  facts.today = std::chrono::sys_days(std::chrono::year(2027) / 5 / 1);
  job.works = reckon_works(job.plan, {}, WorksLog{}, facts);
  return job;
}

const Reckoned& fourth() {
  static const Reckoned job = reckoned(fourth_order_bullseye(Faces::true_curve));
  return job;
}
HouseWords plain_words() { return house_words(fourth().plan.values, "2027-05-01", "A"); }

Drawing paper_of(const Reckoned& job, const EstimateChoice& choice, const HouseWords& words) {
  const auto paper = estimate(job.plan, job.works, choice, words);
  EXPECT_TRUE(paper.ok()) << (paper.ok() ? "" : paper.problem().text);
  return paper.ok() ? *paper : Drawing{};
}

TEST(Estimate, HoldsEveryLineStepAndTotalOfTheWorksPageToThePrintedDigit) {
  const std::string words = words_of(paper_of(fourth(), {}, plain_words()));
  const Costs& costs = fourth().works.costs;
  ASSERT_EQ(costs.lines.size(), 5u);
  for (const CostLine& line : costs.lines)
    EXPECT_THAT(words, HasSubstr(fmt::format("{:.4f} {} {:.2f} {:.2f}", line.quantity, line.unit,
                                             line.unit_cost, line.cost)))
        << line.item;
  for (const StepCost& step : costs.steps)
    EXPECT_THAT(words, HasSubstr(fmt::format("{:.1f} {:.2f}", step.hours, step.money))) << name_of(step.step);
  EXPECT_THAT(words, HasSubstr(fmt::format("Cost of the whole lens {:.2f}", costs.total)));
  EXPECT_THAT(words, HasSubstr(day_text(fourth().works.work.start)));
  EXPECT_THAT(words, HasSubstr(day_text(fourth().works.work.finish)));
}

TEST(Estimate, PromisesNoDayWhereCastingsFitNoLoad) {
  const std::string day = day_text(fourth().works.work.finish);
  const std::string ready = words_of(paper_of(fourth(), {}, plain_words()));
  ASSERT_EQ(fourth().works.work.unplaced, 0);
  EXPECT_THAT(ready, HasSubstr("Ready on " + day));
  EXPECT_THAT(ready, HasSubstr("is finished on " + day));
  LensValues values = fourth().plan.values;
  values.works.vessel_diameter_mm = values.works.vessel_height_mm = 60;
  const Reckoned job = reckoned(values);
  ASSERT_GT(job.works.work.unplaced, 0);
  const std::string least = day_text(job.works.work.finish);
  const std::string words = words_of(paper_of(job, {}, plain_words()));
  EXPECT_THAT(words, HasSubstr("Not ready before " + least));
  EXPECT_THAT(words, HasSubstr("is not finished before " + least));
  EXPECT_THAT(words, Not(HasSubstr("Ready on")));
  EXPECT_THAT(words, Not(HasSubstr("finished on")));
}

TEST(Estimate, AddsUpToTheDigitWhateverTheRates) {
  for (const double hour_cost : {45.0, 33.337, 0.01, 61.999}) {
    Reckoned job = fourth();
    job.plan.values.works.hour_cost = hour_cost;
    job.works.costs.total = 0;
    for (CostLine& line : job.works.costs.lines) {
      if (line.item == "hours") line.cost = line.quantity * hour_cost;
      job.works.costs.total += line.cost;
    }
    for (const double margin : {0.0, 12.5, 33.3}) {
      const EstimateFacts facts = estimate_facts(job.plan, job.works, {margin, 60, 1, ""});
      EXPECT_EQ((facts.lines + facts.rounding).count(), facts.cost.count());
      EXPECT_EQ((facts.cost + facts.margin).count(), facts.total.count());
      EXPECT_EQ(facts.cost.words(), fmt::format("{:.2f}", job.works.costs.total));
      EXPECT_LE(std::abs(facts.rounding.count()),
                3);  // five lines, half a hundredth each, and the total's own half
      EXPECT_NEAR(static_cast<double>(facts.margin.count()),
                  margin * static_cast<double>(facts.cost.count()) / 100, 0.5);
    }
  }
}

// 10.004 and 20.004 print 10.00 and 20.00, their total prints 30.01.
TEST(Estimate, SaysWhatRoundingEachLineMakes) {
  Reckoned job = fourth();
  job.works.costs.lines = {{"resin", 1, "kg", 10.004, 10.004}, {"hours", 1, "h", 20.004, 20.004}};
  job.works.costs.total = 30.008;
  const std::string words = words_of(paper_of(job, {}, plain_words()));
  EXPECT_THAT(
      words, HasSubstr("Rounding of the lines above, each to the hundredth 0.01 Cost of the whole lens 30.01"));
}

// By hand, for the first kind: resin V x 0.98e-6 kg/mm3 x 1.25 head x 1.005 initiator; hours polishing, proving
// and the loads' hands over all castings; both over 0.9 that come out.
TEST(EstimateOptions, PriceASpareByTheRatesOfTheWorks) {
  const EstimateOptions options = estimate_options(fourth().plan, fourth().works, 0, 2);
  const WorksSettings& rates = fourth().plan.values.works;
  ASSERT_EQ(options.spares.size(), fourth().works.list.rows.size());
  const MakeRow& row = fourth().works.list.rows.front();
  double castings = 0;
  for (const MakeRow& each : fourth().works.list.rows) castings += whole_castings(each, rates);
  const double loads_h =
      fourth().works.work.of(WorkStep::cast).hands_h + fourth().works.work.of(WorkStep::anneal).hands_h;
  const double resin_kg = row.volume_mm3 * 0.98e-6 * 1.25 * 1.005 / 0.9;
  const double hours = (row.optical_mm2 / 1e4 + 0.25 + loads_h / castings) / 0.9;
  EXPECT_NEAR(options.spares.front().resin_kg, resin_kg, 1e-12);
  EXPECT_NEAR(options.spares.front().hours, hours, 1e-12);
  EXPECT_NEAR(static_cast<double>(options.spares.front().price.count()) / 100, resin_kg * 12 + hours * 45,
              0.005001);
  Money sum;
  for (const SpareOffer& spare : options.spares) sum = sum + spare.price;
  EXPECT_EQ(options.one_set, sum);
  EXPECT_EQ(options.all_sets, sum + sum);
}

// One mould and one master of each kind are what the lens itself takes, where no mould wears out.
TEST(EstimateOptions, HandOverMouldsAndMastersAtWhatTheLensItselfTakes) {
  const EstimateOptions options = estimate_options(fourth().plan, fourth().works, 0, 1);
  const auto& steps = fourth().works.costs.steps;
  const auto money = [&](WorkStep step) { return Money::printed(steps[static_cast<std::size_t>(step)].money); };
  EXPECT_EQ(options.new_moulds, money(WorkStep::mould));
  EXPECT_EQ(options.new_masters, money(WorkStep::master));
  EXPECT_EQ(options.further_moulds, 0);
}

// Eight prisms of a kind take 9 castings; with 20 sets 28 prisms take 32, and a mould stands 25.
TEST(EstimateOptions, AskForMouldsThatManySparesWearOut) {
  const EstimateOptions options = estimate_options(fourth().plan, fourth().works, 0, 20);
  EXPECT_EQ(options.further_moulds, static_cast<int>(fourth().works.list.rows.size()));
  EXPECT_EQ(options.further_moulds_price, options.new_moulds);
  EXPECT_THAT(words_of(paper_of(fourth(), {0, 60, 20, ""}, plain_words())), HasSubstr("would be worn out"));
}

TEST(Estimate, GivesItsLastDayTheMarginAndTheMakersNote) {
  const std::string words = words_of(paper_of(fourth(), {18.5, 60, 0, "Paid in three parts."}, plain_words()));
  EXPECT_THAT(words, HasSubstr("60 days, to 2027-06-30"));
  EXPECT_THAT(words, HasSubstr("Margin, 18.5 % of it"));
  EXPECT_THAT(words, HasSubstr("Paid in three parts."));
  EXPECT_THAT(words, Not(HasSubstr("as asked for")));
}

TEST(Estimate, SaysThatTheFramesMetalIsNotInItWhereItWasNotWeighed) {
  const Reckoned job = reckoned(sixth_order_belt(Faces::arc), 0);
  EXPECT_THAT(words_of(paper_of(job, {}, plain_words())), HasSubstr("its mass was not reckoned"));
  EXPECT_THAT(words_of(paper_of(fourth(), {}, plain_words())), Not(HasSubstr("its mass was not reckoned")));
}

TEST(Estimate, RefusesChoicesOutOfRangeAndALensThatCostsNothing) {
  const auto code = [&](const EstimateChoice& choice) {
    const auto paper = estimate(fourth().plan, fourth().works, choice, plain_words());
    return paper.ok() ? std::string("taken") : paper.problem().code;
  };
  EXPECT_EQ(code({-0.1, 60, 1, ""}), "margin");
  EXPECT_EQ(code({500.1, 60, 1, ""}), "margin");
  EXPECT_EQ(code({std::nan(""), 60, 1, ""}), "margin");
  EXPECT_EQ(code({0, 0, 1, ""}), "valid_days");
  EXPECT_EQ(code({0, 3651, 1, ""}), "valid_days");
  EXPECT_EQ(code({0, 60, -1, ""}), "spare_sets");
  EXPECT_EQ(code({0, 60, 21, ""}), "spare_sets");
  EXPECT_EQ(code({500, 3650, 20, ""}), "taken");

  LensValues free_of_cost = fourth_order_bullseye(Faces::arc);
  WorksSettings& works = free_of_cost.works;
  works.hour_cost = works.resin_cost_per_kg = works.print_cost_per_kg = works.tooling_cost_per_l =
      works.brass_cost_per_kg = 0;
  const Reckoned job = reckoned(free_of_cost);
  const auto paper = estimate(job.plan, job.works, {}, plain_words());
  ASSERT_FALSE(paper.ok());
  EXPECT_EQ(paper.problem().code, "costs");
  EXPECT_THAT(paper.problem().text, HasSubstr("works.hour_cost"));
}

TEST(Estimate, KeepsTextsApartOnEveryPaperForEverySample) {
  EstimateChoice long_note{7.25, 60, 3, ""};
  for (int i = 0; i < 60; ++i) long_note.note += "Paid in parts, \u00C6r\u00F8sk\u00F8bing; ";
  long_note.note += std::string(300, 'x');
  for (const LensValues& values : {fourth_order_bullseye(Faces::arc), sixth_order_belt(Faces::true_curve),
                                   first_order_unequal(Faces::true_curve)}) {
    const Reckoned job = reckoned(values);
    for (const PaperTrial& trial : paper_trials())
      for (const HouseWords& words : {house_words(values, "2027-05-01", "A"), hard_words(), HouseWords{}})
        for (const Sheet& sheet : paper_of(job, long_note, tried(words, trial)).sheets)
          expect_texts_apart(sheet);
  }
}

TEST(Money, PrintsAndAddsHundredths) {
  EXPECT_EQ(Money::printed(1234.5).words(), "1234.50");
  EXPECT_EQ(Money::printed(-0.05).words(), "-0.05");
  EXPECT_EQ((Money::printed(0.1) + Money::printed(0.2)).words(), "0.30");
  EXPECT_EQ(Money::printed(std::nan("")).count(), 0);
  for (const double value : {0.125, 2.675, 1.005, 37416.145, 99999.995})
    EXPECT_EQ(Money::printed(value).words(), fmt::format("{:.2f}", value));
}

}  // namespace
}  // namespace prismwright
