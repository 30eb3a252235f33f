#include "core/light/prism_turns.h"

#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kDirectionStep = 2e-5;  ///< radians
constexpr double kAngleStep_deg = 2e-3;
constexpr double kShiftStep_mm = 5e-3;
constexpr double kIndexStep = 2e-5;

double step_of(SettingMove move) {
  switch (kind_of(move)) {
    case ErrorKind::tilt:
    case ErrorKind::face:
      return kAngleStep_deg;
    case ErrorKind::index:
      return kIndexStep;
    default:
      return kShiftStep_mm;
  }
}

/// A place in a plane, or a difference of two.
struct Flat {
  double x = 0;
  double y = 0;
};
Flat slope(const Flat& over, const Flat& under, double step) {
  return {(over.x - under.x) / (2 * step), (over.y - under.y) / (2 * step)};
}

/// One spot's rays where they cross the plane through the lamp's middle that is square to its line of sight.
class SpotTurns {
 public:
  SpotTurns(const ApertureSpot& spot, FarDirection along, const PrismSeat& seat, SpacePoint lamp, double index)
      : way_(spot), body_(*spot.body), along_(along), seat_(seat), lamp_(lamp), index_(index) {}

  std::optional<BeamTurns> work() {
    if (!lay_plane() || !turn_direction()) return std::nullopt;
    const auto met = way_.met(along_, index_);
    if (!met) return std::nullopt;
    BeamTurns turns;
    for (std::size_t i = 0; i < kSettingMoves; ++i) {
      const auto move = static_cast<SettingMove>(i);
      const auto moved = kind_of(move) == ErrorKind::lamp ? lamp_moved(move) : prism_moved(move, *met);
      if (!moved) return std::nullopt;
      turns[i] = turn_for(*moved);
    }
    return turns;
  }

 private:
  bool lay_plane() {
    WrongPrism planned;
    planned.index = index_;
    const auto ray = way_.back(along_, planned);
    if (!ray) return false;
    const SpaceVector towards = unit(lamp_ - ray->from);
    const SpaceVector level =
        std::abs(towards.z) > 0.999 ? SpaceVector{0, 1, 0} : unit(cross({0, 0, 1}, towards));
    plane_ = {lamp_, level, cross(towards, level), towards};
    return true;
  }

  [[nodiscard]] std::optional<Flat> at_lamp(FarDirection to, const WrongPrism& wrong) const {
    const auto ray = way_.back(to, wrong);
    if (!ray) return std::nullopt;
    const double towards = dot(ray->along, plane_.third);
    if (towards <= 0.1) return std::nullopt;
    const double reach = dot(plane_.origin - ray->from, plane_.third) / towards;
    const SpaceVector met = place_on(*ray, reach) - plane_.origin;
    return Flat{dot(met, plane_.first), dot(met, plane_.second)};
  }

  /// How the ray moves at the lamp as the direction turns.
  bool turn_direction() {
    WrongPrism planned;
    planned.index = index_;
    const double d = kDirectionStep;
    const auto left = at_lamp({along_.azimuth + d, along_.elevation}, planned);
    const auto right = at_lamp({along_.azimuth - d, along_.elevation}, planned);
    const auto over = at_lamp({along_.azimuth, along_.elevation + d}, planned);
    const auto under = at_lamp({along_.azimuth, along_.elevation - d}, planned);
    if (!left || !right || !over || !under) return false;
    by_azimuth_ = slope(*left, *right, d);
    by_elevation_ = slope(*over, *under, d);
    det_ = by_azimuth_.x * by_elevation_.y - by_elevation_.x * by_azimuth_.y;
    return std::abs(det_) > 1;
  }

  /// A move of the lamp is one of the rays the other way.
  [[nodiscard]] std::optional<Flat> lamp_moved(SettingMove move) const {
    const SpaceVector way = move == SettingMove::lamp_seaward    ? SpaceVector{1, 0, 0}
                            : move == SettingMove::lamp_sideways ? SpaceVector{0, 1, 0}
                                                                 : SpaceVector{0, 0, 1};
    return Flat{-dot(way, plane_.first), -dot(way, plane_.second)};
  }

  [[nodiscard]] std::optional<Flat> prism_moved(SettingMove move, const PrismWay::Met& met) const {
    if (move == SettingMove::reflecting_face && met.count < 3) return Flat{};
    const double step = step_of(move);
    const auto over = at_lamp(along_, wrong_by(move, step, met));
    const auto under = at_lamp(along_, wrong_by(move, -step, met));
    if (!over || !under) return std::nullopt;
    return slope(*over, *under, step);
  }

  [[nodiscard]] WrongPrism wrong_by(SettingMove move, double size, const PrismWay::Met& met) const {
    WrongPrism wrong;
    wrong.index = index_;
    if (move == SettingMove::index) wrong.index += size;
    if (const auto rigid = rigid_move_of(move, size, seat_)) wrong.body = *rigid;
    if (kind_of(move) != ErrorKind::face) return wrong;
    const std::size_t which = move == SettingMove::first_face        ? 0
                              : move == SettingMove::reflecting_face ? 1
                                                                     : static_cast<std::size_t>(met.count - 1);
    if (const auto hinge = body_.hinge(met.role[which], met.at[which])) {
      wrong.face = met.role[which];
      wrong.ground = {hinge->at, radians(size) * hinge->along, {}};
    }
    return wrong;
  }

  [[nodiscard]] BeamTurn turn_for(const Flat& moved) const {
    const double azimuth = -(by_elevation_.y * moved.x - by_elevation_.x * moved.y) / det_;
    const double elevation = -(by_azimuth_.x * moved.y - by_azimuth_.y * moved.x) / det_;
    return {degrees(azimuth), degrees(elevation)};
  }

  PrismWay way_;
  const LightBody& body_;
  FarDirection along_;
  PrismSeat seat_;
  SpacePoint lamp_;
  double index_;
  SpaceFrame plane_;
  Flat by_azimuth_, by_elevation_;
  double det_ = 0;
};

}  // namespace

std::optional<RigidMove> rigid_move_of(SettingMove move, double size, const PrismSeat& seat) {
  const SpaceVector up{0, 0, 1};
  const double angle = radians(size);
  switch (move) {
    case SettingMove::tilt:
      return RigidMove{seat.at, -angle * seat.sideways, {}};
    case SettingMove::roll:
      return RigidMove{seat.at, angle * seat.seaward, {}};
    case SettingMove::turn:
      return RigidMove{seat.at, angle * up, {}};
    case SettingMove::shift_seaward:
      return RigidMove{seat.at, {}, size * seat.seaward};
    case SettingMove::shift_sideways:
      return RigidMove{seat.at, {}, size * seat.sideways};
    case SettingMove::shift_up:
      return RigidMove{seat.at, {}, size * up};
    default:
      return std::nullopt;
  }
}

std::optional<BeamTurns> beam_turns(const ApertureSpot& spot, FarDirection along, const PrismSeat& seat,
                                    SpacePoint lamp, double index) {
  return SpotTurns(spot, along, seat, lamp, index).work();
}

}  // namespace prismwright
