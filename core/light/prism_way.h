#pragma once

#include <array>
#include <optional>

#include "core/light/aperture.h"
#include "core/light/beam_patch.h"

namespace prismwright {

/// A prism that stands or is made a little wrong.
struct WrongPrism {
  RigidMove body;                ///< in the panel's frame
  std::optional<FaceRole> face;  ///< ground wrongly ...
  RigidMove ground;              ///< ... by this, before the body's move
  double index = 1.4925;
};

/// The way of light through one prism as it was made for, back from a spot of its exit face towards the lamp:
/// face after face, without regard to side planes, other prisms and losses. So it is smooth in every error.
class PrismWay {
 public:
  /// The body is the one of the spot. All in the frame of the body's panel.
  explicit PrismWay(const ApertureSpot& spot) : spot_(spot) {}

  /// The ray that leaves the prism inward, for light that is to leave towards a direction far off. Blank where
  /// it misses a face or cannot leave.
  [[nodiscard]] std::optional<SpaceRay> back(FarDirection to, const WrongPrism& wrong) const;
  /// Places at which that ray meets the faces of the prism as planned, in the order of the light: inner or
  /// entry, reflecting (refracting prisms: none), outer or exit.
  struct Met {
    std::array<SpacePoint, 3> at;
    std::array<FaceRole, 3> role;
    int count = 0;
  };
  [[nodiscard]] std::optional<Met> met(FarDirection to, double index) const;

 private:
  std::optional<SpaceRay> walk(FarDirection to, const WrongPrism& wrong, Met* met) const;

  ApertureSpot spot_;
};

}  // namespace prismwright
