#include "core/light/setting_moves.h"

namespace prismwright {

std::string_view name_of(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::tilt:
      return "tilt";
    case ErrorKind::shift:
      return "shift";
    case ErrorKind::face:
      return "face angle";
    case ErrorKind::index:
      return "index";
    case ErrorKind::lamp:
      break;
  }
  return "lamp place";
}

std::string_view unit_of(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::tilt:
    case ErrorKind::face:
      return "deg";
    case ErrorKind::shift:
    case ErrorKind::lamp:
      return "mm";
    case ErrorKind::index:
      break;
  }
  return "";
}

std::string_view name_of(SettingMove move) {
  static constexpr std::array<std::string_view, kSettingMoves> kNames{"tilt about the tangent",
                                                                      "tilt about the line of sight",
                                                                      "turn about the upright",
                                                                      "shift seaward",
                                                                      "shift sideways",
                                                                      "shift up",
                                                                      "inner or entry face",
                                                                      "reflecting face",
                                                                      "outer or exit face",
                                                                      "index",
                                                                      "lamp seaward",
                                                                      "lamp sideways",
                                                                      "lamp up"};
  return kNames[at_of(move)];
}

ErrorKind kind_of(SettingMove move) {
  if (move <= SettingMove::turn) return ErrorKind::tilt;
  if (move <= SettingMove::shift_up) return ErrorKind::shift;
  if (move <= SettingMove::last_face) return ErrorKind::face;
  return move == SettingMove::index ? ErrorKind::index : ErrorKind::lamp;
}

double deviation_of(ErrorKind kind, const LightSettings& light) {
  switch (kind) {
    case ErrorKind::tilt:
      return light.tilt_error_deg;
    case ErrorKind::shift:
      return light.shift_error_mm;
    case ErrorKind::face:
      return light.face_error_deg;
    case ErrorKind::index:
      return light.index_error;
    case ErrorKind::lamp:
      break;
  }
  return light.lamp_error_mm;
}

double bound_of(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::tilt:
      return 3;
    case ErrorKind::shift:
      return 10;
    case ErrorKind::face:
      return 2;
    case ErrorKind::index:
      return 0.02;
    case ErrorKind::lamp:
      break;
  }
  return 20;
}

}  // namespace prismwright
