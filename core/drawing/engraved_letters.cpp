#include "core/drawing/engraved_letters.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

/// A letter on a grid six units high. Strokes are parted by '|', places by blanks; a place after '(' is
/// reached by a quarter circle anticlockwise, after ')' clockwise, else by a straight line.
struct Letter {
  char sign;
  double width;
  std::string_view strokes;
};

constexpr double kUnits = 6;
constexpr double kBetween = 1.5;
constexpr Letter kBox = {'?', 4, "0,0 4,0 4,6 0,6 0,0"};

constexpr std::array<Letter, 40> kLetters = {{
    {' ', 2.5, ""},
    {'-', 3, "0,3 3,3"},
    {'.', 0.6, "0.3,0 (0.6,0.3 (0.3,0.6 (0,0.3 (0.3,0"},
    {'/', 3, "0,0 3,6"},
    {'0', 4,
     "1.5,0 2.5,0 (4,1.5 4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.5 (1.5,0|"
     "1.2,1.8 2.8,4.2"},
    {'1', 3, "0,4.8 1.5,6 1.5,0|0,0 3,0"},
    {'2', 4, "0,4.5 )1.5,6 2.5,6 )4,4.5 4,4 0,0 4,0"},
    {'3', 4, "0,6 4,6 1.8,3.5 2.25,3.5 )4,1.75 )2.25,0 1.75,0 )0,1.75"},
    {'4', 4, "3,0 3,6 0,2 4,2"},
    {'5', 4, "4,6 0.4,6 0,3.5 2.25,3.5 )4,1.75 )2.25,0 1.75,0 )0,1.75"},
    {'6', 4, "4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.75 (1.75,0 2.25,0 (4,1.75 (2.25,3.5 1.75,3.5 (0,1.75"},
    {'7', 4, "0,6 4,6 1.5,0"},
    {'8', 4,
     "1.6,3.2 (0,1.6 (1.6,0 2.4,0 (4,1.6 (2.4,3.2 1.6,3.2|"
     "1.8,3.2 )0.4,4.6 )1.8,6 2.2,6 )3.6,4.6 )2.2,3.2"},
    {'9', 4, "0,1.5 (1.5,0 2.5,0 (4,1.5 4,4.25 (2.25,6 1.75,6 (0,4.25 (1.75,2.5 2.25,2.5 (4,4.25"},
    {'A', 4, "0,0 2,6 4,0|0.8,2.4 3.2,2.4"},
    {'B', 4, "0,0 0,6 2.5,6 )4,4.5 )2.5,3 0,3|2.5,3 )4,1.5 )2.5,0 0,0"},
    {'C', 4, "4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.5 (1.5,0 2.5,0 (4,1.5"},
    {'D', 4, "0,0 0,6 1.5,6 )4,3.5 4,2.5 )1.5,0 0,0"},
    {'E', 3.6, "3.6,0 0,0 0,6 3.6,6|0,3 2.8,3"},
    {'F', 3.6, "0,0 0,6 3.6,6|0,3 2.8,3"},
    {'G', 4, "4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.5 (1.5,0 2.5,0 (4,1.5 4,2.8 2.4,2.8"},
    {'H', 4, "0,0 0,6|4,0 4,6|0,3 4,3"},
    {'I', 2, "1,0 1,6|0,0 2,0|0,6 2,6"},
    {'J', 3.5, "0,1.5 (1.5,0 2,0 (3.5,1.5 3.5,6"},
    {'K', 4, "0,0 0,6|4,6 0,2.4|1.2,3.48 4,0"},
    {'L', 3.6, "0,6 0,0 3.6,0"},
    {'M', 5, "0,0 0,6 2.5,2 5,6 5,0"},
    {'N', 4, "0,0 0,6 4,0 4,6"},
    {'O', 4, "1.5,0 2.5,0 (4,1.5 4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.5 (1.5,0"},
    {'P', 4, "0,0 0,6 2.5,6 )4,4.5 )2.5,3 0,3"},
    {'Q', 4, "1.5,0 2.5,0 (4,1.5 4,4.5 (2.5,6 1.5,6 (0,4.5 0,1.5 (1.5,0|2.4,1.6 4,0"},
    {'R', 4, "0,0 0,6 2.5,6 )4,4.5 )2.5,3 0,3|2,3 4,0"},
    {'S', 4, "4,4.5 (2.5,6 1.5,6 (0,4.5 (1.5,3 2.5,3 )4,1.5 )2.5,0 1.5,0 )0,1.5"},
    {'T', 4, "0,6 4,6|2,6 2,0"},
    {'U', 4, "0,6 0,1.5 (1.5,0 2.5,0 (4,1.5 4,6"},
    {'V', 4, "0,6 2,0 4,6"},
    {'W', 5, "0,6 1.25,0 2.5,4 3.75,0 5,6"},
    {'X', 4, "0,0 4,6|0,6 4,0"},
    {'Y', 4, "0,6 2,3 4,6|2,3 2,0"},
    {'Z', 4, "0,6 4,6 0,0 4,0"},
}};

