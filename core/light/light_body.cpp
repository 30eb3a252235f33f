#include "core/light/light_body.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/profile.h"

namespace prismwright {

namespace {

constexpr double kOutlineChord_mm = 0.002;
constexpr double kCutSlack_mm = 1e-7;

Profile above_axis(const PlannedPrism& prism) {
  if (prism.turning == TurningAxis::lens) return prism.profile;
  double low = 0;
  for (const Face& face : prism.profile.faces)
    for (const SectionPoint p : face.points) low = std::min(low, p.z);
  return low < -1e-9 ? mirrored(prism.profile) : prism.profile;
}

SpaceFrame frame_of(const PlannedPrism& prism) {
  if (prism.turning == TurningAxis::lens) return {{}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}};
  const double dip = radians(prism.axis_dip_deg);
  return {{0, 0, prism.axis_z_mm},
          {std::cos(dip), 0, -std::sin(dip)},
          {0, 1, 0},
          {std::sin(dip), 0, std::cos(dip)}};
}

Profile rectangle(const SectionRib& rib) {
  const SectionPoint a = rib.low;
  const SectionPoint c = rib.high;
  const SectionPoint b{c.r, a.z};
  const SectionPoint d{a.r, c.z};
  return {{straight_face(FaceRole::land, a, b), straight_face(FaceRole::land, b, c),
           straight_face(FaceRole::land, c, d), straight_face(FaceRole::land, d, a)}};
}

}  // namespace

void SpaceBox::take_in(SpacePoint p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
}

void SpaceBox::take_in(const SpaceBox& box) {
  take_in(box.low);
  take_in(box.high);
}

bool SpaceBox::meets(const SpaceRay& ray, double most_mm) const {
  double from = 0;
  double to = most_mm;
  const auto slab = [&](double start, double d, double a, double b) {
    const double inverse = 1 / d;
    const double one = (a - start) * inverse;
    const double other = (b - start) * inverse;
    from = std::max(from, std::min(one, other));
    to = std::min(to, std::max(one, other));
  };
  // A ray within a slab's plane divides by zero: the infinities and the NaN keep or close the span rightly but
  // on the very face, which the boxes' margin covers.
  slab(ray.from.x, ray.along.x, low.x, high.x);
  slab(ray.from.y, ray.along.y, low.y, high.y);
  slab(ray.from.z, ray.along.z, low.z, high.z);
  return from <= to;
}

LightBody::LightBody(const PlannedPrism& prism)
    : mark_(prism.mark),
      zone_(prism.zone),
      kind_(prism.kind),
      turning_(prism.turning),
      frame_(frame_of(prism)) {
  const Profile profile = above_axis(prism);
  faces_ = TurnedFace::pieces_of(profile, turning_);
  for (const SectionPoint p : polygon_of(profile, kOutlineChord_mm)) outline_.push_back(turned(p, turning_));
  lay_cuts(prism);
  lay_bounds(prism.trim);
}

LightBody::LightBody(const SectionRib& rib, const PlannedPrism& like)
    : LightBody([&] {
        PlannedPrism metal = like;
        metal.mark = metal.zone = rib.mark;
        metal.profile = rectangle(rib);
        // Ribs lie in the section's own frame, above or below the focal plane.
        metal.axis_z_mm = metal.axis_dip_deg = 0;
        metal.trim.half = rib.low.z >= 0 ? Half::upper : Half::lower;
        metal.trim.half_gap_mm = 0;
        metal.trim.flat_inner_mm.reset();
        return metal;
      }()) {
  metal_ = true;
}

void LightBody::lay_cuts(const PlannedPrism& prism) {
  const Trim& trim = prism.trim;
  const auto add = [&](SpaceVector inward, double least, std::optional<FaceRole> role) {
    const SpaceVector from_origin = frame_.origin - SpacePoint{};
    cuts_.push_back({frame_.into(inward), least - dot(inward, from_origin), role});
  };
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  add({-std::sin(a), std::cos(a), 0}, trim.set_back_mm, std::nullopt);
  add({std::sin(b), -std::cos(b), 0}, trim.set_back_mm, std::nullopt);
  if (turning_ == TurningAxis::lens) {
    if (trim.flat_inner_mm) add({1, 0, 0}, *trim.flat_inner_mm, FaceRole::inner);
    return;
  }
  // The level cut of a half leans with a dipping axis, as the solids have it.
  if (trim.half == Half::upper) cuts_.push_back({{0, 0, 1}, trim.half_gap_mm, std::nullopt});
  if (trim.half == Half::lower) cuts_.push_back({{0, 0, -1}, trim.half_gap_mm, std::nullopt});
}

