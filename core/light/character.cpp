#include "core/light/character.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>

namespace prismwright {

namespace {

// IALA E-110, as lists of lights use it: rates in flashes a minute.
constexpr double kQuickRate = 50;
constexpr double kVeryQuickRate = 80;
constexpr double kUltraQuickRate = 160;
constexpr double kLongFlash_s = 2;
constexpr double kEqualParts = 0.05;  ///< of the period by which light and dark may differ and be isophase
constexpr double kGroupStands = 1.5;  ///< a space this many times the shortest parts two groups
constexpr double kSamePeriod_s = 0.05;

constexpr std::array<std::pair<LightClass, std::string_view>, 8> kNames = {{{LightClass::fixed, "F"},
                                                                            {LightClass::occulting, "Oc"},
                                                                            {LightClass::isophase, "Iso"},
                                                                            {LightClass::long_flashing, "LFl"},
                                                                            {LightClass::flashing, "Fl"},
                                                                            {LightClass::very_quick, "VQ"},
                                                                            {LightClass::ultra_quick, "UQ"},
                                                                            {LightClass::quick, "Q"}}};

std::string_view name_of(LightClass light) {
  for (const auto& [each, name] : kNames)
    if (each == light) return name;
  return "";
}

char letter_of(Screen screen) {
  switch (screen) {
    case Screen::red:
      return 'R';
    case Screen::green:
      return 'G';
    case Screen::yellow:
      return 'Y';
    case Screen::none:
      break;
  }
  return 'W';
}
std::optional<Screen> screen_of(char letter) {
  for (const Screen screen : {Screen::none, Screen::red, Screen::green, Screen::yellow})
    if (letter_of(screen) == std::toupper(static_cast<unsigned char>(letter))) return screen;
  return std::nullopt;
}

double space_after(const Rhythm& rhythm, std::size_t i) {
  const auto& flashes = rhythm.flashes;
  const double next =
      flashes[(i + 1) % flashes.size()].peak_s + (i + 1 == flashes.size() ? rhythm.period_s : 0);
  return next - flashes[i].peak_s;
}

/// Sizes of the groups of a period, the largest first among turns of the same order.
std::vector<int> groups_of(const Rhythm& rhythm) {
  const std::size_t n = rhythm.flashes.size();
  double least = 1e300;
  double most = 0;
  for (std::size_t i = 0; i < n; ++i) {
    least = std::min(least, space_after(rhythm, i));
    most = std::max(most, space_after(rhythm, i));
  }
  if (most < kGroupStands * least) return std::vector<int>(n, 1);
  const double limit = kGroupStands * least;
  std::vector<int> sizes;
  // Begin after a long space.
  std::size_t start = 0;
  while (space_after(rhythm, (start + n - 1) % n) <= limit) ++start;
  int size = 0;
  for (std::size_t k = 0; k < n; ++k) {
    ++size;
    if (space_after(rhythm, (start + k) % n) <= limit) continue;
    sizes.push_back(size);
    size = 0;
  }
  if (size > 0) sizes.push_back(size);
  std::vector<int> best = sizes;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    std::rotate(sizes.begin(), sizes.begin() + 1, sizes.end());
    best = std::max(best, sizes);
  }
  return best;
}

std::vector<Screen> colours_of(const Rhythm& rhythm) {
  std::vector<Screen> colours;
  for (const Flash& flash : rhythm.flashes) colours.push_back(flash.screen);
  const bool same = std::all_of(colours.begin(), colours.end(), [&](Screen s) { return s == colours.front(); });
  if (same) colours.resize(1);
  return colours;
}

LightClass class_of(const Rhythm& rhythm, bool single) {
  double lit = 0;
  double longest = 0;
  for (const Flash& flash : rhythm.flashes) {
    lit += flash.length_s();
    longest = std::max(longest, flash.length_s());
  }
  const double dark = rhythm.period_s - lit;
  if (single && std::abs(lit - dark) <= kEqualParts * rhythm.period_s) return LightClass::isophase;
  if (lit > dark) return LightClass::occulting;
  double shortest = rhythm.period_s;
  for (std::size_t i = 0; i < rhythm.flashes.size(); ++i) shortest = std::min(shortest, space_after(rhythm, i));
  const double rate = 60 / shortest;
  if (rate >= kUltraQuickRate) return LightClass::ultra_quick;
  if (rate >= kVeryQuickRate) return LightClass::very_quick;
  if (rate >= kQuickRate) return LightClass::quick;
  return longest >= kLongFlash_s ? LightClass::long_flashing : LightClass::flashing;
}

/// Reads a text letter by letter, blanks and points left out.
class CharacterReader {
 public:
  explicit CharacterReader(std::string_view text) : whole_(text) {
    for (const char c : text)
      if (!std::isspace(static_cast<unsigned char>(c)) && c != '.')
        text_ += c;
      else if (c == '.' && !text_.empty() && std::isdigit(static_cast<unsigned char>(text_.back())))
        text_ += c;
  }

