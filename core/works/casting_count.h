#pragma once

#include <map>
#include <span>
#include <string>

#include "core/works/ledger.h"

namespace prismwright {

/// Castings that the ledger tells of for one mark.
struct CastingCount {
  int made = 0;
  int scrapped = 0;  ///< of those made
};

/// Counts by mark. A step from before cast to cast or beyond makes a casting; a number that another mark
/// has had already makes none (the casting changed its place). Scrapping loses it where the prism starts again
/// from before cast. A step back to before cast without scrapping says that it never was, unless the
/// line gives it away to another mark (core/works/spares.h).
std::map<std::string, CastingCount> count_castings(std::span<const LedgerEntry> ledger);

}  // namespace prismwright
