#pragma once

#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "app/batch/json_print.h"
#include "core/lens/plan.h"
#include "core/works/ledger.h"

namespace prismwright {

using StageTally = std::array<int, kStages.size()>;

/// Zones and their counts in the order of the section: centre, rings, upper, lower prisms.
std::vector<std::pair<std::string, StageTally>> zones_in_order(const StageCounts& counts,
                                                               const Section& section);

/// The answer of `works list --json`: counts by stage, by zone and stage, stage and casting of each of `marks`
/// (prisms of the lens, spares), the ledger.
Json works_json(std::span<const LedgerEntry> ledger, const LensPlan& plan,
                const std::vector<std::string>& marks);
Json entry_json(const LedgerEntry& entry);
/// A casting's or load's number; null where there is none.
Json number_json(long long number);

}  // namespace prismwright
