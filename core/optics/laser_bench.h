#pragma once

#include <optional>
#include <vector>

#include "core/optics/proof.h"
#include "core/optics/section.h"

namespace prismwright {

/// Where a ray that has left the glass meets an upright board, r mm seaward of the focus.
struct BoardSpot {
  SectionPoint place;
  double slope_deg = 0;      ///< elevation of the ray at the board
  double over_level_mm = 0;  ///< height over the mark of a level ray from the same place of the glass
};

/// The spot of a laser in the focus on a board. Blank when the ray ends in the lens, runs away from the
/// board, or leaves the glass seaward of it.
std::optional<BoardSpot> spot_on_board(const RayPath& path, double board_mm);

/// Elevation of a ray after everything it met, degrees.
double last_direction_deg(const RayPath& path);
/// Whether a ray of this fate runs on out of the lens.
constexpr bool leaves_lens(Fate fate) {
  return fate == Fate::level || fate == Fate::stray || fate == Fate::escaped;
}

/// The ray with its end where it can be drawn: a ray stopped between refracting rings ends where it meets the
/// upright inner plane r = focal distance.
RayPath with_drawn_end(RayPath path, const Section& section);
/// Where a ray's light is lost or stopped: at the reflecting face that let it out, else where the ray ends.
/// Blank for a ray that runs on with its light.
std::optional<SectionPoint> place_of_loss(const RayPath& path);

/// Rays that show what a section does with the light of the focus.
struct RayFan {
  std::vector<RayPath> rays;      ///< rising in elevation
  std::optional<BeamStrip> beam;  ///< lowest and highest height at which level light leaves; blank: none does
};

/// About `rays` rays, evenly spread in elevation over the section, and one more through the middle of every
/// run of equal fate within a zone that these would miss, so that light lost in a narrow land is seen too.
/// Runs are found in `steps` equal steps; narrower ones are missed.
RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, int rays, int steps = 2400);

/// The middle of a zone's elevations, degrees; a centre's is level.
double middle_deg(const Zone& zone);
/// The middle elevations of all zones, mirror images of rings included, rising. Stops for a laser.
std::vector<double> zone_middles_deg(const Section& section);

}  // namespace prismwright
