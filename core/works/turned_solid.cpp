#include "core/works/turned_solid.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/base/angle.h"
#include "core/works/congruence.h"
#include "core/works/cutting_planes.h"

namespace prismwright {
namespace {

using Side = TurnedSolid::Side;
using Plane = TurnedSolid::Plane;
using FaceUse = TurnedSolid::FaceUse;

FaceUse use_of(FaceRole role) {
  switch (role) {
    case FaceRole::joint_upper:
    case FaceRole::joint_lower:
      return FaceUse::joint;
    case FaceRole::land:
      return FaceUse::land;
    case FaceRole::axis:
      return FaceUse::axis;
    default:
      return FaceUse::optical;
  }
}

std::vector<Side> outline_of(const PlannedPrism& prism) {
  std::vector<Side> outline;
  for (const Face& face : upper_profile(prism).faces) {
    Side side{use_of(face.role), face.kind, {}, {}, turned(face.centre, prism.turning)};
    for (const SectionPoint p : face.points) side.points.push_back(turned(p, prism.turning));
    for (const SectionDirection t : face.tangents)
      side.tangents.push_back(turned({t.r(), t.z()}, prism.turning));
    outline.push_back(std::move(side));
  }
  return outline;
}

struct Extent {
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  void take(double at) {
    low = std::min(low, at);
    high = std::max(high, at);
  }
};

/// Moves the solid along its line until its outline's middle is at 0.
void centre(TurnedSolid& solid) {
  Extent along;
  Extent off;
  for (const Side& side : solid.outline) {
    for (const TurnPoint p : side.points) {
      along.take(p.along);
      off.take(p.off);
    }
  }
  const double middle = (along.low + along.high) / 2;
  for (Side& side : solid.outline) {
    for (TurnPoint& p : side.points) p.along -= middle;
    side.centre.along -= middle;
  }
  for (Plane& plane : solid.planes) plane.distance_mm -= plane.along * middle;
  solid.length_mm = along.high - along.low;
  solid.least_off_mm = off.low;
  solid.most_off_mm = off.high;
}

void flip(TurnPoint& p) { p.along = -p.along; }

/// The solid after half a turn about a line square to its own, through its middle and angle 0.
TurnedSolid turned_over(TurnedSolid solid) {
  std::reverse(solid.outline.begin(), solid.outline.end());
  for (Side& side : solid.outline) {
    std::reverse(side.points.begin(), side.points.end());
    std::reverse(side.tangents.begin(), side.tangents.end());
    for (TurnPoint& p : side.points) flip(p);
    for (TurnPoint& t : side.tangents) t.off = -t.off;  // mirrored, and walked the other way
    flip(side.centre);
  }
  for (Plane& plane : solid.planes) {
    plane.along = -plane.along;
    plane.angle = -plane.angle;
  }
  solid.up_along = -solid.up_along;
  return solid;
}

TurnedSolid mirror_image(TurnedSolid solid) {
  for (Plane& plane : solid.planes) plane.angle = -plane.angle;
  return solid;
}

bool near(TurnPoint a, TurnPoint b, double within) {
  return std::abs(a.along - b.along) <= within && std::abs(a.off - b.off) <= within;
}

/// Directions of curves are told apart more finely than places: a curve's sag is a share of its length.
constexpr double kSameDirection = 1e-8;

bool near(const Side& a, const Side& b) {
  if (a.use != b.use || a.kind != b.kind || a.points.size() != b.points.size()) return false;
  if (a.kind == FaceKind::arc && !near(a.centre, b.centre, kCongruent_mm)) return false;
  for (std::size_t i = 0; i < a.points.size(); ++i) {
    if (!near(a.points[i], b.points[i], kCongruent_mm)) return false;
  }
  if (a.kind != FaceKind::true_curve) return true;
  return std::equal(a.tangents.begin(), a.tangents.end(), b.tangents.begin(), b.tangents.end(),
                    [](TurnPoint s, TurnPoint t) { return near(s, t, kSameDirection); });
}

bool same_outline(const TurnedSolid& one, const TurnedSolid& other) {
  const std::size_t count = one.outline.size();
  for (std::size_t start = 0; start < count; ++start) {
    std::size_t i = 0;
    while (i < count && near(one.outline[i], other.outline[(start + i) % count])) ++i;
    if (i == count) return true;
  }
  return false;
}

bool same_size(const TurnedSolid& one, const TurnedSolid& other) {
  const auto near_by = [](double a, double b) { return std::abs(a - b) <= 2 * kCongruent_mm; };
  return one.outline.size() == other.outline.size() && one.planes.size() == other.planes.size() &&
         near_by(one.length_mm, other.length_mm) && near_by(one.least_off_mm, other.least_off_mm) &&
         near_by(one.most_off_mm, other.most_off_mm);
}

/// Whether two planes cut alike after a turn of the first, within the tolerance all over the solid.
class PlaneMatch {
 public:
  explicit PlaneMatch(const TurnedSolid& solid)
      : direction_(kCongruent_mm / std::max(1.0, solid.most_off_mm + solid.length_mm)) {}

