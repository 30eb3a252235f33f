#include "core/book/value_cells.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <charconv>
#include <string_view>
#include <utility>

namespace prismwright {
namespace {

template <class Choice>
using Words = std::array<std::pair<Choice, std::string_view>, 2>;

constexpr Words<Work> kWorks = {{{Work::bullseye, "bullseye"}, {Work::belt, "belt"}}};
constexpr Words<Faces> kFaces = {{{Faces::true_curve, "true"}, {Faces::arc, "arc"}}};
constexpr Words<Joint> kJoints = {{{Joint::along_ray, "along_ray"}, {Joint::level, "level"}}};

template <class Choice>
void put_word(SQLite::Statement& statement, int place, const Words<Choice>& words, Choice choice) {
  for (const auto& [each, word] : words)
    if (each == choice) statement.bind(place, std::string(word));
}

[[noreturn]] void refuse(const SQLite::Column& cell) {
  throw BookDamage(fmt::format("an unreadable value in column {}", cell.getName()));
}

template <class Choice>
void take_word(const SQLite::Column& cell, const Words<Choice>& words, Choice& choice) {
  std::string text;
  take(cell, text);
  for (const auto& [each, word] : words) {
    if (word != text) continue;
    choice = each;
    return;
  }
  refuse(cell);
}

}  // namespace

void put(SQLite::Statement& statement, int place, const std::string& text) { statement.bind(place, text); }
void put(SQLite::Statement& statement, int place, double number) { statement.bind(place, number); }
void put(SQLite::Statement& statement, int place, const std::optional<double>& number) {
  if (number)
    statement.bind(place, *number);
  else
    statement.bind(place);
}
void put(SQLite::Statement& statement, int place, const std::vector<double>& numbers) {
  statement.bind(place,
                 fmt::format("[{}]", fmt::join(numbers, ", ")));  // shortest text that reads back exactly
}
void put(SQLite::Statement& statement, int place, Work work) { put_word(statement, place, kWorks, work); }
void put(SQLite::Statement& statement, int place, Faces faces) { put_word(statement, place, kFaces, faces); }
void put(SQLite::Statement& statement, int place, Joint joint) { put_word(statement, place, kJoints, joint); }

void take(const SQLite::Column& cell, std::string& text) {
  if (cell.getType() != SQLITE_TEXT) refuse(cell);
  text = cell.getString();
}

void take(const SQLite::Column& cell, double& number) {
  if (cell.getType() != SQLITE_FLOAT) refuse(cell);
  number = cell.getDouble();
}

void take(const SQLite::Column& cell, std::optional<double>& number) {
  number.reset();
  if (cell.getType() == SQLITE_NULL) return;
  take(cell, number.emplace());
}

void take(const SQLite::Column& cell, std::vector<double>& numbers) {
  std::string text;
  take(cell, text);
  if (text.size() < 2 || text.front() != '[' || text.back() != ']') refuse(cell);
  numbers.clear();
  const char* at = text.data() + 1;
  const char* const end = text.data() + text.size() - 1;
  while (at != end) {
    const auto [after, error] = std::from_chars(at, end, numbers.emplace_back());
    if (error != std::errc{}) refuse(cell);
    at = after;
    if (at == end) return;
    if (end - at < 3 || at[0] != ',' || at[1] != ' ') refuse(cell);
    at += 2;
  }
}

void take(const SQLite::Column& cell, Work& work) { take_word(cell, kWorks, work); }
void take(const SQLite::Column& cell, Faces& faces) { take_word(cell, kFaces, faces); }
void take(const SQLite::Column& cell, Joint& joint) { take_word(cell, kJoints, joint); }

}  // namespace prismwright
