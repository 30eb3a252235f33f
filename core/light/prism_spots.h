#pragma once

#include <string>
#include <vector>

#include "core/light/prism_turns.h"

namespace prismwright {

/// A spot of a panel's aperture that shines, with the turns of its light by every error.
struct TurningSpot {
  int prism = 0;   ///< in PanelSpots::prisms
  int sector = 0;  ///< of the prism's angles about its turning axis
  BeamPatch patch;
  double flux_lm = 0;
  BeamTurns turns;
};

/// A prism of a panel and what its errors do to its beam: means over its spots by their flux.
struct TurningPrism {
  std::string mark;
  std::string zone;
  ZoneKind kind = ZoneKind::centre;
  PrismSeat seat;
  double flux_lm = 0;      ///< that the spots stand for; 0: it sends no light the way it was made for
  BeamTurns mean;          ///< of the whole prism's beam
  MoveSizes spread_deg{};  ///< root mean square turn of its spots: of a ring that opens its beam all round the
                           ///< mean is nothing, and this is not
};

/// What is asked of a panel's spots. The lens and the lamp must outlive them.
struct SpotsRequest {
  const LightLens* lens = nullptr;
  const LampBody* lamp = nullptr;
  GlassRules glass;
  int spots = 4000;  ///< about as many over the panel's aperture
};

/// The shining spots of one panel, prism by prism and sector by sector. Of prisms turned about the lens axis
/// only azimuths that send light along the panel's axis are taken.
class PanelSpots {
 public:
  PanelSpots(const SpotsRequest& request, const PanelInLight& panel);
  PanelSpots(const PanelSpots&) = delete;  // the patches of its spots refer to it
  PanelSpots& operator=(const PanelSpots&) = delete;

  [[nodiscard]] const std::vector<TurningSpot>& spots() const { return spots_; }
  [[nodiscard]] const std::vector<TurningPrism>& prisms() const { return prisms_; }

 private:
  struct Laid {
    ApertureSpot spot;
    int prism;
    int sector;
  };
  void lay(const PanelInLight& panel, const LightBody::Angles& azimuths, int spots);
  void seat_prisms(const std::vector<const LightBody*>& bodies);
  void trace(const PanelInLight& panel, const SpotsRequest& request);
  void take_means();

  PathFinder finder_;
  std::vector<Laid> laid_;
  std::vector<TurningSpot> spots_;
  std::vector<TurningPrism> prisms_;
};

}  // namespace prismwright