  [[nodiscard]] bool but_for_angle(const Plane& a, const Plane& b) const {
    return std::abs(a.along - b.along) <= direction_ && std::abs(a.across - b.across) <= direction_ &&
           std::abs(a.distance_mm - b.distance_mm) <= kCongruent_mm;
  }
  [[nodiscard]] bool operator()(const Plane& a, const Plane& b, double turn) const {
    return but_for_angle(a, b) &&
           std::abs(std::remainder(a.angle + turn - b.angle, 2 * kPi)) * a.across <= direction_;
  }
  [[nodiscard]] bool all(const TurnedSolid& one, const TurnedSolid& other, double turn) const {
    return std::all_of(one.planes.begin(), one.planes.end(), [&](const Plane& a) {
      return std::any_of(other.planes.begin(), other.planes.end(),
                         [&](const Plane& b) { return (*this)(a, b, turn); });
    });
  }

 private:
  double direction_;
};

/// Greatest cosine between the upright of `other` and that of `one` after a turn about the line that takes all
/// planes of one to those of the other; blank when none does.
std::optional<double> turn_onto(const TurnedSolid& one, const TurnedSolid& other) {
  if (!same_outline(one, other)) return std::nullopt;
  const PlaneMatch match(one);
  const double along = one.up_along * other.up_along;
  const double across = one.up_across * other.up_across;
  const auto leading = std::max_element(one.planes.begin(), one.planes.end(),
                                        [](const Plane& a, const Plane& b) { return a.across < b.across; });
  if (leading == one.planes.end() || leading->across < 1e-9) {
    return match.all(one, other, 0) ? std::optional(along + across) : std::nullopt;
  }
  std::optional<double> best;
  for (const Plane& plane : other.planes) {
    if (!match.but_for_angle(*leading, plane)) continue;
    const double turn = plane.angle - leading->angle;
    if (!match.all(one, other, turn)) continue;
    best = std::max(best.value_or(-2), along + across * std::cos(turn));
  }
  return best;
}

}  // namespace

TurnedSolid turned_solid(const PlannedPrism& prism) {
  TurnedSolid solid;
  solid.outline = outline_of(prism);
  solid.planes = cutting_planes(prism);
  if (prism.turning == TurningAxis::lens) {
    solid.up_along = 1;
    solid.up_across = 0;
  } else {
    solid.up_along = -std::sin(radians(prism.axis_dip_deg));
    solid.up_across = std::cos(radians(prism.axis_dip_deg));
  }
  centre(solid);
  return solid;
}

Alike how_alike(const TurnedSolid& one, const TurnedSolid& other) {
  if (!same_size(one, other)) return Alike::apart;
  std::optional<double> best = turn_onto(one, other);
  const TurnedSolid over = turned_over(one);
  if (const auto flipped = turn_onto(over, other)) best = std::max(best.value_or(-2), *flipped);
  if (best) return *best > 0 ? Alike::same : Alike::turned;
  const bool image = turn_onto(mirror_image(one), other) || turn_onto(mirror_image(over), other);
  return image ? Alike::mirrored : Alike::apart;
}

}  // namespace prismwright
