#include "core/light/effective_intensity.h"

#include <algorithm>
#include <cmath>

#include "core/base/root.h"

namespace prismwright {

namespace {

/// Greatest integral of (I - level) over any one stretch of time. The best stretch begins and ends where the
/// curve crosses the level, so the parts above and below add up in turn.
double greatest_above(const FlashCurve& curve, double level) {
  double best = 0;
  double run = 0;
  const auto add = [&](double part) {
    run = std::max(0.0, run + part);
    best = std::max(best, run);
  };
  for (std::size_t i = 0; i + 1 < curve.s.size(); ++i) {
    const double time = curve.s[i + 1] - curve.s[i];
    const double a = curve.cd[i] - level;
    const double b = curve.cd[i + 1] - level;
    if (a * b >= 0) {
      add(0.5 * (a + b) * time);
      continue;
    }
    const double crossing = time * a / (a - b);
    add(0.5 * a * crossing);
    add(0.5 * b * (time - crossing));
  }
  return best;
}

double blondel_rey(const FlashCurve& curve, double peak, double a) {
  const auto rest = [&](double level) { return a * level - greatest_above(curve, level); };
  return find_root(rest, {0, rest(0), peak, a * peak}, 0.5 * peak, 1e-12 * a * peak);
}

double allard(const FlashCurve& curve, double a) {
  double seen = 0;
  double best = 0;
  for (std::size_t i = 0; i + 1 < curve.s.size(); ++i) {
    const double time = curve.s[i + 1] - curve.s[i];
    const double slope = (curve.cd[i + 1] - curve.cd[i]) / time;
    // On a straight piece the equation has the closed answer I(t) - slope a + c exp(-t / a).
    const double c = seen - curve.cd[i] + slope * a;
    const auto at = [&](double t) { return curve.cd[i] + slope * (t - a) + c * std::exp(-t / a); };
    if (slope != 0 && c / (slope * a) > 0) {
      const double turn = a * std::log(c / (slope * a));
      if (turn > 0 && turn < time) best = std::max(best, at(turn));
    }
    seen = at(time);
    best = std::max(best, seen);
  }
  return best;
}

/// The convolution at a time.
double modified_at(const FlashCurve& curve, double t, double a) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < curve.s.size() && curve.s[i] < t; ++i) {
    const double slope = (curve.cd[i + 1] - curve.cd[i]) / (curve.s[i + 1] - curve.s[i]);
    const double end = std::min(curve.s[i + 1], t);
    // With u = a + age, I = p + q u and the kernel a / u^2: the integral is a (q ln u - p / u).
    const double q = -slope;
    const double p = curve.cd[i] + slope * (t - curve.s[i] + a);
    const double oldest = a + t - curve.s[i];
    const double youngest = a + t - end;
    sum += a * (q * std::log(oldest / youngest) - p * (1 / oldest - 1 / youngest));
  }
  return sum;
}

double modified_allard(const FlashCurve& curve, double a) {
  std::size_t best = 0;
  double most = 0;
  for (std::size_t i = 0; i < curve.s.size(); ++i) {
    const double here = modified_at(curve, curve.s[i], a);
    if (here <= most) continue;
    most = here;
    best = i;
  }
  double low = curve.s[best > 0 ? best - 1 : 0];
  double high = curve.s[std::min(best + 1, curve.s.size() - 1)];
  constexpr double kGolden = 0.6180339887498949;
  for (int i = 0; i < 60; ++i) {
    const double one = high - kGolden * (high - low);
    const double other = low + kGolden * (high - low);
    (modified_at(curve, one, a) < modified_at(curve, other, a) ? low : high) =
        modified_at(curve, one, a) < modified_at(curve, other, a) ? one : other;
  }
  return std::max(most, modified_at(curve, 0.5 * (low + high), a));
}

}  // namespace

EffectiveIntensities effective_intensities(const FlashCurve& curve, double a_s) {
  EffectiveIntensities result;
  if (curve.s.size() < 2) return result;
  result.peak_cd = *std::max_element(curve.cd.begin(), curve.cd.end());
  if (!(result.peak_cd > 0)) return result;
  for (std::size_t i = 0; i + 1 < curve.s.size(); ++i)
    result.integral_cd_s += 0.5 * (curve.cd[i] + curve.cd[i + 1]) * (curve.s[i + 1] - curve.s[i]);
  result.blondel_rey_cd = blondel_rey(curve, result.peak_cd, a_s);
  result.form_factor_cd = result.integral_cd_s / (a_s + result.integral_cd_s / result.peak_cd);
  result.allard_cd = allard(curve, a_s);
  result.modified_allard_cd = modified_allard(curve, a_s);
  return result;
}

}  // namespace prismwright
