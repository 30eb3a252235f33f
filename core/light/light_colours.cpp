#include "core/light/light_colours.h"

#include <algorithm>
#include <cmath>

#include "core/light/trace_lines.h"

namespace prismwright {

namespace {

constexpr double kShortPath_mm = 0.01;  ///< stands for no path at all where a loss per mm is wanted
constexpr double kAsGoodAsDark = 1e-12;

}  // namespace

std::string_view colour_word(Screen screen) {
  switch (screen) {
    case Screen::red:
      return "red";
    case Screen::green:
      return "green";
    case Screen::yellow:
      return "yellow";
    case Screen::none:
      break;
  }
  return "white";
}

bool ScreenColour::as_ruled() const {
  return std::all_of(regions.begin(), regions.end(), [](const RegionVerdict& verdict) {
    return verdict.held || verdict.region->rule != kAidsToNavigation;
  });
}

Outcome<LensColours> LensColours::make(const LensValues& values) {
  auto lamp = spectrum_of(values.lamp);
  if (!lamp) return lamp.problem();
  auto tint = tint_of(values.material);
  if (!tint) return tint.problem();
  std::vector<ColourScreen> screens;
  for (const Screen screen : {Screen::none, Screen::red, Screen::green, Screen::yellow}) {
    auto sheet = screen_of(screen, values.light);
    if (!sheet) return sheet.problem();
    screens.push_back(std::move(*sheet));
  }
  return LensColours(std::move(*lamp), std::move(*tint), std::move(screens));
}

std::vector<BeamColour> LensColours::beam_colours(const Material& material, int lines, double path_mm) const {
  const double path = std::max(path_mm, kShortPath_mm);
  std::vector<BeamColour> colours;
  for (const TraceLine& line : trace_lines(lamp_, lines, [&](double nm) { return tint_.at(nm, path); }))
    colours.push_back(
        {{material.index_at(line.nm), -std::log(std::max(line.left, kAsGoodAsDark)) / path}, line.flux});
  return colours;
}

std::vector<double> LensColours::beam_lines_nm(int lines) const {
  std::vector<double> nm;
  for (const TraceLine& line : trace_lines(lamp_, lines)) nm.push_back(line.nm);
  return nm;
}

LightWay LensColours::way(Screen screen, double path_mm) const {
  LightWay way;
  way.tint = tint_;
  way.path_mm = path_mm;
  way.screen = screens_[static_cast<std::size_t>(screen)];
  return way;
}

double LensColours::tint_factor(double path_mm) const {
  return colour_behind(lamp_, way(Screen::none, path_mm)).factor;
}

double LensColours::factor(Screen screen, double path_mm) const {
  return screen == Screen::none ? 1 : screen_factor(lamp_, way(screen, path_mm));
}

ScreenColour LensColours::seen(Screen screen, double path_mm, const Spectrum& spread) const {
  LightWay through = way(screen, path_mm);
  through.further = spread;
  ScreenColour colour;
  colour.screen = screen;
  colour.factor = factor(screen, path_mm);
  colour.at = colour_behind(lamp_, through).at;
  for (const SignalRegion& region : signal_regions())
    if (region.colour == colour_word(screen))
      colour.regions.push_back({&region, region_margin(region, colour.at), holds(region, colour.at)});
  return colour;
}

}  // namespace prismwright
