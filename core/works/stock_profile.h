#pragma once

#include <string_view>

#include "core/base/outcome.h"
#include "core/lens/plan.h"
#include "core/optics/face_words.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// Sanding stock on a face of the profile, mm: that of the settings, or 0. Lands and the axis carry none.
double stock_on(FaceRole role, const WorksSettings& settings);

/// Sanding stock on what the trim cuts (ends, the level joint of a half), mm.
double stock_on_cuts(const WorksSettings& settings);
/// Sanding stock on a flat inner face, mm: it is optical.
double stock_on_flat_inner(const WorksSettings& settings);

/// The prism as its master is before it is stretched for shrinkage: every face that carries stock moved out of
/// the glass along its own normal by `settings.stock_mm`, everywhere by the same. Turned about its axis a moved
/// face is exactly that distance from the prism's own.
///
/// Straight faces become parallel ones, arcs concentric ones, true curves the curve through their points moved
/// along their normals, with the same tangents. Neighbours meet where the moved faces meet, carried on beyond
/// their ends as needed: lines straight, arcs along their circle, true curves along the circle that hugs their
/// end, and cut short where they cross sooner. Faces without stock keep their line or circle and only grow
/// longer or shorter. A rounded land between two faces that carry stock grows with them, concentric (it could
/// not touch them otherwise). Faces on the turning axis stay on it. StockFaces::all moves the joints too, and
/// by the trim the ends (set_back_mm less stock) and the level joint of a half (half_gap_mm less stock): both
/// may come out negative. A flat inner face is moved lampward (flat_inner_mm less stock).
///
/// The shape key is that of the prism with words for what was added; without stock the prism comes back as it
/// is. Refused, with the mark, face and limit (codes "stock.hollow", "stock.narrow", "stock.axis"): a hollow
/// face whose radius the stock uses up, a face that its neighbours' stock leaves nothing of, and a profile that
/// would cross its turning axis.
Outcome<PlannedPrism> with_stock(const PlannedPrism& prism, const WorksSettings& settings);

}  // namespace prismwright
