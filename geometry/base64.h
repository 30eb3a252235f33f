#pragma once

#include <string>
#include <string_view>

namespace prismwright {

/// Bytes as letters that any text file may hold (RFC 4648, section 4), without line ends.
std::string base64(std::string_view bytes);

}  // namespace prismwright
