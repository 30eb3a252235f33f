#pragma once

#include <vector>

#include "core/light/beam_patch.h"

namespace prismwright {

/// Azimuths from the panel's axis between which a body turned about the lens axis sends every place's light
/// alike: far enough from the panel's sides that neither the cut ends nor the brass there take any. Blank for
/// all other bodies, for those with flat inner faces, and for a lamp that is not round about the lens axis.
std::optional<LightBody::Angles> alike_azimuths(const LightBody& body, const LampBody& lamp);

/// The light of one spot of such a body averaged over all azimuths at which it might stand as well, for one
/// elevation. The patch is worked out once and turned, which takes the noise of scattered spots out of a belt's
/// beam.
class TurnedMean {
 public:
  /// For a patch whose spot may stand at other angles. `first` (0 to 1) is the place of the first sample in its
  /// step.
  TurnedMean(const BeamPatch& patch, double elevation, double first);

  /// Azimuths from the panel's axis at which there is any light.
  [[nodiscard]] LightBody::Angles window() const { return window_; }
  /// Mean intensity, cd.
  [[nodiscard]] double cd(double azimuth) const { return mean(cd_, azimuth); }
  /// Mean area seen alight, mm2.
  [[nodiscard]] double lit_mm2(double azimuth) const { return mean(lit_mm2_, azimuth); }

 private:
  /// Integral from the window's start, at steps of the patch's own window.
  using Rising = std::vector<double>;
  [[nodiscard]] double mean(const Rising& sum, double azimuth) const;

  double start_ = 0;  ///< of the patch's window
  double step_ = 0;
  LightBody::Angles shift_;  ///< of the spot, to the ends of its range
  LightBody::Angles window_;
  Rising cd_;
  Rising lit_mm2_;
};

}  // namespace prismwright
