#include "core/optics/face_path.h"

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr int kCurvePoints = 33;

SectionOffset turned(SectionOffset spoke, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * spoke.r - s * spoke.z, s * spoke.r + c * spoke.z};
}

}  // namespace

FacePath FacePath::straight(FaceRole role, SectionPoint from, SectionPoint to) {
  FacePath path;
  path.role_ = role;
  path.from_ = from;
  path.to_ = to;
  return path;
}

FacePath FacePath::arc(FaceRole role, SectionPoint from, SectionPoint to, SectionPoint centre) {
  FacePath path = straight(role, from, to);
  path.kind_ = FaceKind::arc;
  path.centre_ = centre;
  path.radius_mm_ = distance(from, centre);
  path.turn_ = std::atan2(cross(from - centre, to - centre), dot(from - centre, to - centre));
  return path;
}

FacePath FacePath::curve(FaceRole role, std::function<SectionPoint(double)> place,
                         std::function<SectionDirection(double)> tangent) {
  FacePath path;
  path.role_ = role;
  path.kind_ = FaceKind::true_curve;
  path.place_ = std::move(place);
  path.tangent_ = std::move(tangent);
  path.from_ = path.place_(0);
  path.to_ = path.place_(1);
  return path;
}

SectionPoint FacePath::place(double share) const {
  if (share == 0) return from_;
  if (share == 1) return to_;
  switch (kind_) {
    case FaceKind::straight:
      return between(from_, to_, share);
    case FaceKind::arc:
      return centre_ + turned(from_ - centre_, share * turn_);
    case FaceKind::true_curve:
      break;
  }
  return place_(share);
}

SectionDirection FacePath::tangent(double share) const {
  switch (kind_) {
    case FaceKind::straight:
      return SectionDirection::along(to_ - from_);
    case FaceKind::arc: {
      const SectionDirection round =
          SectionDirection::along(turned(from_ - centre_, share * turn_)).quarter_turn();
      return turn_ > 0 ? round : round.reversed();
    }
    case FaceKind::true_curve:
      break;
  }
  return tangent_(share);
}

double FacePath::share_at(double cut_mm, bool from_end) const {
  if (cut_mm <= 0) return from_end ? 1 : 0;
  double taken = cut_mm / chord_mm();
  if (kind_ == FaceKind::arc) {
    taken = 2 * std::asin(std::min(1.0, cut_mm / (2 * radius_mm_))) / std::abs(turn_);
  } else if (kind_ == FaceKind::true_curve) {
    const SectionPoint corner = from_end ? to_ : from_;
    // Distance from the end is all but proportional to the share: scaling settles in a few turns.
    taken = std::min(0.5, taken);
    for (int i = 0; i < 30; ++i) {
      const double ratio = cut_mm / distance(place_(from_end ? 1 - taken : taken), corner);
      taken = std::min(1.0, taken * ratio);
      if (std::abs(ratio - 1) < 1e-13) break;
    }
  }
  return from_end ? 1 - taken : taken;
}

Face FacePath::part(double from, double to) const {
  const SectionPoint start = place(from);
  const SectionPoint end = place(to);
  if (kind_ == FaceKind::straight) return straight_face(role_, start, end);
  if (kind_ == FaceKind::arc) return arc_face(role_, start, end, centre_, radius_mm_);
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  points.reserve(kCurvePoints);
  tangents.reserve(kCurvePoints);
  for (int i = 0; i < kCurvePoints; ++i) {
    const double share = from + (to - from) * i / (kCurvePoints - 1);
    points.push_back(place_(share));
    tangents.push_back(tangent_(share));
  }
  points.front() = start;
  points.back() = end;
  return true_face(role_, std::move(points), std::move(tangents));
}

}  // namespace prismwright
