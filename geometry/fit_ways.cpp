#include "geometry/fit_ways.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kClearOfRib_mm = 0.2;
constexpr double kMostOffRib_deg = 45;
constexpr double kMostRound_deg = 170;
constexpr double kPastTheOthers_deg = 2;
constexpr int kMostTries = 20;

double far_out_mm(const FitPanel& panel) {
  FitBox all = panel.ribs[0].bodies.front()->box();
  for (const FitUnit& unit : panel.prisms) {
    for (const auto& body : unit.bodies) {
      all.take(body->box().low);
      all.take(body->box().high);
    }
  }
  return 2 * length(all.high - all.low);
}

double outer_radius_mm(const FitUnit& unit) {
  double radius = 0;
  for (const auto& body : unit.bodies) {
    for (const SpacePoint& p : body->skin()) radius = std::max(radius, std::hypot(p.x, p.y));
  }
  return radius;
}

}  // namespace

FitWays::FitWays(const FitPanel& panel, int first_rib)
    : panel_(panel),
      first_(first_rib),
      far_mm_(far_out_mm(panel)),
      way_round_(cross(panel.faces[first_rib].seaward, panel.faces[first_rib].inward).z > 0 ? 1 : -1) {}

// By how much the place that is deepest in the rib at the end of a leg falls short of standing clear of it.
double FitWays::short_of_clear_mm(const FitUnit& unit, const FitLeg& leg) const {
  double short_mm = -far_mm_;
  for (const auto& body : unit.bodies) {
    for (const SpacePoint& p : body->skin()) {
      const SpacePoint there = leg.place_at(p, leg.length_mm());
      short_mm = std::max(short_mm, face().inner_face_mm - dot(face().inward, there - SpacePoint{}));
    }
  }
  return short_mm + kClearOfRib_mm;
}

double FitWays::held_mm(const FitUnit& unit) const {
  return std::clamp(short_of_clear_mm(unit, FitLeg::straight({})) - kClearOfRib_mm, 0.0, face().inner_face_mm);
}

double FitWays::off_rib_mm(const FitUnit& unit, FitWay way) const {
  if (way == FitWay::from_sea_then_in || way == FitWay::from_lamp_then_in) {
    return held_mm(unit) + kClearOfRib_mm;
  }
  if (way != FitWay::from_sea_then_round && way != FitWay::from_lamp_then_round) return 0;
  const FitPath off = off_round(unit);
  return off.empty() ? 0 : off.front().length_mm();
}

FitPath FitWays::off_round(const FitUnit& unit) const {
  const double radius = outer_radius_mm(unit);
  double angle = 0;
  for (int i = 0; i < kMostTries && angle < radians(kMostOffRib_deg); ++i) {
    const FitLeg leg = FitLeg::swing(way_round_ * angle, radius);
    const double short_mm = short_of_clear_mm(unit, leg);
    if (short_mm < kFitTouch_mm) return {leg};
    angle += short_mm / radius;
  }
  return {};
}

// Past the open side, where the wedge between the side planes holds all others, it stands free.
FitPath FitWays::all_round(const FitUnit& unit) const {
  const double width = std::acos(std::clamp(dot(panel_.faces[0].seaward, panel_.faces[1].seaward), -1.0, 1.0));
  const double angle = width + radians(kPastTheOthers_deg);
  if (angle > radians(kMostRound_deg)) return {};
  return {FitLeg::swing(way_round_ * angle, outer_radius_mm(unit))};
}

FitPath FitWays::path(const FitUnit& unit, FitWay way) const {
  const FitLeg seaward = FitLeg::straight(far_mm_ * face().seaward);
  switch (way) {
    case FitWay::from_sea:
      return {FitLeg::straight({far_mm_, 0, 0})};
    case FitWay::from_lamp:
      return {FitLeg::straight({-far_mm_, 0, 0})};
    case FitWay::from_sea_then_in:
    case FitWay::from_lamp_then_in:
      return {FitLeg::straight(off_rib_mm(unit, way) * face().inward),
              way == FitWay::from_sea_then_in ? seaward : seaward.back()};
    case FitWay::from_sea_then_round:
    case FitWay::from_lamp_then_round: {
      FitPath path = off_round(unit);
      if (!path.empty()) path.push_back(way == FitWay::from_sea_then_round ? seaward : seaward.back());
      return path;
    }
    case FitWay::round_the_axis:
      return unit.about_lens ? all_round(unit) : FitPath{};
    default:
      return {FitLeg::straight(far_mm_ * face().inward)};
  }
}

}  // namespace prismwright
