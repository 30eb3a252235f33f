#include "tests/bench/far_field.h"

#include <algorithm>
#include <functional>

namespace prismwright::bench {

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180;

/// Width of a row of values where it first falls below half, each side of its peak; 0 where it does not.
double width_at_half(int count, int peak, double step, const std::function<double(int)>& value) {
  const double half = value(peak) / 2;
  const auto reach = [&](int way) {
    for (int i = peak + way; i >= 0 && i < count; i += way) {
      const double before = value(i - way), here = value(i);
      if (here < half) return std::abs(i - way - peak) + (before - half) / (before - here);
    }
    return -1.0;
  };
  const double left = reach(-1), right = reach(1);
  return left < 0 || right < 0 ? 0 : step * (left + right);
}

}  // namespace

int FarGrid::cell_of(Vector along) const {
  const double elevation = std::asin(std::clamp(along.z, -1.0, 1.0)) / kDegree;
  const int k = static_cast<int>(std::floor((elevation - elevation_from_deg) / elevation_step_deg + 0.5));
  if (k < 0 || k >= elevations) return -1;
  double azimuth = std::atan2(along.y, along.x) / kDegree;
  const double period = 360.0 / panels_alike;
  azimuth -= period * std::floor(azimuth / period + 0.5);
  const int i = static_cast<int>(std::floor((azimuth - azimuth_from_deg) / azimuth_step_deg + 0.5));
  return i < 0 || i >= azimuths ? -1 : k * azimuths + i;
}

double FarGrid::cell_sr(int cell) const {
  const double middle = elevation_from_deg + (cell / azimuths) * elevation_step_deg;
  const double high = std::sin((middle + elevation_step_deg / 2) * kDegree);
  const double low = std::sin((middle - elevation_step_deg / 2) * kDegree);
  return azimuth_step_deg * kDegree * (high - low);
}

FarField::FarField(const FarGrid& grid) : grid_(grid), sums_(grid.cells()), squares_(grid.cells()) {}

void FarField::add(Vector along, double weight) {
  const int cell = grid_.cell_of(along);
  if (cell < 0) return;
  sums_[cell] += weight;
  squares_[cell] += weight * weight;
}

void FarField::add(const FarField& other) {
  for (std::size_t i = 0; i < sums_.size(); ++i) {
    sums_[i] += other.sums_[i];
    squares_[i] += other.squares_[i];
  }
}

FarField::Cell FarField::cell(int azimuth, int elevation, double flux_lm, double rays) const {
  const int at = elevation * grid_.azimuths + azimuth;
  const double cd = flux_lm / rays / (grid_.panels_alike * grid_.cell_sr(at));
  const double variance = squares_[at] - sums_[at] * sums_[at] / rays;
  return {cd * sums_[at], cd * std::sqrt(std::max(0.0, variance))};
}

FarFigures figures_of(const FarField& field, double flux_lm, double rays) {
  const FarGrid& grid = field.grid();
  FarFigures found;
  int peak_i = 0, peak_k = 0;
  double squares = 0;
  for (int k = 0; k < grid.elevations; ++k) {
    for (int i = 0; i < grid.azimuths; ++i) {
      const FarField::Cell cell = field.cell(i, k, flux_lm, rays);
      squares += cell.error_cd * cell.error_cd;
      if (cell.cd <= found.peak_cd) continue;
      found.peak_cd = cell.cd;
      found.peak_error_cd = cell.error_cd;
      peak_i = i;
      peak_k = k;
    }
  }
  const int axis = grid.cell_of({1, 0, 0});
  if (axis >= 0) {
    const FarField::Cell cell = field.cell(axis % grid.azimuths, axis / grid.azimuths, flux_lm, rays);
    found.axis_cd = cell.cd;
    found.axis_error_cd = cell.error_cd;
  }
  // Not of the greatest cell, which is the greater the noisier the map is.
  if (found.axis_cd > 0) found.rms_error = std::sqrt(squares / grid.cells()) / found.axis_cd;
  found.peak_azimuth_deg = grid.azimuth_from_deg + peak_i * grid.azimuth_step_deg;
  found.peak_elevation_deg = grid.elevation_from_deg + peak_k * grid.elevation_step_deg;
  const auto cd = [&](int i, int k) { return field.cell(i, k, flux_lm, rays).cd; };
  found.half_width_deg =
      width_at_half(grid.azimuths, peak_i, grid.azimuth_step_deg, [&](int i) { return cd(i, peak_k); });
  found.half_height_deg =
      width_at_half(grid.elevations, peak_k, grid.elevation_step_deg, [&](int k) { return cd(peak_i, k); });
  return found;
}

}  // namespace prismwright::bench