/// A box and a span of angles that hold the body for certain.
void LightBody::lay_bounds(const Trim& trim) {
  low_ = high_ = outline_.front();
  for (const TurnPoint p : outline_) {
    low_ = {std::min(low_.along, p.along), std::min(low_.off, p.off)};
    high_ = {std::max(high_.along, p.along), std::max(high_.off, p.off)};
  }
  low_ = {low_.along - 0.01, std::max(0.0, low_.off - 0.01)};
  high_ = {high_.along + 0.01, high_.off + 0.01};
  box_ = {};
  angles_ = {-kPi, kPi};
  if (turning_ == TurningAxis::lens) {
    angles_ = {radians(trim.clockwise_side_deg) - 0.02, radians(trim.anticlockwise_side_deg) + 0.02};
  } else if (trim.half != Half::whole) {
    angles_ = trim.half == Half::upper ? Angles{0, kPi} : Angles{-kPi, 0};
  }
  // A cut that takes all four corners of the profile's box at an angle takes everything there. Angles a step
  // beyond are kept, and the box is a step wider: so it holds the body for certain.
  constexpr int kSteps = 720;
  const double step_mm = high_.off * (angles_.to - angles_.from) / kSteps + 0.02;
  for (int i = 0; i <= kSteps; ++i) {
    const double angle = angles_.from + (angles_.to - angles_.from) * i / kSteps;
    std::array<SpaceVector, 4> corners;
    for (std::size_t k = 0; k < 4; ++k) {
      const double off = k < 2 ? low_.off : high_.off;
      corners[k] = {k % 2 ? low_.along : high_.along, off * std::cos(angle), off * std::sin(angle)};
    }
    const bool away = std::any_of(cuts_.begin(), cuts_.end(), [&](const KeptSide& cut) {
      return std::all_of(corners.begin(), corners.end(),
                         [&](SpaceVector p) { return dot(cut.inward, p) < cut.least_mm - step_mm; });
    });
    if (away) continue;
    for (const SpaceVector p : corners) box_.take_in(frame_.out_of(SpacePoint{p.x, p.y, p.z}));
  }
  const SpaceVector grow{step_mm, step_mm, step_mm};
  box_.low = box_.low - grow;
  box_.high = box_.high + grow;
}

bool LightBody::kept(SpacePoint local, const KeptSide* but) const {
  const SpaceVector p{local.x, local.y, local.z};
  return std::all_of(cuts_.begin(), cuts_.end(), [&](const KeptSide& cut) {
    return &cut == but || dot(cut.inward, p) >= cut.least_mm - kCutSlack_mm;
  });
}

bool LightBody::in_profile(double along, double off) const {
  if (along < low_.along || along > high_.along || off < low_.off || off > high_.off) return false;
  bool inside = false;
  for (std::size_t i = 0, j = outline_.size() - 1; i < outline_.size(); j = i++) {
    const TurnPoint a = outline_[i];
    const TurnPoint b = outline_[j];
    if ((a.off > off) != (b.off > off) &&
        along < (b.along - a.along) * (off - a.off) / (b.off - a.off) + a.along)
      inside = !inside;
  }
  return inside;
}

std::optional<BodyHit> LightBody::meet(const SpaceRay& ray, double least_mm, double most_mm) const {
  const SpaceRay local = frame_.into(ray);
  const TurnRay turn(local);
  std::optional<BodyHit> first;
  double nearest = most_mm;
  for (const TurnedFace& face : faces_) {
    const TurnHits hits = face.meet(turn);
    for (int i = 0; i < hits.count; ++i) {
      const TurnHit& hit = hits.hits[i];
      if (hit.s <= least_mm || hit.s >= nearest) continue;
      const SpacePoint at = place_on(local, hit.s);
      if (!kept(at, nullptr)) continue;
      const double off = std::hypot(at.y, at.z);
      const double k = off > 0 ? hit.normal_off / off : 0;
      nearest = hit.s;
      first = BodyHit{hit.s, frame_.out_of(SpaceVector{hit.normal_along, k * at.y, k * at.z}), face.role()};
    }
  }
  for (const KeptSide& cut : cuts_) {
    const double towards = dot(cut.inward, local.along);
    if (std::abs(towards) < 1e-12) continue;
    const double s = (cut.least_mm - dot(cut.inward, local.from - SpacePoint{})) / towards;
    if (s <= least_mm || s >= nearest) continue;
    const SpacePoint at = place_on(local, s);
    if (!in_profile(at.x, std::hypot(at.y, at.z)) || !kept(at, &cut)) continue;
    nearest = s;
    first = BodyHit{s, frame_.out_of(-cut.inward), cut.role};
  }
  return first;
}

std::optional<LightBody::Place> LightBody::place(const TurnedFace& face, double share, double angle) const {
  const TurnPoint p = face.place(share);
  const SpacePoint local{p.along, p.off * std::cos(angle), p.off * std::sin(angle)};
  if (!kept(local, nullptr)) return std::nullopt;
  const TurnPoint n = face.normal(share);
  const SpaceVector out{n.along, n.off * std::cos(angle), n.off * std::sin(angle)};
  return Place{frame_.out_of(local), frame_.out_of(out), face.speed_mm(share) * p.off};
}

}  // namespace prismwright
