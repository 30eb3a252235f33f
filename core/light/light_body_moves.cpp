#include <algorithm>
#include <cmath>
#include <limits>

#include "core/light/light_body.h"

namespace prismwright {

void LightBody::move(const RigidMove& move) {
  frame_ = {move.moved(frame_.origin), move.turned(frame_.first), move.turned(frame_.second),
            move.turned(frame_.third)};
  const SpaceBox before = box_;
  box_ = {};
  for (const double x : {before.low.x, before.high.x})
    for (const double y : {before.low.y, before.high.y})
      for (const double z : {before.low.z, before.high.z}) box_.take_in(move.moved(SpacePoint{x, y, z}));
}

std::optional<BodyHit> LightBody::meet_role(const SpaceRay& ray, FaceRole role, double least_mm) const {
  const SpaceRay local = frame_.into(ray);
  const TurnRay turn(local);
  std::optional<BodyHit> first;
  double nearest = std::numeric_limits<double>::infinity();
  for (const TurnedFace& face : faces_) {
    if (face.role() != role) continue;
    const TurnHits hits = face.meet(turn);
    for (int i = 0; i < hits.count; ++i) {
      const TurnHit& hit = hits.hits[i];
      if (hit.s <= least_mm || hit.s >= nearest) continue;
      nearest = hit.s;
      const SpacePoint at = place_on(local, hit.s);
      const double off = std::hypot(at.y, at.z);
      const double k = off > 0 ? hit.normal_off / off : 0;
      first = BodyHit{hit.s, frame_.out_of(SpaceVector{hit.normal_along, k * at.y, k * at.z}), role};
    }
  }
  for (const KeptSide& cut : cuts_) {
    const double towards = dot(cut.inward, local.along);
    if (cut.role != role || std::abs(towards) < 1e-12) continue;
    const double s = (cut.least_mm - dot(cut.inward, local.from - SpacePoint{})) / towards;
    if (s <= least_mm || s >= nearest) continue;
    nearest = s;
    first = BodyHit{s, frame_.out_of(-cut.inward), role};
  }
  return first;
}

std::optional<LightBody::FaceHinge> LightBody::hinge(FaceRole role, SpacePoint near) const {
  const SpacePoint local = frame_.into(near);
  const double off = std::hypot(local.y, local.z);
  const SpaceVector away = off > 0 ? SpaceVector{0, local.y / off, local.z / off} : SpaceVector{0, 1, 0};
  const bool about_lens = turning_ == TurningAxis::lens;
  const SpaceVector tangent = cross(SpaceVector{1, 0, 0}, away);
  for (const KeptSide& cut : cuts_) {
    if (cut.role != role) continue;
    // A flat inner face across belt work: its middle height is that of the profile.
    const SpacePoint middle{(low_.along + high_.along) / 2, local.y, local.z};
    return FaceHinge{frame_.out_of(middle), unit(cross(frame_.out_of(cut.inward), frame_.first))};
  }
  double most = -1;
  double least = std::numeric_limits<double>::infinity();
  TurnPoint low;
  TurnPoint high;
  for (const TurnedFace& face : faces_) {
    if (face.role() != role) continue;
    for (const double share : {0.0, 1.0}) {
      // Along a face of a prism the distance from the axis (height, in belt work) never turns back.
      const TurnPoint p = face.place(share);
      const double order = about_lens ? p.along : p.off;
      if (order > most || most < 0) high = p, most = order;
      if (order < least) low = p, least = order;
    }
  }
  if (!std::isfinite(least)) return std::nullopt;
  TurnPoint middle{(low.along + high.along) / 2, (low.off + high.off) / 2};
  if (kind_ == ZoneKind::centre && !about_lens)
    return FaceHinge{frame_.out_of(SpacePoint{middle.along, 0, 0}), -frame_.second};
  const SpaceVector place = middle.off * away;
  return FaceHinge{frame_.out_of(SpacePoint{middle.along, place.y, place.z}),
                   frame_.out_of(about_lens ? -tangent : tangent)};
}

}  // namespace prismwright
