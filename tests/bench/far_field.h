#pragma once

#include <vector>

#include "tests/bench/bench_vector.h"

namespace prismwright::bench {

/// Directions far from the lens in cells about evenly spaced middles, degrees: azimuth anticlockwise from the
/// axis of panel 1, elevation up.
struct FarGrid {
  double azimuth_from_deg = -20;
  double azimuth_step_deg = 0.25;
  int azimuths = 161;
  double elevation_from_deg = -10;
  double elevation_step_deg = 0.25;
  int elevations = 81;
  /// So many equal panels: a ray counts in the place that it has when turned by whole panels towards azimuth 0,
  /// a share of its weight, so that each ray serves all panels. 1 for unequal panels.
  int panels_alike = 1;

  [[nodiscard]] int cells() const { return azimuths * elevations; }
  /// Cell of a direction, or -1.
  [[nodiscard]] int cell_of(Vector along) const;
  /// sr
  [[nodiscard]] double cell_sr(int cell) const;
};

/// Sums of ray weights in the cells of a far field; intensities follow once the flux of a ray is known.
class FarField {
 public:
  explicit FarField(const FarGrid& grid);
  void add(Vector along, double weight);
  void add(const FarField& other);

  struct Cell {
    double cd = 0;
    double error_cd = 0;  ///< standard error
  };
  /// Of `rays` rays that carry `flux_lm` together.
  [[nodiscard]] Cell cell(int azimuth, int elevation, double flux_lm, double rays) const;
  [[nodiscard]] const FarGrid& grid() const { return grid_; }

 private:
  FarGrid grid_;
  std::vector<double> sums_;
  std::vector<double> squares_;
};

/// A far field in figures.
struct FarFigures {
  double peak_cd = 0;  ///< greatest cell; of many cells alike, noise lifts it
  double peak_error_cd = 0;
  double peak_azimuth_deg = 0;
  double peak_elevation_deg = 0;
  double axis_cd = 0;  ///< cell about azimuth 0, elevation 0
  double axis_error_cd = 0;
  double rms_error = 0;       ///< standard error, rms over all cells, as a share of the axis
  double half_width_deg = 0;  ///< width at half the peak, along the peak's row; 0 where it does not fall so low
  double half_height_deg = 0;  ///< along its column
};
FarFigures figures_of(const FarField& field, double flux_lm, double rays);

}  // namespace prismwright::bench
