#include "core/light/beam_map.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "core/base/angle.h"
#include "core/light/beam_painter.h"
#include "core/light/even_numbers.h"

namespace prismwright {

namespace {

constexpr int kSets = 4;
constexpr std::size_t kBlock = 64;  ///< spots that one task works out

/// The panels that one set of spots serves.
struct PanelClass {
  const PanelInLight* panel;
  std::vector<PaintPlace> places;
  ApertureSpots spots;
};

constexpr LightBody::Angles kAllRound{-2 * kPi, 2 * kPi};

/// Azimuths of a panel turned about the lens axis that can send light into the grid: as far beyond it as the
/// lamp is seen wide, twice over for prisms that widen it.
LightBody::Angles azimuths_that_matter(const PanelInLight& panel, const LampBody& lamp, const BeamGrid& grid,
                                       const std::vector<PaintPlace>& places) {
  double nearest = 1e300;
  for (const LightBody& body : panel.bodies) {
    if (body.turning() != TurningAxis::lens) continue;
    for (const TurnedFace& face : body.faces())
      nearest = std::min({nearest, face.place(0).off, face.place(1).off});
  }
  double away = 0;
  for (const LampPart& part : lamp.parts()) {
    const double wide = part.shape == LampShape::tile ? part.radius_mm() : part.width_mm / 2;
    if (part.alight) away = std::max(away, std::hypot(part.middle.x, part.middle.y) + wide);
  }
  if (!(away < 0.5 * nearest)) return kAllRound;
  const double margin = 2 * std::asin(away / nearest) + radians(0.2);
  const double from = radians(grid.azimuth_from_deg) - margin;
  const double to = radians(grid.azimuth_deg(grid.azimuths - 1)) + margin;
  if (to - from >= 2 * kPi) return kAllRound;
  LightBody::Angles hull{kPi, -kPi};
  for (const PaintPlace& place : places) {
    // The grid seen from the panel, once round to either side.
    for (const double round : {-2 * kPi, 0.0, 2 * kPi}) {
      const double low = std::max(-kPi, from - place.turn + round);
      const double high = std::min(kPi, to - place.turn + round);
      if (low >= high) continue;
      hull = {std::min(hull.from, low), std::max(hull.to, high)};
    }
  }
  return hull;
}

std::vector<PanelClass> classes_of(const LightLens& lens, const LampBody& lamp, const BeamRequest& request,
                                   bool grid_alone) {
  std::vector<PanelClass> classes;
  const auto& panels = lens.panels();
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const PanelInLight& panel = panels[i];
    if (panel.bodies.empty() || (request.panel != 0 && panel.number != request.panel)) continue;
    const double factor = request.panel_factors.empty() ? 1 : request.panel_factors[i];
    const double turn = request.panel != 0 ? 0 : panel.axis;
    // Congruent panels lie alike among their like neighbours only if the whole lens repeats; what a neighbour
    // takes of a panel's own light is so little that the first of its kind stands for all.
    const auto known = std::find_if(classes.begin(), classes.end(), [&](const PanelClass& c) {
      return c.panel == &panels[static_cast<std::size_t>(panel.like)];
    });
    if (known != classes.end()) {
      known->places.push_back({turn, factor});
      continue;
    }
    classes.push_back({&panel, {{turn, factor}}, ApertureSpots()});
  }
  for (PanelClass& group : classes) {
    const LightBody::Angles azimuths =
        grid_alone ? azimuths_that_matter(*group.panel, lamp, request.grid, group.places) : kAllRound;
    group.spots = ApertureSpots(*group.panel, azimuths, lamp);
  }
  return classes;
}

/// The sums of the four sets, growing round by round.
class Rounds {
 public:
  Rounds(const LightLens& lens, const LampBody& lamp, const BeamRequest& request)
      : lens_(lens), lamp_(lamp), request_(request), classes_(classes_of(lens, lamp, request, true)) {
    for (int set = 0; set < kSets; ++set) sets_.emplace_back(request.grid.size());
  }

  /// False when stopped.
  bool add_round(int round, const Progress& progress) {
    for (int set = 0; set < kSets; ++set) {
      for (std::size_t c = 0; c < classes_.size(); ++c) {
        std::vector<ApertureSpot> spots;
        classes_[c].spots.append(round, request_.first_spots, static_cast<std::uint64_t>(set) * 1000 + c,
                                 spots);
        add_spots(classes_[c], spots, sets_[static_cast<std::size_t>(set)]);
      }
      const double share = (round * kSets + set + 1.0) / (request_.most_rounds * kSets);
      if (!goes_on(progress, std::min(0.99, share), "beam")) return false;
    }
    return true;
  }

