#include "app/batch/despatch_ask.h"

#include <filesystem>
#include <memory>

#include <CLI/Validators.hpp>

#include "app/batch/works_desk.h"

namespace prismwright {

namespace {

// As core/papers/estimate.h has them.

}  // namespace

void PaperAsk::add_options(CLI::App& command) {
  command.add_option("--date", choice_.date, "of the papers, YYYY-MM-DD; today unless said");
  command.add_option("--revision", choice_.revision,
                     "of what is drawn anew; a pack takes the letter after the last pack's unless said");
  command.add_option("--sheet", sheet_, "paper of all drawings; as large as each needs unless said")
      ->check(CLI::IsMember({name_of(Paper::a4), name_of(Paper::a3), name_of(Paper::letter)}));
  command.add_flag("--inches", choice_.inches, "lengths in inches");
  EstimateChoice& estimate = choice_.estimate;
  command.add_option("--margin-percent", estimate.margin_percent, "estimate: upon the reckoned cost")
      ->check(CLI::Range(0.0, EstimateChoice::kMostMargin_percent))
      ->capture_default_str();
  command.add_option("--valid-days", estimate.valid_days, "estimate: it stands for so many days")
      ->check(CLI::Range(1, EstimateChoice::kMostDays))
      ->capture_default_str();
  command.add_option("--spare-sets", estimate.spare_sets, "estimate: sets of spares that are offered")
      ->check(CLI::Range(0, EstimateChoice::kMostSets))
      ->capture_default_str();
  command.add_option("--note", estimate.note, "estimate: a note in your own words");
}

PaperChoice PaperAsk::choice() const {
  PaperChoice choice = choice_;
  if (choice.date.empty()) choice.date = today_text();
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter})
    if (sheet_ == name_of(paper)) choice.paper = paper;
  return choice;
}

Outcome<DespatchSource> despatch_source(const Lensbook& book) {
  auto plan = plan_lens(book.values());
  if (!plan) return plan.problem();
  DespatchSource source;
  source.plan = std::make_shared<const LensPlan>(std::move(plan).value());
  source.book_name = std::filesystem::path(book.path()).stem().string();
  source.ledger = book.ledger();
  source.log = book.works_log();
  source.readings = book.readings();
  source.photograph = [&book](long long number) { return book.photograph_bytes(number); };
  return source;
}

}  // namespace prismwright
