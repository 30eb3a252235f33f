#include "core/frame/cutter_radius.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/frame/plate_polygons.h"
#include "core/frame/plate_step.h"

namespace prismwright {

namespace {

constexpr double kLeft_mm = 0.01;     ///< what a cutter may leave in a corner
constexpr double kChord_mm = 0.001;   ///< of the polygons that stand for arcs
constexpr double kSharp_mm = 0.1;     ///< a smaller cutter is none
constexpr double kNearEnough = 0.98;  ///< of the truth
constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// Radius of the disc that leaves so much between two tangents that turn by the angle, beyond what a disc of
/// the arc between them leaves: (R - r) (1 / cos(turn / 2) - 1).
double room_in_turn(double turn) {
  constexpr double kNone = 1e-9;
  if (turn < kNone) return kInfinite;
  const double left = 1 / std::cos(std::min(turn, 3.0) / 2) - 1;
  return kLeft_mm / left;
}

/// No cutter beyond this will do, seen at every turn alone.
double most_radius(const PlateChain& chain, double hand) {
  double most = kInfinite;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const PlateStep& step = chain[i];
    const PlateStep& next = chain[(i + 1) % chain.size()];
    if (hand * step.turn > 0) most = std::min(most, step.radius_mm + room_in_turn(hand * step.turn));
    most = std::min(most, room_in_turn(hand * turn_between(heading_at_end(step), heading_at_start(next))));
  }
  return most;
}

/// What is to be cut away: the inside of the chain, or a margin all round it.
PlateRegion cut_away(const PlateChain& chain, CutSide side, double margin_mm) {
  PlateOutline outline = flattened(chain, kChord_mm);
  if (side == CutSide::inside_of_chain) return {outline};
  return first_less_second(grown({outline}, margin_mm, Corner::round), {outline});
}

/// Whether a disc of that radius comes within a hundredth of a millimetre of all of the region. The margin's
/// own outer edge is round, so it keeps no disc out.
bool reaches(const PlateRegion& region, double radius_mm) {
  constexpr double kArc_mm = 0.0005;
  const PlateRegion open =
      grown(grown(region, -radius_mm, Corner::round, kArc_mm), radius_mm, Corner::round, kArc_mm);
  return grown(first_less_second(region, open), -kLeft_mm / 2, Corner::sharp).empty();
}

}  // namespace

double cutter_radius_mm(const PlateChain& chain, CutSide side) {
  const double least = least_inside_radius_mm(chain, side);
  double most = most_radius(chain, side == CutSide::inside_of_chain ? 1 : -1);
  if (most < kSharp_mm) return 0;
  if (!std::isfinite(most) || least >= kNearEnough * most) return least;
  const PlateRegion region = cut_away(chain, side, 3 * most);
  if (reaches(region, most)) return most;
  double reached = std::max(least, kSharp_mm);
  if (least < kSharp_mm && !reaches(region, reached)) return 0;
  while (reached < kNearEnough * most) {
    const double half = std::sqrt(reached * most);
    (reaches(region, half) ? reached : most) = half;
  }
  return reached;
}

double cutter_radius_mm(const FlatPart& part) {
  double least = cutter_radius_mm(part.outline, CutSide::outside_of_chain);
  for (const PlateChain& opening : part.openings)
    least = std::min(least, cutter_radius_mm(opening, CutSide::inside_of_chain));
  for (const PlatePocket& pocket : part.pockets)
    least = std::min(least, cutter_radius_mm(pocket.outline, CutSide::inside_of_chain));
  return least;
}

}  // namespace prismwright
