#include "core/papers/estimate_parts.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/drawing/lengths.h"
#include "core/papers/lens_facts.h"
#include "core/works/works_checks.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

std::string item_words(const std::string& item) {
  if (item == "resin") return "Resin for all castings, scrap, initiator and tint included";
  if (item == "tooling") return "Mould material";
  if (item == "printing") return "Prints of the masters";
  if (item == "brass") return "Brass of the frame";
  if (item == "hours") return "Hours of hands, all steps together";
  return item;
}

std::string step_words(WorkStep step) {
  switch (step) {
    case WorkStep::master:
      return "Masters, printed and finished";
    case WorkStep::mould:
      return "Moulds";
    case WorkStep::cast:
      return "Casting, by loads of the vessel";
    case WorkStep::anneal:
      return "Annealing, by loads of the oven";
    case WorkStep::polish:
      return "Sanding and polishing, by castings";
    case WorkStep::prove:
      return "Proving, by castings";
    case WorkStep::glaze:
      return "Glazing, by prisms";
    case WorkStep::frame:
      return "Brass frame";
  }
  return {};
}

std::string last_day(const std::string& date, int days) {
  const auto from = read_day(date);
  return from ? day_text(std::chrono::sys_days(*from) + std::chrono::days(days)) : std::string();
}

bool has_brass(const Costs& costs) {
  return std::ranges::any_of(costs.lines,
                             [](const CostLine& line) { return line.item == "brass" && line.quantity > 0; });
}

}  // namespace

EstimateFacts estimate_facts(const LensPlan& plan, const WorksReckoning& works, const EstimateChoice& choice) {
  EstimateFacts facts;
  for (const CostLine& line : works.costs.lines) facts.lines = facts.lines + Money::printed(line.cost);
  facts.cost = Money::printed(works.costs.total);
  facts.rounding = facts.cost - facts.lines;
  facts.margin = facts.cost.share_percent(choice.margin_percent);
  facts.total = facts.cost + facts.margin;
  facts.options = estimate_options(plan, works, choice.margin_percent, choice.spare_sets);
  return facts;
}

void write_offer(DocumentPages& pages, const LensPlan& plan, const WorksReckoning& works,
                 const EstimateFacts& facts, const EstimateChoice& choice, const HouseWords& words) {
  const std::string until = last_day(words.date, choice.valid_days);
  pages.title(words.title.empty() ? "A lighthouse lens" : words.title,
              words.client.empty() ? "Estimate" : "Estimate for " + words.client);
  const std::string days = fmt::format("{} {}", choice.valid_days, choice.valid_days == 1 ? "day" : "days");
  pages.facts(
      {{"Total", fmt::format("{} {}", facts.total.words(), works.costs.currency)},
       {works.work.unplaced > 0 ? "Not ready before" : "Ready on", day_text(works.work.finish)},
       {"Date of this estimate", words.date.empty() ? "not given" : words.date},
       {"It holds for", until.empty() ? days + " from its date" : fmt::format("{}, to {}", days, until)}});
  pages.chapter("What is offered", 40);
  pages.paragraph("Offered is " + what_it_is(plan, words));
  pages.facts(lens_facts(plan, works.list.totals.masters, LengthWords{words.inches}));
  pages.paragraph(
      "The work: a master of every kind of prism, printed and finished; moulds; castings, annealed, sanded, "
      "polished and "
      "proved; the brass frame; and the prisms glazed into it. The section is proved ray by ray before the "
      "first master "
      "is printed.");
  if (!choice.note.empty()) {
    pages.section("From the maker", 12);
    pages.paragraph(choice.note);
  }
}

/// So that quantity times price gives the line's cost to the hundredth.
constexpr int kQuantityDecimals = 4;

void write_money(DocumentPages& pages, const WorksReckoning& works, const EstimateFacts& facts,
                 const EstimateChoice& choice) {
  const std::string& currency = works.costs.currency;
  pages.chapter(fmt::format("The money, in {}", currency), 50);
  std::vector<Cells> rows;
  for (const CostLine& line : works.costs.lines)
    rows.push_back({item_words(line.item), decimals(line.quantity, kQuantityDecimals), line.unit,
                    decimals(line.unit_cost, 2), Money::printed(line.cost).words()});
  if (facts.rounding.count() != 0)
    rows.push_back({"Rounding of the lines above, each to the hundredth", "", "", "", facts.rounding.words()});
  const std::string total = DocumentPages::kTotal;
  rows.push_back({total + "Cost of the whole lens", "", "", "", facts.cost.words()});
  if (facts.margin.count() != 0)
    rows.push_back(
        {fmt::format("Margin, {} % of it", shortest(choice.margin_percent)), "", "", "", facts.margin.words()});
  rows.push_back({total + "Total", "", "", currency, facts.total.words()});
  pages.table({{"for the whole lens", 0.46},
               {"quantity", 0.14, true},
               {"unit", 0.08},
               {"each", 0.14, true},
               {"cost", 0.18, true}},
              rows);
  for (const std::string& note : works.costs.notes) pages.note(note);
}

