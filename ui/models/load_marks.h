#pragma once

#include <QStringList>

#include "core/works/works_reckoning.h"

namespace prismwright {

/// Prisms that a planned load casts: of each master in it as many as it pours, those whose mould is ready
/// first, then those that have farther to come, in the order of the plan. Castings beyond the prisms that want
/// one are spares and not among them.
QStringList marks_to_cast(const WorksReckoning& works, std::size_t load, const StageByMark& stages);

}  // namespace prismwright
