#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/book/sqlite_api.h"
#include "core/lens/brief.h"
#include "core/optics/section.h"

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
void put(SQLite::Statement& statement, int place, Work work);
void put(SQLite::Statement& statement, int place, Faces faces);
void put(SQLite::Statement& statement, int place, Joint joint);

// One value out of a cell; throws BookDamage when the cell holds another type or an unknown word.
void take(const SQLite::Column& cell, std::string& text);
void take(const SQLite::Column& cell, double& number);
void take(const SQLite::Column& cell, std::optional<double>& number);
void take(const SQLite::Column& cell, std::vector<double>& numbers);
void take(const SQLite::Column& cell, Work& work);
void take(const SQLite::Column& cell, Faces& faces);
void take(const SQLite::Column& cell, Joint& joint);

}  // namespace prismwright
