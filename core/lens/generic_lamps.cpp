#include "core/lens/generic_lamps.h"

#include <algorithm>

namespace prismwright {

namespace {

/// Arc lines over a weaker continuum, relative power per nm; made up after typical curves from memory.
constexpr const char* kMetalHalide =
    "380:0.35, 400:0.5, 404:1.1, 408:0.6, 430:0.6, 435:1.2, 440:0.6, 500:0.5, 535:0.6, 546:1.6, 552:0.7, "
    "570:0.9, 578:1.8, 584:1, 589:1.9, 595:1.1, 620:0.9, 665:0.7, 671:1.1, 678:0.5, 780:0.3";

Lamp upright(double width_mm, double height_mm, double flux_lm, double temperature_k) {
  Lamp lamp;
  lamp.shape = LampShape::cylinder;
  lamp.width_mm = width_mm;
  lamp.height_mm = height_mm;
  lamp.flux_lm = flux_lm;
  lamp.light = LampLight::black_body;
  lamp.temperature_k = temperature_k;
  return lamp;
}

Lamp metal_halide(double width_mm, double height_mm, double flux_lm) {
  Lamp lamp = upright(width_mm, height_mm, flux_lm, 4000);
  lamp.light = LampLight::points;
  lamp.spectrum = kMetalHalide;
  return lamp;
}

Lamp white_led(LampShape shape, double width_mm, double flux_lm) {
  Lamp lamp;
  lamp.shape = shape;
  lamp.width_mm = width_mm;
  lamp.height_mm = width_mm;
  lamp.flux_lm = flux_lm;
  lamp.light = LampLight::white_led;
  return lamp;
}

Lamp several(Lamp lamp, LampSet set, int count, double ring_mm) {
  lamp.set = set;
  lamp.count = count;
  lamp.ring_mm = ring_mm;
  return lamp;
}

}  // namespace

const std::vector<GenericLamp>& generic_lamps() {
  static const Lamp halogen_100 = upright(2.3, 4.2, 2500, 3100);
  static const std::vector<GenericLamp> lamps = {
      {"oil-1", "Oil flame, one wick", upright(25, 35, 250, 1950)},
      {"oil-2", "Oil flame, two wicks", upright(45, 50, 900, 2000)},
      {"mantle-35", "Paraffin mantle 35 mm", upright(35, 50, 6500, 2800)},
      {"halogen-100", "Tungsten halogen 100 W", halogen_100},
      {"halogen-250", "Tungsten halogen 250 W", upright(3.5, 7, 8000, 3300)},
      {"halogen-100-changer", "Two tungsten halogen 100 W in a changer",
       several(halogen_100, LampSet::changer, 2, 40)},
      {"metal-halide-250", "Metal halide 250 W", metal_halide(5, 25, 20000)},
      {"led-ring-8", "White LED, ring of 8", several(white_led(LampShape::tile, 2, 300), LampSet::ring, 8, 20)},
      {"led-disc", "White LED disc 12 mm", white_led(LampShape::disc, 12, 3000)},
  };
  return lamps;
}

const GenericLamp* find_generic_lamp(std::string_view text) {
  const auto& lamps = generic_lamps();
  const auto found = std::find_if(lamps.begin(), lamps.end(), [&](const GenericLamp& lamp) {
    return lamp.key == text || lamp.words == text;
  });
  return found == lamps.end() ? nullptr : &*found;
}

Lamp with_generic(const Lamp& present, const GenericLamp& chosen) {
  Lamp lamp = chosen.lamp;
  lamp.above_mm = present.above_mm;
  lamp.aside_x_mm = present.aside_x_mm;
  lamp.aside_y_mm = present.aside_y_mm;
  lamp.facing_deg = present.facing_deg;
  lamp.facing_up_deg = present.facing_up_deg;
  return lamp;
}

}  // namespace prismwright
