#pragma once

#include <functional>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/brief.h"
#include "core/lens/spectrum.h"
#include "core/light/eye.h"

namespace prismwright {

/// A narrow slice of a light: its power counted in lumens that a watt at 555 nm would give, so that power times
/// eye_at(nm).y is luminous flux.
struct SpectralSlice {
  double nm = 0;
  double power = 0;
};

/// Temperatures that a black body may have.
inline constexpr double kLeastBlackBody_k = 800;
inline constexpr double kGreatestBlackBody_k = 25000;

/// Light by wavelength, in slices of 1 nm at most (one slice for a single line). A lamp's light has a luminous
/// flux of 1; behind tints and screens it is the share that is left.
class LampSpectrum {
 public:
  /// Planck's law with c2 = 0.01438776877 m K (SI 2019). Refuses temperatures outside 800 to 25000 K.
  static Outcome<LampSpectrum> black_body(double temperature_k);
  /// CIE illuminant A by its published formula (CIE 15; CIE S 014-2).
  static LampSpectrum illuminant_a();
  /// A generic white LED: a blue die under a yellow phosphor, about 3900 K. Points of our own, made up after
  /// typical curves from memory.
  static LampSpectrum white_led();
  /// A single line. Refuses wavelengths outside 380 to 780 nm.
  static Outcome<LampSpectrum> line(double nm);
  /// Given points; `emission` is a spectrum of that kind.
  static LampSpectrum points(const Spectrum& emission);
  /// Given slices of any relative power, not all dark to the eye.
  static LampSpectrum slices(std::vector<SpectralSlice> relative);

  [[nodiscard]] const std::vector<SpectralSlice>& slices() const { return slices_; }
  [[nodiscard]] double flux() const { return xyz().y; }
  [[nodiscard]] Xyz xyz() const;
  /// Luminous flux between two wavelengths, a slice counted where its middle stands: from_nm <= nm < to_nm.
  [[nodiscard]] double flux_between(double from_nm, double to_nm) const;
  /// What is left behind something that lets a share through at each wavelength.
  [[nodiscard]] LampSpectrum through(const std::function<double(double nm)>& share) const;

 private:
  std::vector<SpectralSlice> slices_;
};

/// The points of the generic white LED, as an emission.
const Spectrum& white_led_points();

/// The light that the lamp's own values speak of. Refuses as black_body, line and Spectrum::from_text do; the
/// problem names the lamp's key.
Outcome<LampSpectrum> spectrum_of(const Lamp& lamp);

}  // namespace prismwright
