#pragma once

#include <chrono>
#include <span>
#include <string>
#include <vector>

#include "app/batch/verb.h"
#include "core/book/lensbook.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A book opened for the works, with the plan of its lens.
struct WorksDesk {
  Lensbook book;
  LensPlan plan;

  /// Prisms of the lens, then the spares that the ledger names or that are asked for.
  [[nodiscard]] std::vector<std::string> marks(std::span<const std::string> asked = {}) const;
};
Outcome<WorksDesk> works_to_read(const std::string& path, Voice& voice);
Outcome<WorksDesk> works_to_change(const std::string& path, Voice& voice);

/// The casting's number that a word is, or that a label's code ends in; 0: neither.
long long casting_in(const std::string& word);
/// The marks that words on the command line name, each once, in the order of desk.marks(): marks and patterns
/// ("P01-*"), numbers of castings that stand for a mark, and what a label's code says ("PRISMWRIGHT ... P01-C
/// 12"). Refuses a word that names none.
Outcome<std::vector<std::string>> marks_named(const WorksDesk& desk, std::span<const std::string> words);
/// As above for one word that must name exactly one prism.
Outcome<std::string> mark_named(const WorksDesk& desk, const std::string& word);
/// Number of the casting that stands for the mark; 0: none.
long long standing_serial(const WorksDesk& desk, const std::string& mark);

/// How an answer is asked for.
struct AnswerForm {
  bool json = false;
  std::string csv;  ///< path; empty: no file
};
void add_answer_options(CLI::App& command, AnswerForm& form);
/// Writes the table where a file was asked for.
Done keep_csv(const AnswerForm& form, const std::string& table);

/// Who did it and why, as every act that records is asked for it.
void add_hand_options(CLI::App& command, std::string& by, std::string& note, const std::string& note_help);

std::string today_text();  ///< YYYY-MM-DD, UTC
std::chrono::sys_days today();

/// "1 prism", "3 prisms".
std::string counted(std::size_t count, const std::string& one, const std::string& many);

}  // namespace prismwright
