#include "core/light/beam_pieces.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kStepsOverLamp = 12;  ///< from the middle of the narrowest shining part to its edge
constexpr double kMostSteps = 48;      ///< the same over all that shines
constexpr double kWider = 1.5;         ///< of the map, over the beam of one spot
constexpr double kRoom = 0.02;         ///< radians more, for what errors turn
constexpr int kBeltColumns = 3;        ///< to each side, where the beam is alike all round

/// The value that half the flux lies below.
template <class Of>
double middle_by_flux(const std::vector<TurningSpot>& spots, const Of& of) {
  std::vector<std::pair<double, double>> values;
  double flux = 0;
  for (const TurningSpot& spot : spots) {
    values.emplace_back(of(spot.patch), spot.flux_lm);
    flux += spot.flux_lm;
  }
  std::sort(values.begin(), values.end());
  double below = 0;
  for (const auto& [value, share] : values)
    if ((below += share) >= flux / 2) return value;
  return 0;
}

double narrowest_mm(const LampBody& lamp) {
  double least = 2 * lamp.radius_mm();
  for (const LampPart& part : lamp.parts()) {
    if (!part.alight) continue;
    least = std::min(least, part.width_mm);
    const bool tall = part.shape == LampShape::cylinder || part.shape == LampShape::tile;
    if (tall && part.height_mm > 0) least = std::min(least, part.height_mm);
  }
  return least;
}

/// The cells within so many steps of a place.
std::pair<int, int> span(double middle, double half) {
  return {static_cast<int>(std::ceil(middle - half)), static_cast<int>(std::floor(middle + half))};
}

using Spots = std::vector<const TurningSpot*>;

BeamTurns mean_turns(const Spots& spots) {
  BeamTurns turns;
  double flux = 0;
  for (const TurningSpot* spot : spots) {
    flux += spot->flux_lm;
    for (std::size_t m = 0; m < kSettingMoves; ++m) {
      turns[m].level_deg += spot->flux_lm * spot->turns[m].level_deg;
      turns[m].upright_deg += spot->flux_lm * spot->turns[m].upright_deg;
    }
  }
  for (BeamTurn& turn : turns) turn = {turn.level_deg / flux, turn.upright_deg / flux};
  return turns;
}

/// Cells that hold the beams of all these spots, and an empty one at each end; nothing farther from the map
/// than errors can turn it.
StepGrid grid_around(const Spots& spots, const StepGrid& map) {
  const int room = static_cast<int>(std::ceil(4 * kRoom / map.step));
  int left = map.first_column + map.columns + room;
  int right = map.first_column - room;
  int low = map.first_row + map.rows + room;
  int top = map.first_row - room;
  for (const TurningSpot* spot : spots) {
    const FarDirection middle = spot->patch.middle();
    const FarDirection half = spot->patch.half_width();
    const auto columns = span(middle.azimuth / map.step, half.azimuth / map.step);
    const auto rows = span(middle.elevation / map.step, half.elevation / map.step);
    left = std::min(left, columns.first);
    right = std::max(right, columns.second);
    low = std::min(low, rows.first);
    top = std::max(top, rows.second);
  }
  left = std::max(left, map.first_column - room) - 1;
  right = std::min(right, map.first_column + map.columns - 1 + room) + 1;
  low = std::max(low, map.first_row - room) - 1;
  top = std::min(top, map.first_row + map.rows - 1 + room) + 1;
  return {map.step, left, low, std::max(2, right - left + 1), std::max(2, top - low + 1)};
}

void paint_spot(const TurningSpot& spot, BeamPiece& piece) {
  const StepGrid& grid = piece.grid;
  const FarDirection middle = spot.patch.middle();
  const FarDirection half = spot.patch.half_width();
  const auto columns = span(middle.azimuth / grid.step, half.azimuth / grid.step);
  const auto rows = span(middle.elevation / grid.step, half.elevation / grid.step);
  const int from = std::max(1, columns.first - grid.first_column);
  const int to = std::min(grid.columns - 2, columns.second - grid.first_column);
  for (int k = std::max(1, rows.first - grid.first_row);
       k <= std::min(grid.rows - 2, rows.second - grid.first_row); ++k)
    for (int i = from; i <= to; ++i)
      piece.cd[grid.at(i, k)] +=
          spot.patch.intensity_cd({(grid.first_column + i) * grid.step, (grid.first_row + k) * grid.step});
}

}  // namespace

