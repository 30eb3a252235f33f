#pragma once

#include <optional>
#include <string_view>

#include <chrono>

#include "core/base/outcome.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// Refuses settings that contradict each other: a cure beyond what was entered for the vessel, an oven to be
/// opened above its heat or below the room's, a start that is no day.
Done check_works(const WorksSettings& works);

/// A day written YYYY-MM-DD, or blank when the text is none.
std::optional<std::chrono::year_month_day> read_day(std::string_view text);

}  // namespace prismwright