const Letter& letter_for(char sign) {
  if (sign >= 'a' && sign <= 'z') sign = static_cast<char>(sign - 'a' + 'A');
  for (const Letter& letter : kLetters) {
    if (letter.sign == sign) return letter;
  }
  return kBox;
}

/// One word up to the sign `end`, which is taken off too.
std::string_view next_word(std::string_view& rest, char end) {
  const std::size_t length = rest.find(end);
  const std::string_view word = rest.substr(0, length);
  rest.remove_prefix(length == std::string_view::npos ? rest.size() : length + 1);
  return word;
}

PlatePoint read_place(std::string_view word) {
  PlatePoint place;
  const char* const end = word.data() + word.size();
  const auto first = std::from_chars(word.data(), end, place.u);
  std::from_chars(first.ptr + 1, end, place.v);
  return place;
}

/// The quarter circle whose middle sees the two places at a right angle.
PlateStep quarter(PlatePoint from, PlatePoint to, double turn) {
  const PlatePoint chord = {to.u - from.u, to.v - from.v};
  const double side = turn > 0 ? 0.5 : -0.5;
  const PlatePoint centre = {(from.u + to.u) / 2 - side * chord.v, (from.v + to.v) / 2 + side * chord.u};
  return {from, to, turn, centre, std::hypot(chord.u, chord.v) / std::sqrt(2.0)};
}

PlateChain read_stroke(std::string_view words, PlatePoint foot, double scale) {
  PlateChain chain;
  bool started = false;
  PlatePoint at;
  while (!words.empty()) {
    std::string_view word = next_word(words, ' ');
    const char lead = word.front();
    if (lead == '(' || lead == ')') word.remove_prefix(1);
    const PlatePoint grid = read_place(word);
    const PlatePoint to = {foot.u + scale * grid.u, foot.v + scale * grid.v};
    if (started && (lead == '(' || lead == ')')) {
      chain.push_back(quarter(at, to, lead == '(' ? kPi / 2 : -kPi / 2));
    } else if (started) {
      chain.push_back({at, to, 0, {}, 0});
    }
    at = to;
    started = true;
  }
  return chain;
}

}  // namespace

std::vector<PlateChain> engraved_strokes(std::string_view words, double height_mm) {
  const double scale = height_mm / kUnits;
  std::vector<PlateChain> strokes;
  double left = 0;
  for (const char sign : words) {
    const Letter& letter = letter_for(sign);
    std::string_view rest = letter.strokes;
    while (!rest.empty()) strokes.push_back(read_stroke(next_word(rest, '|'), {left, 0}, scale));
    left += scale * (letter.width + kBetween);
  }
  return strokes;
}

double engraved_width_mm(std::string_view words, double height_mm) {
  if (words.empty()) return 0;
  double units = -kBetween;
  for (const char sign : words) units += letter_for(sign).width + kBetween;
  return units * height_mm / kUnits;
}

std::vector<PlateChain> strokes_of(const EngravedMark& mark) {
  const double turn = radians(mark.turn_deg);
  const PlatePoint half = {engraved_width_mm(mark.words, mark.height_mm) / 2, mark.height_mm / 2};
  const PlatePoint foot = {mark.middle.u - std::cos(turn) * half.u + std::sin(turn) * half.v,
                           mark.middle.v - std::sin(turn) * half.u - std::cos(turn) * half.v};
  std::vector<PlateChain> strokes;
  for (const PlateChain& stroke : engraved_strokes(mark.words, mark.height_mm))
    strokes.push_back(moved(stroke, turn, foot));
  return strokes;
}

}  // namespace prismwright
