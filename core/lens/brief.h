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

  /// Index at a wavelength and the lens's temperature: by the medium's formula, moved by what the measured
  /// index differs from it at 587.6 nm. The formula and the measured index hold at 20 C.
  [[nodiscard]] double index_at(double wavelength_nm) const;
  /// The index that the section is worked out with.
  [[nodiscard]] double effective_index() const { return index_at(wavelength_nm); }
};

/// The lamp as far as the section needs it; it stands upright on the lens axis.
struct Lamp {
  double height_mm = 0;  ///< of what shines; 0: a point
  double above_mm = 0;   ///< its middle over the focal point
};

/// One panel. Its sides stand at equal angles from its middle; its optical axis may be shifted from the
/// middle, because the spacing of the axes decides the rhythm, not the width of the panels.
struct Panel {
  double width_deg = 45;
  double axis_shift_deg = 0;  ///< axis azimuth less the azimuth of the panel's middle
  bool blind = false;         ///< holds no prisms
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
