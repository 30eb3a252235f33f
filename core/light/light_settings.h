#pragma once

#include <string>

namespace prismwright {

/// Which way the lens turns, seen from above.
enum class TurnWay { clockwise, anticlockwise };

/// What the light is judged by, and what may go wrong in setting it. Ranges and meanings stand in the quantity
/// table (core/lens/quantities.h).
struct LightSettings {
  double turn_s = 0;  ///< time of one turn of the lens; 0: it does not turn
  TurnWay turn_way = TurnWay::clockwise;
  double glazing_factor = 0.85;  ///< what the lantern's panes let through; from memory of common practice
  double service_factor = 0.75;  ///< for dirt and age; CCNR art. 1.06, EB11 p. 639 deducts a fifth
  double threshold_lux = 2e-7;   ///< illuminance at the eye by night; COLREG Annex I
  double visibility_nmi = 10;    ///< distance at which a twentieth of the light is left; nominal range: 10
  double eye_height_m = 5;       ///< of the observer over the sea
  double integration_s = 0.2;    ///< constant a of the effective intensity
  std::string red_screen = {};   ///< transmittance by wavelength; blank: the program's own generic screen
  std::string green_screen = {};
  std::string yellow_screen = {};
  double board_mm = 5000;        ///< distance of the board of the laser bench from the focus
  double tilt_error_deg = 0.05;  ///< standard deviations of the setting errors
  double shift_error_mm = 0.2;
  double face_error_deg = 0.02;
  double index_error = 0.0005;
  double lamp_error_mm = 0.5;
  int trials = 200;  ///< of the Monte Carlo over the whole lens
  int seed = 1;
  double sun_w_m2 = 900;  ///< sunlight square to its rays
};

}  // namespace prismwright
