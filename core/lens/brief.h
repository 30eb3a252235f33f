#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace prismwright {

/// Bull's-eye work turns the section about each panel's own level axis, belt work about the upright lens axis.
enum class Work { bullseye, belt };

/// What was ordered. Panels are held apart (panel.h).
struct Brief {
  std::string title;
  std::string client;
  std::string order = "4";  ///< key word of an order (orders.h)
  double focal_mm = 250;
  Work work = Work::bullseye;
  std::string character;  ///< as in a list of lights, for instance "Fl(2) 10s"
  std::string notes;
  double height_m = 0;  ///< of the focal plane over the sea
};

/// What the lens is cast in.
struct Material {
  std::string name = "acrylic";  ///< key word of a medium (core/optics/medium.h)
  std::optional<double> index;   ///< measured index of the batch at 587.6 nm; blank: by the medium's formula
  double density_g_cm3 = 1.19;
  double temperature_c = 20;                         ///< at which the lens will stand
  std::optional<double> index_per_k = std::nullopt;  ///< change of the index per kelvin; blank: the medium's
  double wavelength_nm = 587.6;                      ///< that the section is worked out for
  double absorption_per_m = 0;                       ///< natural logarithm lost per metre of path, by itself
  std::string tint = {};  ///< transmittance inside by wavelength, "400:0.9, 700:0.99"; blank: none
  double tint_mm = 10;    ///< thickness for which the tint's points hold

  /// Index at a wavelength and the lens's temperature: by the medium's formula, moved by what the measured
  /// index differs from it at 587.6 nm. The formula and the measured index hold at 20 C.
  [[nodiscard]] double index_at(double wavelength_nm) const;
  /// The index that the section is worked out with.
  [[nodiscard]] double effective_index() const { return index_at(wavelength_nm); }
};

/// Outline of what shines.
enum class LampShape {
  cylinder,  ///< upright, width_mm across and height_mm high; its ends shine too
  sphere,    ///< width_mm across
  disc,      ///< flat and round, width_mm across; shines to the side that it faces
  tile,      ///< flat, width_mm by height_mm; shines to the side that it faces
};
/// How many lamps there are, and where.
enum class LampSet {
  one,      ///< in the focus
  ring,     ///< all alight, evenly round the lens axis on a circle of ring_mm, flat ones facing outward
  changer,  ///< one alight in the focus; the others, dark, stand in the way on a disc of radius ring_mm
};
/// What is known of the lamp's light.
enum class LampKnown { flux, luminance };
/// The colour of the lamp's light before tint and screens.
enum class LampLight { black_body, illuminant_a, white_led, line, points };

/// The lamp. It stands upright on the lens axis and shines by Lambert's law.
struct Lamp {
  double height_mm = 0;  ///< of what shines (cylinder, tile); 0: a point, for the section alone
  double above_mm = 0;   ///< its middle over the focal point
  LampShape shape = LampShape::cylinder;
  double width_mm = 8;
  LampSet set = LampSet::one;
  int count = 1;             ///< lamps of a ring or changer, the one alight included
  double ring_mm = 20;       ///< radius of the ring, or of the changer's disc
  double facing_deg = 0;     ///< azimuth that a single flat lamp faces
  double facing_up_deg = 0;  ///< elevation that a flat lamp faces; 90: it lies flat and shines up
  double aside_x_mm = 0;     ///< place error towards the axis of panel 1
  double aside_y_mm = 0;     ///< place error to the left of it
  LampKnown known = LampKnown::flux;
  double flux_lm = 2000;  ///< of one lamp
  double luminance_cd_mm2 = 1;
  LampLight light = LampLight::illuminant_a;
  double temperature_k = 2856;  ///< of a black body
  double line_nm = 587.6;       ///< of a single line
  std::string spectrum = {};    ///< points, "400:0.1, 500:0.8, ..."; for LampLight::points
};

/// Coloured glass or sheet before a panel.
enum class Screen { none, red, green, yellow };

/// One panel. Its sides stand at equal angles from its middle; its optical axis may be shifted from the
/// middle, because the spacing of the axes decides the rhythm, not the width of the panels.
struct Panel {
  double width_deg = 45;
  double axis_shift_deg = 0;  ///< axis azimuth less the azimuth of the panel's middle
  bool blind = false;         ///< holds no prisms
  Screen screen = Screen::none;
};

/// Azimuths of a panel in the lens frame, degrees anticlockwise seen from above; axis of panel 1 at 0.
struct PanelPlace {
  int number = 1;
  double axis_deg = 0;
  double from_deg = 0;  ///< clockwise side
  double to_deg = 0;    ///< anticlockwise side
};

/// Panels follow each other anticlockwise from panel 1, whose axis is +X.
std::vector<PanelPlace> place_panels(const std::vector<Panel>& panels);

/// `count` panels of equal width with centred axes.
std::vector<Panel> equal_panels(int count);

std::string_view name_of(Work work);  ///< "bullseye", "belt"

}  // namespace prismwright
