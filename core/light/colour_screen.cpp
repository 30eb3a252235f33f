#include "core/light/colour_screen.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace prismwright {

namespace {

/// What two surfaces of glass or acrylic of index 1.5 let through at normal incidence, reflections to and fro
/// included: 2 n / (n^2 + 1).
constexpr double kSurfaces = 2 * 1.5 / (1.5 * 1.5 + 1);

constexpr const char* kRed =
    "560:0, 580:0.002, 590:0.02, 600:0.18, 605:0.38, 610:0.56, 620:0.74, 630:0.82, 650:0.86, 700:0.88";
constexpr const char* kGreen =
    "400:0.04, 440:0.12, 460:0.22, 480:0.37, 500:0.51, 510:0.53, 520:0.51, 540:0.40, 560:0.24, 580:0.10, "
    "600:0.035, 620:0.01, 640:0.004, 680:0.004, 720:0.02, 780:0.2";
constexpr const char* kYellow =
    "500:0, 520:0.005, 530:0.025, 540:0.11, 550:0.32, 560:0.54, 570:0.70, 580:0.79, 600:0.85, 650:0.88, "
    "700:0.89";

Spectrum read(const char* points) {
  return Spectrum::from_text(points, SpectrumKind::transmittance, "generic screen").value();
}

struct ScreenKey {
  const std::string& points;
  const char* key;
};

ScreenKey key_of(Screen screen, const LightSettings& settings) {
  if (screen == Screen::red) return {settings.red_screen, "light.red_screen"};
  if (screen == Screen::green) return {settings.green_screen, "light.green_screen"};
  return {settings.yellow_screen, "light.yellow_screen"};
}

}  // namespace

double ColourScreen::at(double nm, double thickness_mm) const {
  const double sheet = at(nm);
  const double inside = std::min(1.0, sheet / kSurfaces);
  const double surfaces = std::max(sheet, kSurfaces);
  return surfaces * std::pow(inside, thickness_mm / kScreen_mm);
}

const Spectrum& generic_screen(Screen screen) {
  static const Spectrum none = Spectrum::flat(1);
  static const Spectrum red = read(kRed);
  static const Spectrum green = read(kGreen);
  static const Spectrum yellow = read(kYellow);
  if (screen == Screen::red) return red;
  if (screen == Screen::green) return green;
  return screen == Screen::yellow ? yellow : none;
}

Outcome<ColourScreen> screen_of(Screen screen, const LightSettings& settings) {
  if (screen == Screen::none) return ColourScreen();
  const auto [points, key] = key_of(screen, settings);
  if (points.empty()) return ColourScreen(generic_screen(screen));
  const auto sheet = Spectrum::from_text(points, SpectrumKind::transmittance, key);
  if (!sheet) return sheet.problem();
  return ColourScreen(*sheet);
}

}  // namespace prismwright
