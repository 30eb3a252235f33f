#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace prismwright {

/// A file to be packed.
struct ZipEntry {
  std::string path;
  std::string bytes;
};

/// The bytes of a ZIP archive (deflated; ISO/IEC 21320-1 without its 64-bit fields: under 4 GB). The entries
/// carry the first date that the format knows, so that equal entries give equal bytes. Throws std::bad_alloc
/// where memory runs out.
std::string zip_bytes(const std::vector<ZipEntry>& entries);

}  // namespace prismwright
