#pragma once

#include <vector>

#include "core/lens/lens_values.h"
#include "core/light/beam_map.h"
#include "core/light/chromaticity.h"
#include "core/light/signal_regions.h"

namespace prismwright {

/// How a colour stands to a published region of its name.
struct RegionVerdict {
  const SignalRegion* region = nullptr;
  double margin = 0;  ///< distance in x, y from its boundary, positive inside
  bool held = false;
};

/// The light behind one kind of screen.
struct ScreenColour {
  Screen screen = Screen::none;
  double factor = 1;  ///< luminous flux with the screen over that without it
  Chromaticity at;
  std::vector<RegionVerdict> regions;  ///< all that are published for the colour

  /// Whether all regions of the rules for aids to navigation that bear the colour's name hold it.
  [[nodiscard]] bool as_ruled() const;
};

/// Lamp, tint and screens of a lens as spectra.
class LensColours {
 public:
  /// Refuses what spectrum_of, tint_of and screen_of refuse, with the key that is at fault.
  static Outcome<LensColours> make(const LensValues& values);

  /// Few wavelengths to trace the lens with; weights add to 1. Each is absorbed as its part of the light is
  /// over `path_mm` of the lens material, so the flux that is left there is exact.
  [[nodiscard]] std::vector<BeamColour> beam_colours(const Material& material, int lines, double path_mm) const;
  /// Wavelengths of those, nm.
  [[nodiscard]] std::vector<double> beam_lines_nm(int lines) const;

  [[nodiscard]] Chromaticity lamp() const { return colour_of(lamp_).at; }
  /// Share of the lamp's luminous flux that the lens material leaves over that path.
  [[nodiscard]] double tint_factor(double path_mm) const;
  [[nodiscard]] double factor(Screen screen, double path_mm) const;
  /// `spread`: what the lens itself makes of each wavelength in the direction looked from, relative.
  [[nodiscard]] ScreenColour seen(Screen screen, double path_mm, const Spectrum& spread) const;

 private:
  LensColours(LampSpectrum lamp, Tint tint, std::vector<ColourScreen> screens)
      : lamp_(std::move(lamp)), tint_(std::move(tint)), screens_(std::move(screens)) {}
  [[nodiscard]] LightWay way(Screen screen, double path_mm) const;

  LampSpectrum lamp_;
  Tint tint_;
  std::vector<ColourScreen> screens_;  ///< by Screen
};

/// The word for the light of a screen: "white", "red", "green", "yellow".
std::string_view colour_word(Screen screen);

}  // namespace prismwright
