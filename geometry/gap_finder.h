#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/pair_gap.h"

namespace prismwright {

/// One piece of measuring, in whatever frame it chooses.
struct GapJob {
  std::string mark;                    ///< for reports
  std::string key;                     ///< equal keys: the same answer
  std::function<GapsFound()> measure;  ///< throws Standard_Failure
  GapsFound found;
  bool done = false;
};

/// Does all jobs on two threads. The first trouble ends the work; a stopped work is a Problem of that kind.
/// What was done until then stays done.
std::optional<Problem> do_all(std::vector<GapJob>& jobs, const Progress& progress);

}  // namespace prismwright
