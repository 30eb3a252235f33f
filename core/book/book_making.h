#pragma once

#include <string>

#include "core/base/outcome.h"
#include "core/book/book_problems.h"
#include "core/lens/lens_values.h"

namespace prismwright {

// Both want the book's lock, and leave either the whole new file at its place or things as they were.

/// Makes a new book beside its place and renames it there. Never replaces a file.
Done make_book(const BookName& book, const LensValues& values);

/// Migrates a book on a copy that then takes its place. The old file is kept beside as NAME.v1.lensbook, or
/// with a number behind the version where another file has that name. Answers a sentence that names the kept
/// file.
Outcome<std::string> migrate_book(const BookName& book, int from_version);

}  // namespace prismwright
