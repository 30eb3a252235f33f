#pragma once

namespace prismwright {

/// Inch and pound, for words only: inside, lengths are mm and masses g always. Both are exact by definition.
inline constexpr double kInch_mm = 25.4;
inline constexpr double kSquareInch_mm2 = kInch_mm * kInch_mm;
inline constexpr double kGramsPerPound = 453.59237;

}  // namespace prismwright
