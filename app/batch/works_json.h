#pragma once

#include <span>
#include <string>

#include "app/batch/json_print.h"
#include "core/works/ledger.h"

namespace prismwright {

/// The answer of `works list --json`: counts by stage, by zone and stage, each prism's stage, the ledger.
Json works_json(std::span<const LedgerEntry> ledger, std::span<const std::string> marks);

}  // namespace prismwright
