#include "core/works/casting_need.h"

#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

double lost_share(double scrap_percent) {
  return std::isfinite(scrap_percent) ? std::clamp(scrap_percent, 0.0, 90.0) / 100 : 0;
}

}  // namespace

double chance_of_sound(int sound, int castings, double scrap_percent) {
  if (sound <= 0) return 1;
  if (castings < sound) return 0;
  const double p = lost_share(scrap_percent);
  if (p == 0) return 1;
  // sum over the lost, up to castings - sound, of C(n, k) p^k (1 - p)^(n - k)
  const double n = castings;
  double sum = 0;
  for (int lost = 0; lost <= castings - sound; ++lost) {
    const double k = lost;
    sum += std::exp(std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1) + k * std::log(p) +
                    (n - k) * std::log1p(-p));
  }
  return std::min(1.0, sum);
}

CastingNeed castings_for(int sound, double scrap_percent) {
  CastingNeed need;
  need.sound = std::max(0, sound);
  // 9 / 0.9 is 10 and not 11, whatever the last bit says.
  constexpr double kLastBits = 1e-9;
  need.castings = static_cast<int>(std::ceil(need.sound / (1 - lost_share(scrap_percent)) - kLastBits));
  need.chance = chance_of_sound(need.sound, need.castings, scrap_percent);
  return need;
}

int castings_for_chance(int sound, double scrap_percent, double chance) {
  const double wanted = std::clamp(chance, 0.0, 0.999999);
  int low = std::max(0, sound);
  int high = low + 16;
  while (chance_of_sound(sound, high, scrap_percent) < wanted) high *= 2;
  while (low < high) {
    const int middle = low + (high - low) / 2;
    if (chance_of_sound(sound, middle, scrap_percent) >= wanted) {
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return low;
}

}  // namespace prismwright
