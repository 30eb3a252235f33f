#pragma once

#include <array>
#include <string_view>

#include "core/light/light_settings.h"

namespace prismwright {

/// One way in which a prism may stand or be made wrong, or the lamp stand wrong. Directions are the prism's:
/// seaward along its panel's axis (belt work: straight out from the lens axis through its middle), sideways
/// square to that, anticlockwise seen from above, and up.
enum class SettingMove {
  tilt,            ///< about the level tangent through its seat, seaward side up; deg
  roll,            ///< about the line of sight seaward, anticlockwise side up; deg
  turn,            ///< about the upright through its seat, anticlockwise from above; deg
  shift_seaward,   ///< mm
  shift_sideways,  ///< mm
  shift_up,        ///< mm
  first_face,      ///< inner or entry face ground to a wrong angle (see LightBody::hinge); deg
  reflecting_face,
  last_face,  ///< outer or exit face
  index,      ///< refractive index
  lamp_seaward,
  lamp_sideways,
  lamp_up,
};
inline constexpr std::size_t kSettingMoves = 13;
constexpr std::size_t at_of(SettingMove move) { return static_cast<std::size_t>(move); }

/// The errors that have a standard deviation of their own in the settings.
enum class ErrorKind { tilt, shift, face, index, lamp };
inline constexpr std::array kErrorKinds{ErrorKind::tilt, ErrorKind::shift, ErrorKind::face, ErrorKind::index,
                                        ErrorKind::lamp};

/// "tilt", "shift", "face angle", "index", "lamp place".
std::string_view name_of(ErrorKind kind);
/// "deg", "mm" or "".
std::string_view unit_of(ErrorKind kind);
/// Words for tables: "tilt about the tangent".
std::string_view name_of(SettingMove move);
ErrorKind kind_of(SettingMove move);
/// The standard deviation in the settings, in the kind's unit.
double deviation_of(ErrorKind kind, const LightSettings& light);
/// Beyond this no tolerance is sought: the beam no longer turns in step with the error.
double bound_of(ErrorKind kind);

/// A size of each move: degrees, mm, and plain index.
using MoveSizes = std::array<double, kSettingMoves>;

}  // namespace prismwright
