#pragma once

#include <array>
#include <cmath>
#include <cstdint>

namespace prismwright {

/// Points that fill the unit cube of `kWays` dimensions evenly: steps by the powers of the root of x^(k+1) = x
/// + 1, begun at a place that `set` decides, so that several sets are independent of each other (own choice of
/// a known additive sequence; from memory).
template <int kWays>
class EvenNumbers {
 public:
  explicit EvenNumbers(std::uint64_t set) {
    double root = 1.5;
    for (int i = 0; i < 60; ++i) root = std::pow(1 + root, 1.0 / (kWays + 1));
    double step = 1;
    for (int k = 0; k < kWays; ++k) {
      step /= root;
      steps_[k] = step;
      starts_[k] = scattered(set, static_cast<std::uint64_t>(k));
    }
  }
  [[nodiscard]] std::array<double, kWays> at(long i) const {
    std::array<double, kWays> numbers;
    for (int k = 0; k < kWays; ++k) {
      const double x = starts_[k] + steps_[k] * static_cast<double>(i);
      numbers[k] = x - std::floor(x);
    }
    return numbers;
  }

 private:
  /// A number between 0 and 1 from two whole ones (the mixing step of a common 64-bit hash).
  static double scattered(std::uint64_t a, std::uint64_t b) {
    std::uint64_t x = a * 0x9E3779B97F4A7C15ULL + b * 0xD1B54A32D192ED03ULL + 0x2545F4914F6CDD1DULL;
    x ^= x >> 30;
    x *= 0xBF58476D1CE4E5B9ULL;
    x ^= x >> 27;
    x *= 0x94D049BB133111EBULL;
    x ^= x >> 31;
    return static_cast<double>(x >> 11) * 0x1p-53;
  }
  std::array<double, kWays> steps_;
  std::array<double, kWays> starts_;
};

}  // namespace prismwright
