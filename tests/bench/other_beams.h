#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "tests/bench/embree_tracer.h"

namespace prismwright::bench {

/// Another computation of the same far field, to be timed beside the tracer and held against it.
struct OtherBeam {
  std::string name;
  /// Intensities in cd in the order of the grid's cells (azimuths of the lowest elevation first), at the cells'
  /// middles, for the lamp, the glass and the grid of the order; only light that went through one prism.
  std::function<std::vector<double>(const LensPlan& plan, const TraceOrder& order)> cd;
};

/// All there are: a new one is added here and nowhere else.
const std::vector<OtherBeam>& other_beams();

}  // namespace prismwright::bench
