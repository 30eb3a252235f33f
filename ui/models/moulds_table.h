#pragma once

#include "geometry/works_moulds.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// A row for the mould of each master, which speaks of the prisms that share it: whether it can be made, what
/// is undercut, how it stands, what it takes.
CellSheet moulds_sheet(const std::vector<WorkedMould>& moulds, bool inches);
/// How many can be made and how many have undercuts.
QString moulds_words(const std::vector<WorkedMould>& moulds);

}  // namespace prismwright
