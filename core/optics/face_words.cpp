#include "core/optics/face_words.h"

namespace prismwright {

std::string words_of(FaceRole role) {
  if (role == FaceRole::joint_upper) return "upper joint";
  if (role == FaceRole::joint_lower) return "lower joint";
  return std::string(name_of(role));
}

bool is_optical(FaceRole role) {
  switch (role) {
    case FaceRole::inner:
    case FaceRole::outer:
    case FaceRole::entry:
    case FaceRole::exit:
    case FaceRole::reflecting:
      return true;
    case FaceRole::joint_upper:
    case FaceRole::joint_lower:
    case FaceRole::land:
    case FaceRole::axis:
      break;
  }
  return false;
}

}  // namespace prismwright
