#pragma once

#include <functional>
#include <vector>

#include "geometry/fit_panel.h"

namespace prismwright {

/// Two parts of a panel that stand in each other where they belong.
struct HomeClash {
  const FitUnit* first = nullptr;  ///< a prism, or several that are cemented together
  const FitUnit* second = nullptr;
  std::string first_mark;  ///< of the one that stands deepest
  std::string second_mark;
  FitSunk sunk;
};

/// Every prism that stands in another one, in brass between the ribs, or in a rib, deepest first. `go_on`
/// answering false throws FitStopped (fit_rib.h).
std::vector<HomeClash> home_clashes(const FitPanel& panel, const std::function<bool()>& go_on);

}  // namespace prismwright
