#include "app/batch/despatch_ask.h"

#include <charconv>
#include <filesystem>
#include <memory>

#include <fmt/format.h>
#include <CLI/Validators.hpp>

#include "app/batch/books.h"
#include "app/batch/works_desk.h"

namespace prismwright {

namespace {

const EstimateChoice kBeginning;

template <class Number>
std::optional<Number> number_of(const std::string& typed) {
  Number number{};
  const char* end = typed.data() + typed.size();
  const auto [stopped, error] = std::from_chars(typed.data(), end, number);
  return error == std::errc() && stopped == end ? std::optional(number) : std::nullopt;
}

/// A number within its limits, or an empty word.
template <class Number>
CLI::Validator number_or_empty(Number least, Number most) {
  const std::string limits = fmt::format("[{} - {}]", least, most);
  return {[least, most, limits](std::string& typed) {
            const auto number = number_of<Number>(typed);
            const bool sound = typed.empty() || (number && *number >= least && *number <= most);
            return sound ? std::string() : fmt::format("Value {} not in range {}", typed, limits);
          },
          "in " + limits};
}

/// What was given, an empty word standing for the beginning; else what was kept.
template <class Number>
Number given_or(const std::optional<std::string>& given, Number kept, Number beginning) {
  return given ? number_of<Number>(*given).value_or(beginning) : kept;
}

std::string clearing(const char* option, const LastPack& last) {
  return fmt::format("as in the last pack, {} of {}; {} \"\" clears it.",
                     std::filesystem::path(last.folder).filename().string(), last.manifest.date, option);
}

/// The book as it goes out. Photographs are read from it, so it must outlive the source.
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

}  // namespace

void PaperAsk::add_options(CLI::App& command) {
  command.add_option("--date", choice_.date, "of the papers, YYYY-MM-DD; today unless said");
  command.add_option("--revision", choice_.revision,
                     "of what is drawn anew; a pack takes the letter after the last pack's unless said");
  command.add_option("--sheet", sheet_, "paper of all drawings; as large as each needs unless said")
      ->check(CLI::IsMember({name_of(Paper::a4), name_of(Paper::a3), name_of(Paper::letter)}));
  command.add_flag("--inches", choice_.inches, "lengths in inches");
  const auto of_estimate = [&](const char* name, std::optional<std::string>& given, const std::string& help) {
    return command.add_option(name, given, "estimate: " + help)->type_name("");
  };
  of_estimate("--margin-percent", given_.margin_percent,
              fmt::format("upon the reckoned cost, {:g} unless said", kBeginning.margin_percent))
      ->check(number_or_empty(0.0, EstimateChoice::kMostMargin_percent));
  of_estimate("--valid-days", given_.valid_days,
              fmt::format("it stands for so many days, {} unless said", kBeginning.valid_days))
      ->check(number_or_empty(1, EstimateChoice::kMostDays));
  of_estimate("--spare-sets", given_.spare_sets,
              fmt::format("sets of spares that are offered, {} unless said", kBeginning.spare_sets))
      ->check(number_or_empty(0, EstimateChoice::kMostSets));
  of_estimate("--note", given_.note, "a note in your own words");
}

PaperChoice PaperAsk::choice() const { return choice_after(nullptr); }

PaperChoice PaperAsk::choice_after(const LastPack* last) const {
  PaperChoice choice = choice_;
  if (choice.date.empty()) choice.date = today_text();
  for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter})
    if (sheet_ == name_of(paper)) choice.paper = paper;
  const EstimateChoice kept = last ? last->manifest.estimate.value_or(kBeginning) : kBeginning;
  EstimateChoice& estimate = choice.estimate;
  estimate.margin_percent = given_or(given_.margin_percent, kept.margin_percent, kBeginning.margin_percent);
  estimate.valid_days = given_or(given_.valid_days, kept.valid_days, kBeginning.valid_days);
  estimate.spare_sets = given_or(given_.spare_sets, kept.spare_sets, kBeginning.spare_sets);
  estimate.note = given_.note.value_or(kept.note);
  return choice;
}

std::vector<std::string> PaperAsk::remembered(const LastPack* last) const {
  std::vector<std::string> sentences;
  if (!last || !last->manifest.estimate) return sentences;
  const EstimateChoice& kept = *last->manifest.estimate;
  const auto say = [&](bool given, bool differs, const std::string& what, const char* option) {
    if (!given && differs) sentences.push_back(fmt::format("Estimate: {}, {}", what, clearing(option, *last)));
  };
  say(given_.margin_percent.has_value(), kept.margin_percent != kBeginning.margin_percent,
      fmt::format("a margin of {:g} %", kept.margin_percent), "--margin-percent");
  say(given_.valid_days.has_value(), kept.valid_days != kBeginning.valid_days,
      fmt::format("valid for {} days", kept.valid_days), "--valid-days");
  say(given_.spare_sets.has_value(), kept.spare_sets != kBeginning.spare_sets,
      fmt::format("{} sets of spares", kept.spare_sets), "--spare-sets");
  say(given_.note.has_value(), kept.note != kBeginning.note, fmt::format("the note \"{}\"", kept.note),
      "--note");
  return sentences;
}

ExitCode at_despatch_desk(const std::string& book_path, const PaperAsk& papers, Voice& voice,
                          const std::function<ExitCode(DespatchDesk& desk)>& work) {
  if (const Done sound = check_pack_date(papers.choice().date); !sound)
    return refuse(sound.problem(), voice.err);
  const auto book = open_to_read(book_path, voice);
  if (!book) return refuse(book.problem(), voice.err);
  auto source = despatch_source(*book);
  if (!source) return refuse(source.problem(), voice.err);
  DespatchDesk desk(std::move(source).value(), papers.choice());
  return work(desk);
}

}  // namespace prismwright
