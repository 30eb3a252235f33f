#include "core/works/load_bounds.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kSlack = 1e-9;

/// Room of the vessel and of a mould in it, mm3. A box widened by half the spacing on all sides stays in the
/// circle widened by that half's diagonal, and boxes so widened share no ground.
double room_of_vessel(const WorksSettings& works) {
  const double s = works.load_spacing_mm;
  const double radius = works.vessel_diameter_mm / 2 - s + s / std::sqrt(2.0);
  return kPi * radius * radius * (works.vessel_height_mm + s);
}
double room_of_moulds(const LoadPiece& piece, const WorksSettings& works) {
  const double s = works.load_spacing_mm;
  const MouldBox& box = piece.mould;
  return piece.count * (box.length_mm + s) * (box.depth_mm + s) * (box.height_mm + s);
}

}  // namespace

int rounds_of(const LoadPiece& piece) {
  return piece.moulds > 0 ? (piece.count + piece.moulds - 1) / piece.moulds : 0;
}

int most_moulds(const LoadPiece& piece, const WorksSettings& works) {
  LoadPiece one = piece;
  one.count = 1;
  return static_cast<int>(std::floor(room_of_vessel(works) / room_of_moulds(one, works) * (1 + kSlack)));
}

int least_loads(const std::vector<LoadPiece>& pieces, const WorksSettings& works) {
  std::vector<LoadPiece> sorted = pieces;
  std::ranges::sort(sorted, std::greater<>(), &LoadPiece::thickest_mm);
  const double vessel = room_of_vessel(works);
  const std::size_t count = sorted.size();
  std::vector<int> best(count);  // of all groups that end with this kind or before
  for (std::size_t last = 0; last < count; ++last) {
    double room = 0;
    int rounds = 0;
    best[last] = last > 0 ? best[last - 1] : 0;
    for (std::size_t first = last + 1; first-- > 0;) {
      room += room_of_moulds(sorted[first], works);
      rounds = std::max(rounds, rounds_of(sorted[first]));
      // Kinds before this one are too thick for the whole group.
      std::size_t thicker = first;
      while (thicker > 0 && sorted[thicker - 1].thickest_mm <=
                                sorted[first].thickest_mm * works.thickness_ratio * (1 + kSlack))
        --thicker;
      const int group = std::max(rounds, static_cast<int>(std::ceil(room / vessel * (1 - kSlack))));
      best[last] = std::max(best[last], group + (thicker > 0 ? best[thicker - 1] : 0));
    }
  }
  return count > 0 ? best.back() : 0;
}

}  // namespace prismwright