  [[nodiscard]] BeamMap map(int rounds) const {
    BeamMap map;
    map.grid = request_.grid;
    map.cd.resize(request_.grid.size());
    std::vector<double> squares(map.cd.size());
    std::size_t peak = 0;
    for (std::size_t i = 0; i < map.cd.size(); ++i) {
      double sum = 0;
      double sum_squares = 0;
      for (const BeamSum& set : sets_) {
        const double value = set.cd[i] / rounds;
        sum += value;
        sum_squares += value * value;
      }
      map.cd[i] = sum / kSets;
      squares[i] = std::max(0.0, sum_squares / kSets - map.cd[i] * map.cd[i]) / (kSets - 1);
      if (map.cd[i] > map.cd[peak]) peak = i;
    }
    if (!map.cd.empty() && map.cd[peak] > 0) map.peak_error = peak_error(map.cd, squares, peak, rounds);
    const double all = std::accumulate(squares.begin(), squares.end(), 0.0);
    finish(map, peak, std::sqrt(all / static_cast<double>(map.cd.size())), rounds);
    return map;
  }

 private:
  [[nodiscard]] double peak_error(const std::vector<double>& cd, const std::vector<double>& squares,
                                  std::size_t peak, int rounds) const {
    double lit = 0;
    int cells = 0;
    for (std::size_t i = 0; i < cd.size(); ++i) {
      if (cd[i] < 0.5 * cd[peak]) continue;
      lit += squares[i];
      ++cells;
    }
    const double noise = std::sqrt(std::max(squares[peak], lit / cells));
    return std::hypot(noise, cd[peak] - peak_by_others(rounds)) / cd[peak];
  }

  /// The peak that each half of the sets chooses, valued by the other half: free of the gain of choosing.
  [[nodiscard]] double peak_by_others(int rounds) const {
    const auto pair = [&](std::size_t first, std::size_t i) {
      return (sets_[first].cd[i] + sets_[first + 1].cd[i]) / rounds / 2;
    };
    double value = 0;
    for (const std::size_t chooser : {std::size_t{0}, std::size_t{2}}) {
      std::size_t chosen = 0;
      for (std::size_t i = 1; i < request_.grid.size(); ++i)
        if (pair(chooser, i) > pair(chooser, chosen)) chosen = i;
      value += pair(2 - chooser, chosen) / 2;
    }
    return value;
  }

  void finish(BeamMap& map, std::size_t peak, double rms, int rounds) const {
    const auto azimuths = static_cast<std::size_t>(request_.grid.azimuths);
    map.peak_cd = map.cd.empty() ? 0 : map.cd[peak];
    map.peak_azimuth = static_cast<int>(peak % azimuths);
    map.peak_elevation = static_cast<int>(peak / azimuths);
    map.error = map.peak_cd > 0 ? rms / map.peak_cd : 0;
    double glass = 0;
    for (const BeamSum& set : sets_) {
      map.bound_cd += set.bound[peak] / rounds / kSets;
      glass += set.glass[peak] / rounds / kSets;
      map.spots += set.spots;
      map.exact_spots += set.exact;
    }
    map.glass_mm = map.peak_cd > 0 ? glass / map.peak_cd : 0;
  }

  void add_spots(const PanelClass& group, const std::vector<ApertureSpot>& spots, BeamSum& to) const {
    const std::size_t blocks = (spots.size() + kBlock - 1) / kBlock;
    std::vector<BeamSum> sums(blocks, BeamSum(request_.grid.size()));
    tbb::parallel_for(std::size_t{0}, blocks, [&](std::size_t b) {
      const std::size_t end = std::min(spots.size(), (b + 1) * kBlock);
      for (std::size_t i = b * kBlock; i < end; ++i) add_spot(group, spots[i], colour_of(i), sums[b]);
    });
    // Always in the same order, so that the sum is the same to the last bit.
    for (const BeamSum& sum : sums) to.add(sum);
  }

