#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/space.h"
#include "core/lens/plan.h"

namespace prismwright {

/// Said wherever a laser is asked for.
inline constexpr std::string_view kLaserCaution =
    "Never look into the beam or its reflections; follow the laser's class and local rules.";

/// Where a spot lies on a board square to the panel's axis.
struct BoardPlace {
  double height_mm = 0;  ///< over the level mark, which stands at the height of the principal focus
  double aside_mm = 0;   ///< from the panel's axis, to the left looking seaward from the focus
};

/// One prism on the laser bench: how the laser is aimed at the middle of the face where light enters, where its
/// spot should fall, and what tilting or moving the prism does to it. Traced in space through the prism as it
/// is drawn. The panel's frame has its origin in the principal focus, x along the panel's level axis, z up.
struct BenchAim {
  std::string mark;
  int panel = 1;
  double azimuth_deg = 0;     ///< of the laser, in the lens frame, -180 to 180
  double elevation_deg = 0;   ///< of the laser
  double stands_over_mm = 0;  ///< laser over the principal focus, on the lens axis: 0 but for a band with its
                              ///< own focal point
  SpacePoint meets;           ///< the place of the prism that the laser meets, in the lens frame
  std::string trouble;        ///< why there is no spot, as a sentence; empty when there is one

  // Meaningful without trouble.
  SpacePoint leaves;         ///< where the light leaves the prism, in the panel's frame
  SpaceVector beam;          ///< unit, the way it goes on, in the panel's frame
  double turn_per_tilt = 0;  ///< degrees that the beam rises per degree of nose-up tilt about the tangent
                             ///< through the seat; the seat is the place that the laser meets
  double turn_per_mm = 0;    ///< degrees that the beam rises per mm that the prism is moved up
  double seat_mm = 0;        ///< length of the face that rests on the seat, in the section
  std::string nose_up_edge;  ///< edge of that face whose shim tilts the prism nose up: "lower", "outer"
  std::string nose_down_edge;

  [[nodiscard]] BoardPlace spot_at(double board_mm) const;
};

/// What the bench is like.
struct BenchSettings {
  std::optional<double> board_mm;  ///< distance of the board from the focus; blank: as the light's settings say
  std::optional<double> laser_nm;  ///< wavelength; blank: the design wavelength
};

/// The bench's plan of a whole lens.
struct BenchPlan {
  double board_mm = 0;
  double laser_nm = 0;
  std::vector<BenchAim> aims;  ///< in the order of the plan's prisms

  [[nodiscard]] const BenchAim* find(std::string_view mark) const;
};

/// Aims the laser at every prism. Refuses a board that stands within the lens.
///
/// A piece that goes round the panel's axis is aimed at in the middle of what is kept of it; a ring without a
/// break at its top; a centre on its axis. The lens stands whole on the bench, so that brass or a neighbour in
/// the laser's way is trouble.
Outcome<BenchPlan> bench_plan(const LensPlan& plan, const BenchSettings& settings = {});

}  // namespace prismwright
