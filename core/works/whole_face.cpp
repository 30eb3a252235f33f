#include "core/works/whole_face.h"

#include <utility>

namespace prismwright {

namespace {

bool starts_on_axis(const Profile& profile, std::size_t index) {
  const std::size_t count = profile.faces.size();
  return profile.faces[(index + count - 1) % count].role == FaceRole::axis;
}

bool stops_on_axis(const Profile& profile, std::size_t index) {
  return profile.faces[(index + 1) % profile.faces.size()].role == FaceRole::axis;
}

}  // namespace

bool ends_on_axis(const Profile& profile, std::size_t index) {
  return starts_on_axis(profile, index) || stops_on_axis(profile, index);
}

Face whole_face(const Profile& profile, std::size_t index) {
  Face face = profile.faces[index];
  if (!ends_on_axis(profile, index)) return face;
  Face other = mirrored(Profile{{face}}).faces.front();
  if (starts_on_axis(profile, index)) std::swap(face, other);
  face.points.insert(face.points.end(), other.points.begin() + 1, other.points.end());
  if (!face.tangents.empty())
    face.tangents.insert(face.tangents.end(), other.tangents.begin() + 1, other.tangents.end());
  if (face.kind != FaceKind::true_curve) face.points = {face.points.front(), face.points.back()};
  return face;
}

}  // namespace prismwright
