#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "core/works/costs.h"
#include "core/works/work_plan.h"
#include "core/works/works_reckoning.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using std::chrono::sys_days;

constexpr sys_days kToday = sys_days(std::chrono::year(2027) / 2 / 1);

LensValues few_zones(LensValues values) {
  values.section.upper_to_deg = values.section.lower_to_deg = values.section.refracting_to_deg + 6;
  values.works.start_date = "2027-03-01";
  return values;
}

struct Shop {
  LensPlan plan;
  std::vector<Master> masters;
  std::vector<PieceSize> sizes;
  std::vector<LedgerEntry> ledger;

  explicit Shop(const LensValues& values)
      : plan(plan_of(values)), masters(masters_of(plan)), sizes(piece_sizes(plan, masters)) {}

  void bring(const std::string& mark, Stage to) {
    for (int i = static_cast<int>(stages_from(ledger).stage_of(mark)) + 1; i <= static_cast<int>(to); ++i) {
      LedgerEntry line;
      line.mark = mark;
      line.to = static_cast<Stage>(i);
      ledger.push_back(line);
    }
  }
  void bring_all(Stage to) {
    for (const PlannedPrism& prism : plan.prisms) bring(prism.mark, to);
  }
  [[nodiscard]] MakeList list() const { return make_list(plan, masters, sizes, ledger); }
  [[nodiscard]] WorkPlan work(WorkInputs inputs = {}) const {
    inputs.today = kToday;
    return work_plan(plan, list(), inputs);
  }
};

const Shop& new_belt() {
  static const Shop shop(few_zones(sixth_order_belt(Faces::arc)));
  return shop;
}

const WorkBar* bar_of(const WorkPlan& plan, WorkStep step) {
  const auto found =
      std::find_if(plan.bars.begin(), plan.bars.end(), [&](const WorkBar& bar) { return bar.step == step; });
  return found == plan.bars.end() ? nullptr : &*found;
}

/// Bounds that hold for any course of the work.
void expect_possible(const WorkPlan& plan, const WorksSettings& works) {
  const double hands_days = plan.hands_left_h / (works.hours_a_week / 7);
  double machines_days = 0;
  for (const StepPlan& step : plan.steps) {
    for (const double number :
         {step.units, step.units_left, step.hands_h, step.hands_left_h, step.machine_left_h}) {
      EXPECT_TRUE(std::isfinite(number) && number >= 0) << name_of(step.step);
    }
    EXPECT_GE(plan.days, step.machine_left_h / 24 - 1e-6) << name_of(step.step);
    machines_days += step.machine_left_h / 24;
    EXPECT_EQ(bar_of(plan, step.step) != nullptr, step.units_left > 0) << name_of(step.step);
  }
  EXPECT_TRUE(std::isfinite(plan.days));
  EXPECT_GE(plan.days, hands_days * (1 - 1e-9));
  EXPECT_LE(plan.days, (hands_days + machines_days) * (1 + 1e-9));
  double from = 0;
  double to = 0;
  for (const WorkBar& bar : plan.bars) {
    EXPECT_LE(bar.from_day, bar.to_day);
    if (bar.step == WorkStep::frame) continue;
    EXPECT_GE(bar.from_day, from - 1e-9) << name_of(bar.step);
    EXPECT_GE(bar.to_day, to - 1e-9) << name_of(bar.step);
    from = bar.from_day;
    to = bar.to_day;
  }
  const WorkBar* frame = bar_of(plan, WorkStep::frame);
  const WorkBar* glaze = bar_of(plan, WorkStep::glaze);
  if (frame && glaze) {
    EXPECT_GE(glaze->from_day, frame->to_day - 1e-9);
  }
}

TEST(WorkPlan, HoursOfANewLensAreCountsTimesSettings) {
  const Shop& shop = new_belt();
  const WorksSettings& w = shop.plan.values.works;
  const WorkPlan plan = shop.work();
  const double masters = static_cast<double>(shop.masters.size());
  double polish = 0;
  double print = 0;
  for (const MakeRow& row : shop.list().rows) {
    polish += 7 * w.polish_h_per_dm2 * row.optical_mm2 / 1e4;  // 6 / 0.9
    print += row.volume_mm3 / 1e3 / w.print_cm3_per_h;
  }
  EXPECT_NEAR(plan.of(WorkStep::master).hands_left_h, masters * w.master_h, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::master).machine_left_h, print, 1e-6);
  EXPECT_NEAR(plan.of(WorkStep::mould).hands_left_h, masters * w.mould_h, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::polish).hands_left_h, polish, 1e-6);
  EXPECT_NEAR(plan.of(WorkStep::prove).hands_left_h, 7 * masters * w.prove_h, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::glaze).hands_left_h, 6 * masters * w.glaze_h, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::frame).hands_left_h, w.frame_h, 1e-9);
  for (const StepPlan& step : plan.steps) EXPECT_NEAR(step.hands_h, step.hands_left_h, 1e-9);
  expect_possible(plan, w);
  EXPECT_EQ(day_text(plan.start), "2027-03-01");
}

