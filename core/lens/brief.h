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
};

/// What the lens is cast in.
struct Material {
  std::string name = "acrylic";  ///< key word of a medium (core/optics/medium.h)
  std::optional<double> index;   ///< measured index of the batch at 587.6 nm; blank: by the medium's formula
  double density_g_cm3 = 1.19;

  /// The index that the section is worked out with.
  [[nodiscard]] double effective_index() const;
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
