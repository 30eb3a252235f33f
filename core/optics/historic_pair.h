#pragma once

#include <optional>

#include "core/optics/prism_shape.h"

namespace prismwright {

/// The historic pair: both refracting sides ground to one radius, one hollow and one full, and a reflecting arc
/// from its two tangents. A. Stevenson, Account of the Skerryvore Lighthouse (1848), p. 283: 4000 mm in the
/// first order.
///
/// The directions of the sides are found so that, as with straight sides, the ray at A runs within the exit
/// face (its chord where it is full, its tangent at A where it is hollow) and the ray reflected at B runs
/// within the entry face to A and leaves level. The extreme rays are traced through the arcs; the reflecting
/// arc halves them at its ends. The rays between depart as the proof shows.
std::optional<PrismShape> historic_pair(SectionPoint a, double side_mm, const PrismKind& kind);

}  // namespace prismwright
