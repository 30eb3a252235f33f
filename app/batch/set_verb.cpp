#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/verbs.h"
#include "core/lens/quantities.h"

namespace prismwright {

namespace {

Outcome<std::vector<Assignment>> read_assignments(const std::vector<std::string>& texts) {
  std::vector<Assignment> assignments;
  for (const std::string& text : texts) {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0) {
      return request_problem(
          "not_an_assignment", text,
          fmt::format("\"{}\" does not say a key and its value: write them as section.edge_mm=4.", text));
    }
    assignments.emplace_back(text.substr(0, equals), text.substr(equals + 1));
  }
  return assignments;
}

class SetVerb : public Verb {
 public:
  std::string_view name() const override { return "set"; }
  std::string_view help() const override { return "change values by key; all or none are taken"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command
        .add_option("KEY=VALUE", texts_,
                    "what to change; keys lists every key. A length may carry its unit: 3/8 in")
        ->required();
  }

  ExitCode run(Voice& voice) override {
    const auto assignments = read_assignments(texts_);
    if (!assignments) return refuse(assignments.problem(), voice.err);
    auto book = open_to_change(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const LensValues before = book->values();
    const auto after = with_assignments(before, *assignments);
    if (!after) return refuse(after.problem(), voice.err);
    const std::string words = edit_words(before, *after);
    const Done written = book->edit(*after, words);
    if (!written) return refuse(written.problem(), voice.err);
    voice.out << (words.empty() ? "Nothing to change: every value is so already." : words) << '\n';
    return ExitCode::done;
  }

 private:
  std::string path_;
  std::vector<std::string> texts_;
};

/// `undo` and `redo` differ only in their words and in what they ask of the book.
class StepVerb : public Verb {
 public:
  using Step = Outcome<std::string> (Lensbook::*)();
  StepVerb(std::string_view name, std::string_view help, std::string_view words, Step step)
      : name_(name), help_(help), words_(words), step_(step) {}

  std::string_view name() const override { return name_; }
  std::string_view help() const override { return help_; }
  void configure(CLI::App& command) override { add_book_argument(command, path_); }

  ExitCode run(Voice& voice) override {
    auto book = open_to_change(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto step = (*book.*step_)();
    if (!step) return refuse(step.problem(), voice.err);
    voice.out << words_ << *step << '\n';
    return ExitCode::done;
  }

 private:
  std::string_view name_;
  std::string_view help_;
  std::string_view words_;
  Step step_;
  std::string path_;
};

}  // namespace

std::unique_ptr<Verb> set_verb() { return std::make_unique<SetVerb>(); }

std::unique_ptr<Verb> undo_verb() {
  return std::make_unique<StepVerb>("undo", "take back the last change of values (never the works ledger)",
                                    "Taken back: ", &Lensbook::undo);
}

std::unique_ptr<Verb> redo_verb() {
  return std::make_unique<StepVerb>("redo", "do again what undo took back", "Done again: ", &Lensbook::redo);
}

}  // namespace prismwright
