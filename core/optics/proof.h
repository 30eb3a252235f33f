#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/optics/fate.h"
#include "core/optics/light_strips.h"
#include "core/optics/section.h"

namespace prismwright {

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

/// A ray from its band's focal point, followed to its end.
struct RayPath {
  double elevation_deg = 0;
  Fate fate = Fate::escaped;
  LossCause cause = LossCause::between_prisms;
  std::string zone;    ///< zone that took the ray; empty when it met none
  std::string rib;     ///< rib that stopped it
  double aim_deg = 0;  ///< depression of the beam of the band it belongs to
  std::vector<RayMeeting> meetings;
  std::vector<SectionPoint> points;  ///< source first; the last point is where the ray leaves or ends
  double departure_deg =
      0;  ///< from the aim of its band, up positive; meaningful when the ray leaves the glass
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

/// Light that does not leave within the level tolerance, by cause and place.
struct LossByCause {
  LossCause cause = LossCause::none;
  std::string zone;  ///< zone or rib concerned; of a filled gap, the zone nearer to the axis; may be empty
  double share = 0;  ///< of the same flux as the proof's shares
};

/// The point-source check of a section. Shares are of the flux that a uniform point source in the focus
/// sends between the section's lowest and highest elevation (cos t dt); they add to 1. Where bands have focal
/// points of their own, each is swept from there over the elevations that it serves: the refracting band up to
/// its outermost inner edges, a stack from the elevation at which its focal point sees that edge.
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
      dark_strips;               ///< between the lit strips of the level beam, narrower than 0.001 mm left out
  std::vector<LightStrip> beam;  ///< the level beam by height, rising, lit and dark
  std::vector<LampStrip> lamp;   ///< the lamp's light by elevation, rising within each band's sweep
  std::vector<LossByCause> losses;  ///< greatest first; their shares and the level share add to 1

  [[nodiscard]] double of(Fate fate) const { return share[static_cast<int>(fate)]; }
  [[nodiscard]] double lost() const { return of(Fate::lost_land) + of(Fate::lost_reflecting); }
};

/// Elevations that are swept from one focal point: that of `band`.
struct SweepRange {
  Band band = Band::refracting;
  double from_deg = 0;
  double to_deg = 0;
};

/// A section made ready for tracing rays; holds its own copy of what it needs.
class SectionTracer {
 public:
  explicit SectionTracer(const Section& section);
  ~SectionTracer();
  SectionTracer(SectionTracer&&) noexcept;
  SectionTracer& operator=(SectionTracer&&) noexcept;

  /// Follows the ray at `elevation_deg` (-90 to 90) from the focal point of the band it belongs to: the
  /// refracting band between its outermost inner edges, the stacks beyond.
  [[nodiscard]] RayPath trace(double elevation_deg) const;
  /// Follows the ray from the focal point of a given band.
  [[nodiscard]] RayPath trace(double elevation_deg, Band band) const;
  /// The sweeps of which a proof is made, rising. One, unless bands have focal points of their own.
  [[nodiscard]] std::vector<SweepRange> sweeps() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// Traces at least `elevations` rays, evenly spread between the elevations at which corners of glass and metal
/// are seen, and finds where the fate changes between two rays to a 16 000th of their spacing.
Proof prove(const Section& section, int elevations = 1000);

}  // namespace prismwright
