#include "core/works/load_bounds.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kSlack = 1e-9;

int by_room(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  const double s = works.load_spacing_mm;
  // A box widened by half the spacing on all sides stays in the circle widened by that half's diagonal, and
  // boxes so widened share no ground.
  const double radius = works.vessel_diameter_mm / 2 - s + s / std::sqrt(2.0);
  const double room = kPi * radius * radius * (works.vessel_height_mm + s);
  double sum = 0;
  for (const LoadPiece& piece : pieces)
    sum += piece.count * (piece.mould.length_mm + s) * (piece.mould.depth_mm + s) * (piece.mould.height_mm + s);
  return static_cast<int>(std::ceil(sum / room * (1 - kSlack)));
}

/// The greatest sum of fillings over kinds of which no two can share a load, thickest first: each kind adds to
/// the best among those that are too thick for it.
int by_thickness(std::vector<LoadPiece> pieces, const WorksSettings& works) {
  std::ranges::sort(pieces, std::greater<>(), &LoadPiece::thickest_mm);
  std::vector<int> best(pieces.size());
  int most = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (pieces[k].thickest_mm > pieces[i].thickest_mm * works.thickness_ratio * (1 + kSlack))
        best[i] = std::max(best[i], best[k]);
    }
    best[i] += rounds_of(pieces[i]);
    most = std::max(most, best[i]);
  }
  return most;
}

}  // namespace

int rounds_of(const LoadPiece& piece) {
  return piece.moulds > 0 ? (piece.count + piece.moulds - 1) / piece.moulds : 0;
}

int least_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  return std::max(by_room(pieces, works), by_thickness(pieces, works));
}

}  // namespace prismwright