  Outcome<Character> read() {
    Character character;
    const bool alternating = take("Al");
    const auto light = take_class();
    if (!light && !alternating) return refusal();
    character.light = light.value_or(LightClass::flashing);
    if (take("(") && !take_groups(character.groups)) return refusal();
    while (!text_.empty()) {
      const auto colour = screen_of(text_.front());
      if (!colour) break;
      character.colours.push_back(*colour);
      text_.erase(0, 1);
    }
    if (character.colours.empty()) character.colours.push_back(Screen::none);
    if (!text_.empty() && !take_period(character.period_s)) return refusal();
    return text_.empty() ? Outcome<Character>(character) : refusal();
  }

 private:
  bool take(std::string_view word) {
    if (text_.size() < word.size()) return false;
    for (std::size_t i = 0; i < word.size(); ++i)
      if (std::tolower(static_cast<unsigned char>(text_[i])) !=
          std::tolower(static_cast<unsigned char>(word[i])))
        return false;
    text_.erase(0, word.size());
    return true;
  }
  std::optional<LightClass> take_class() {
    for (const LightClass light :
         {LightClass::long_flashing, LightClass::flashing, LightClass::isophase, LightClass::occulting,
          LightClass::very_quick, LightClass::ultra_quick, LightClass::quick, LightClass::fixed})
      if (take(name_of(light))) return light;
    return std::nullopt;
  }
  bool take_groups(std::vector<int>& groups) {
    for (;;) {
      int size = 0;
      const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), size);
      if (error != std::errc() || size < 1) return false;
      text_.erase(0, static_cast<std::size_t>(end - text_.data()));
      groups.push_back(size);
      if (take(")")) return true;
      if (!take("+")) return false;
    }
  }
  bool take_period(double& period) {
    const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), period);
    if (error != std::errc() || !(period > 0)) return false;
    text_.erase(0, static_cast<std::size_t>(end - text_.data()));
    return take("s");
  }
  [[nodiscard]] Problem refusal() const {
    return request_problem(
        "character.unreadable", "brief.character",
        fmt::format("'{}' is no character that is known. Write it as in a list of lights: F, Oc, "
                    "Iso, Fl, LFl, Q, VQ or UQ, groups in brackets, R, G, Y or W, and the "
                    "period, for instance Fl(2)R 10s",
                    whole_));
  }

  std::string whole_;
  std::string text_;
};

}  // namespace

Character character_of(const Rhythm& rhythm) {
  Character character;
  character.colours = {Screen::none};
  if (rhythm.steady || rhythm.flashes.empty()) return character;
  character.groups = groups_of(rhythm);
  const bool single =
      std::all_of(character.groups.begin(), character.groups.end(), [](int n) { return n == 1; });
  character.light = class_of(rhythm, rhythm.flashes.size() == 1);
  if (single) character.groups.clear();
  character.colours = colours_of(rhythm);
  character.period_s = rhythm.period_s;
  return character;
}

