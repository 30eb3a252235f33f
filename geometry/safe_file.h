#pragma once

#include <string>
#include <string_view>

#include "core/base/outcome.h"

namespace prismwright {

/// Makes the folder, with the folders above it, where it is not there yet. Refused (file Problem, code
/// "folder") where a file stands in its place or it cannot be made.
Done ready_folder(const std::string& folder);

/// Writes a file whole or not at all: the bytes go to PATH.part beside it, which is renamed when all of them
/// are on the disk. On a failure (file Problem, code "write": no right to write, disk full) PATH.part is
/// removed and a file of the name from before stays as it was.
Done write_whole(const std::string& path, std::string_view bytes);

}  // namespace prismwright
