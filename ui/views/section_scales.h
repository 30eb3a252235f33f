#pragma once

#include <QPainter>

#include "ui/views/section_map.h"

namespace prismwright {

/// Room at the foot and at the left that the scales take, pixels.
inline constexpr double kScaleFoot = 24;
inline constexpr double kScaleLeft = 44;

/// Hairlines at round lengths over `view`, the focal plane and the lens axis a little stronger.
void paint_grid(QPainter& painter, const SectionMap& map, const QRectF& view, bool inches);
/// Figures of the grid along the foot (r) and the left (z), on a strip of paper.
void paint_scales(QPainter& painter, const SectionMap& map, const QRectF& view, bool inches);

/// The distance between grid lines, mm: 1, 2 or 5 times a power of ten of the unit, at least `pixels` apart.
double grid_step_mm(const SectionMap& map, bool inches, double pixels = 64);

}  // namespace prismwright
