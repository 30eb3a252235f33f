#pragma once

#include <functional>
#include <vector>

#include "geometry/fit_home.h"
#include "geometry/fit_panel.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// Thrown when `go_on` answers false.
struct FitStopped {};

/// The order of assembly of a panel on its left (0) or right (1) rib, without words and open seats; places
/// stand in the panel's frame.
PanelFit fit_on_rib(const FitPanel& panel, int first, const std::vector<HomeClash>& clashes,
                    const std::function<bool()>& go_on);

/// Prisms that come out straight with everything else standing.
std::vector<OpenSeat> open_seats(const FitPanel& panel, const std::function<bool()>& go_on);

}  // namespace prismwright
