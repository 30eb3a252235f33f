#pragma once

#include "core/light/colour_screen.h"
#include "core/light/lamp_spectrum.h"
#include "core/light/tint.h"

namespace prismwright {

/// What stands between the lamp and the eye and colours the light.
struct LightWay {
  Tint tint;                               ///< of the lens material
  double path_mm = 0;                      ///< through the lens material
  ColourScreen screen;                     ///< before the panel; none by default
  Spectrum further = Spectrum::flat(1.0);  ///< of the lantern's panes or anything else, as it stands

  [[nodiscard]] double at(double nm) const;
};

/// The colour of a light.
struct LightColour {
  Chromaticity at;    ///< (0, 0) for no light
  double factor = 0;  ///< luminous flux that is left of the lamp's: 0 to 1
  Xyz xyz;            ///< xyz.y is the factor
};

/// Colour of light as it is.
LightColour colour_of(const LampSpectrum& light);
/// Colour and luminous factor of the lamp's light behind all that stands in its way.
LightColour colour_behind(const LampSpectrum& lamp, const LightWay& way);

/// The intensity factor of a screen for a lamp seen through so much of the lens material: luminous flux with
/// the screen over that without it; 0 where none comes that far.
double screen_factor(const LampSpectrum& lamp, const LightWay& way);

}  // namespace prismwright
