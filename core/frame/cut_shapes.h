#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_parts.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Plates that are alike: one file, one programme for the machine. Places in the list that was given, in its
/// order; never empty.
using AlikePlates = std::vector<std::size_t>;

/// Every plate of the list, alike ones together, in the order of their first.
std::vector<AlikePlates> alike_plates(const std::vector<FlatPart>& flats);

/// Outlines of everything that is cut right through a plate beside round holes: its openings, and pockets as
/// deep as the plate.
std::vector<PlateChain> through_cuts(const FlatPart& part);
/// Pockets that leave a floor.
std::vector<PlatePocket> blind_pockets(const FlatPart& part);

/// Brass of a plate seen from the front: outline less through cuts and holes, mm2. They must not overlap.
double face_area_mm2(const FlatPart& part);
/// Brass of a plate: less blind pockets, sunk heads and bores too, mm3. A bore's pointed end is not counted.
double volume_mm3(const FlatPart& part);
double mass_g(const FlatPart& part);

/// The smallest upright rectangle round a chain, arcs counted exactly. The chain must not be empty.
PlateExtent extent_of(const PlateChain& chain);

}  // namespace prismwright
