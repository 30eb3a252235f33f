#pragma once

#include <QPainterPath>

#include "core/frame/plate_chain.h"

namespace prismwright {

/// The closed outline as a path in its own millimetres, arcs as arcs.
QPainterPath chain_path(const PlateChain& chain);

}  // namespace prismwright
