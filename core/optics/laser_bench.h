#pragma once

#include <optional>
#include <vector>

#include "core/optics/proof.h"
#include "core/optics/section.h"

namespace prismwright {

/// Where a ray that has left the glass meets an upright board, r mm seaward of the focus.
struct BoardSpot {
  SectionPoint place;
  double slope_deg = 0;    ///< elevation of the ray at the board
  double over_aim_mm = 0;  ///< height over the mark of a ray along the aim from the same place of the glass
};

/// The spot on a board of a laser in the focal point of its band. Blank when the ray ends in the lens, runs
/// away from the board, or leaves the glass seaward of it.
std::optional<BoardSpot> spot_on_board(const RayPath& path, double board_mm);

/// Elevation of a ray after everything it met, degrees.
double last_direction_deg(const RayPath& path);
/// Whether a ray of this fate runs on out of the lens.
constexpr bool leaves_lens(Fate fate) {
  return fate == Fate::level || fate == Fate::stray || fate == Fate::escaped;
}
/// The same of a ray: one that runs into another prism after its own is not followed further.
inline bool leaves_lens(const RayPath& path) {
  return leaves_lens(path.fate) && path.cause != LossCause::other_glass;
}

/// Height of the beam to which a ray belongs (see BeamStrip); blank when it does not leave the glass.
std::optional<double> beam_height_mm(const RayPath& path, const Section& section);
/// Where a ray's light is lost or stopped: at the reflecting face that let it out, else where the ray ends.
/// Blank for a ray that runs on with its light.
std::optional<SectionPoint> place_of_loss(const RayPath& path);

/// Rays that show what a section does with the light of its focal points.
struct RayFan {
  std::vector<RayPath> rays;      ///< rising in elevation, within each band's sweep
  std::optional<BeamStrip> beam;  ///< lowest and highest height at which level light leaves; blank: none does
};

/// About `rays` rays, evenly spread in elevation over the section, and one more through the middle of every
/// run of equal fate within a zone that these would miss, so that light lost in a narrow land is seen too.
/// Every band is swept from its own focal point. Runs are found in `steps` equal steps; narrower ones are
/// missed.
RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, int rays, int steps = 2400);

/// The same, with the runs as the section's proof has found them: none is missed, and far fewer rays are
/// traced.
RayFan fan_of_rays(const SectionTracer& tracer, const Section& section, const Proof& proof, int rays);

/// The middle of a zone's elevations, degrees, as its band's focal point sees it.
double middle_deg(const Zone& zone);
/// The same of a ring's image below the beam of its band.
double image_middle_deg(const Section& section, const Zone& zone);
/// The middle elevations of all zones, images of rings included, rising.
std::vector<double> zone_middles_deg(const Section& section);

/// Where a laser may be stepped to: the middle of a zone, sent from the focal point of its band.
struct LaserStop {
  std::string zone;
  Band band = Band::refracting;
  double elevation_deg = 0;
};
/// Stops band by band, each band's rising: lower prisms, refracting band, upper prisms.
std::vector<LaserStop> laser_stops(const Section& section);

}  // namespace prismwright
