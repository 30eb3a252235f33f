#include "core/lens/zone_rows.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <optional>

#include "core/lens/quantities.h"

namespace prismwright {

namespace {

struct Word {
  SizeBy by;
  std::string_view word;
  std::string_view unit;
};
constexpr std::array kWords = {Word{SizeBy::to_deg, "to", "deg"}, Word{SizeBy::margin_mm, "margin", "mm"},
                               Word{SizeBy::side_mm, "side", "mm"}, Word{SizeBy::thickness_mm, "thick", "mm"}};

std::vector<std::string_view> parts_of(std::string_view text, std::string_view separators) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const auto end = text.find_first_of(separators);
    if (end != 0) parts.push_back(text.substr(0, end));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return parts;
}

std::optional<ZoneRow> read_row(std::string_view text) {
  const auto parts = parts_of(text, " \t\n");
  if (parts.size() < 2) return std::nullopt;
  ZoneRow row;
  const Word* word = nullptr;
  for (const Word& each : kWords)
    if (each.word == parts[0]) word = &each;
  if (!word) return std::nullopt;
  row.by = word->by;
  const auto number = [&](std::size_t i, std::string_view unit) { return read_number(parts[i], unit); };
  const auto size = number(1, word->unit);
  if (!size) return std::nullopt;
  row.size = *size;
  if (parts.size() == 2) return row;
  if (parts[2] != "locked" || parts.size() < 5) return std::nullopt;
  row.locked = true;
  if (parts[3] == "from" && parts.size() == 5) {
    const auto from = number(4, "deg");
    if (!from) return std::nullopt;
    row.from_deg = *from;
    return row;
  }
  if (parts[3] != "at" || parts.size() != 6) return std::nullopt;
  const auto r = number(4, "mm");
  const auto z = number(5, "mm");
  if (!r || !z) return std::nullopt;
  row.corner_a = {*r, *z};
  return row;
}

bool refracting(SizeBy by) { return by == SizeBy::to_deg || by == SizeBy::margin_mm; }

}  // namespace

std::string rows_text(const std::vector<ZoneRow>& rows) {
  std::string text;
  for (const ZoneRow& row : rows) {
    if (!text.empty()) text += "; ";
    for (const Word& word : kWords)
      if (word.by == row.by) text += fmt::format("{} {}", word.word, number_text(row.size));
    if (!row.locked) continue;
    // A prism has a corner A; a refracting zone begins at an elevation.
    text += row.corner_a.r != 0
                ? fmt::format(" locked at {} {}", number_text(row.corner_a.r), number_text(row.corner_a.z))
                : fmt::format(" locked from {}", number_text(row.from_deg));
  }
  return text;
}

Outcome<std::vector<ZoneRow>> read_rows(std::string_view text) {
  std::vector<ZoneRow> rows;
  for (const std::string_view part : parts_of(text, ";")) {
    if (part.find_first_not_of(" \t\n") == std::string_view::npos) continue;
    const auto row = read_row(part);
    if (!row) {
      return request_problem(
          "rows.unreadable", "",
          fmt::format("zone row '{}' cannot be read. Give 'to 12.5', 'margin 139.7', 'side 30' or "
                      "'thick 18', and for a locked zone where it stands: 'to 12.5 locked from "
                      "3.25' or 'side 30 locked at 268 210'",
                      part));
    }
    rows.push_back(*row);
  }
  return rows;
}

Done check_rows(const std::vector<ZoneRow>& rows, Band band) {
  for (const ZoneRow& row : rows) {
    const std::string text = rows_text({row});
    const auto refuse = [&](const std::string& why) {
      return request_problem("rows.unfit", fmt::format("section.{}_rows", name_of(band)),
                             fmt::format("zone row '{}' of section.{}_rows {}", text, name_of(band), why));
    };
    if (!(row.size > 0) || !std::isfinite(row.size)) return refuse("has no size above 0. Give it one");
    if (band == Band::refracting) {
      if (!refracting(row.by)) return refuse("is no refracting zone's. Give 'to' an elevation or a 'margin'");
      if (row.corner_a.r != 0)
        return refuse("is locked at a corner. Say from which elevation: 'locked from 3.25'");
      if (row.locked && !(row.from_deg >= 0)) return refuse("is locked below the axis. Give 0 or more");
    } else {
      if (row.by == SizeBy::margin_mm)
        return refuse("has a margin, which prisms have not. Give 'side', 'thick' or 'to'");
      if (row.locked && (row.by != SizeBy::side_mm || !(row.corner_a.r > 0) || !(row.corner_a.z > 0)))
        return refuse("is locked without its place. Give 'side 30 locked at R Z', both above 0");
    }
  }
  return {};
}

}  // namespace prismwright
