#include "tests/bench/other_beams.h"

#include <fmt/format.h>

#include "core/light/beam_map.h"
#include "core/light/lamp_body.h"
#include "core/light/light_lens.h"

namespace prismwright::bench {

namespace {

LampBody body_of(const BenchLamp& bench_lamp) {
  Lamp lamp;
  lamp.shape = bench_lamp.sphere ? LampShape::sphere : LampShape::cylinder;
  lamp.width_mm = bench_lamp.width_mm;
  lamp.height_mm = bench_lamp.height_mm;
  lamp.known = LampKnown::luminance;
  lamp.luminance_cd_mm2 = bench_lamp.luminance_cd_mm2;
  return *LampBody::make(lamp);
}

/// The program's own beam, everything that it must make ready included. Each cell is seen in `finer` x `finer`
/// directions evenly spread over it: 1 for its middle alone.
OtherMap own_beam(const LensPlan& plan, const TraceOrder& order, double wanted_error, int finer) {
  const FarGrid& grid = order.grid;
  const auto from = [&](double middle, double step) { return middle - step * (finer - 1) / (2.0 * finer); };
  BeamRequest request;
  request.grid = {from(grid.azimuth_from_deg, grid.azimuth_step_deg),
                  grid.azimuth_step_deg / finer,
                  grid.azimuths * finer,
                  from(grid.elevation_from_deg, grid.elevation_step_deg),
                  grid.elevation_step_deg / finer,
                  grid.elevations * finer};
  request.colours = {{{order.index, order.absorption_per_mm}, 1}};
  request.wanted_error = request.wanted_peak_error = wanted_error;
  const auto map = beam_map(LightLens(plan), body_of(order.lamp), request);
  if (!map) return {{}, map.problem().text};
  std::vector<double> cd(static_cast<std::size_t>(grid.cells()));
  for (int k = 0; k < map->grid.elevations; ++k) {
    for (int i = 0; i < map->grid.azimuths; ++i) {
      cd[(k / finer) * grid.azimuths + i / finer] += map->at(i, k) / (finer * finer);
    }
  }
  return {cd, fmt::format("says {:.3f} % rms, {:.3f} % at its peak; {} spots", 100 * map->error,
                          100 * map->peak_error, map->spots)};
}

}  // namespace

const std::vector<OtherBeam>& other_beams() {
  static const std::vector<OtherBeam> all = {
      {"beam map to 0.5 %",
       [](const LensPlan& plan, const TraceOrder& order) { return own_beam(plan, order, 0.005, 1); }},
      {"beam map to 0.05 %",
       [](const LensPlan& plan, const TraceOrder& order) { return own_beam(plan, order, 0.0005, 1); }},
      {"beam map, means of cells",
       [](const LensPlan& plan, const TraceOrder& order) { return own_beam(plan, order, 0.0005, 4); }},
  };
  return all;
}

}  // namespace prismwright::bench
