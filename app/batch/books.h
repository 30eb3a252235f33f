#pragma once

#include <string>

#include "app/batch/verb.h"
#include "core/book/lensbook.h"

namespace prismwright {

/// Opens a book to read it: takes no lock, so that it may stand open in a window meanwhile. What was migrated
/// is said on `err`.
Outcome<Lensbook> open_to_read(const std::string& path, Voice& voice);

/// Opens a book to change it; a book that can only be read is a file Problem with the reason.
Outcome<Lensbook> open_to_change(const std::string& path, Voice& voice);

/// The argument that names the lensbook, the same for every verb.
CLI::Option* add_book_argument(CLI::App& command, std::string& path);

/// The steps between two states in words: "Edge thickness 4 -> 5 mm, Order 4 -> 3".
std::string edit_words(const LensValues& before, const LensValues& after);

}  // namespace prismwright
