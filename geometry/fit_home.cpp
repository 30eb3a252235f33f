#include "geometry/fit_home.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "geometry/fit_rib.h"

namespace prismwright {
namespace {

std::optional<HomeClash> deepest(const FitUnit& first, const FitUnit& second) {
  std::optional<HomeClash> deepest;
  for (std::size_t i = 0; i < first.bodies.size(); ++i) {
    for (std::size_t k = 0; k < second.bodies.size(); ++k) {
      const auto found = sunk(*first.bodies[i], *second.bodies[k]);
      if (!found || (deepest && found->deep_mm <= deepest->sunk.deep_mm)) continue;
      deepest = HomeClash{&first, &second, first.marks[i], second.marks[k], *found};
    }
  }
  return deepest;
}

}  // namespace

std::vector<HomeClash> home_clashes(const FitPanel& panel, const std::function<bool()>& go_on) {
  std::vector<HomeClash> clashes;
  const auto look = [&](const FitUnit& prism, const FitUnit& other) {
    if (auto found = deepest(prism, other)) clashes.push_back(std::move(*found));
  };
  for (std::size_t i = 0; i < panel.prisms.size(); ++i) {
    if (!go_on()) throw FitStopped{};
    for (std::size_t k = i + 1; k < panel.prisms.size(); ++k) look(panel.prisms[i], panel.prisms[k]);
    for (const FitUnit& brass : panel.fixed) look(panel.prisms[i], brass);
    for (const FitUnit& rib : panel.ribs) look(panel.prisms[i], rib);
  }
  std::stable_sort(clashes.begin(), clashes.end(),
                   [](const HomeClash& a, const HomeClash& b) { return a.sunk.deep_mm > b.sunk.deep_mm; });
  return clashes;
}

}  // namespace prismwright
