#include "core/light/prism_way.h"

#include <algorithm>

#include "core/optics/space_refraction.h"

namespace prismwright {

namespace {

constexpr double kStepOff_mm = 1e-6;

/// Where a ray meets a face that may be ground wrongly.
std::optional<BodyHit> meet(const LightBody& body, const SpaceRay& ray, FaceRole role,
                            const WrongPrism& wrong) {
  if (wrong.face != role) return body.meet_role(ray, role, kStepOff_mm);
  auto hit = body.meet_role(wrong.ground.back(ray), role, kStepOff_mm);
  if (hit) hit->outward = wrong.ground.turned(hit->outward);
  return hit;
}

}  // namespace

std::optional<SpaceRay> PrismWay::walk(FarDirection to, const WrongPrism& wrong, Met* met) const {
  const LightBody& body = *spot_.body;
  SpacePoint at = spot_.at;
  SpaceVector outward = spot_.outward;
  if (wrong.face == spot_.role) {
    at = wrong.ground.moved(at);
    outward = wrong.ground.turned(outward);
  }
  const auto note = [met](SpacePoint place, FaceRole role) {
    if (!met) return;
    met->at[static_cast<std::size_t>(met->count)] = place;
    met->role[static_cast<std::size_t>(met->count++)] = role;
  };
  SpaceRay ray{at, wrong.body.back(-direction_at(to.azimuth, to.elevation))};
  if (dot(ray.along, outward) >= 0) return std::nullopt;
  note(at, spot_.role);
  ray.along = refract(ray.along, outward, 1, wrong.index).along;
  const bool reflecting = spot_.role == FaceRole::exit;
  if (reflecting) {
    const auto hit = meet(body, ray, FaceRole::reflecting, wrong);
    if (!hit) return std::nullopt;
    ray = {place_on(ray, hit->along_mm), unit(reflect(ray.along, hit->outward))};
    note(ray.from, FaceRole::reflecting);
  }
  const FaceRole last = reflecting ? FaceRole::entry : FaceRole::inner;
  const auto hit = meet(body, ray, last, wrong);
  if (!hit) return std::nullopt;
  const Refracted out = refract(ray.along, hit->outward, wrong.index, 1);
  if (out.total) return std::nullopt;
  ray = {place_on(ray, hit->along_mm), out.along};
  note(ray.from, last);
  return wrong.body.moved(ray);
}

std::optional<SpaceRay> PrismWay::back(FarDirection to, const WrongPrism& wrong) const {
  return walk(to, wrong, nullptr);
}

std::optional<PrismWay::Met> PrismWay::met(FarDirection to, double index) const {
  Met met;
  WrongPrism planned;
  planned.index = index;
  if (!walk(to, planned, &met)) return std::nullopt;
  std::reverse(met.at.begin(), met.at.begin() + met.count);
  std::reverse(met.role.begin(), met.role.begin() + met.count);
  return met;
}

}  // namespace prismwright
