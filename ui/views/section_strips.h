#pragma once

#include <QPainter>
#include <QString>
#include <vector>

#include "core/optics/proof.h"
#include "ui/views/section_map.h"

namespace prismwright {

/// Width that the strip of the level beam takes at the seaward side, pixels.
inline constexpr double kStripWidth = 30;

/// The level beam by height: lit and dark, at the right of `view`. A dark strip is never thinner than a pixel.
void paint_strip(QPainter& painter, const std::vector<LightStrip>& beam, const SectionMap& map,
                 const QRectF& view);

/// What the strip shows at that height: "Dark from 61.20 to 61.74 mm (0.54 mm high)", "Level light of U03 ...".
QString strip_words(const std::vector<LightStrip>& beam, const SectionMap& map, double y, bool inches);

}  // namespace prismwright
