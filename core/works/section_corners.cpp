#include "core/works/section_corners.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/angle.h"
#include "core/drawing/arc_chain.h"

namespace prismwright {

namespace {

struct LetteredPair {
  FaceRole one;
  FaceRole other;
  const char* letter;
};
constexpr LetteredPair kLetters[] = {
    {FaceRole::entry, FaceRole::exit, "A"},        {FaceRole::entry, FaceRole::reflecting, "B"},
    {FaceRole::reflecting, FaceRole::exit, "C"},   {FaceRole::joint_upper, FaceRole::inner, "A"},
    {FaceRole::inner, FaceRole::joint_lower, "B"}, {FaceRole::joint_lower, FaceRole::outer, "C"},
    {FaceRole::outer, FaceRole::joint_upper, "D"}, {FaceRole::inner, FaceRole::axis, "M"},
    {FaceRole::axis, FaceRole::outer, "V"}};

/// The letter of the corner between two faces; "E" where they do not usually meet.
std::string letter_between(FaceRole before, FaceRole after) {
  for (const LetteredPair& pair : kLetters) {
    if ((pair.one == before && pair.other == after) || (pair.one == after && pair.other == before))
      return pair.letter;
  }
  return "E";
}

/// The role of the next face that is no land, walking on or back from one.
FaceRole beyond_lands(const Profile& profile, std::size_t from, bool onward) {
  const std::size_t count = profile.faces.size();
  std::size_t i = from;
  for (std::size_t k = 0; k < count && profile.faces[i].role == FaceRole::land; ++k)
    i = onward ? (i + 1) % count : (i + count - 1) % count;
  return profile.faces[i].role;
}

SectionDirection tangent_at(const Face& face, bool at_end) {
  if (face.kind == FaceKind::true_curve) return at_end ? face.tangents.back() : face.tangents.front();
  const ChainPiece piece = arcs_of(face).front();
  return at_end ? piece.tangent_at_end() : piece.tangent_at_start();
}

}  // namespace

std::vector<SectionCorner> lettered_corners(const Profile& profile) {
  std::vector<SectionCorner> corners;
  std::map<std::string, int> seen;
  const std::size_t count = profile.faces.size();
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t before = (i + count - 1) % count;
    const bool land_before = profile.faces[before].role == FaceRole::land;
    const bool land_after = profile.faces[i].role == FaceRole::land;
    std::string letter = letter_between(beyond_lands(profile, before, false), beyond_lands(profile, i, true));
    if (land_before != land_after) letter += land_after ? "1" : "2";
    if (const int times = seen[letter]++; times > 0)
      letter += std::string(static_cast<std::size_t>(times), '\'');
    const bool axis = profile.faces[before].role == FaceRole::axis || profile.faces[i].role == FaceRole::axis;
    corners.push_back({letter, profile.faces[i].start(), axis});
  }
  return corners;
}

double corner_angle_deg(const Profile& profile, std::size_t index) {
  const std::size_t count = profile.faces.size();
  const SectionDirection in = tangent_at(profile.faces[(index + count - 1) % count], true);
  const SectionDirection out = tangent_at(profile.faces[index], false);
  return 180 - degrees(std::atan2(cross(in, out), dot(in, out)));
}

}  // namespace prismwright
