#pragma once

#include <string>

#include "core/base/outcome.h"
#include "core/book/book_problems.h"

namespace prismwright {

/// Whether there is a file at that path that may be read, and not a folder or an empty one.
Done check_there(const BookName& book);

/// Checks what the first hundred bytes of a lensbook say: SQLite's words, application_id, a version that this
/// program reads, and no more pages than the file holds. Reads, never writes, and takes no lock away: the file
/// is read through SQLite, because closing a handle of one's own would drop the locks that SQLite holds on the
/// same file for another opening in this process.
Done check_header(const BookName& book);

/// Whether a journal that may need rolling back stands beside the book.
bool has_journal(const BookName& book);

}  // namespace prismwright
