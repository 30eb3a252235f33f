#pragma once

#include <vector>

#include "core/drawing/lengths.h"
#include "core/drawing/section_images.h"
#include "core/drawing/table_pages.h"

namespace prismwright {

/// The list of zones: mark, kind, limits, thickness, section area; and below it what is said of the bands.
TableBlock zone_list(const Section& section, const std::vector<SectionImage>& images, LengthWords lengths,
                     double tolerance_mm);

/// The outline of one piece of glass: for each face the corner where it begins and, where it is round, radius
/// and centre. A true curve is given as the arcs that stand for it and as the one arc nearest to it.
TableBlock outline_table(const SectionImage& image, LengthWords lengths, double tolerance_mm);

/// The corners of a metal rib.
TableBlock rib_table(const SectionRib& rib, LengthWords lengths);

}  // namespace prismwright
