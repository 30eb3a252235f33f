#include "tests/bench/other_beams.h"

#include "core/light/beam_map.h"
#include "core/light/lamp_body.h"
#include "core/light/light_lens.h"

namespace prismwright::bench {

namespace {

constexpr double kWantedError = 0.005;  ///< as the rays are asked for

/// The program's own beam, everything that it must make ready included.
std::vector<double> own_beam(const LensPlan& plan, const TraceOrder& order) {
  Lamp lamp;
  lamp.shape = order.lamp.sphere ? LampShape::sphere : LampShape::cylinder;
  lamp.width_mm = order.lamp.width_mm;
  lamp.height_mm = order.lamp.height_mm;
  lamp.known = LampKnown::luminance;
  lamp.luminance_cd_mm2 = order.lamp.luminance_cd_mm2;
  const auto body = LampBody::make(lamp);
  if (!body) return {};
  BeamRequest request;
  request.grid = {order.grid.azimuth_from_deg,   order.grid.azimuth_step_deg,   order.grid.azimuths,
                  order.grid.elevation_from_deg, order.grid.elevation_step_deg, order.grid.elevations};
  request.colours = {{{order.index, order.absorption_per_mm}, 1}};
  request.wanted_error = request.wanted_peak_error = kWantedError;
  const auto map = beam_map(LightLens(plan), *body, request);
  return map ? map->cd : std::vector<double>{};
}

}  // namespace

const std::vector<OtherBeam>& other_beams() {
  static const std::vector<OtherBeam> all = {{"beam map", own_beam}};
  return all;
}

}  // namespace prismwright::bench
