#pragma once

#include <optional>

#include "core/light/lamp_body.h"
#include "core/light/prism_way.h"
#include "core/light/setting_moves.h"

namespace prismwright {

/// How far a beam turns, degrees for each unit of an error: level anticlockwise from above, upright upward.
struct BeamTurn {
  double level_deg = 0;
  double upright_deg = 0;
};
/// By SettingMove, for one degree, mm, or whole unit of index.
using BeamTurns = std::array<BeamTurn, kSettingMoves>;

/// Where and which way a prism is held, in its panel's frame.
struct PrismSeat {
  SpacePoint at;
  SpaceVector seaward{1, 0, 0};
  SpaceVector sideways{0, 1, 0};
};

/// The turns of what shines from one spot, by re-tracing the ray from the lamp's middle (panel's frame) in the
/// moved prism: the light that leaves by the spot turns until its ray meets the lamp's middle again. Central
/// differences. Blank where the ray does not go the prism's own way.
std::optional<BeamTurns> beam_turns(const ApertureSpot& spot, FarDirection along, const PrismSeat& seat,
                                    SpacePoint lamp, double index);

/// The rigid move of a prism that makes moves of that size, tilts in degrees; blank for faces, index and lamp.
std::optional<RigidMove> rigid_move_of(SettingMove move, double size, const PrismSeat& seat);

}  // namespace prismwright
