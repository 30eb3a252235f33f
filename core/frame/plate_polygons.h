#pragma once

#include <vector>

#include "core/frame/plate.h"

namespace prismwright {

/// Outlines that bound a region: outer ones anticlockwise, holes clockwise.
using PlateRegion = std::vector<PlateOutline>;

/// One connected piece of a region.
struct PlatePiece {
  PlateOutline outer;               ///< anticlockwise
  std::vector<PlateOutline> holes;  ///< clockwise
};

/// How an outline that grows goes round its corners.
enum class Corner {
  sharp,  ///< mitred; corners keener than 60 deg are squared off at the growth itself
  round,  ///< arcs as polygons
};
inline constexpr double kArcWithin_mm = 0.01;  ///< how near such polygons keep to their arcs

/// Area inside an outline, mm2; negative when it runs clockwise.
double signed_area_mm2(const PlateOutline& outline);
/// Outer outlines less holes, mm2.
double area_mm2(const PlateRegion& region);

/// Everything inside any of the outlines. Each must run anticlockwise (or be a hole of one that does);
/// stretches without width fall away. Coordinates are kept to 1e-5 mm.
PlateRegion united(const std::vector<PlateOutline>& outlines);
PlateRegion common_part(const PlateRegion& a, const PlateRegion& b);
PlateRegion first_less_second(const PlateRegion& first, const PlateRegion& second);

/// The region grown outward everywhere by `by_mm` (shrunk when negative).
PlateRegion grown(const PlateRegion& region, double by_mm, Corner corner, double arc_within_mm = kArcWithin_mm);

/// The region's connected pieces with their holes.
std::vector<PlatePiece> pieces_of(const PlateRegion& region);
/// Outer outlines only: islands and holes are filled.
std::vector<PlateOutline> filled(const PlateRegion& region);

/// The outline with as few points as keep it within `within_mm` of the given one.
PlateOutline thinned(const PlateOutline& outline, double within_mm);

/// Whether the place lies inside; places on the outline itself may go either way.
bool holds(const PlateOutline& outline, PlatePoint place);

/// An upright rectangle, anticlockwise.
PlateOutline plate_rectangle(PlatePoint low, PlatePoint high);
/// The corners of the smallest upright rectangle round the region, which must not be empty.
struct PlateExtent {
  PlatePoint low;
  PlatePoint high;
};
PlateExtent extent_of(const PlateRegion& region);

}  // namespace prismwright