void write_hours(DocumentPages& pages, const WorksReckoning& works, const EstimateFacts& facts) {
  pages.chapter("Hours and days", 50);
  const WorkPlan& work = works.work;
  std::vector<Cells> rows;
  double hours = 0, hands = 0;
  Money money;
  for (const StepCost& step : works.costs.steps) {
    const StepPlan& plan = work.of(step.step);
    hours += step.hours;
    hands += plan.hands_left_h;
    money = money + Money::printed(step.money);
    rows.push_back({step_words(step.step), decimals(plan.units, 0), decimals(step.hours, 1),
                    Money::printed(step.money).words()});
  }
  if (const Money rest = facts.cost - money; rest.count() != 0)
    rows.push_back({"Rounding of the steps above, each to the hundredth", "", "", rest.words()});
  rows.push_back(
      {std::string(DocumentPages::kTotal) + "The whole lens", "", decimals(hours, 1), facts.cost.words()});
  pages.table({{"step", 0.48},
               {"units", 0.12, true},
               {"hours of hands", 0.18, true},
               {"hours and material, " + works.costs.currency, 0.22, true}},
              rows);
  pages.paragraph(
      fmt::format("Work starts on {} and is {} {}, {} days later, with {} hours of hands still to be "
                  "worked.",
                  day_text(work.start), work.unplaced > 0 ? "not finished before" : "finished on",
                  day_text(work.finish), decimals(work.days, 1), decimals(hands, 1)));
  if (hands + 0.05 < hours)
    pages.paragraph(
        "Some of it is done already: the money is for the whole lens from its first master, the days for what "
        "is left by the works record.");
  for (const std::string& note : work.notes) pages.note(note);
}

void write_options(DocumentPages& pages, const EstimateFacts& facts) {
  const EstimateOptions& options = facts.options;
  pages.chapter("Options", 50);
  pages.paragraph(
      "None of these is in the total. They are reckoned at the rates above and hold the same margin.");
  std::vector<Cells> rows = {{"A set of spares: one casting of every kind", options.one_set.words()}};
  if (options.sets > 1)
    rows.push_back(
        {fmt::format("{} {} of spares, as asked for", options.sets, options.sets == 1 ? "set" : "sets"),
         options.all_sets.words()});
  if (options.further_moulds > 0)
    rows.push_back({fmt::format("{} more {} with them, since those of the lens would be worn out",
                                options.further_moulds, options.further_moulds == 1 ? "mould" : "moulds"),
                    options.further_moulds_price.words()});
  rows.push_back({"Moulds handed over: a new one of every kind", options.new_moulds.words()});
  rows.push_back(
      {"Masters handed over: a new one of every kind, printed and finished", options.new_masters.words()});
  pages.table({{"option", 0.78}, {"price", 0.22, true}}, rows);
  pages.section("Spare castings by kind", 24);
  rows.clear();
  for (const SpareOffer& spare : options.spares)
    rows.push_back({spare.kind, std::to_string(spare.prisms), decimals(spare.resin_kg, 3),
                    decimals(spare.hours, 2), spare.price.words()});
  pages.twin_table({{"kind", 0.2},
                    {"in the lens", 0.19, true},
                    {"resin kg", 0.18, true},
                    {"hours", 0.15, true},
                    {"price each", 0.28, true}},
                   rows);
  pages.note(
      "A spare is sound, annealed, polished and proved, and poured with the lens from its own moulds. Its "
      "price is resin "
      "and hours of one casting with its share of the loads, over the share of castings that come out.");
}

void write_not_in_it(DocumentPages& pages, const LensPlan& plan, const WorksReckoning& works,
                     const EstimateChoice& choice) {
  pages.chapter("What is not in it", 30);
  std::vector<std::string> points = {
      "Carriage, packing, insurance and customs.",
      "Taking down of what stands there, erection, lifting gear, and the lamp with its supply.",
      "The approval of the authority for aids to navigation and of any other body, and what they may ask for.",
      "Taxes and duties.",
      "Machines and rooms: vessel, oven and printer run day and night in the plan of days and carry no cost of "
      "their own."};
  if (!has_brass(works.costs))
    points.insert(points.begin(),
                  "The metal of the frame: its mass was not reckoned, so no brass is in the money above.");
  if (plan.values.material.name != "acrylic")
    points.insert(
        points.begin(),
        fmt::format("Prisms of {}: they are not cast from resin. Resin, moulds, prints of masters and "
                    "hours above are reckoned as for prisms cast in acrylic; ask a glass-worker.",
                    plan.values.material.name));
  if (works.list.totals.castings_made > 0)
    points.push_back("What has been spent so far does not change the money above; the works record has it.");
  pages.points(points);
  pages.note(
      fmt::format("The numbers are those of the works page, from the plan of the lens: quantities and hours "
                  "are reckoned, not "
                  "measured. Each line is rounded to the hundredth before it is added.{}",
                  choice.margin_percent == 0 ? " No margin is added." : ""));
}

}  // namespace prismwright
