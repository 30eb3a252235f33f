#pragma once

#include <vector>

#include "core/drawing/house_words.h"
#include "core/frame/parts_list.h"

namespace prismwright {

/// Whether a part is bought as it is, by size and number, and so has no drawing: screws and dowels.
bool is_bought(const PartsLine& line);

/// What is bought for the frame: quantity, size, metal and mass of each kind, then every mark under its size.
/// Lines that are not bought are left out; no sheet where none is.
Drawing bought_list(const std::vector<PartsLine>& lines, const HouseWords& words);

}  // namespace prismwright
