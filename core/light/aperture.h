#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/light/lamp_body.h"
#include "core/light/light_lens.h"

namespace prismwright {

/// One exit face of a prism: a part of the aperture through which a panel's light leaves.
struct ApertureFace {
  const LightBody* body = nullptr;
  const TurnedFace* face = nullptr;
  LightBody::Angles angles;  ///< about the turning axis, that hold everything kept
  double area_mm2 = 0;       ///< within those angles, roughly
  bool alike = false;        ///< a spot of it may stand at any of the angles (alike_azimuths)
};

/// The outer and exit faces of a panel's prisms; of prisms turned about the lens axis the parts between two
/// azimuths from the panel's axis alone.
std::vector<ApertureFace> aperture_of(const PanelInLight& panel, const LightBody::Angles& azimuths);

/// A small part of the aperture, in the panel's frame.
struct ApertureSpot {
  const LightBody* body = nullptr;
  FaceRole role = FaceRole::outer;
  SpacePoint at;
  SpaceVector outward;  ///< unit
  double area_mm2 = 0;  ///< that it stands for
  double angle = 0;     ///< about the body's turning axis
  /// Angles at any of which it may stand as well, its light turned with it; blank: only where it is.
  std::optional<LightBody::Angles> alike = std::nullopt;
};

/// Spots spread evenly over the aperture by a sequence that fills gaps, begun at a place that `shift` decides;
/// each face has spots by its share of the area, the ends of belt prisms more, their middles fewer. Spots that
/// fall on glass that was cut away are left out.
class ApertureSpots {
 public:
  ApertureSpots() = default;
  ApertureSpots(const PanelInLight& panel, const LightBody::Angles& azimuths, const LampBody& lamp);

  /// Appends round `round` (0, 1, ...) of about `spots` spots over the whole aperture. The spots of one round
  /// stand for all of it; those of several rounds together are one even spread, each then standing for its area
  /// over the number of rounds.
  void append(int round, int spots, std::uint64_t shift, std::vector<ApertureSpot>& to) const;
  [[nodiscard]] bool empty() const { return faces_.empty(); }

 private:
  void add(const ApertureFace& face, double weight);
  [[nodiscard]] int count_of(std::size_t face, int spots) const;

  std::vector<ApertureFace> faces_;
  std::vector<double> weights_;  ///< by which the faces share the spots
  double weight_ = 0;            ///< of all
};

}  // namespace prismwright
