#include "core/light/prism_spots.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/light/even_numbers.h"

namespace prismwright {

namespace {

constexpr double kPanelSector = 0.35;  ///< radians about a panel's axis over which the turns are taken alike
constexpr double kLensSector = 0.05;   ///< about the lens axis
constexpr int kFewestSpots = 6;        ///< of a face in a sector
constexpr int kFluxSteps = 8;
constexpr double kWidened = 1.3;       ///< over what the lamp is seen wide: prisms widen a beam a little
constexpr double kTurnsBeyond = 0.05;  ///< radians by which errors may turn a beam in level, with room to spare

/// Azimuths of belt work that send light along the panel's axis, before and after an error.
LightBody::Angles azimuths_that_matter(const PanelInLight& panel, const LampBody& lamp) {
  double nearest = 1e300;
  for (const LightBody& body : panel.bodies) {
    if (body.turning() != TurningAxis::lens) continue;
    for (const TurnedFace& face : body.faces())
      nearest = std::min({nearest, face.place(0).off, face.place(1).off});
  }
  const double away = std::hypot(lamp.middle().x, lamp.middle().y) + lamp.radius_mm();
  const double seen = away < 0.5 * nearest ? kWidened * std::asin(away / nearest) + kTurnsBeyond : kPi;
  return {-seen, seen};
}

}  // namespace

PanelSpots::PanelSpots(const SpotsRequest& request, const PanelInLight& panel)
    : finder_(*request.lens, request.glass) {
  std::vector<const LightBody*> bodies;
  for (const LightBody& body : panel.bodies) {
    if (body.metal()) continue;
    bodies.push_back(&body);
    prisms_.push_back({body.mark(), body.zone(), body.kind(), {}, 0, {}, {}});
  }
  lay(panel, azimuths_that_matter(panel, *request.lamp), request.spots);
  seat_prisms(bodies);
  trace(panel, request);
  take_means();
}

void PanelSpots::lay(const PanelInLight& panel, const LightBody::Angles& azimuths, int spots) {
  const std::vector<ApertureFace> faces = aperture_of(panel, azimuths);
  double area = 0;
  for (const ApertureFace& face : faces) area += face.area_mm2;
  for (std::size_t f = 0; f < faces.size(); ++f) {
    const ApertureFace& face = faces[f];
    int prism = 0;
    for (std::size_t p = 0; p < prisms_.size(); ++p)
      if (prisms_[p].mark == face.body->mark()) prism = static_cast<int>(p);
    const bool about_lens = face.body->turning() == TurningAxis::lens;
    const double all = face.angles.to - face.angles.from;
    const int sectors =
        std::max(1, static_cast<int>(std::ceil(all / (about_lens ? kLensSector : kPanelSector))));
    const double turn = all / sectors;
    const int count =
        std::max(kFewestSpots, static_cast<int>(std::lround(spots * face.area_mm2 / area / sectors)));
    for (int sector = 0; sector < sectors; ++sector) {
      const EvenNumbers<2> numbers(f * 97 + static_cast<std::size_t>(sector));
      for (int i = 0; i < count; ++i) {
        const auto [share, turned] = numbers.at(i);
        const double angle = face.angles.from + turn * (sector + turned);
        const auto place = face.body->place(*face.face, share, angle);
        if (!place) continue;
        laid_.push_back({{face.body, face.face->role(), place->at, place->outward,
                          place->area_per_share_radian_mm2 * turn / count, angle},
                         prism,
                         sector});
      }
    }
  }
}

void PanelSpots::seat_prisms(const std::vector<const LightBody*>& bodies) {
  for (std::size_t p = 0; p < prisms_.size(); ++p) {
    double area = 0;
    SpaceVector sum{0, 0, 0};
    double off = 0;
    for (const Laid& laid : laid_) {
      if (laid.prism != static_cast<int>(p)) continue;
      const double share = laid.spot.area_mm2;
      area += share;
      sum = sum + share * (laid.spot.at - SpacePoint{});
      off += share * std::hypot(laid.spot.at.x, laid.spot.at.y);
    }
    if (area == 0) continue;
    PrismSeat& seat = prisms_[p].seat;
    seat.at = SpacePoint{} + (1 / area) * sum;
    if (bodies[p]->turning() == TurningAxis::panel) continue;
    const LightBody::Angles angles = bodies[p]->angles();
    const double azimuth = (angles.from + angles.to) / 2;
    seat.seaward = direction_at(azimuth, 0);
    seat.sideways = direction_at(azimuth + kPi / 2, 0);
    seat.at = SpacePoint{0, 0, seat.at.z} + (off / area) * seat.seaward;
  }
}

void PanelSpots::trace(const PanelInLight& panel, const SpotsRequest& request) {
  const SpacePoint lamp = panel.frame().into(request.lamp->middle());
  std::vector<std::optional<TurningSpot>> traced(laid_.size());
  tbb::parallel_for(std::size_t{0}, laid_.size(), [&](std::size_t i) {
    const Laid& laid = laid_[i];
    auto patch = BeamPatch::make(finder_, panel, laid.spot, *request.lamp);
    if (!patch) return;
    const double flux = patch->flux_lm(kFluxSteps, 0.5, 0.5);
    if (!(flux > 0)) return;
    const auto turns =
        beam_turns(laid.spot, patch->middle(), prisms_[static_cast<std::size_t>(laid.prism)].seat, lamp,
                   request.glass.index);
    if (turns) traced[i] = TurningSpot{laid.prism, laid.sector, *patch, flux, *turns};
  });
  for (auto& spot : traced)
    if (spot) spots_.push_back(std::move(*spot));
}

void PanelSpots::take_means() {
  for (const TurningSpot& spot : spots_) {
    TurningPrism& prism = prisms_[static_cast<std::size_t>(spot.prism)];
    prism.flux_lm += spot.flux_lm;
    for (std::size_t m = 0; m < kSettingMoves; ++m) {
      const BeamTurn& turn = spot.turns[m];
      prism.mean[m].level_deg += spot.flux_lm * turn.level_deg;
      prism.mean[m].upright_deg += spot.flux_lm * turn.upright_deg;
      prism.spread_deg[m] +=
          spot.flux_lm * (turn.level_deg * turn.level_deg + turn.upright_deg * turn.upright_deg);
    }
  }
  for (TurningPrism& prism : prisms_) {
    if (prism.flux_lm == 0) continue;
    for (std::size_t m = 0; m < kSettingMoves; ++m) {
      prism.mean[m].level_deg /= prism.flux_lm;
      prism.mean[m].upright_deg /= prism.flux_lm;
      prism.spread_deg[m] = std::sqrt(prism.spread_deg[m] / prism.flux_lm);
    }
  }
}

}  // namespace prismwright
