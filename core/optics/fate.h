#pragma once

#include <string_view>

namespace prismwright {

/// What becomes of a ray from the focus.
enum class Fate {
  level,            ///< leaves within the level tolerance of its band's aim, and nothing is in its way
  stray,            ///< leaves the glass in another direction, or runs into another prism
  escaped,          ///< passes between the prisms without meeting glass
  stopped,          ///< ends in a horizontal rib or in the filled setting gap between refracting rings
  lost_reflecting,  ///< goes out through a reflecting face that did not reflect totally
  lost_land,        ///< ends in a land or in a joint
};
inline constexpr int kFates = 6;
std::string_view name_of(Fate fate);  ///< "level", "stray", "escaped between prisms", ...

/// Why light does not leave within the level tolerance: the fates, split further.
enum class LossCause {
  none,            ///< it does
  off_aim,         ///< stray: leaves the glass in another direction
  other_glass,     ///< stray: leaves along its aim, then runs into another prism
  between_prisms,  ///< escaped
  filled_gap,      ///< stopped: in the filled setting gap between refracting rings
  rib,             ///< stopped: by a horizontal rib, before the glass or after it
  reflection,      ///< lost at a reflecting face
  land,            ///< lost in a land
  joint,           ///< lost in a joint (a level one, but for light from beside the focal point)
};
std::string_view words_of(LossCause cause);  ///< "in a land", "in the filled setting gap", ...

}  // namespace prismwright
