#pragma once

#include <QPainter>
#include <vector>

#include "core/optics/laser_bench.h"
#include "ui/views/section_map.h"

namespace prismwright {

/// The ray's way from the focus, run on to the edge of `view` where it leaves the lens.
QPolygonF way_of(const RayPath& path, const SectionMap& map, const QRectF& view);

/// The whole fan as thin lines; rays that end in the lens get a cross where their light is lost.
void paint_fan(QPainter& painter, const std::vector<RayPath>& rays, const SectionMap& map, const QRectF& view);

/// A small cross, for the place where light is lost.
void paint_loss(QPainter& painter, QPointF place, const QColor& colour, double arm);

}  // namespace prismwright
