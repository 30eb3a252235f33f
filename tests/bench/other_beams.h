#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/lens/plan.h"
#include "tests/bench/embree_tracer.h"

namespace prismwright::bench {

/// What another computation gave.
struct OtherMap {
  /// Intensities in cd in the order of the grid's cells (azimuths of the lowest elevation first), at the cells'
  /// middles or as the means of the cells.
  std::vector<double> cd;
  std::string words;  ///< what it says of its own error
};

/// Another computation of the same far field, to be timed beside the tracer and held against it.
struct OtherBeam {
  std::string name;
  /// For the lamp, the glass and the grid of the order; only light that went through one prism.
  std::function<OtherMap(const LensPlan& plan, const TraceOrder& order)> map;
};

/// All there are: a new one is added here and nowhere else.
const std::vector<OtherBeam>& other_beams();

}  // namespace prismwright::bench
