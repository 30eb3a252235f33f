#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"

namespace prismwright {

/// What the values of a spectrum are, and so what holds beyond its first and last point.
enum class SpectrumKind {
  transmittance,  ///< shares from 0 to 1; the end values are held beyond the ends
  emission,       ///< relative power per nm, 0 or more; no light beyond the ends
};

struct SpectrumPoint {
  double nm = 0;
  double value = 0;
  bool operator==(const SpectrumPoint&) const = default;
};

/// Wavelengths between which the eye's table stands; beyond them the eye sees nothing.
inline constexpr double kEyeFrom_nm = 380;
inline constexpr double kEyeTo_nm = 780;

/// Wavelengths that a point may have.
inline constexpr double kLeastPoint_nm = 200;
inline constexpr double kGreatestPoint_nm = 2500;

/// A value by wavelength, straight between its points. Wavelengths rise strictly.
class Spectrum {
 public:
  /// Refuses: no point at all (one point is a flat transmittance; an emission needs two), wavelengths outside
  /// 200 to 2500 nm or out of order, values outside those of the kind, an emission without light between 380
  /// and 780 nm. `where`: the key or name that the refusal points at.
  static Outcome<Spectrum> from_points(std::vector<SpectrumPoint> points, SpectrumKind kind,
                                       const std::string& where);
  /// Reads "400:0.10, 500:0.8"; commas, semicolons or line ends stand between points. Refuses what is no such
  /// list, and whatever from_points refuses.
  static Outcome<Spectrum> from_text(std::string_view text, SpectrumKind kind, const std::string& where);
  /// The same transmittance, 0 to 1, at every wavelength.
  static Spectrum flat(double transmittance);

  /// Points as text with the fewest digits that read back to exactly these numbers.
  [[nodiscard]] std::string text() const;
  [[nodiscard]] double at(double nm) const;
  [[nodiscard]] const std::vector<SpectrumPoint>& points() const { return points_; }
  [[nodiscard]] SpectrumKind kind() const { return kind_; }

 private:
  Spectrum(std::vector<SpectrumPoint> points, SpectrumKind kind) : points_(std::move(points)), kind_(kind) {}

  std::vector<SpectrumPoint> points_;
  SpectrumKind kind_ = SpectrumKind::transmittance;
};

}  // namespace prismwright
