#pragma once

#include <span>

#include "core/works/prism_life.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// What happened, newest first.
CellSheet history_sheet(std::span<const LifeEvent> life);

}  // namespace prismwright
