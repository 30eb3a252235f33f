#include "geometry/likeness.h"

#include <cmath>
#include <cstdint>
#include <cstring>

#include <gp_Ax1.hxx>

namespace prismwright {
namespace {

constexpr double kPerUnit = 1e7;

}  // namespace

std::string place_word(const gp_Trsf& place) {
  std::int64_t numbers[12];
  std::int64_t* next = numbers;
  for (int row = 1; row <= 3; ++row) {
    for (int column = 1; column <= 4; ++column) *next++ = std::llround(place.Value(row, column) * kPerUnit);
  }
  std::string word(sizeof numbers, '\0');
  std::memcpy(word.data(), numbers, sizeof numbers);
  return word;
}

UprightTurn upright_turn(const gp_Trsf& place) {
  const double cosine = place.Value(1, 1);
  const double sine = place.Value(2, 1);
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), std::atan2(sine, cosine));
  return {place_word(turn) == place_word(place), std::atan2(sine, cosine)};
}

bool is_at_rest(const gp_Trsf& place) {
  for (int row = 1; row <= 3; ++row) {
    for (int column = 1; column <= 4; ++column) {
      const double rest = row == column ? 1 : 0;
      if (std::abs(place.Value(row, column) - rest) * kPerUnit > 1) return false;
    }
  }
  return true;
}

}  // namespace prismwright
