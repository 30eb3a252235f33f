#include "core/light/setting_draws.h"

#include <cmath>
#include <cstdint>

#include "core/base/angle.h"

namespace prismwright {

namespace {

/// The mixing step of a common 64-bit hash (from memory).
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9E3779B97F4A7C15ULL;
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9ULL;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBULL;
  return x ^ (x >> 31);
}

/// Above 0, at most 1.
double share_of(std::uint64_t x) { return static_cast<double>((x >> 11) + 1) * 0x1p-53; }

/// Box and Muller's normal number from two even ones.
double normal(std::uint64_t seed, std::uint64_t place) {
  const std::uint64_t one = mixed(mixed(seed) ^ (2 * place));
  const std::uint64_t other = mixed(mixed(seed) ^ (2 * place + 1));
  return std::sqrt(-2 * std::log(share_of(one))) * std::cos(2 * kPi * share_of(other));
}

}  // namespace

SettingDraws::SettingDraws(int trials, std::size_t prisms, int seed) : trials_(trials), prisms_(prisms) {
  const std::size_t count = static_cast<std::size_t>(trials) * (prisms + 1) * kSettingMoves;
  numbers_.reserve(count);
  for (std::size_t i = 0; i < count; ++i) numbers_.push_back(normal(static_cast<std::uint64_t>(seed), i));
}

BeamTurn SettingDraws::turn(int trial, const BeamPiece& piece, const KindSizes& deviations) const {
  BeamTurn sum;
  for (std::size_t m = 0; m < kSettingMoves; ++m) {
    const auto move = static_cast<SettingMove>(m);
    const double deviation = deviations[static_cast<std::size_t>(kind_of(move))];
    if (deviation == 0) continue;
    const double size = deviation * at(trial, piece.prism, move);
    sum.level_deg += size * piece.turns[m].level_deg;
    sum.upright_deg += size * piece.turns[m].upright_deg;
  }
  return sum;
}

}  // namespace prismwright
