#pragma once

#include <string>
#include <string_view>

namespace prismwright {

/// Words for a cell: in quotes where they hold a comma, a quote or a line end (RFC 4180).
inline std::string csv_cell(std::string_view words) {
  if (words.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(words);
  std::string cell = "\"";
  for (const char letter : words) {
    if (letter == '"') cell += '"';
    cell += letter;
  }
  return cell + "\"";
}

}  // namespace prismwright
