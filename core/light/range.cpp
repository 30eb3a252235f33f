#include "core/light/range.h"

#include <cmath>

#include "core/base/root.h"

namespace prismwright {

namespace {

constexpr double kFeetPerMetre = 1 / 0.3048;

}  // namespace

double intensity_for_range_cd(double distance_nmi, double visibility_nmi, double threshold_lux) {
  const double metres = distance_nmi * kMetresPerNauticalMile;
  return metres * metres * threshold_lux * std::pow(0.05, -distance_nmi / visibility_nmi);
}

double luminous_range_nmi(double intensity_cd, double visibility_nmi, double threshold_lux) {
  if (!(intensity_cd > 0)) return 0;
  // In logarithms the law is 2 ln d + d ln 20 / V = ln(I / (E 1852^2)): rising, and without great numbers.
  const double wanted =
      std::log(intensity_cd / (threshold_lux * kMetresPerNauticalMile * kMetresPerNauticalMile));
  const auto rest = [&](double log_d) {
    return 2 * log_d + std::exp(log_d) * std::log(20.0) / visibility_nmi - wanted;
  };
  const double high = 0.5 * wanted;
  double low = high - 1;
  while (rest(low) > 0) low -= 2;
  return std::exp(find_root(rest, {low, rest(low), high, rest(high)}, high, 1e-13));
}

double geographic_range_nmi(double light_height_m, double eye_height_m) {
  return 1.147 * (std::sqrt(light_height_m * kFeetPerMetre) + std::sqrt(eye_height_m * kFeetPerMetre));
}

std::vector<RangeRow> range_table(double intensity_cd, const ScreenFactors& factors, double threshold_lux) {
  std::vector<RangeRow> rows;
  for (const double visibility : {0.5, 1.0, 2.0, 5.0, 10.0, 15.0, 20.0, 30.0}) {
    const auto range = [&](double factor) {
      return luminous_range_nmi(intensity_cd * factor, visibility, threshold_lux);
    };
    rows.push_back({visibility, range(1), range(factors.red), range(factors.green), range(factors.yellow)});
  }
  return rows;
}

double historic_intensity_cd(double lamp_cd, double constant, double taken_up_deg, double taken_round_deg,
                             double beam_up_deg, double beam_round_deg) {
  return lamp_cd * constant * taken_up_deg * taken_round_deg / (beam_up_deg * beam_round_deg);
}

}  // namespace prismwright
