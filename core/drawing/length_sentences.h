#pragma once

#include <string>

#include "core/drawing/lengths.h"

namespace prismwright {

/// A sentence with every length in it ("1.69 mm") said in the sheet's own unit ("0.067 in"), to 0.001 in. For
/// words that come ready made with their millimetres.
///
/// Numbers joined by " x " or by a comma and the letter of a coordinate (r, u, v, w, x, y, z) share the unit
/// behind the last of them: "120 x 40 x 30 mm" and "u 1.0, v -2.0 mm" are turned whole, so that a count may not
/// stand before " x ". Areas and volumes ("12 x 3 mm2") stay, and so do numbers that share their unit with one
/// that has an exponent ("1e-05 x 2 mm").
std::string sentence_in(const LengthWords& lengths, const std::string& sentence);

}  // namespace prismwright
