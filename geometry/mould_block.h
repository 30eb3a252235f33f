#pragma once

#include <TopoDS_Shape.hxx>

#include "core/base/outcome.h"
#include "geometry/mould.h"
#include "geometry/mould_draw.h"

namespace prismwright {

/// Makes the mould of a master in a draw that leaves every face on one side and nothing hidden. Refused with
/// the master's mark (code "mould") where no sound halves come of it.
Outcome<Mould> mould_block(const MouldOrder& order, const MouldSkin& skin, const DrawFacts& draw,
                           const WorksSettings& settings);

}  // namespace prismwright
