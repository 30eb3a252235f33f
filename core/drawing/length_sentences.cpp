#include "core/drawing/length_sentences.h"

#include <cctype>
#include <charconv>
#include <optional>
#include <string_view>
#include <system_error>
#include <vector>

namespace prismwright {

namespace {

constexpr std::string_view kCoordinates = "ruvwxyz";

/// A number as it stands in a sentence, its sign left outside.
struct StatedNumber {
  std::size_t from = 0;
  std::size_t to = 0;
  double value = 0;
  bool exponent = false;  ///< only the digits of one: "05" of "1e-05"
};

bool is_digit(char letter) { return letter >= '0' && letter <= '9'; }

/// Whether "1e", "1e-" or "1e+" ends here.
bool exponent_begins(std::string_view before) {
  if (before.ends_with('-') || before.ends_with('+')) before.remove_suffix(1);
  return before.size() >= 2 && before.ends_with('e') && is_digit(before[before.size() - 2]);
}

/// Whether a name ends here that the number would be part of: "R", "M-".
bool name_ends(std::string_view before) {
  if (before.ends_with('-')) before.remove_suffix(1);
  return !before.empty() && std::isalnum(static_cast<unsigned char>(before.back())) != 0;
}

bool goes_on_after(const std::string& sentence, std::size_t at) {
  return at < sentence.size() && std::isalnum(static_cast<unsigned char>(sentence[at])) != 0;
}

std::optional<StatedNumber> number_before(const std::string& sentence, std::size_t to) {
  StatedNumber number{to, to};
  while (number.from > 0 && (is_digit(sentence[number.from - 1]) || sentence[number.from - 1] == '.'))
    --number.from;
  const char* end = sentence.data() + to;
  const auto read = std::from_chars(sentence.data() + number.from, end, number.value);
  if (read.ec != std::errc{} || read.ptr != end) return std::nullopt;
  const std::string_view before = std::string_view(sentence).substr(0, number.from);
  number.exponent = exponent_begins(before);
  if (!number.exponent && name_ends(before)) return std::nullopt;
  return number;
}

/// Where the number before this one would end, were it of the same unit: before " x ", or before ", v ".
std::optional<std::size_t> joint_before(const std::string& sentence, std::size_t from) {
  // The sign of a coordinate stays where it is.
  if (from > 0 && sentence[from - 1] == '-') --from;
  const std::string_view before = std::string_view(sentence).substr(0, from);
  if (before.ends_with(" x ")) return from - 3;
  if (before.size() >= 4 && before.ends_with(' ') && before.substr(from - 4, 2) == ", " &&
      kCoordinates.find(before[from - 2]) != std::string_view::npos)
    return from - 4;
  return std::nullopt;
}

/// The numbers that end at `at` and share a unit, last first; none where one of them has an exponent.
std::vector<StatedNumber> run_before(const std::string& sentence, std::size_t at) {
  std::vector<StatedNumber> run;
  std::optional<std::size_t> end = at;
  while (end) {
    const auto number = number_before(sentence, *end);
    if (!number) break;
    if (number->exponent) return {};
    run.push_back(*number);
    end = joint_before(sentence, number->from);
  }
  return run;
}

}  // namespace

std::string sentence_in(const LengthWords& lengths, const std::string& sentence) {
  if (!lengths.inches) return sentence;
  const std::string unit = " mm";
  std::string said;
  std::size_t done = 0;
  for (std::size_t at = sentence.find(unit); at != std::string::npos; at = sentence.find(unit, at + 1)) {
    if (goes_on_after(sentence, at + unit.size())) continue;
    const std::vector<StatedNumber> run = run_before(sentence, at);
    if (run.empty()) continue;
    for (auto number = run.rbegin(); number != run.rend(); ++number) {
      said += sentence.substr(done, number->from - done) + lengths.plain(number->value);
      done = number->to;
    }
    said += " in";
    done = at + unit.size();
  }
  return said + sentence.substr(done);
}

}  // namespace prismwright
