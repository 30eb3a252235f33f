#pragma once

#include <cstddef>
#include <functional>
#include <string_view>

#include "core/base/progress.h"

namespace prismwright {

/// Which stretch of a longer work's progress is told, and by what word.
struct WorkShare {
  const Progress& progress;
  std::string_view what;
  double from = 0;
  double to = 1;
};

/// Does `piece(i)` once for every i below `count`, on this thread and one more. Pieces must not touch each
/// other's results. Progress is told from this thread only. False when it was stopped: then pieces are missing.
/// What a piece throws is thrown again once both threads have ended.
bool in_two_threads(std::size_t count, const WorkShare& share, const std::function<void(std::size_t)>& piece);

}  // namespace prismwright
