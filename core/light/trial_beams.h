#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "core/light/setting_draws.h"

namespace prismwright {

/// Where a panel's beam has its peak.
struct BeamPeak {
  double cd = 0;
  double elevation_deg = 0;  ///< of a parabola through the greatest direction and its neighbours
  double height_deg = 0;     ///< between its half peaks upright; at most the height of the map
  int column = 0;            ///< of the map
  int row = 0;
};

/// A panel's beam with the errors of one trial after the other.
class TrialBeams {
 public:
  /// All three must outlive it.
  TrialBeams(const BeamPieces& beam, const SettingDraws& draws) : beam_(&beam), draws_(&draws) {}

  /// Without errors.
  [[nodiscard]] BeamPeak planned() const;
  [[nodiscard]] BeamPeak peak(int trial, const KindSizes& deviations) const {
    return peak_of(map(trial, deviations));
  }
  /// The whole map of BeamPieces::grid(), cd.
  [[nodiscard]] std::vector<double> map(int trial, const KindSizes& deviations) const;
  /// Peaks of all trials, in their order.
  [[nodiscard]] std::vector<BeamPeak> peaks(const KindSizes& deviations) const;
  [[nodiscard]] double mean_peak_cd(const KindSizes& deviations) const;
  /// What some prisms (by PanelSpots' numbers) add at a direction of the map, the mean over all trials, cd.
  [[nodiscard]] double mean_part_cd(const std::vector<int>& prisms, const BeamPeak& at,
                                    const KindSizes& deviations) const;

 private:
  [[nodiscard]] BeamPeak peak_of(const std::vector<double>& map) const;
  [[nodiscard]] double height_of(const std::vector<double>& map, const BeamPeak& peak) const;

  const BeamPieces* beam_;
  const SettingDraws* draws_;
};

/// Standard deviation of one kind of error, alone, at which `share_left` (of the standard deviation; 1 without
/// errors) falls to 0.9; blank where it is above that up to the kind's bound.
template <class Share>
std::optional<double> tolerance(ErrorKind kind, const Share& share_left);

constexpr double kToleratedShare = 0.9;

template <class Share>
std::optional<double> tolerance(ErrorKind kind, const Share& share_left) {
  constexpr int kHalvings = 7;
  const double bound = bound_of(kind);
  double low = 0;
  double over = 1 - kToleratedShare;
  for (double high = bound / (1 << kHalvings); high <= bound; high *= 2) {
    double under = share_left(high) - kToleratedShare;
    if (under > 0) {
      low = high;
      over = under;
      continue;
    }
    // The false position, with the end that stays put given less weight each time (Illinois).
    for (int turn = 0; turn < 40; ++turn) {
      const double guess = high - under * (high - low) / (under - over);
      const double value = share_left(guess) - kToleratedShare;
      if (std::abs(value) < 5e-5 || std::abs(high - low) < 1e-9 * bound) return guess;
      if ((value > 0) != (under > 0)) {
        low = high;
        over = under;
      } else {
        over /= 2;
      }
      high = guess;
      under = value;
    }
    return high;
  }
  return std::nullopt;
}

}  // namespace prismwright
