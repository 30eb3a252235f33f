#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/optics/section.h"

namespace prismwright {

/// What becomes of a ray from the focus.
enum class Fate {
  level,            ///< leaves within the level tolerance
  stray,            ///< leaves the glass in another direction
  escaped,          ///< passes between the prisms without meeting glass
  stopped,          ///< ends in metal or in the filled setting gap between refracting rings
  lost_reflecting,  ///< goes out through a reflecting face that did not reflect totally
  lost_land,        ///< ends in a land or in a level joint
};
inline constexpr int kFates = 6;
std::string_view name_of(Fate fate);  ///< "level", "stray", "escaped between prisms", ...

/// One meeting of a ray with a face.
struct RayMeeting {
  std::string zone;
  FaceRole face = FaceRole::land;
  SectionPoint place;
  double incidence_deg = 0;
  std::optional<double> refraction_deg;  ///< blank where the ray was reflected
  double loss = 0;                       ///< share of the power lost here by reflection (Fresnel, unpolarised)
  double direction_deg = 0;              ///< elevation of the ray after the face
};

/// A ray from the focus, followed to its end.
struct RayPath {
  double elevation_deg = 0;
  Fate fate = Fate::escaped;
  std::string zone;  ///< zone that took the ray; empty when it met none
  std::vector<RayMeeting> meetings;
  std::vector<SectionPoint> points;  ///< focus first; the last point is where the ray leaves or ends
  double departure_deg = 0;          ///< from level, seaward up; meaningful when the ray leaves the glass
  double least_margin_deg = 0;    ///< incidence less critical angle at the reflecting face (reflecting zones)
  double through = 1;             ///< share of the power that comes through the faces (Fresnel)
  double lost_at_reflection = 0;  ///< share of the power that went out through a reflecting face
  bool regular = false;           ///< took the zone's own way: inner-outer, or entry-reflecting-exit
};

struct ZoneProof {
  std::string mark;
  ZoneKind kind = ZoneKind::centre;
  double from_deg = 0;
  double to_deg = 0;
  double worst_departure_deg = 0;          ///< over regular rays
  std::optional<double> least_margin_deg;  ///< reflecting zones
  double share = 0;                        ///< of the flux between the section's limits
  double share_level = 0;
  double through = 0;  ///< mean share that comes through the faces
};

/// A strip of the level beam, by height z in mm.
struct BeamStrip {
  double from_mm = 0;
  double to_mm = 0;
};

/// The point-source check of a section. Shares are of the flux that a uniform point source in the focus
/// sends between the section's lowest and highest elevation (cos t dt); they add to 1.
struct Proof {
  int elevations = 0;
  double lowest_deg = 0;
  double highest_deg = 0;
  double share[kFates] = {};
  double share_of_source = 0;  ///< what the section takes of all the light of the source, above and below
  double through = 0;          ///< mean share of the level light that comes through the faces
  double worst_departure_deg = 0;
  std::string worst_zone;
  std::optional<double> least_margin_deg;
  std::vector<ZoneProof> zones;
  std::vector<BeamStrip>
      dark_strips;  ///< between the lit strips of the level beam, narrower than 0.001 mm left out

  [[nodiscard]] double of(Fate fate) const { return share[static_cast<int>(fate)]; }
  [[nodiscard]] double lost() const { return of(Fate::lost_land) + of(Fate::lost_reflecting); }
};

/// A section made ready for tracing rays; holds its own copy of what it needs.
class SectionTracer {
 public:
  explicit SectionTracer(const Section& section);
  ~SectionTracer();
  SectionTracer(SectionTracer&&) noexcept;
  SectionTracer& operator=(SectionTracer&&) noexcept;

  /// Follows the ray that leaves the focus at `elevation_deg` (-90 to 90).
  [[nodiscard]] RayPath trace(double elevation_deg) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// Traces at least `elevations` rays, evenly spread between the elevations at which corners of the glass are
/// seen, and finds where the fate changes between two rays to a 16 000th of their spacing.
Proof prove(const Section& section, int elevations = 1000);

}  // namespace prismwright
