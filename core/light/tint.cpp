#include "core/light/tint.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr double kAsGoodAsDark = 1e-12;
constexpr double kMillimetresPerMetre = 1000;

}  // namespace

Outcome<Tint> Tint::of(Spectrum inside, double thickness_mm) {
  if (!(thickness_mm > 0) || std::isinf(thickness_mm))
    return request_problem(
        "tint.thickness", "material.tint_mm",
        fmt::format("The tint's points are given for a thickness of {} mm, which is not over "
                    "0; give the thickness that was measured.",
                    thickness_mm));
  Tint tint;
  tint.inside_ = std::move(inside);
  tint.thickness_mm_ = thickness_mm;
  return tint;
}

Tint Tint::with_loss(double absorption_per_m) const {
  Tint tint = *this;
  tint.more_per_mm_ += absorption_per_m / kMillimetresPerMetre;
  return tint;
}

double Tint::at(double nm, double path_mm) const {
  return std::pow(inside_.at(nm), path_mm / thickness_mm_) * std::exp(-more_per_mm_ * path_mm);
}

double Tint::absorption_per_mm(double nm) const {
  return -std::log(std::max(inside_.at(nm), kAsGoodAsDark)) / thickness_mm_ + more_per_mm_;
}

Outcome<Tint> tint_of(const Material& material) {
  if (material.tint.empty()) return Tint().with_loss(material.absorption_per_m);
  const auto inside = Spectrum::from_text(material.tint, SpectrumKind::transmittance, "material.tint");
  if (!inside) return inside.problem();
  const auto tint = Tint::of(*inside, material.tint_mm);
  if (!tint) return tint.problem();
  return tint->with_loss(material.absorption_per_m);
}

}  // namespace prismwright
