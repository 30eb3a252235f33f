#pragma once

#include "core/base/outcome.h"
#include "core/lens/brief.h"
#include "core/lens/spectrum.h"

namespace prismwright {

/// What a stretch of cast acrylic or glass lets through inside, without its surfaces, by wavelength: Beer and
/// Lambert's law from points that hold for one thickness.
class Tint {
 public:
  Tint() : inside_(Spectrum::flat(1)) {}  ///< clear
  /// `inside`: transmittance inside at thickness_mm. Refuses a thickness not over 0.
  static Outcome<Tint> of(Spectrum inside, double thickness_mm);

  /// The same with so much more lost, natural logarithm per metre, at every wavelength; 0 or more.
  [[nodiscard]] Tint with_loss(double absorption_per_m) const;
  /// Share left after a path, 0 to 1; 1 for no path. Where the points let nothing through, any path is dark.
  [[nodiscard]] double at(double nm, double path_mm) const;
  /// Natural logarithm lost per mm of path. Where the points let nothing through, as for a share of 1e-12.
  [[nodiscard]] double absorption_per_mm(double nm) const;

 private:
  Spectrum inside_;
  double thickness_mm_ = 10;
  double more_per_mm_ = 0;
};

/// The lens material's own tint and flat absorption together. Refuses as Spectrum::from_text and Tint::of do.
Outcome<Tint> tint_of(const Material& material);

}  // namespace prismwright
