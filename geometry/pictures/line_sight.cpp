#include "geometry/pictures/line_sight.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kTurned = 1e-6;    ///< a face seen more edge-on than this is not seen
constexpr double kClear_mm = 0.02;  ///< that a line of sight starts before the line it is asked for

}  // namespace

SpacePoint LineSight::clear_of(const DrawnNode& node, const DrawnLine& line) const {
  // A contour lies on the true face, up to a chord within or without the facets.
  if (line.contour) return node.place + (chord_mm_ + kClear_mm) * node.first + kClear_mm * plane_.eye;
  SpaceVector off = plane_.eye;
  for (const SpaceVector& normal : {node.first, node.second}) {
    if (dot(normal, plane_.eye) > kTurned) off = off + 0.5 * normal;
  }
  return node.place + kClear_mm * off;
}

LineSight::State LineSight::state(const DrawnNode& node, const DrawnLine& line) const {
  const double best = std::max(dot(node.first, plane_.eye), dot(node.second, plane_.eye));
  if (!line.contour && best <= kTurned) return hidden;
  if (scene_.is_blocked({clear_of(node, line), plane_.eye})) return hidden;
  return stands_free(node) ? outline : visible;
}

bool LineSight::stands_free(const DrawnNode& node) const {
  // Whole lines of sight, from far behind to far before, outside of either face.
  for (const SpaceVector& normal : {node.first, node.second}) {
    const SpaceVector flat = normal - dot(normal, plane_.eye) * plane_.eye;
    const double size = length(flat);
    if (size < kTurned) continue;
    const SpacePoint beside = node.place + (beside_mm_ / size) * flat;
    if (!scene_.is_blocked({beside, plane_.eye}) && !scene_.is_blocked({beside, -plane_.eye})) return true;
  }
  return false;
}

int LineSight::glass_before(const DrawnNode& node, const DrawnLine& line, std::vector<Meeting>& met) const {
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
