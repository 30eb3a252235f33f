#include "core/light/beam_patch.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kWider = 1.08;  ///< of the window, over what the lamp's size asks
constexpr double kFirstWindow = 2;
constexpr double kTurn = 1e-4;  ///< radians, for the slopes that find the window
constexpr int kOrder = 4;       ///< rays to each side of the fit
constexpr double kFar_mm = 1e9;
constexpr double kGrazing = 1e-4;  ///< cosine at which light hardly leaves a face

/// Chebyshev's places, and the matrix that turns values there into the terms of a polynomial.
struct Fit {
  std::array<double, kOrder> places;
  std::array<std::array<double, kOrder>, kOrder> terms;  ///< terms[power][place]

  Fit() {
    for (int i = 0; i < kOrder; ++i) places[i] = std::cos(kPi * (2 * i + 1) / (2 * kOrder));
    for (int place = 0; place < kOrder; ++place) {
      // Lagrange's polynomial of the place, multiplied out.
      std::array<double, kOrder> polynomial{1};
      int degree = 0;
      double scale = 1;
      for (int other = 0; other < kOrder; ++other) {
        if (other == place) continue;
        ++degree;
        for (int power = degree; power >= 0; --power)
          polynomial[power] = (power > 0 ? polynomial[power - 1] : 0) - places[other] * polynomial[power];
        scale *= places[place] - places[other];
      }
      for (int power = 0; power < kOrder; ++power) terms[power][place] = polynomial[power] / scale;
    }
  }
};
const Fit& the_fit() {
  static const Fit fit;
  return fit;
}

double wrapped(double azimuth) { return std::remainder(azimuth, 2 * kPi); }

}  // namespace

BeamPatch::BeamPatch(const PathFinder& finder, const PanelInLight& panel, const ApertureSpot& spot,
                     const LampBody& lamp)
    : finder_(&finder),
      panel_(&panel),
      lamp_(&lamp),
      spot_(spot),
      to_lens_(panel.frame()),
      at_(to_lens_.out_of(spot.at)),
      outward_(to_lens_.out_of(spot.outward)) {}

std::optional<BeamPatch> BeamPatch::make(const PathFinder& finder, const PanelInLight& panel,
                                         const ApertureSpot& spot, const LampBody& lamp) {
  BeamPatch patch(finder, panel, spot, lamp);
  if (!patch.find_window()) return std::nullopt;
  patch.smooth_ = patch.fit();
  return patch;
}

std::optional<BeamPatch::Back> BeamPatch::back(FarDirection to) const {
  const SpaceVector out = to_lens_.out_of(direction_at(to.azimuth, to.elevation));
  if (dot(out, outward_) < kGrazing) return std::nullopt;
  const LightPath path = finder_->cross_one({at_, -out}, *panel_, *spot_.body, outward_, spot_.role);
  if (path.end != PathEnd::free || !path.own_way) return std::nullopt;
  const double towards = dot(path.last.along, plane_.third);
  if (towards <= 0.1) return std::nullopt;
  const double reach = dot(plane_.origin - path.last.from, plane_.third) / towards;
  if (reach <= 0) return std::nullopt;
  const SpaceVector met = place_on(path.last, reach) - plane_.origin;
  return Back{dot(met, plane_.first),
              dot(met, plane_.second),
              dot(path.last.along, plane_.first) / towards,
              dot(path.last.along, plane_.second) / towards,
              path.through,
              path.glass_mm,
              path.last,
              std::max(1e-3, reach - lamp_->radius_mm())};
}

/// Whether nothing stands between glass and lamp, nor before the glass.
bool BeamPatch::is_free(const Back& ray, FarDirection to) const {
  const SpaceVector out = to_lens_.out_of(direction_at(to.azimuth, to.elevation));
  return finder_->is_free(ray.last, ray.clear_mm) && finder_->is_free({at_, out}, kFar_mm);
}

