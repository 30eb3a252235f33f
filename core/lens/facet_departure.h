#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/lens/plan.h"

namespace prismwright {

/// What a flat inner face does to a focal ray away from the panel's middle.
///
/// The curves of a belt are designed for the middle of the panel, where the flat face touches the hollow one.
/// At the azimuth q a focal ray meets the flat face f (1 / cos q - 1) later, so higher up, and askew: it is
/// turned sideways, runs past the outer face at another height than it was shaped for and leaves a little off
/// level.
struct FacetRay {
  double azimuth_deg = 0;    ///< from the panel's axis, of the ray from the focal point
  double elevation_deg = 0;  ///< of that ray
  double departure_deg = 0;  ///< elevation of the ray out, from the aim of the band, up positive
  double sideways_deg = 0;   ///< azimuth of the ray out less that of the ray in: negative towards the axis
};

/// One refracting zone of the widest glazed panel side, rings with their image.
struct FacetDeparture {
  std::string zone;
  double side_deg = 0;    ///< azimuth from the panel's axis up to which the flat face reaches
  FacetRay worst;         ///< that departs most from the aim
  FacetRay most_turned;   ///< that is turned sideways most
  double lit_to_deg = 0;  ///< azimuth from the panel's axis up to which its focal light leaves
  double own_way = 1;     ///< share of the focal light on the zone's flat face that leaves by its outer face;
                          ///< the rest meets a joint
};

/// A zone's glass behind the flat face x = f, ready for rays in the panel's frame.
class FacetZone {
 public:
  /// `profile` is one image of a refracting zone that turns about the lens axis; `focus_z_mm` the height of the
  /// focal point, `aim_deg` the depression of the beam.
  FacetZone(const Profile& profile, double focal_mm, double index, double focus_z_mm, double aim_deg);
  ~FacetZone();
  FacetZone(FacetZone&&) noexcept;
  FacetZone& operator=(FacetZone&&) noexcept;

  /// Follows the focal ray at an azimuth that meets the flat face a share (0 at the lower joint to 1 at the
  /// upper) of its height up; blank when it does not leave by the outer face.
  [[nodiscard]] std::optional<FacetRay> trace(double azimuth_deg, double share) const;
  /// Elevation of that ray as it leaves the focal point, degrees.
  [[nodiscard]] double elevation_deg(double azimuth_deg, double share) const;
  /// Height of the flat face at an azimuth, mm.
  [[nodiscard]] double height_mm(double azimuth_deg) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// Every refracting zone's departures, looked for at every twelfth of the panel's side and fiftieth of the
/// face's height, and at the last ray of either that leaves by the outer face; empty without flat faces. A
/// wider panel holds all that a narrower one does, so the widest side of all glazed panels speaks for the lens.
std::vector<FacetDeparture> facet_departures(const LensPlan& plan);

/// Azimuth from its axis up to which any zone of a panel sends focal light, degrees: short of the panel's side
/// the horizon beyond gets none of it.
double lit_to_deg(const std::vector<FacetDeparture>& departures);

/// The zone that departs most; null when the list is empty.
const FacetDeparture* worst_of(const std::vector<FacetDeparture>& departures);

}  // namespace prismwright