TEST(WorkPlan, PlannedLoadsGiveVesselAndOvenTheirHours) {
  const Shop& shop = new_belt();
  WorkInputs inputs;
  inputs.loads = LoadCounts{7, 12, {30, 30, 30, 30, 30, 30, 24}, std::nullopt};
  const WorkPlan plan = shop.work(inputs);
  EXPECT_NEAR(plan.of(WorkStep::cast).machine_left_h, 84, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::anneal).machine_left_h, 204, 1e-9);
  EXPECT_NEAR(plan.of(WorkStep::cast).hands_left_h, 7 * shop.plan.values.works.load_h, 1e-9);
  EXPECT_TRUE(plan.notes.empty());
  expect_possible(plan, shop.plan.values.works);
}

TEST(WorksReckoning, ReckonsWithTheMouldsOwnVolumesAndWaysUpAndElseSaysThatItIsAGuess) {
  const Shop& shop = new_belt();
  const WorksKinds kinds = works_kinds(shop.plan);
  WorksFacts facts;
  facts.today = kToday;
  const auto quantity = [](const WorksReckoning& works, std::string_view item) {
    return std::ranges::find(works.costs.lines, item, &CostLine::item)->quantity;
  };
  const WorksReckoning guessed = reckon_works(shop.plan, kinds, {}, WorksLog{}, facts);
  ASSERT_EQ(guessed.costs.notes.size(), 1U);
  const std::string all = std::to_string(kinds.masters.size());
  EXPECT_NE(guessed.costs.notes[0].find("a guess from the prisms' sizes for " + all + " of " + all),
            std::string::npos);
  EXPECT_TRUE(std::ranges::all_of(guessed.pieces, &LoadPiece::any_side_up));
  for (const Master& master : kinds.masters) {
    MouldFacts mould;
    mould.mark = master.name;
    mould.master_mm3 = 40e3;
    mould.lower_mm3 = 250e3;
    mould.upper_mm3 = 150e3;
    mould.standing_mm = 210;
    mould.footprint_long_mm = 90;
    mould.footprint_short_mm = 50;
    facts.moulds.push_back(mould);
  }
  const WorksReckoning own = reckon_works(shop.plan, kinds, {}, WorksLog{}, facts);
  EXPECT_TRUE(own.costs.notes.empty());
  // One mould of 0.4 l each: no master needs more castings than a mould stands.
  EXPECT_NEAR(quantity(own, "tooling"), 0.4 * static_cast<double>(kinds.masters.size()), 1e-9);
  EXPECT_NEAR(quantity(own, "printing"),
              0.04 * static_cast<double>(kinds.masters.size()) * shop.plan.values.works.print_density_g_cm3,
              1e-9);
  ASSERT_FALSE(own.pieces.empty());
  for (const LoadPiece& piece : own.pieces) {
    EXPECT_FALSE(piece.any_side_up);
    EXPECT_EQ(piece.mould.height_mm, 210);
    EXPECT_EQ(piece.mould.length_mm, 90);
  }
  facts.moulds.pop_back();
  const WorksReckoning most = reckon_works(shop.plan, kinds, {}, WorksLog{}, facts);
  ASSERT_EQ(most.costs.notes.size(), 1U);
  EXPECT_NE(most.costs.notes[0].find("for 1 of " + all), std::string::npos);
}

TEST(WorkPlan, CastingsThatFitNoLoadAreTold) {
  const Shop& shop = new_belt();
  const int wanted = shop.list().totals.short_of;
  WorkInputs inputs;
  inputs.loads = LoadCounts{3, 12, {30, 30, 30}, wanted - 5};
  const WorkPlan plan = shop.work(inputs);
  EXPECT_EQ(plan.unplaced, 5);
  inputs.loads->castings = wanted;
  EXPECT_EQ(shop.work(inputs).unplaced, 0);
  EXPECT_EQ(shop.work().unplaced, 0) << "guessed loads hold all";
  ASSERT_EQ(plan.notes.size(), 1U);
  EXPECT_EQ(plan.notes[0].find("5 of " + std::to_string(wanted) + " castings fit no load"), 0U);
  expect_possible(plan, shop.plan.values.works);
}

