#include "geometry/pictures/line_sight.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kTurned = 1e-6;    ///< a face seen more edge-on than this is not seen
constexpr double kClear_mm = 0.02;  ///< that a line of sight starts before the line it is asked for
constexpr double kClose_mm = 0.05;  ///< beside an outline, where nothing stands already

}  // namespace

SpacePoint LineSight::clear_of(const DrawnNode& node, const DrawnLine& line) const {
  // A contour lies on the true face, up to a chord within or without the facets.
  if (line.contour) return node.place + (chord_mm_ + kClear_mm) * node.first + kClear_mm * plane_.eye;
  SpaceVector off = plane_.eye;
  for (const SpaceVector& normal : {node.first, node.second}) {
    const double turned = dot(normal, plane_.eye);
    if (turned > kTurned) off = off + 0.5 * normal;
    // Behind what ends level with it, an edge-on face is hidden, not grazed.
    if (std::abs(turned) <= kTurned) off = off - 0.5 * normal;
  }
  return node.place + kClear_mm * off;
}

bool LineSight::is_turned_away(const DrawnNode& node, const DrawnLine& line) const {
  return !line.contour && std::max(dot(node.first, plane_.eye), dot(node.second, plane_.eye)) <= kTurned;
}

LineSight::State LineSight::state(const DrawnNode& node, const DrawnLine& line) const {
  if (is_turned_away(node, line)) return hidden;
  if (scene_.is_blocked({clear_of(node, line), plane_.eye})) return hidden;
  return stands_free(node) ? outline : visible;
}

bool LineSight::is_free(SpacePoint place) const {
  // A whole line of sight, from far behind to far before.
  return !scene_.is_blocked({place, plane_.eye}) && !scene_.is_blocked({place, -plane_.eye});
}

bool LineSight::stands_free(const DrawnNode& node) const {
  for (const SpaceVector& normal : {node.first, node.second}) {
    const SpaceVector flat = normal - dot(normal, plane_.eye) * plane_.eye;
    const double size = length(flat);
    if (size < kTurned) continue;
    // Close by, for it may be an inner line near the outline; and farther off, for it may be a slit.
    const SpaceVector out = (1 / size) * flat;
    if (is_free(node.place + (kClose_mm + chord_mm_) * out) && is_free(node.place + beside_mm_ * out))
      return true;
  }
  return false;
}

int LineSight::glass_before(const DrawnNode& node, const DrawnLine& line, bool of_glass,
                            std::vector<Meeting>& met) const {
  if (!of_glass && is_turned_away(node, line)) return -1;
  scene_.meetings({clear_of(node, line), plane_.eye}, met);
  int layers = 0;
  for (const Meeting& m : met) {
    if (!scene_.parts()[m.part].glass) return -1;
    // Seen towards the eye, a face that is turned to it is met from inside.
    if (!m.front) ++layers;
  }
  return layers;
}

}  // namespace prismwright
