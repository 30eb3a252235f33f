#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_plan.h"

namespace prismwright {

/// The order in which the whole frame is put together, one sentence a step, from the kinds of its parts: base
/// table and bottom ring, the panels (each by its own order, see geometry/fit_up.h), top ring and finial plate,
/// door. What a frame does not have is left out; empty without ribs.
std::vector<std::string> order_of_assembly(const FramePlan& frame);

/// Rising numbers in words: "1", "1 and 2", "1 and 3 to 5".
std::string numbers_words(const std::vector<int>& numbers);

}  // namespace prismwright
