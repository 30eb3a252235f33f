#pragma once

#include "core/light/prism_spots.h"

namespace prismwright {

/// Directions on an even grid, radians: azimuth (column) x step, elevation (row) x step.
struct StepGrid {
  double step = 0.001;
  int first_column = 0;
  int first_row = 0;
  int columns = 0;
  int rows = 0;

  [[nodiscard]] std::size_t size() const {
    return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
  }
  [[nodiscard]] std::size_t at(int i, int k) const {
    return static_cast<std::size_t>(k) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(i);
  }
};

/// The beam of one sector of a prism, and how it turns.
struct BeamPiece {
  int prism = 0;
  BeamTurns turns;  ///< means over its spots by flux
  StepGrid grid;    ///< with nothing in its outermost rows and columns
  std::vector<double> cd;

  /// Adds it to a map of the same step, turned by so many steps: between directions linearly.
  void add_to(std::vector<double>& map, const StepGrid& grid, double columns, double rows) const;
  /// Its intensity at one direction in steps, cd.
  [[nodiscard]] double at(double column, double row) const;
};

/// A panel's beam as the sum of the beams of its prisms' sectors.
class BeamPieces {
 public:
  explicit BeamPieces(const PanelSpots& spots, const LampBody& lamp);

  [[nodiscard]] const std::vector<BeamPiece>& pieces() const { return pieces_; }
  /// Around the beam's peak, with room for what errors do.
  [[nodiscard]] const StepGrid& grid() const { return grid_; }
  /// Greatest difference between directions of the grid, near the peak, of the sum read linearly between them
  /// from the same spots worked out there, as a share of the peak.
  [[nodiscard]] double between_error() const { return between_error_; }

 private:
  void choose_grid(const PanelSpots& spots, const LampBody& lamp);
  void paint(const PanelSpots& spots);
  [[nodiscard]] double error_between(const PanelSpots& spots) const;

  StepGrid grid_;
  std::vector<BeamPiece> pieces_;
  double between_error_ = 0;
};

}  // namespace prismwright
