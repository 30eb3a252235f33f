#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/plan.h"

namespace prismwright {

/// Whether the whole text fits the pattern, in which * stands for any run of letters, none included.
bool fits_pattern(std::string_view pattern, std::string_view text);

/// The marks of all prisms, in the order of the plan.
std::vector<std::string> marks_of(const LensPlan& plan);

/// The known marks that the patterns name, each once, in the order of `known`; refuses a pattern that
/// names none.
Outcome<std::vector<std::string>> named_marks(std::span<const std::string> patterns,
                                              std::span<const std::string> known);

}  // namespace prismwright
