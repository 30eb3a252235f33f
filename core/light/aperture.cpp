#include "core/light/aperture.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/light/even_numbers.h"
#include "core/light/turned_mean.h"

namespace prismwright {

namespace {

constexpr int kAngleSteps = 120;
constexpr int kFewest = 2;
constexpr int kFewestAlike = 6;
constexpr double kLeastRange = 0.01;    ///< radians over which it is worth turning a spot
constexpr double kMiddleWeight = 0.25;  ///< a spot that stands for a whole range of angles needs few
constexpr double kEndWeight = 3;        ///< so more are left for the ends, where each sees other brass

/// The angles at which anything of the face is kept, a step wider than seen.
LightBody::Angles kept_angles(const LightBody& body, const TurnedFace& face) {
  const LightBody::Angles all = body.angles();
  const double step = (all.to - all.from) / kAngleSteps;
  LightBody::Angles kept{all.to, all.from};
  for (int i = 0; i <= kAngleSteps; ++i) {
    const double angle = all.from + step * i;
    for (const double share : {0.001, 0.5, 0.999}) {
      if (!body.place(face, share, angle)) continue;
      kept.from = std::min(kept.from, angle - step);
      kept.to = std::max(kept.to, angle + step);
    }
  }
  return {std::max(kept.from, all.from), std::min(kept.to, all.to)};
}

}  // namespace

std::vector<ApertureFace> aperture_of(const PanelInLight& panel, const LightBody::Angles& azimuths) {
  std::vector<ApertureFace> faces;
  for (const LightBody& body : panel.bodies) {
    if (body.metal()) continue;
    for (const TurnedFace& face : body.faces()) {
      if (face.role() != FaceRole::outer && face.role() != FaceRole::exit) continue;
      ApertureFace one{&body, &face, kept_angles(body, face), 0};
      if (body.turning() == TurningAxis::lens)
        one.angles = {std::max(one.angles.from, azimuths.from), std::min(one.angles.to, azimuths.to)};
      const double turn = one.angles.to - one.angles.from;
      if (!(turn > 0)) continue;
      one.area_mm2 = face.length_mm() * face.place(0.5).off * turn;
      faces.push_back(one);
    }
  }
  return faces;
}

ApertureSpots::ApertureSpots(const PanelInLight& panel, const LightBody::Angles& azimuths,
                             const LampBody& lamp) {
  for (const ApertureFace& face : aperture_of(panel, azimuths)) {
    auto alike = alike_azimuths(*face.body, lamp);
    if (alike) alike = {std::max(alike->from, face.angles.from), std::min(alike->to, face.angles.to)};
    if (!alike || alike->to - alike->from < kLeastRange) {
      add(face, face.area_mm2);
      continue;
    }
    const auto part = [&](double from, double to, bool middle) {
      ApertureFace piece = face;
      piece.angles = {from, to};
      piece.alike = middle;
      piece.area_mm2 = face.area_mm2 * (to - from) / (face.angles.to - face.angles.from);
      if (to > from) add(piece, piece.area_mm2 * (middle ? kMiddleWeight : kEndWeight));
    };
    part(face.angles.from, alike->from, false);
    part(alike->from, alike->to, true);
    part(alike->to, face.angles.to, false);
  }
}

void ApertureSpots::add(const ApertureFace& face, double weight) {
  faces_.push_back(face);
  weights_.push_back(weight);
  weight_ += weight;
}

int ApertureSpots::count_of(std::size_t face, int spots) const {
  const int fewest = faces_[face].alike ? kFewestAlike : kFewest;
  return std::max(fewest, static_cast<int>(std::lround(spots * weights_[face] / weight_)));
}

void ApertureSpots::append(int round, int spots, std::uint64_t shift, std::vector<ApertureSpot>& to) const {
  for (std::size_t f = 0; f < faces_.size(); ++f) {
    const ApertureFace& face = faces_[f];
    const int count = count_of(f, spots);
    const EvenNumbers<2> numbers(shift * 4099 + f);
    const double turn = face.angles.to - face.angles.from;
    for (int i = round * count; i < (round + 1) * count; ++i) {
      const auto [share, turned] = numbers.at(i);
      const double angle = face.angles.from + turn * turned;
      const auto place = face.body->place(*face.face, share, angle);
      if (!place) continue;
      to.push_back({face.body, face.face->role(), place->at, place->outward,
                    place->area_per_share_radian_mm2 * turn / count, angle, std::nullopt});
      if (face.alike) to.back().alike = face.angles;
    }
  }
}

}  // namespace prismwright
