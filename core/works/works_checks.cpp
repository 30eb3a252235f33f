#include "core/works/works_checks.h"

#include <fmt/format.h>

#include <charconv>

namespace prismwright {
namespace {

std::optional<int> whole_number(std::string_view text) {
  int number = 0;
  const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (trouble != std::errc() || end != text.data() + text.size() || number < 0) return std::nullopt;
  return number;
}

Done within_vessel(const char* key, const char* unit, std::optional<double> asked,
                   std::optional<double> limit) {
  if (!asked || !limit || *asked <= *limit) return {};
  return request_problem(
      "works.vessel", key,
      fmt::format("{} is {:g} {}, but the vessel is entered for {:g} {} at most. Stay within "
                  "that; the vessel's plate and a competent person decide, not the resin",
                  key, *asked, unit, *limit, unit));
}

Done check_oven(const WorksSettings& works) {
  if (works.take_out_c >= works.room_c && works.anneal_c >= works.take_out_c) return {};
  return request_problem(
      "works.oven", "works.take_out_c",
      fmt::format("the oven is opened at {:g} C; that must lie between the room's {:g} C and the annealing at "
                  "{:g} C. Change works.take_out_c, works.room_c or works.anneal_c",
                  works.take_out_c, works.room_c, works.anneal_c));
}

}  // namespace

std::optional<std::chrono::year_month_day> read_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = whole_number(text.substr(0, 4));
  const auto month = whole_number(text.substr(5, 2));
  const auto day = whole_number(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date(std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day)));
  return date.ok() ? std::optional(date) : std::nullopt;
}

Done check_works(const WorksSettings& works) {
  if (!works.start_date.empty() && !read_day(works.start_date)) {
    return request_problem(
        "works.start", "works.start_date",
        fmt::format("\"{}\" is no day. Write it as YYYY-MM-DD, for instance 2027-03-01, or leave "
                    "it blank",
                    works.start_date));
  }
  if (const Done bar = within_vessel("works.cure_bar", "bar", works.cure_bar, works.vessel_max_bar); !bar)
    return bar;
  if (const Done heat = within_vessel("works.cure_c", "C", works.cure_c, works.vessel_max_c); !heat)
    return heat;
  return check_oven(works);
}

}  // namespace prismwright
