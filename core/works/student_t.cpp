#include "core/works/student_t.h"

#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

/// The continued fraction of the incomplete beta function, by Lentz's method.
double beta_fraction(double a, double b, double x) {
  constexpr double kTiny = 1e-300;
  constexpr int kMost = 500;
  const auto kept = [](double v) { return std::abs(v) < kTiny ? kTiny : v; };
  double c = 1;
  double d = 1 / kept(1 - (a + b) * x / (a + 1));
  double value = d;
  for (int m = 1; m <= kMost; ++m) {
    const double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / kept(1 + even * d);
    c = kept(1 + even / c);
    value *= d * c;
    const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / kept(1 + odd * d);
    c = kept(1 + odd / c);
    value *= d * c;
    if (std::abs(d * c - 1) < 1e-15) break;
  }
  return value;
}

double incomplete_beta(double a, double b, double x) {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const double front =
      std::exp(std::lgamma(a + b) - std::lgamma(a) - std::lgamma(b) + a * std::log(x) + b * std::log1p(-x));
  if (x < (a + 1) / (a + b + 2)) return front * beta_fraction(a, b, x) / a;
  return 1 - front * beta_fraction(b, a, 1 - x) / b;
}

}  // namespace

double student_t_below(double t, double degrees) {
  const double tails = incomplete_beta(degrees / 2, 0.5, degrees / (degrees + t * t));
  return t > 0 ? 1 - tails / 2 : tails / 2;
}

double student_t_at(double chance, double degrees) {
  const double upper = std::max(chance, 1 - chance);
  double low = 0;
  double high = 1;
  while (student_t_below(high, degrees) < upper && high < 1e12) high *= 2;
  for (int i = 0; i < 200 && high - low > 1e-13 * high; ++i) {
    const double middle = (low + high) / 2;
    (student_t_below(middle, degrees) < upper ? low : high) = middle;
  }
  const double t = (low + high) / 2;
  return chance < 0.5 ? -t : t;
}

}  // namespace prismwright
