#pragma once

#include <ostream>

#include "core/base/outcome.h"

namespace prismwright {

/// How a verb ended; the number is what the shell sees.
enum class ExitCode {
  done = 0,
  not_well = 1,     ///< done, and something is not well: a clash, light that escapes, a ray that is not level
  bad_request = 2,  ///< the request is wrong
  file_trouble = 3  ///< a file could not be read or written
};

/// Says the problem's sentence on `err` and answers the code that its kind of trouble stands for.
ExitCode refuse(const Problem& problem, std::ostream& err);

}  // namespace prismwright
