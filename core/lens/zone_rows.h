#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/optics/band_settings.h"

namespace prismwright {

/// Rows as text, one per zone from the axis outward, parted by semicolons: "to 12.5" (deg), "margin 139.7"
/// (mm), "side 30" (mm), "thick 18" (mm). Locked ones say where they stand: "to 12.5 locked from 3.25"
/// (refracting, deg) or "side 30 locked at 268.1 210.4" (corner A, mm). Reads back exactly.
std::string rows_text(const std::vector<ZoneRow>& rows);

/// Reads such a text; refuses what it cannot read, with the row.
Outcome<std::vector<ZoneRow>> read_rows(std::string_view text);

/// Refuses rows that a band cannot have: a side or thickness in the refracting band, a margin elsewhere, a lock
/// without its place, sizes that are not positive.
Done check_rows(const std::vector<ZoneRow>& rows, Band band);

}  // namespace prismwright
