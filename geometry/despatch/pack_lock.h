#pragma once

#include <string>

#include "core/base/lock_file.h"
#include "core/base/outcome.h"

namespace prismwright {

/// The right to pack this book into that folder, held by one run at a time: a hidden file in the folder,
/// ".BOOK.lock", locked by the operating system, in which stands who holds it. Where the disk knows no such
/// locks the answer does not hold it, and nothing keeps a second run off.
///
/// Refused (file Problem): another run packs it (code "busy", with program, user, machine and since when); a
/// folder that takes no file (code "folder").
Outcome<LockFile> lock_packs(const std::string& packs_folder, const std::string& book);

}  // namespace prismwright
