#pragma once

#include <array>
#include <optional>

#include "core/light/aperture.h"
#include "core/light/lamp_body.h"
#include "core/light/light_path.h"

namespace prismwright {

/// A direction far from the lens, radians: azimuth anticlockwise from the panel's axis, elevation up.
struct FarDirection {
  double azimuth = 0;
  double elevation = 0;
};

/// A part of the aperture as it is seen from far: what comes to it from the lamp, for every direction in which
/// it shines.
///
/// A ray sent back from the far field through the spot leaves the prism towards the lamp along a line that
/// depends smoothly on the direction. The patch holds that line, and the share of light that comes through, as
/// polynomials of third degree in azimuth and elevation, through 16 exact rays; whether the line ends on the
/// lamp is then asked of the lamp itself. Where not all of these rays take the prism's own way freely, every
/// direction is traced exactly.
class BeamPatch {
 public:
  /// Blank where no light of the lamp leaves by the spot.
  static std::optional<BeamPatch> make(const PathFinder& finder, const PanelInLight& panel,
                                       const ApertureSpot& spot, const LampBody& lamp);

  /// Intensity that the patch adds in that direction, cd; 0 outside of its window.
  [[nodiscard]] double intensity_cd(FarDirection to) const;
  /// Cosine between that direction and the spot's normal, 0 or more.
  [[nodiscard]] double facing(FarDirection to) const;
  /// The window that holds every direction in which it shines.
  [[nodiscard]] FarDirection middle() const { return middle_; }
  [[nodiscard]] FarDirection half_width() const { return half_; }
  [[nodiscard]] bool smooth() const { return smooth_; }
  [[nodiscard]] const ApertureSpot& spot() const { return spot_; }
  /// Path inside the glass at the middle of the window, mm.
  [[nodiscard]] double glass_mm() const { return glass_mm_; }
  /// Flux that leaves by it, lm: its intensity summed over the window by `steps` x `steps` directions,
  /// of which the first stands at the given shares of a step: a lamp's upright edges lie along the rows, so
  /// shares must differ from spot to spot.
  [[nodiscard]] double flux_lm(int steps, double first_azimuth, double first_elevation) const;

 private:
  /// A ray sent back, where it crosses the lamp's plane (mm from the lamp's middle, slopes) and what comes
  /// through.
  struct Back {
    double x, y, slope_x, slope_y, through, glass_mm;
    SpaceRay last;    ///< from the glass towards the lamp
    double clear_mm;  ///< that must be free along it
  };
  BeamPatch(const PathFinder& finder, const PanelInLight& panel, const ApertureSpot& spot,
            const LampBody& lamp);
  [[nodiscard]] std::optional<Back> back(FarDirection to) const;
  [[nodiscard]] bool is_free(const Back& ray, FarDirection to) const;
  bool find_window();
  bool fit();
  [[nodiscard]] double seen(const Back& ray, SpaceVector to) const;

  const PathFinder* finder_;
  const PanelInLight* panel_;
  const LampBody* lamp_;
  ApertureSpot spot_;
  SpaceFrame to_lens_;
  SpaceFrame plane_;  ///< at the lamp's middle, third axis along the middle ray; in the lens frame
  SpacePoint at_;     ///< of the spot, in the lens frame
  SpaceVector outward_;
  FarDirection middle_;
  FarDirection half_;
  bool smooth_ = false;
  double glass_mm_ = 0;
  std::array<std::array<double, 5>, 16> terms_;
};

}  // namespace prismwright
