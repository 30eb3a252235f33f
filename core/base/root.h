#pragma once

#include <cmath>

namespace prismwright {

/// Two ends between which a function rises through zero, with its values there.
struct RootBracket {
  double low = 0;
  double at_low = 0;  ///< negative
  double high = 0;
  double at_high = 0;  ///< positive
};

/// Where a rising function is zero, beginning with a guess: false position that halves the weight of an end
/// that stays (the Illinois rule), and plain halving where that is slow. Stops when the function is within
/// `small_enough` of zero or the bracket has shrunk to a 1e-15th of its ends.
template <class Function>
double find_root(const Function& f, RootBracket bracket, double guess, double small_enough) {
  int stayed = 0;
  for (int i = 0; i < 100; ++i) {
    if (!(guess > bracket.low && guess < bracket.high)) guess = 0.5 * (bracket.low + bracket.high);
    const double here = f(guess);
    if (std::abs(here) <= small_enough) return guess;
    const bool below = here < 0;
    (below ? bracket.low : bracket.high) = guess;
    (below ? bracket.at_low : bracket.at_high) = here;
    stayed = below ? (stayed > 0 ? stayed + 1 : 1) : (stayed < 0 ? stayed - 1 : -1);
    if (stayed > 1) bracket.at_high *= 0.5;
    if (stayed < -1) bracket.at_low *= 0.5;
    const double width = bracket.high - bracket.low;
    if (width < 1e-15 * (std::abs(bracket.low) + std::abs(bracket.high))) return guess;
    guess = i % 8 == 7 ? bracket.low + 0.5 * width
                       : bracket.low - bracket.at_low * width / (bracket.at_high - bracket.at_low);
  }
  return guess;
}

}  // namespace prismwright
