#pragma once

#include <QPainter>
#include <optional>

#include "ui/models/laser.h"
#include "ui/views/section_map.h"

namespace prismwright {

/// Where the grip of the laser shows: on the ray between the focus and the glass, near `reach_mm` from the
/// focus, moved along the ray into `view` where that is out of sight. Blank when no part of it can be seen.
std::optional<QPointF> grip_place(const RayPath& path, double reach_mm, const SectionMap& map,
                                  const QRectF& view);

/// The laser's ray, its meetings numbered as in the read-out, the arc that its grip runs on, and the board.
void paint_laser(QPainter& painter, const Laser& laser, double reach_mm, const SectionMap& map,
                 const QRectF& view, bool focused);

}  // namespace prismwright
