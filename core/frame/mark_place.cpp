#include "core/frame/mark_place.h"

#include <algorithm>
#include <array>

#include "core/base/angle.h"
#include "core/frame/plate_sums.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.02;   ///< of the polygons that stand for the chains
constexpr double kThinned_mm = 0.1;  ///< corners are left out within it
constexpr double kFound_mm = 0.25;   ///< the roomiest place is found so near
constexpr std::array kHeights_mm = {kEngraved_mm, 4.0, 3.0, 2.5, kLeastEngraved_mm};
constexpr std::array kTurns_deg = {0.0, 90.0, 15.0, -15.0, 30.0, -30.0, 45.0, -45.0, 60.0, -60.0, 75.0, -75.0};

PlateOutline turned_words(double wide_mm, double high_mm, double turn_deg) {
  const PlateOutline level = plate_rectangle({-wide_mm / 2, -high_mm / 2}, {wide_mm / 2, high_mm / 2});
  return moved(PlateRegion{level}, radians(turn_deg), {}).front();
}

}  // namespace

PlateRegion clear_face(const FlatPart& part, double clear_mm) {
  std::vector<PlateOutline> gaps;
  for (const PlateChain& opening : part.openings) gaps.push_back(flattened(opening, kChord_mm));
  for (const PlatePocket& pocket : part.pockets) gaps.push_back(flattened(pocket.outline, kChord_mm));
  for (const PlateHole& hole : part.holes) {
    const double across =
        hole.sunk_in_back ? hole.diameter_mm : std::max(hole.diameter_mm, hole.sink_diameter_mm);
    gaps.push_back(flattened(circle_chain(hole.centre, across / 2), kChord_mm));
  }
  const PlateRegion face = first_less_second({flattened(part.outline, kChord_mm)}, united(gaps));
  PlateRegion clear = grown(face, -(clear_mm + kThinned_mm + kChord_mm), Corner::round);
  for (PlateOutline& outline : clear) outline = thinned(outline, kThinned_mm);
  return clear;
}

std::optional<EngravedMark> place_of_mark(const FlatPart& part, const std::string& words) {
  if (words.empty() || part.outline.empty()) return std::nullopt;
  const PlateRegion face = clear_face(part, kMarkClear_mm);
  if (face.empty()) return std::nullopt;
  for (const double height : kHeights_mm) {
    for (const double turn : kTurns_deg) {
      const PlateOutline ground = turned_words(engraved_width_mm(words, height), height, turn);
      const PlateRegion places = places_within(face, ground);
      if (!places.empty()) return EngravedMark{words, roomiest_point(places, kFound_mm), height, turn};
    }
  }
  return std::nullopt;
}

}  // namespace prismwright
