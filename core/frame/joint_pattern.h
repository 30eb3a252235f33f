#pragma once

#include <vector>

#include "core/frame/plate_polygons.h"

namespace prismwright {

/// What a joint between two panels asks of the brass, mm.
struct JointNeeds {
  double screw_room_mm = 0;  ///< from a screw's axis to the next edge, pocket or hole's room
  double dowel_room_mm = 0;
  double low_v_mm = 0;  ///< of the ribs
  double high_v_mm = 0;
};

struct JointPattern {
  std::vector<PlatePoint> screws;  ///< at most three, from the top down
  std::vector<PlatePoint> dowels;  ///< at most two, from the top down
  [[nodiscard]] bool whole() const { return screws.size() == 3 && dowels.size() == 2; }
};

/// Places for screws and dowels in the brass: one screw in each third of the height, a dowel in the uppermost
/// and the lowest two fifths. Of the places that keep what is needed it takes the roomiest, up to twice the
/// need, and of these the outermost.
JointPattern joint_pattern(const PlateRegion& brass, const JointNeeds& needs);

}  // namespace prismwright
