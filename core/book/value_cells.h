#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <vector>

#include "core/book/sqlite_api.h"
#include "core/lens/choice_words.h"

namespace prismwright {

/// Thrown inside the book when a file holds what no lensbook holds; turned into a Problem at its border.
class BookDamage : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// One value into one parameter of a statement (counted from 1). Numbers go in as they are, so they read back
// exactly.
void put(SQLite::Statement& statement, int place, const std::string& text);
void put(SQLite::Statement& statement, int place, double number);
void put(SQLite::Statement& statement, int place, const std::optional<double>& number);
void put(SQLite::Statement& statement, int place, const std::vector<double>& numbers);  ///< as "[1.5, 2]"
void put(SQLite::Statement& statement, int place, int count);
void put(SQLite::Statement& statement, int place, long long number);
void put(SQLite::Statement& statement, int place, const std::vector<ZoneRow>& rows);  ///< as rows_text
template <class Choice>
requires std::is_enum_v<Choice>
void put(SQLite::Statement& statement, int place, Choice choice) {
  statement.bind(place, std::string(word_of(choice)));
}

// One value out of a cell; throws BookDamage when the cell holds another type or an unknown word.
void take(const SQLite::Column& cell, std::string& text);
void take(const SQLite::Column& cell, double& number);
void take(const SQLite::Column& cell, std::optional<double>& number);
void take(const SQLite::Column& cell, std::vector<double>& numbers);
void take(const SQLite::Column& cell, int& count);
void take(const SQLite::Column& cell, long long& number);
void take(const SQLite::Column& cell, std::vector<ZoneRow>& rows);
[[noreturn]] void refuse_cell(const SQLite::Column& cell);
template <class Choice>
requires std::is_enum_v<Choice>
void take(const SQLite::Column& cell, Choice& choice) {
  std::string text;
  take(cell, text);
  for (const auto& [each, word] : kChoiceWords<Choice>) {
    if (word != text) continue;
    choice = each;
    return;
  }
  refuse_cell(cell);
}

}  // namespace prismwright