void BeamPiece::add_to(std::vector<double>& map, const StepGrid& to, double columns, double rows) const {
  const double whole_columns = std::floor(columns);
  const double whole_rows = std::floor(rows);
  const double u = columns - whole_columns;
  const double v = rows - whole_rows;
  // Cell (i, k) of the map lies in this piece between cells (i - x - 1) and (i - x), and so upward.
  const int x = grid.first_column + static_cast<int>(whole_columns) - to.first_column;
  const int y = grid.first_row + static_cast<int>(whole_rows) - to.first_row;
  const int from = std::max(0, x + 1);
  const int end = std::min(to.columns, x + grid.columns);
  for (int k = std::max(0, y + 1); k < std::min(to.rows, y + grid.rows); ++k) {
    const double* here = cd.data() + grid.at(0, k - y);
    const double* under = cd.data() + grid.at(0, k - y - 1);
    double* out = map.data() + to.at(0, k);
    for (int i = from; i < end; ++i)
      out[i] += (1 - v) * ((1 - u) * here[i - x] + u * here[i - x - 1]) +
                v * ((1 - u) * under[i - x] + u * under[i - x - 1]);
  }
}

double BeamPiece::at(double column, double row) const {
  const double x = column - grid.first_column;
  const double y = row - grid.first_row;
  if (!(x >= 0 && y >= 0 && x < grid.columns - 1 && y < grid.rows - 1)) return 0;
  const int i = static_cast<int>(x);
  const int k = static_cast<int>(y);
  const double u = x - i;
  const double v = y - k;
  return (1 - v) * ((1 - u) * cd[grid.at(i, k)] + u * cd[grid.at(i + 1, k)]) +
         v * ((1 - u) * cd[grid.at(i, k + 1)] + u * cd[grid.at(i + 1, k + 1)]);
}

BeamPieces::BeamPieces(const PanelSpots& spots, const LampBody& lamp) {
  if (spots.spots().empty()) return;
  choose_grid(spots, lamp);
  paint(spots);
  between_error_ = error_between(spots);
}

void BeamPieces::choose_grid(const PanelSpots& spots, const LampBody& lamp) {
  const auto& all = spots.spots();
  const double azimuth = middle_by_flux(all, [](const BeamPatch& p) { return p.middle().azimuth; });
  const double elevation = middle_by_flux(all, [](const BeamPatch& p) { return p.middle().elevation; });
  const double wide = middle_by_flux(all, [](const BeamPatch& p) { return p.half_width().azimuth; });
  const double high = middle_by_flux(all, [](const BeamPatch& p) { return p.half_width().elevation; });
  const double narrow = narrowest_mm(lamp) / (2 * lamp.radius_mm());
  const double half = std::min(wide, high);
  grid_.step = std::max(half * narrow / kStepsOverLamp, half / kMostSteps);
  bool belt = true;
  for (const TurningSpot& spot : all) belt = belt && spot.patch.spot().body->turning() == TurningAxis::lens;
  const auto [left, right] = span(azimuth / grid_.step, (kWider * wide + kRoom) / grid_.step);
  const auto [low, top] = span(elevation / grid_.step, (kWider * high + kRoom) / grid_.step);
  grid_.first_column = belt ? -kBeltColumns : left;
  grid_.columns = belt ? 2 * kBeltColumns + 1 : right - left + 1;
  grid_.first_row = low;
  grid_.rows = top - low + 1;
}

void BeamPieces::paint(const PanelSpots& spots) {
  std::map<std::pair<int, int>, Spots> groups;
  for (const TurningSpot& spot : spots.spots()) groups[{spot.prism, spot.sector}].push_back(&spot);
  std::vector<Spots> lists;
  for (auto& [key, list] : groups) lists.push_back(std::move(list));
  pieces_.resize(lists.size());
  tbb::parallel_for(std::size_t{0}, lists.size(), [&](std::size_t p) {
    BeamPiece& piece = pieces_[p];
    piece.prism = lists[p].front()->prism;
    piece.turns = mean_turns(lists[p]);
    piece.grid = grid_around(lists[p], grid_);
    piece.cd.assign(piece.grid.size(), 0);
    for (const TurningSpot* spot : lists[p]) paint_spot(*spot, piece);
  });
}

double BeamPieces::error_between(const PanelSpots& spots) const {
  std::vector<double> map(grid_.size());
  for (const BeamPiece& piece : pieces_) piece.add_to(map, grid_, 0, 0);
  const auto peak = std::max_element(map.begin(), map.end());
  if (*peak == 0) return 0;
  const auto at = static_cast<int>(peak - map.begin());
  const double column = grid_.first_column + at % grid_.columns;
  const double row = grid_.first_row + at / grid_.columns;
  double most = 0;
  for (const auto& [x, y] : {std::array{0.5, 0.5}, {-0.5, 0.5}, {0.5, -0.5}, {-0.5, -0.5}}) {
    double exact = 0;
    double read = 0;
    for (const TurningSpot& spot : spots.spots())
      exact += spot.patch.intensity_cd({(column + x) * grid_.step, (row + y) * grid_.step});
    for (const BeamPiece& piece : pieces_) read += piece.at(column + x, row + y);
    most = std::max(most, std::abs(read - exact) / *peak);
  }
  return most;
}

}  // namespace prismwright
