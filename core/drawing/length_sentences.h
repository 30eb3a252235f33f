#pragma once

#include <string>

#include "core/drawing/lengths.h"

namespace prismwright {

/// A sentence with every length in it ("1.69 mm") said in the sheet's own unit ("0.067 in"), to 0.001 in. For
/// words that come ready made with their millimetres; areas and volumes ("mm2") stay.
std::string sentence_in(const LengthWords& lengths, const std::string& sentence);

}  // namespace prismwright
