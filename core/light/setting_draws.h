#pragma once

#include <vector>

#include "core/light/beam_pieces.h"

namespace prismwright {

/// A size (a standard deviation) for each ErrorKind, in its unit.
using KindSizes = std::array<double, kErrorKinds.size()>;

/// Normal numbers for every trial, prism and move, the lamp's common to all prisms. Each is worked out from its
/// place and the seed alone: the same seed gives the same numbers on every number of threads.
class SettingDraws {
 public:
  SettingDraws(int trials, std::size_t prisms, int seed);

  [[nodiscard]] int trials() const { return trials_; }
  /// Of mean 0 and standard deviation 1.
  [[nodiscard]] double at(int trial, int prism, SettingMove move) const {
    const auto row = kind_of(move) == ErrorKind::lamp ? 0 : static_cast<std::size_t>(prism) + 1;
    return numbers_[(static_cast<std::size_t>(trial) * (prisms_ + 1) + row) * kSettingMoves + at_of(move)];
  }
  /// What a piece's beam turns by in a trial, degrees, with errors of these standard deviations.
  [[nodiscard]] BeamTurn turn(int trial, const BeamPiece& piece, const KindSizes& deviations) const;

 private:
  int trials_;
  std::size_t prisms_;
  std::vector<double> numbers_;
};

}  // namespace prismwright
