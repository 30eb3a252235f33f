#include "core/light/chromaticity.h"

namespace prismwright {

double LightWay::at(double nm) const { return tint.at(nm, path_mm) * screen.at(nm) * further.at(nm); }

LightColour colour_of(const LampSpectrum& light) {
  const Xyz xyz = light.xyz();
  return {xyz.chromaticity(), xyz.y, xyz};
}

LightColour colour_behind(const LampSpectrum& lamp, const LightWay& way) {
  return colour_of(lamp.through([&](double nm) { return way.at(nm); }));
}

double screen_factor(const LampSpectrum& lamp, const LightWay& way) {
  LightWay open = way;
  open.screen = ColourScreen();
  const double without = colour_behind(lamp, open).factor;
  return without > 0 ? colour_behind(lamp, way).factor / without : 0;
}

}  // namespace prismwright
