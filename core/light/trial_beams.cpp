#include "core/light/trial_beams.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

BeamPeak TrialBeams::planned() const {
  std::vector<double> map(beam_->grid().size());
  for (const BeamPiece& piece : beam_->pieces()) piece.add_to(map, beam_->grid(), 0, 0);
  return peak_of(map);
}

std::vector<double> TrialBeams::map(int trial, const KindSizes& deviations) const {
  const StepGrid& grid = beam_->grid();
  const double step_deg = degrees(grid.step);
  std::vector<double> map(grid.size());
  for (const BeamPiece& piece : beam_->pieces()) {
    const BeamTurn turn = draws_->turn(trial, piece, deviations);
    piece.add_to(map, grid, turn.level_deg / step_deg, turn.upright_deg / step_deg);
  }
  return map;
}

std::vector<BeamPeak> TrialBeams::peaks(const KindSizes& deviations) const {
  std::vector<BeamPeak> peaks(static_cast<std::size_t>(draws_->trials()));
  tbb::parallel_for(std::size_t{0}, peaks.size(),
                    [&](std::size_t t) { peaks[t] = peak(static_cast<int>(t), deviations); });
  return peaks;
}

double TrialBeams::mean_peak_cd(const KindSizes& deviations) const {
  double sum = 0;
  for (const BeamPeak& peak : peaks(deviations)) sum += peak.cd;
  return sum / draws_->trials();
}

double TrialBeams::mean_part_cd(const std::vector<int>& prisms, const BeamPeak& at,
                                const KindSizes& deviations) const {
  const StepGrid& grid = beam_->grid();
  const double step_deg = degrees(grid.step);
  double sum = 0;
  for (const BeamPiece& piece : beam_->pieces()) {
    if (std::find(prisms.begin(), prisms.end(), piece.prism) == prisms.end()) continue;
    for (int trial = 0; trial < draws_->trials(); ++trial) {
      const BeamTurn turn = draws_->turn(trial, piece, deviations);
      sum += piece.at(grid.first_column + at.column - turn.level_deg / step_deg,
                      grid.first_row + at.row - turn.upright_deg / step_deg);
    }
  }
  return sum / draws_->trials();
}

BeamPeak TrialBeams::peak_of(const std::vector<double>& map) const {
  const StepGrid& grid = beam_->grid();
  BeamPeak peak;
  if (map.empty()) return peak;
  const auto most = static_cast<int>(std::max_element(map.begin(), map.end()) - map.begin());
  peak.column = most % grid.columns;
  peak.row = most / grid.columns;
  peak.cd = map[static_cast<std::size_t>(most)];
  double row = grid.first_row + peak.row;
  if (peak.row > 0 && peak.row + 1 < grid.rows) {
    const double under = map[grid.at(peak.column, peak.row - 1)];
    const double over = map[grid.at(peak.column, peak.row + 1)];
    const double bend = under - 2 * peak.cd + over;
    if (bend < 0) row += (under - over) / (2 * bend);
  }
  peak.elevation_deg = degrees(row * grid.step);
  peak.height_deg = height_of(map, peak);
  return peak;
}

double TrialBeams::height_of(const std::vector<double>& map, const BeamPeak& peak) const {
  const StepGrid& grid = beam_->grid();
  const double half = peak.cd / 2;
  const auto reach = [&](int way) {
    int k = peak.row;
    while (k + way >= 0 && k + way < grid.rows && map[grid.at(peak.column, k + way)] >= half) k += way;
    const double rows = std::abs(k - peak.row);
    if (k + way < 0 || k + way >= grid.rows) return rows;
    const double inside = map[grid.at(peak.column, k)];
    const double outside = map[grid.at(peak.column, k + way)];
    return rows + (inside - half) / (inside - outside);
  };
  return degrees((reach(-1) + reach(1)) * grid.step);
}

}  // namespace prismwright
