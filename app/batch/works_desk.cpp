#include "app/batch/works_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "app/batch/books.h"
#include "app/batch/mark_patterns.h"
#include "core/book/utc_clock.h"
#include "core/works/spares.h"
#include "core/works/works_checks.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

constexpr std::size_t kDateLetters = 10;

Outcome<WorksDesk> with_plan(Outcome<Lensbook> book) {
  if (!book) return book.problem();
  auto plan = plan_lens(book->values());
  if (!plan) return plan.problem();
  return WorksDesk{std::move(book).value(), std::move(plan).value()};
}

/// A scanned code without a number ends in its mark; any other word is a mark or pattern itself.
std::string mark_in(const std::string& word) {
  return word.starts_with("PRISMWRIGHT ") ? word.substr(word.rfind(' ') + 1) : word;
}

Outcome<std::string> mark_of_casting(const StageByMark& now, long long number) {
  for (const auto& [mark, serial] : now.serial) {
    if (serial == number) return mark;
  }
  return request_problem("unknown_serial", std::to_string(number),
                         fmt::format("No prism stands as casting no. {}: it was scrapped, or never cast. works "
                                     "life tells what became of it.",
                                     number));
}

}  // namespace

std::vector<std::string> WorksDesk::marks(std::span<const std::string> asked) const {
  return workable_marks(marks_of(plan), book.ledger(), asked);
}

long long casting_in(const std::string& word) {
  const std::size_t gap = word.rfind(' ');
  if (gap != std::string::npos && !word.starts_with("PRISMWRIGHT ")) return 0;
  const std::string_view digits = std::string_view(word).substr(gap == std::string::npos ? 0 : gap + 1);
  long long number = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return error == std::errc() && end == digits.data() + digits.size() ? number : 0;
}

Outcome<WorksDesk> works_to_read(const std::string& path, Voice& voice) {
  return with_plan(open_to_read(path, voice));
}

Outcome<WorksDesk> works_to_change(const std::string& path, Voice& voice) {
  return with_plan(open_to_change(path, voice));
}

Outcome<std::vector<std::string>> marks_named(const WorksDesk& desk, std::span<const std::string> words) {
  const StageByMark now = stages_from(desk.book.ledger());
  std::vector<std::string> patterns;
  for (const std::string& word : words) {
    const long long number = casting_in(word);
    if (number == 0) {
      patterns.push_back(mark_in(word));
      continue;
    }
    auto mark = mark_of_casting(now, number);
    if (!mark) return mark.problem();
    patterns.push_back(std::move(mark).value());
  }
  return named_marks(patterns, desk.marks(patterns));
}

Outcome<std::string> mark_named(const WorksDesk& desk, const std::string& word) {
  auto marks = marks_named(desk, {&word, 1});
  if (!marks) return marks.problem();
  if (marks->size() == 1) return marks->front();
  return request_problem(
      "many_marks", word,
      fmt::format("{} names {} prisms, {} and others: name one.", word, marks->size(), marks->front()));
}

long long standing_serial(const WorksDesk& desk, const std::string& mark) {
  const StageByMark now = stages_from(desk.book.ledger());
  const auto found = now.serial.find(mark);
  return found == now.serial.end() ? 0 : found->second;
}

void add_answer_options(CLI::App& command, AnswerForm& form) {
  command.add_flag("--json", form.json, "answer in JSON");
  command.add_option("--csv", form.csv, "write the table to this file");
}

Done keep_csv(const AnswerForm& form, const std::string& table) {
  return form.csv.empty() ? Done() : write_whole(form.csv, table);
}

void add_hand_options(CLI::App& command, std::string& by, std::string& note, const std::string& note_help) {
  command.add_option("--by", by, "who did it");
  command.add_option("--note", note, note_help);
}

std::string today_text() { return now_utc().substr(0, kDateLetters); }

std::chrono::sys_days today() { return read_day(today_text()).value_or(std::chrono::year_month_day{}); }

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

}  // namespace prismwright