std::string character_text(const Character& character) {
  const bool alternating = character.colours.size() > 1;
  const bool grouped = !character.groups.empty();
  std::string text = alternating ? "Al" : std::string(name_of(character.light));
  if (alternating && (grouped || character.light != LightClass::flashing))
    text += fmt::format(".{}", name_of(character.light));
  if (grouped) text += fmt::format("({})", fmt::join(character.groups, "+"));
  std::string letters;
  for (const Screen colour : {Screen::none, Screen::red, Screen::green, Screen::yellow}) {
    if (std::count(character.colours.begin(), character.colours.end(), colour) > 0)
      letters += letter_of(colour);
  }
  if (alternating)
    text += "." + letters;
  else if (letters != "W" && !letters.empty())
    text += (grouped ? "" : ".") + letters;
  const double tenths = std::round(character.period_s * 10);
  const bool continuous = character.light == LightClass::quick || character.light == LightClass::very_quick ||
                          character.light == LightClass::ultra_quick;
  if (character.period_s > 0 && !(continuous && !grouped && !alternating))
    text += fmt::format(" {:g}s", tenths / 10);
  return text;
}

Outcome<Character> read_character(std::string_view text) { return CharacterReader(text).read(); }

std::string difference(const Character& wished, const Character& given) {
  const auto groups = [](const Character& c) { return c.groups.empty() ? std::vector<int>{1} : c.groups; };
  const std::string both =
      fmt::format("the brief wishes {}, the lens gives {}", character_text(wished), character_text(given));
  if (wished.light != given.light || groups(wished) != groups(given))
    return fmt::format("{}: the rhythm is another one. The spacing of the panels' axes decides it", both);
  auto want = wished.colours;
  auto have = given.colours;
  std::sort(want.begin(), want.end());
  std::sort(have.begin(), have.end());
  want.erase(std::unique(want.begin(), want.end()), want.end());
  have.erase(std::unique(have.begin(), have.end()), have.end());
  if (want != have) return fmt::format("{}: the colours are others. Screens are set panel by panel", both);
  if (wished.period_s > 0 && std::abs(wished.period_s - given.period_s) > kSamePeriod_s)
    return fmt::format("{}: the period is another one. Turn the lens once in the time that gives it", both);
  return "";
}

std::vector<std::string> rhythm_warnings(const Rhythm& rhythm) {
  std::vector<std::string> warnings;
  const std::size_t n = rhythm.flashes.size();
  double shortest = 1e300;
  double longest = 0;
  for (const Flash& flash : rhythm.flashes) {
    shortest = std::min(shortest, flash.length_s());
    longest = std::max(longest, flash.length_s());
  }
  if (n == 0) return warnings;
  // Common practice (from memory): a flash needs 0.3 s to be taken in fully.
  if (shortest < 0.3)
    warnings.push_back(
        fmt::format("The shortest flash lasts {:.2f} s at half of its peak; under 0.3 s the eye does "
                    "not take it in fully. Turn the lens more slowly or take a wider lamp.",
                    shortest));
  double least_dark = 1e300;
  for (std::size_t i = 0; i < n; ++i) {
    const double dark =
        space_after(rhythm, i) - 0.5 * (rhythm.flashes[i].length_s() + rhythm.flashes[(i + 1) % n].length_s());
    least_dark = std::min(least_dark, dark);
  }
  const Character character = character_of(rhythm);
  const bool flashes = character.light == LightClass::flashing || character.light == LightClass::long_flashing;
  if (flashes && least_dark < longest)
    warnings.push_back(
        fmt::format("The shortest eclipse lasts {:.2f} s, less than the longest flash of {:.2f} s; "
                    "flashes would not stand apart. Set the axes farther apart.",
                    least_dark, longest));
  // IALA E-110: a short flash beside long ones lasts at most a third of them.
  if (longest >= kLongFlash_s && shortest < longest && shortest > longest / 3)
    warnings.push_back(
        fmt::format("The short flashes last {:.2f} s, more than a third of the long ones of {:.2f} s "
                    "(IALA E-110); they would be taken for one another.",
                    shortest, longest));
  const auto [low, high] =
      std::minmax_element(rhythm.flashes.begin(), rhythm.flashes.end(),
                          [](const Flash& a, const Flash& b) { return a.peak_cd < b.peak_cd; });
  if (low->peak_cd < 0.5 * high->peak_cd && low->screen == high->screen)
    warnings.push_back(
        fmt::format("The weakest flash has {:.0f} cd, under half of the strongest of {:.0f} cd; far "
                    "off it would be lost. Make the panels alike.",
                    low->peak_cd, high->peak_cd));
  return warnings;
}

}  // namespace prismwright
