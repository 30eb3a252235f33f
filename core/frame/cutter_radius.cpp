#include "core/frame/cutter_radius.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/frame/carriers_meet.h"
#include "core/frame/plate_step.h"

namespace prismwright {

namespace {

constexpr double kLeft_mm = 0.01;        ///< what a cutter may leave in a corner
constexpr double kSharp_mm = 0.1;        ///< a smaller cutter is none
constexpr double kNearEnough = 0.999;    ///< of the truth
constexpr double kLeastKink_rad = 1e-4;  ///< less leaves nothing
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

/// Looks corner by corner whether a disc leaves too much: each is what lies between two steps on both of which
/// the disc rests at once.
class DiscInCorners {
 public:
  DiscInCorners(const PlateChain& chain, double hand, double radius_mm)
      : chain_(chain), hand_(hand), radius_mm_(radius_mm) {}

  [[nodiscard]] bool reaches_all() const {
    for (std::size_t i = 0; i < chain_.size(); ++i) {
      if (is_keen(at(i)) && !reaches({i + chain_.size() - 1, i + chain_.size() + 1})) return false;
      const double kink = turn_between(heading_at_end(at(i)), heading_at_start(at(i + 1)));
      if (hand_ * kink > kLeastKink_rad && !reaches({i, i + 1})) return false;
    }
    return true;
  }

 private:
  /// The steps before and after a corner, as the walk goes; what lies between them is the corner.
  struct Corner {
    std::size_t before;
    std::size_t after;
  };
  /// How far a place stands from the step's line or circle on the cutter's side, and whither that grows.
  struct Away {
    double mm;
    PlateVector along;
  };

  [[nodiscard]] const PlateStep& at(std::size_t i) const { return chain_[i % chain_.size()]; }
  [[nodiscard]] bool is_keen(const PlateStep& step) const {
    return hand_ * step.turn > 0 && step.radius_mm < radius_mm_;
  }

  [[nodiscard]] Away away(const PlateStep& step, PlatePoint place) const {
    if (step.straight()) {
      const PlateVector normal = hand_ * quarter_turn(unit(step.to - step.from));
      return {dot(normal, place - step.from), normal};
    }
    const PlateVector spoke = place - step.centre;
    const double way = hand_ * step.turn > 0 ? -1 : 1;
    return {way * (length_of(spoke) - step.radius_mm), way * unit(spoke)};
  }

  /// The corner grows until the disc rests within both of its neighbours.
  [[nodiscard]] bool reaches(Corner corner) const {
    while (corner.after - corner.before < chain_.size()) {
      if (is_keen(at(corner.before))) {
        corner = widened_before(corner);
        continue;
      }
      if (is_keen(at(corner.after))) {
        ++corner.after;
        continue;
      }
      const auto centre = resting_on(corner);
      if (!centre) return false;
      if (share_at(at(corner.before), *centre) < 0 || cuts_into(widened_before(corner).before, *centre)) {
        corner = widened_before(corner);
      } else if (share_at(at(corner.after), *centre) > 1 || cuts_into(corner.after + 1, *centre)) {
        ++corner.after;
      } else {
        return left_mm(corner, *centre) <= kLeft_mm;
      }
    }
    return false;
  }

  [[nodiscard]] bool cuts_into(std::size_t step, PlatePoint centre) const {
    constexpr double kTouches_mm = 1e-6;
    return distance_to(at(step), centre) < radius_mm_ - kTouches_mm;
  }

  [[nodiscard]] Corner widened_before(Corner corner) const {
    if (corner.before > 0) return {corner.before - 1, corner.after};
    return {chain_.size() - 1, corner.after + chain_.size()};
  }

  /// Where the disc's centre may stand while it touches the step's line or circle.
  [[nodiscard]] PlateStep track_of(const PlateStep& step) const {
    if (step.straight()) {
      const PlateVector off = radius_mm_ * away(step, step.from).along;
      return straight_step(step.from + off, step.to + off);
    }
    PlateStep track = step;
    track.radius_mm =
        std::abs(hand_ * step.turn > 0 ? step.radius_mm - radius_mm_ : step.radius_mm + radius_mm_);
    return track;
  }

  /// Centre of the disc that touches both; of two such the one whose places of touch are nearer to the corner.
  [[nodiscard]] std::optional<PlatePoint> resting_on(Corner corner) const {
    const PlateStep& before = at(corner.before);
    const PlateStep& after = at(corner.after);
    std::optional<PlatePoint> best;
    double least = kInfinite;
    for (const PlatePoint centre : carriers_meet(track_of(before), track_of(after))) {
      const double off = std::abs(1 - share_at(before, centre)) * length_mm(before) +
                         std::abs(share_at(after, centre)) * length_mm(after);
      if (off < least) best = centre;
      least = std::min(least, off);
    }
    return best;
  }

  /// Where along the step the disc touches it: 0 its start, 1 its end.
  [[nodiscard]] double share_at(const PlateStep& step, PlatePoint centre) const {
    const PlatePoint foot = centre + -radius_mm_ * away(step, centre).along;
    if (!step.straight()) return turn_between(step.from - step.centre, foot - step.centre) / step.turn;
    const PlateVector chord = step.to - step.from;
    return dot(foot - step.from, chord) / dot(chord, chord);
  }

  [[nodiscard]] double left_mm(Corner corner, PlatePoint centre) const {
    constexpr int kPlaces = 4;
    double left = distance(centre, at(corner.before).to) - radius_mm_;
    for (std::size_t i = corner.before + 1; i < corner.after; ++i) {
      for (int k = 1; k <= kPlaces; ++k) {
        const PlatePoint place = place_along(at(i), static_cast<double>(k) / kPlaces);
        left = std::max(left, distance(centre, place) - radius_mm_);
      }
    }
    return left;
  }

  const PlateChain& chain_;
  double hand_;
  double radius_mm_;
};

}  // namespace

double cutter_radius_mm(const PlateChain& chain, CutSide side) {
  const double least = least_inside_radius_mm(chain, side);
  const double hand = side == CutSide::inside_of_chain ? 1 : -1;
  double most = most_radius(chain, hand);
  if (most < kSharp_mm) return 0;
  if (!std::isfinite(most) || least >= kNearEnough * most) return least;
  const auto reaches = [&](double radius) { return DiscInCorners(chain, hand, radius).reaches_all(); };
  if (reaches(most)) return most;
  double reached = std::max(least, kSharp_mm);
  if (least < kSharp_mm && !reaches(reached)) return 0;
  while (reached < kNearEnough * most) {
    const double half = std::sqrt(reached * most);
    (reaches(half) ? reached : most) = half;
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
