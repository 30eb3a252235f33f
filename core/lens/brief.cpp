#include "core/lens/brief.h"

#include "core/optics/medium.h"

namespace prismwright {

double Material::index_at(double at_nm) const {
  constexpr double kFormulas_c = 20;
  const Medium* found = find_medium(name);
  const Medium& medium = found ? *found : media().front();
  const double batch = index ? *index - medium.index() : 0;
  return medium.index(at_nm) + batch +
         index_per_k.value_or(medium.index_per_k()) * (temperature_c - kFormulas_c);
}

std::string_view name_of(Work work) { return work == Work::bullseye ? "bullseye" : "belt"; }

std::vector<PanelPlace> place_panels(const std::vector<Panel>& panels) {
  std::vector<PanelPlace> places;
  if (panels.empty()) return places;
  double from = -panels.front().width_deg / 2 - panels.front().axis_shift_deg;
  for (const Panel& panel : panels) {
    const double to = from + panel.width_deg;
    places.push_back({static_cast<int>(places.size()) + 1, 0.5 * (from + to) + panel.axis_shift_deg, from, to});
    from = to;
  }
  return places;
}

std::vector<Panel> equal_panels(int count) {
  return std::vector<Panel>(static_cast<std::size_t>(count), Panel{360.0 / count, 0, false});
}

}  // namespace prismwright