TEST(WorkPlan, FortyHoursOfBrassAtFortyAWeekEndOnTheSeventhDay) {
  LensValues values = few_zones(sixth_order_belt(Faces::arc));
  values.works.frame_h = 40;
  Shop shop(values);
  shop.bring_all(Stage::glazed);
  const WorkPlan plan = shop.work();
  ASSERT_EQ(plan.bars.size(), 1U);
  EXPECT_NEAR(plan.days, 7, 1e-9);
  EXPECT_EQ(day_text(plan.finish), "2027-03-07");
  WorkInputs half;
  const std::vector<Spending> spent = {{1, "", "frame", 15, 0, "", ""}, {2, "", "frame", 5, 0, "", ""}};
  half.spendings = spent;
  EXPECT_NEAR(shop.work(half).days, 3.5, 1e-9);
}

TEST(WorkPlan, WhatIsDoneIsLeftOut) {
  Shop shop(few_zones(sixth_order_belt(Faces::arc)));
  const double whole = shop.work().days;
  shop.bring_all(Stage::polished);
  const WorkPlan plan = shop.work();
  for (const WorkStep step :
       {WorkStep::master, WorkStep::mould, WorkStep::cast, WorkStep::anneal, WorkStep::polish}) {
    EXPECT_EQ(plan.of(step).units_left, 0) << name_of(step);
    EXPECT_EQ(plan.of(step).hands_left_h, 0) << name_of(step);
    EXPECT_GT(plan.of(step).hands_h, 0) << name_of(step);
  }
  EXPECT_EQ(plan.of(WorkStep::prove).units_left, static_cast<double>(shop.plan.prisms.size()));
  EXPECT_LT(plan.days, whole);
  expect_possible(plan, shop.plan.values.works);
}

TEST(WorkPlan, EveryMixtureOfStagesHasAPossibleCourse) {
  Shop shop(few_zones(sixth_order_belt(Faces::arc)));
  int turn = 0;
  for (const PlannedPrism& prism : shop.plan.prisms) shop.bring(prism.mark, static_cast<Stage>(turn++ % 8));
  expect_possible(shop.work(), shop.plan.values.works);
  LedgerEntry lost;
  lost.mark = "P01-C";
  lost.to = Stage::scrapped;
  shop.ledger.push_back(lost);
  expect_possible(shop.work(), shop.plan.values.works);
}

TEST(WorkPlan, MoreHandsEndSoonerButNotBeforeTheMachines) {
  LensValues values = few_zones(sixth_order_belt(Faces::arc));
  values.works.hours_a_week = 20;
  const Shop slow(values);
  values.works.hours_a_week = 10000;
  Shop fast(values);
  EXPECT_LT(fast.work().days, slow.work().days);
  expect_possible(fast.work(), values.works);
  values.works.hours_a_week = 0.1;
  fast.plan.values = values;
  const WorkPlan never = fast.work();
  expect_possible(never, values.works);
  EXPECT_LE(day_text(never.finish).size(), 10U);
}

TEST(WorkPlan, StartsTodayWhereNoDayIsSetAndTellsADayThatIsPast) {
  LensValues values = few_zones(sixth_order_belt(Faces::arc));
  values.works.start_date = "";
  Shop shop(values);
  EXPECT_EQ(shop.work().start, kToday);
  shop.plan.values.works.start_date = "2026-05-01";
  const auto notes = shop.work().notes;
  EXPECT_TRUE(std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
    return note.find("2026-05-01") != std::string::npos;
  }));
}

TEST(WorkPlan, FiniteForTheLargestAndTheSmallestLenses) {
  for (const char* order : {"hyper-radial", "1", "6"}) {
    for (const Work work : {Work::bullseye, Work::belt}) {
      for (const int panels : {2, 5, 32}) {
        LensValues values = few_zones(starting_values(order, work, panels));
        values.section.refracting_to_deg = 12;
        values.section.upper_to_deg = values.section.lower_to_deg = 16;
        values.panels.back().blind = panels > 2;
        values.works.scrap_percent = 90;
        values.works.mould_life = 1;
        const Shop shop(values);
        expect_possible(shop.work(), values.works);
      }
    }
  }
}

TEST(WorkPlan, CsvHasALineForEveryStep) {
  std::istringstream csv(work_plan_csv(new_belt().work()));
  std::string line;
  int lines = 0;
  while (std::getline(csv, line)) {
    EXPECT_EQ(std::count(line.begin(), line.end(), ','), 9) << line;
    ++lines;
  }
  EXPECT_EQ(lines, 9);
}