  /// One colour for each spot, by their weights: neighbours on a face take turns, so that a light of several
  /// colours costs no more than one.
  [[nodiscard]] const GlassRules& colour_of(std::size_t spot) const {
    constexpr double kGolden = 0.6180339887498949;
    double share = std::fmod((static_cast<double>(spot) + 0.5) * kGolden, 1.0);
    for (const BeamColour& colour : request_.colours) {
      if (share < colour.weight) return colour.glass;
      share -= colour.weight;
    }
    return request_.colours.back().glass;
  }

  void add_spot(const PanelClass& group, const ApertureSpot& spot, const GlassRules& glass,
                BeamSum& sum) const {
    const BeamPainter painter(request_.grid);
    const PathFinder finder(lens_, glass);
    const auto patch = BeamPatch::make(finder, *group.panel, spot, lamp_);
    ++sum.spots;
    if (!patch) return;
    if (!patch->smooth()) ++sum.exact;
    if (spot.alike) return painter.paint_turned(*patch, group.places, lamp_.luminance_cd_mm2(), sum);
    for (const PaintPlace& place : group.places) painter.paint(*patch, place, lamp_.luminance_cd_mm2(), sum);
  }

  const LightLens& lens_;
  const LampBody& lamp_;
  const BeamRequest& request_;
  std::vector<PanelClass> classes_;
  std::vector<BeamSum> sets_;
};

}  // namespace

double BeamMap::at_deg(double azimuth_deg, double elevation_deg) const {
  const double x = (azimuth_deg - grid.azimuth_from_deg) / grid.azimuth_step_deg;
  const double y = (elevation_deg - grid.elevation_from_deg) / grid.elevation_step_deg;
  if (!(x >= 0 && y >= 0 && x <= grid.azimuths - 1 && y <= grid.elevations - 1)) return 0;
  const int i = std::min(static_cast<int>(x), std::max(0, grid.azimuths - 2));
  const int k = std::min(static_cast<int>(y), std::max(0, grid.elevations - 2));
  const int i2 = std::min(i + 1, grid.azimuths - 1);
  const int k2 = std::min(k + 1, grid.elevations - 1);
  const double u = x - i;
  const double v = y - k;
  return (1 - u) * ((1 - v) * at(i, k) + v * at(i, k2)) + u * ((1 - v) * at(i2, k) + v * at(i2, k2));
}

Outcome<BeamMap> beam_map(const LightLens& lens, const LampBody& lamp, const BeamRequest& request,
                          const Progress& progress, const BeamWatcher& watcher) {
  Rounds rounds(lens, lamp, request);
  BeamMap map;
  for (int round = 0; round < request.most_rounds; ++round) {
    if (!rounds.add_round(round, progress))
      return Problem{Trouble::stopped, "stopped", "light", "The beam was stopped."};
    map = rounds.map(round + 1);
    const bool met = map.error <= request.wanted_error && map.peak_error <= request.wanted_peak_error;
    map.reached = map.peak_cd == 0 || (round > 0 && met);
    if (watcher) watcher(map);
    if (map.reached) break;
  }
  return map;
}

BeamFlux beam_flux(const LightLens& lens, const LampBody& lamp, const BeamRequest& request, int spots) {
  constexpr int kSteps = 24;
  std::array<double, kSets> sets{};
  for (const PanelClass& group : classes_of(lens, lamp, request, false)) {
    double factors = 0;
    for (const PaintPlace& place : group.places) factors += place.factor;
    for (int set = 0; set < kSets; ++set) {
      std::vector<ApertureSpot> all;
      group.spots.append(0, spots, static_cast<std::uint64_t>(set), all);
      std::vector<double> flux(all.size());
      const EvenNumbers<2> shares(static_cast<std::uint64_t>(set) + 77);
      tbb::parallel_for(std::size_t{0}, all.size(), [&](std::size_t i) {
        for (const BeamColour& colour : request.colours) {
          const PathFinder finder(lens, colour.glass);
          const auto patch = BeamPatch::make(finder, *group.panel, all[i], lamp);
          const auto [azimuth, elevation] = shares.at(static_cast<long>(i));
          if (patch) flux[i] += colour.weight * patch->flux_lm(kSteps, azimuth, elevation);
        }
      });
      for (const double lm : flux) sets[static_cast<std::size_t>(set)] += factors * lm;
    }
  }
  BeamFlux result;
  for (const double lm : sets) result.lm += lm / kSets;
  double squares = 0;
  for (const double lm : sets) squares += (lm - result.lm) * (lm - result.lm);
  result.error_lm = std::sqrt(squares / (kSets * (kSets - 1)));
  return result;
}

}  // namespace prismwright