/// Turns the direction until the ray sent back meets the lamp's middle, then takes the window from how the ray
/// moves at the lamp as the direction turns.
bool BeamPatch::find_window() {
  const SpacePoint lamp = lamp_->middle();
  const SpaceVector towards = unit(lamp - at_);
  const SpaceVector level =
      std::abs(towards.z) > 0.999 ? SpaceVector{0, 1, 0} : unit(cross({0, 0, 1}, towards));
  plane_ = {lamp, level, cross(towards, level), towards};
  const double radius = lamp_->radius_mm();
  const double seen_from_spot = std::asin(std::min(1.0, radius / length(lamp - at_)));
  middle_ = {spot_.body->turning() == TurningAxis::lens ? spot_.angle : 0, 0};
  half_ = {kFirstWindow * seen_from_spot, kFirstWindow * seen_from_spot};
  for (int turn = 0; turn < 6; ++turn) {
    const auto here = back(middle_);
    if (!here) return true;  // traced exactly all over the first window
    const auto aside = back({middle_.azimuth + kTurn, middle_.elevation});
    const auto above = back({middle_.azimuth, middle_.elevation + kTurn});
    if (!aside || !above) return true;
    const double xa = (aside->x - here->x) / kTurn;
    const double ya = (aside->y - here->y) / kTurn;
    const double xe = (above->x - here->x) / kTurn;
    const double ye = (above->y - here->y) / kTurn;
    const double det = xa * ye - xe * ya;
    if (std::abs(det) < 1) return true;
    glass_mm_ = here->glass_mm;
    const double step_a = -(ye * here->x - xe * here->y) / det;
    const double step_e = -(xa * here->y - ya * here->x) / det;
    middle_.azimuth += std::clamp(step_a, -0.1, 0.1);
    middle_.elevation += std::clamp(step_e, -0.1, 0.1);
    half_ = {kWider * radius * std::hypot(ye, xe) / std::abs(det),
             kWider * radius * std::hypot(xa, ya) / std::abs(det)};
    if (std::hypot(step_a * std::cos(middle_.elevation), step_e) < 0.02 * seen_from_spot) break;
  }
  // A prism set so far off that none of the lamp is seen within a quarter turn gives nothing.
  return std::abs(middle_.elevation) < 1.5 && half_.azimuth < 1 && half_.elevation < 1;
}

bool BeamPatch::fit() {
  const Fit& fit = the_fit();
  std::array<std::array<double, 5>, kOrder * kOrder> values;
  for (int i = 0; i < kOrder; ++i) {
    for (int k = 0; k < kOrder; ++k) {
      // A shadow that leaves all four corners and the midst free is too narrow to matter.
      const bool corner = i % (kOrder - 1) == 0 && k % (kOrder - 1) == 0;
      const FarDirection to{middle_.azimuth + half_.azimuth * fit.places[i],
                            middle_.elevation + half_.elevation * fit.places[k]};
      const auto ray = back(to);
      if (!ray) return false;
      if ((corner || (i == 1 && k == 1)) && !is_free(*ray, to)) return false;
      values[i * kOrder + k] = {ray->x, ray->y, ray->slope_x, ray->slope_y, ray->through};
    }
  }
  for (int p = 0; p < kOrder; ++p) {
    for (int q = 0; q < kOrder; ++q) {
      auto& term = terms_[p * kOrder + q];
      term.fill(0);
      for (int i = 0; i < kOrder; ++i)
        for (int k = 0; k < kOrder; ++k)
          for (int c = 0; c < 5; ++c) term[c] += fit.terms[p][i] * fit.terms[q][k] * values[i * kOrder + k][c];
    }
  }
  return true;
}

double BeamPatch::seen(const Back& ray, SpaceVector to) const {
  const SpaceRay line{plane_.origin + ray.x * plane_.first + ray.y * plane_.second,
                      unit(plane_.third + ray.slope_x * plane_.first + ray.slope_y * plane_.second)};
  const double luminance = lamp_->luminance_along(line);
  return luminance == 0 ? 0 : luminance * ray.through * spot_.area_mm2 * std::max(0.0, dot(to, outward_));
}

double BeamPatch::facing(FarDirection to) const {
  return std::max(0.0, dot(to_lens_.out_of(direction_at(to.azimuth, to.elevation)), outward_));
}

double BeamPatch::intensity_cd(FarDirection to) const {
  const double a = wrapped(to.azimuth - middle_.azimuth) / half_.azimuth;
  const double e = (to.elevation - middle_.elevation) / half_.elevation;
  if (std::abs(a) > 1 || std::abs(e) > 1) return 0;
  const SpaceVector out = to_lens_.out_of(direction_at(to.azimuth, to.elevation));
  if (!smooth_) {
    const auto ray = back(to);
    const double cd = ray ? seen(*ray, out) : 0;
    return cd > 0 && is_free(*ray, to) ? cd : 0;
  }
  std::array<double, 5> sum{};
  for (int p = kOrder - 1; p >= 0; --p) {
    std::array<double, 5> row = terms_[p * kOrder + kOrder - 1];
    for (int q = kOrder - 2; q >= 0; --q)
      for (int c = 0; c < 5; ++c) row[c] = row[c] * e + terms_[p * kOrder + q][c];
    for (int c = 0; c < 5; ++c) sum[c] = sum[c] * a + row[c];
  }
  return seen({sum[0], sum[1], sum[2], sum[3], sum[4], 0, {}, 0}, out);
}

double BeamPatch::flux_lm(int steps, double first_azimuth, double first_elevation) const {
  double sum = 0;
  for (int i = 0; i < steps; ++i) {
    for (int k = 0; k < steps; ++k) {
      const FarDirection to{middle_.azimuth + half_.azimuth * (2 * (i + first_azimuth) / steps - 1),
                            middle_.elevation + half_.elevation * (2 * (k + first_elevation) / steps - 1)};
      sum += intensity_cd(to) * std::cos(to.elevation);
    }
  }
  return sum * 4 * half_.azimuth * half_.elevation / (static_cast<double>(steps) * steps);
}

}  // namespace prismwright
