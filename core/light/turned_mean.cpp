#include "core/light/turned_mean.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr int kSteps = 64;     ///< over the window of a smooth patch
constexpr int kFewSteps = 16;  ///< where every direction is traced
/// Of the angle under which the lamp is seen from the glass: rays inside the glass and before it turn no
/// further.
constexpr double kWiden = 1.25;
constexpr double kMore = 0.005;  ///< radians that the sides are kept away further
constexpr double kBack = 0.005;  ///< by which a range is narrowed until its ends hold glass

/// Greatest distance of what shines from the lens axis; blank when the lamp is not round about it.
std::optional<double> round_lamp(const LampBody& lamp) {
  if (lamp.parts().size() != 1) return std::nullopt;
  const LampPart& part = lamp.parts().front();
  if (std::hypot(part.middle.x, part.middle.y) > 0) return std::nullopt;
  if (part.shape == LampShape::tile) return std::nullopt;
  if (part.shape == LampShape::disc && std::abs(part.facing.z) < 1) return std::nullopt;
  return part.width_mm / 2;
}

bool on_the_lens_axis(const LightBody& body) {
  const SpaceFrame& frame = body.frame();
  return body.turning() == TurningAxis::lens && std::hypot(frame.first.x, frame.first.y) < 1e-12 &&
         std::hypot(frame.origin.x, frame.origin.y) < 1e-12;
}

bool whole_at(const LightBody& body, double angle) {
  for (const TurnedFace& face : body.faces())
    for (const double share : {0.001, 0.5, 0.999})
      if (!body.place(face, share, angle)) return false;
  return true;
}

}  // namespace

std::optional<LightBody::Angles> alike_azimuths(const LightBody& body, const LampBody& lamp) {
  const auto wide = round_lamp(lamp);
  if (!wide || body.metal() || !on_the_lens_axis(body) || body.flat_inside()) return std::nullopt;
  double nearest = 1e300;
  for (const TurnedFace& face : body.faces())
    nearest = std::min({nearest, face.place(0).off, face.place(1).off});
  if (!(*wide < 0.5 * nearest)) return std::nullopt;
  LightBody::Angles alike = body.angles();
  while (alike.from < alike.to && !(whole_at(body, alike.from) && whole_at(body, alike.to)))
    alike = {alike.from + kBack, alike.to - kBack};
  const double away = kWiden * std::asin(*wide / nearest) + kMore;
  alike = {alike.from + away, alike.to - away};
  if (alike.from >= alike.to) return std::nullopt;
  return alike;
}

TurnedMean::TurnedMean(const BeamPatch& patch, double elevation, double first)
    : shift_{patch.spot().alike->from - patch.spot().angle, patch.spot().alike->to - patch.spot().angle} {
  const int steps = patch.smooth() ? kSteps : kFewSteps;
  const double half = patch.half_width().azimuth;
  start_ = patch.middle().azimuth - half;
  step_ = 2 * half / steps;
  window_ = {start_ + shift_.from, start_ + 2 * half + shift_.to};
  cd_.push_back(0);
  lit_mm2_.push_back(0);
  for (int i = 0; i < steps; ++i) {
    const FarDirection to{start_ + (i + first) * step_, elevation};
    const double cd = patch.intensity_cd(to);
    const double facing = cd > 0 ? patch.facing(to) : 0;
    cd_.push_back(cd_.back() + cd * step_);
    lit_mm2_.push_back(lit_mm2_.back() + facing * patch.spot().area_mm2 * step_);
  }
}

double TurnedMean::mean(const Rising& sum, double azimuth) const {
  const auto upto = [&](double x) {
    const double at = std::clamp((x - start_) / step_, 0.0, static_cast<double>(sum.size() - 1));
    const auto i = std::min(static_cast<std::size_t>(at), sum.size() - 2);
    return sum[i] + (at - static_cast<double>(i)) * (sum[i + 1] - sum[i]);
  };
  return (upto(azimuth - shift_.from) - upto(azimuth - shift_.to)) / (shift_.to - shift_.from);
}

}  // namespace prismwright