TEST(LensCosts, LinesAreQuantitiesTimesPrices) {
  const Shop& shop = new_belt();
  const WorksSettings& w = shop.plan.values.works;
  WorkInputs inputs;
  inputs.today = kToday;
  inputs.brass_kg = 21;
  const MakeList list = shop.list();
  const Costs costs = lens_costs(shop.plan, list, work_plan(shop.plan, list, inputs), inputs);
  double castings_mm3 = 0;
  double volume_mm3 = 0;
  for (const MakeRow& row : list.rows) {
    castings_mm3 += 7 * row.volume_mm3;
    volume_mm3 += row.volume_mm3;
  }
  const double resin = castings_mm3 * 1e-6 * w.resin_density_g_cm3 * 1.25 * 1.005;
  EXPECT_NEAR(costs.lines[0].quantity, resin, 1e-9 * resin);
  EXPECT_NEAR(costs.lines[2].quantity, volume_mm3 * 1e-6 * w.print_density_g_cm3, 1e-9);
  EXPECT_NEAR(costs.lines[3].cost, 21 * w.brass_cost_per_kg, 1e-9);
  double lines = 0;
  double steps = 0;
  for (const CostLine& line : costs.lines) lines += line.cost;
  for (const StepCost& step : costs.steps) steps += step.money;
  EXPECT_NEAR(costs.total, lines, 1e-9 * lines);
  EXPECT_NEAR(costs.total, steps, 1e-9 * steps);
}

TEST(LensCosts, VolumesOfSolidsTakeThePlaceOfGuesses) {
  const Shop& shop = new_belt();
  WorkInputs inputs;
  for (const Master& master : shop.masters) inputs.volumes.push_back({master.name, 200, 1500});
  const MakeList list = shop.list();
  const Costs costs = lens_costs(shop.plan, list, work_plan(shop.plan, list, inputs), inputs);
  const double masters = static_cast<double>(shop.masters.size());
  EXPECT_NEAR(costs.lines[1].quantity, masters * 1.5, 1e-9);  // litres, one mould each
  EXPECT_NEAR(costs.lines[2].quantity, masters * 0.2 * shop.plan.values.works.print_density_g_cm3, 1e-9);
}

TEST(LensCosts, TellOfGuessesByMasterHoweverOftenOneIsGiven) {
  const Shop& shop = new_belt();
  const std::string all = std::to_string(shop.masters.size());
  const std::string but_one = std::to_string(shop.masters.size() - 1);
  const MakeList list = shop.list();
  WorkInputs inputs;
  for (int i = 0; i < 2; ++i) inputs.volumes.push_back({shop.masters.front().name, 200, 1500});
  const Costs some = lens_costs(shop.plan, list, work_plan(shop.plan, list, inputs), inputs);
  ASSERT_EQ(some.notes.size(), 1U);
  EXPECT_NE(some.notes[0].find("sizes for " + but_one + " of " + all), std::string::npos) << some.notes[0];
  for (const Master& master : shop.masters) inputs.volumes.push_back({master.name, 200, 1500});
  EXPECT_TRUE(lens_costs(shop.plan, list, work_plan(shop.plan, list, inputs), inputs).notes.empty());
}

TEST(LensCosts, WhatWasSpentStandsBesideTheEstimateByStep) {
  const Shop& shop = new_belt();
  const std::vector<Spending> spent = {{1, "", "polish", 3.5, 12, "", ""},
                                       {2, "", "polish", 1.5, 0, "", ""},
                                       {3, "", "carriage", 0, 80, "", ""}};
  WorkInputs inputs;
  inputs.spendings = spent;
  const MakeList list = shop.list();
  const Costs costs = lens_costs(shop.plan, list, work_plan(shop.plan, list, inputs), inputs);
  const StepCost& polish = costs.steps[static_cast<std::size_t>(WorkStep::polish)];
  EXPECT_NEAR(polish.spent_hours, 5, 1e-12);
  EXPECT_NEAR(polish.actual_money, 12 + 5 * shop.plan.values.works.hour_cost, 1e-9);
  EXPECT_NEAR(costs.other.actual_money, 80, 1e-12);
  EXPECT_NEAR(costs.actual_total, 92 + 5 * shop.plan.values.works.hour_cost, 1e-9);
  const std::string csv = costs_csv(costs);
  EXPECT_NE(csv.find("\n\nitem,quantity,unit,unit_cost,cost_EUR\n"), std::string::npos);
  EXPECT_NE(csv.find("\nother,0.00,0.00,0.00,0.00,80.00,80.00\n"), std::string::npos);
}

TEST(WorkStep, NamesReadBack) {
  for (const WorkStep step : kWorkSteps) EXPECT_EQ(find_work_step(name_of(step)), step);
  EXPECT_FALSE(find_work_step("carriage"));
}

}  // namespace
}  // namespace prismwright
