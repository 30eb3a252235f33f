#pragma once

#include "core/base/outcome.h"
#include "core/lens/brief.h"
#include "core/lens/spectrum.h"
#include "core/light/light_settings.h"

namespace prismwright {

/// Thickness for which the points of a screen hold, mm.
inline constexpr double kScreen_mm = 3;

/// Coloured glass or acrylic before a panel: what the whole sheet lets through by wavelength, its two surfaces
/// included, at the thickness for which its points hold.
class ColourScreen {
 public:
  ColourScreen() : sheet_(Spectrum::flat(1)) {}  ///< no screen at all
  explicit ColourScreen(Spectrum sheet) : sheet_(std::move(sheet)) {}

  /// Of the sheet as the points have it.
  [[nodiscard]] double at(double nm) const { return sheet_.at(nm); }
  /// Of a sheet of the same colour and another thickness, 0 or more: its inside by Beer and Lambert's law, its
  /// surfaces unchanged. Points over what surfaces alone let through are taken as clear inside.
  [[nodiscard]] double at(double nm, double thickness_mm) const;
  [[nodiscard]] const Spectrum& sheet() const { return sheet_; }

 private:
  Spectrum sheet_;
};

/// The program's own red, green or yellow screen: points of our own, after typical signal colours from memory,
/// which the user may replace. Flat 1 for Screen::none.
const Spectrum& generic_screen(Screen screen);

/// The screen that the settings hold: their points, or the generic screen where they are blank. Refuses as
/// Spectrum::from_text does, with the key of the screen.
Outcome<ColourScreen> screen_of(Screen screen, const LightSettings& settings);

}  // namespace prismwright
