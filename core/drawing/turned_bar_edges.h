#pragma once

#include <string>
#include <vector>

#include "core/base/space.h"
#include "core/frame/frame_parts.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// The edge that one corner of a turned bar's section makes, from end to end. In the panel's frame: x along the
/// panel's axis seaward, y to the right seen from the sea, z up.
struct BarEdge {
  std::string letter;
  SectionPoint corner;   ///< r along the axis from the lens axis, z away from it, as planned
  double radius_mm = 0;  ///< about the axis
  SpacePoint first;      ///< the end at the right, seen from the sea
  SpacePoint last;
  double turn = 0;  ///< radians from first to last about the axis, anticlockwise seen from the sea
  bool whole_turn = false;

  [[nodiscard]] double straight_mm() const;
  [[nodiscard]] double round_mm() const;
};

/// One for each corner of the section of which anything is kept. Exact for a level axis.
std::vector<BarEdge> edges_of(const TurnedBar& bar);

/// How far the bar reaches, seen from the sea: u = y, v = z of the panel's frame. Within 1e-5 mm.
PlateExtent extent_from_sea(const TurnedBar& bar);
/// The smallest rectangle round its section: u = r, v = z. Within 0.001 mm.
PlateExtent section_extent(const TurnedBar& bar);

}  // namespace prismwright
