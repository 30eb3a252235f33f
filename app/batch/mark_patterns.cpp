#include "app/batch/mark_patterns.h"

#include <fmt/format.h>

#include <algorithm>

namespace prismwright {

bool fits_pattern(std::string_view pattern, std::string_view text) {
  if (pattern.empty()) return text.empty();
  if (pattern.front() != '*') {
    return !text.empty() && pattern.front() == text.front() && fits_pattern(pattern.substr(1), text.substr(1));
  }
  // Runs of stars say no more than one, and would make the search long.
  const std::size_t next = pattern.find_first_not_of('*');
  if (next == std::string_view::npos) return true;
  const std::string_view rest = pattern.substr(next);
  for (std::size_t skip = 0; skip <= text.size(); ++skip) {
    if (fits_pattern(rest, text.substr(skip))) return true;
  }
  return false;
}

std::vector<std::string> marks_of(const LensPlan& plan) {
  std::vector<std::string> marks;
  for (const PlannedPrism& prism : plan.prisms) marks.push_back(prism.mark);
  return marks;
}

Outcome<std::vector<std::string>> named_marks(std::span<const std::string> patterns,
                                              std::span<const std::string> known) {
  std::vector<bool> named(known.size(), false);
  for (const std::string& pattern : patterns) {
    bool found = false;
    for (std::size_t i = 0; i < known.size(); ++i) {
      if (!fits_pattern(pattern, known[i])) continue;
      named[i] = found = true;
    }
    if (found) continue;
    return request_problem(
        "unknown_mark", pattern,
        fmt::format("No prism of this lens is called {}: marks look like {} and show lists them all.", pattern,
                    known.empty() ? std::string("P01-C") : known.front()));
  }
  std::vector<std::string> marks;
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (named[i]) marks.push_back(known[i]);
  }
  return marks;
}

}  // namespace prismwright
