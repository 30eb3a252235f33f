#pragma once

#include <vector>

#include "core/frame/plate.h"

namespace prismwright {

/// A straight line or an arc of a plate's outline.
struct PlateStep {
  PlatePoint from;
  PlatePoint to;
  double turn = 0;  ///< radians swept about `centre`, anticlockwise positive; 0: straight
  PlatePoint centre;
  double radius_mm = 0;

  [[nodiscard]] bool straight() const { return turn == 0; }
};

/// A closed outline of lines and arcs: each step begins exactly where the one before ends, the last ends where
/// the first begins. Anticlockwise unless it is said otherwise. A circle is two half turns.
using PlateChain = std::vector<PlateStep>;

/// The closed polygon as lines and arcs, anticlockwise as the polygon is, with as few steps as keep every
/// corner of the polygon within `within_mm` of the chain and the chain within `within_mm` of the polygon's
/// edges (plus the sagitta that the polygon's own chords have). Corners that turn by more than `corner_deg`
/// stay corners; elsewhere the steps meet within a degree. Never empty for a polygon of three corners and more.
/// Never crosses itself where the polygon keeps 4 `within_mm` between its parts.
PlateChain fitted_chain(const PlateOutline& outline, double within_mm, double corner_deg = 12);

/// The polygon itself as straight steps.
PlateChain straight_chain(const PlateOutline& outline);
PlateChain circle_chain(PlatePoint centre, double radius_mm);

/// Corners of the chain and points along its arcs, no chord farther than `chord_mm` from its arc.
PlateOutline flattened(const PlateChain& chain, double chord_mm);

/// Exact; negative for a clockwise chain.
double signed_area_mm2(const PlateChain& chain);
double length_mm(const PlateChain& chain);

/// The mirror image u -> -u, walked the other way so that it is anticlockwise again.
PlateChain mirrored(const PlateChain& chain);
/// Turned about the origin by `turn_rad` (anticlockwise), then moved.
PlateChain moved(const PlateChain& chain, double turn_rad, PlatePoint shift);

/// Least radius of the arcs that bend into the plate's brass as a cutter inside the outline must follow them:
/// for an opening or pocket, arcs that turn left (anticlockwise chain) and sharp left corners (0); for an outer
/// outline, arcs and corners that turn right. Infinite where there are none.
enum class CutSide { inside_of_chain, outside_of_chain };
double least_inside_radius_mm(const PlateChain& chain, CutSide side);

}  // namespace prismwright
