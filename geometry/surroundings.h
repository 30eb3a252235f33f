#pragma once

#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/frame/frame_settings.h"
#include "geometry/measured_part.h"
#include "geometry/room_field.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// What stands round the lens or within it, round about the lens axis.
struct Surrounding {
  std::string mark;  ///< "lamp-changer", "lantern-glazing" or "pedestal"
  std::string key;   ///< equal for the same form
  std::shared_ptr<const RoomField> room;
};

/// Those that the settings speak of: a radius of 0 leaves one out. The pedestal reaches ten metres down, the
/// glazing is a tube without end: the lens turns within it, so a part's farthest radius counts.
std::vector<Surrounding> surroundings_of(const FrameSettings& settings);

/// Gap of a part to a surrounding, lens frame; the first point lies on the part. Where they overlap the gap is
/// 0 and no volume is worked out: `overlap_mm3` is then 0. Blank where it is over `no_farther_mm`.
std::optional<SolidGap> gap_to(const MeasuredPart& part, const Surrounding& surrounding,
                               double no_farther_mm = std::numeric_limits<double>::max());

/// A word that is equal for parts of the same solid that stand alike to the lens axis.
std::string round_word(const MeasuredPart& part, const Surrounding& surrounding);

}  // namespace prismwright
