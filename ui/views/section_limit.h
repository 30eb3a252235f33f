#pragma once

#include <QPainter>

#include "ui/models/limit_drag.h"
#include "ui/views/section_map.h"

namespace prismwright {

/// The limiting ray of a zone with the grip by which it is dragged, inside `view`. While it is held the limit
/// is written beside it, with the reason where it cannot be there.
void paint_limit(QPainter& painter, const LimitGrip& grip, const LimitDrag& drag, const SectionMap& map,
                 const QRectF& view);

}  // namespace prismwright
