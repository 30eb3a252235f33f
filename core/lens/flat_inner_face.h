#pragma once

#include "core/base/outcome.h"
#include "core/lens/lens_values.h"

namespace prismwright {

/// Least glass between the flat inner face and the outer edge at a panel's sides, mm. Own choice: a thinner
/// feather edge can be neither cast nor handled.
inline constexpr double kLeastFacetGlass_mm = 1;

/// Whether each panel of the refracting band has a flat upright inner face cut into rings that turn about the
/// lens axis. The choice means nothing to a band turned about the panel's axis: that is flat inside anyway.
bool has_flat_facets(const LensValues& values);

/// The flat face stands at x = f and so f / cos(q) from the lens axis at the azimuth q: the wider the panel,
/// the nearer it comes to the thin outer edge. Refuses (code "facet.thin") the first glazed panel that is left
/// less than kLeastFacetGlass_mm there, with the widest that it may be. `section` is the values' own.
Done check_flat_facets(const LensValues& values, const Section& section);

}  // namespace prismwright
