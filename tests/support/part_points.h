#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <variant>
#include <vector>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// Whether places lie in the parts of a frame, worked out from what the parts say of themselves and from
/// nothing else: the oracle for "touches" and "does not overlap". A part is given as it stands in the lens
/// frame.
namespace part_points {

inline double distance_to(const PlateOutline& outline, double x, double y) {
  double least2 = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[(i + 1) % outline.size()];
    const double du = b.u - a.u;
    const double dv = b.v - a.v;
    const double length2 = du * du + dv * dv;
    const double share = length2 > 0 ? std::clamp(((x - a.u) * du + (y - a.v) * dv) / length2, 0.0, 1.0) : 0.0;
    const double dx = x - a.u - share * du;
    const double dy = y - a.v - share * dv;
    least2 = std::min(least2, dx * dx + dy * dy);
  }
  return std::sqrt(least2);
}

/// Positive inside.
inline double depth_in(const PlateOutline& outline, double x, double y) {
  bool inside = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[j];
    if ((a.v > y) != (b.v > y) && x < (b.u - a.u) * (y - a.v) / (b.v - a.v) + a.u) inside = !inside;
  }
  const double away = distance_to(outline, x, y);
  return inside ? away : -away;
}

}  // namespace part_points

/// One part made ready: `depth` is how deep a place lies in its metal at least (exact near its faces), negative
/// outside; `places` lie on its surface.
class PartPoints {
 public:
  explicit PartPoints(const FlatPart& part) : mark(part.mark), panel(part.panel), kind(part.kind), part_(part) {
    outline_ = flattened(part.outline, 0.002);
    for (const PlateChain& opening : part.openings) openings_.push_back(flattened(opening, 0.002));
    for (const PlatePocket& pocket : part.pockets) pockets_.push_back(flattened(pocket.outline, 0.002));
    sample(part);
    keep_surface();
    bound();
  }
  explicit PartPoints(const RoundPart& part)
      : mark(part.mark), panel(part.panel), kind(part.kind), part_(part) {
    sample(part);
    keep_surface();
    bound();
  }
  PartPoints(const TurnedBar& part, const LensPlan& plan)
      : mark(part.mark), panel(part.panel), kind(part.kind), part_(part) {
    for (const PanelPlace& place : plan.panels) {
      if (place.number == part.panel) axis_ = radians(place.axis_deg);
    }
    sample(part);
    keep_surface();
    bound();
  }

  /// The same part turned about an upright line through `centre`.
  [[nodiscard]] PartPoints turned(SpacePoint centre, double angle) const {
    PartPoints other = *this;
    other.centre_ = centre;
    other.turn_ = angle;
    for (SpacePoint& p : other.places) p = about(p, centre, angle);
    other.bound();
    return other;
  }

  /// Of places no deeper than `enough_mm` it says no more than that.
  [[nodiscard]] double depth(SpacePoint p, double enough_mm = -1e9) const {
    if (turn_ != 0) p = about(p, centre_, -turn_);
    return std::visit([&](const auto& part) { return depth_of(part, p, enough_mm); }, part_);
  }
  [[nodiscard]] bool may_meet(const PartPoints& other, double within) const {
    return low_.x <= other.high_.x + within && other.low_.x <= high_.x + within &&
           low_.y <= other.high_.y + within && other.low_.y <= high_.y + within &&
           low_.z <= other.high_.z + within && other.low_.z <= high_.z + within;
  }
  [[nodiscard]] bool near_box(SpacePoint p, double within) const {
    return p.x >= low_.x - within && p.x <= high_.x + within && p.y >= low_.y - within &&
           p.y <= high_.y + within && p.z >= low_.z - within && p.z <= high_.z + within;
  }

  std::string mark;
  int panel = 0;
  PartKind kind = PartKind::side_rib;
  std::vector<SpacePoint> places;

 private:
  static SpacePoint about(SpacePoint p, SpacePoint c, double angle) {
    const double x = p.x - c.x;
    const double y = p.y - c.y;
    return {c.x + x * std::cos(angle) - y * std::sin(angle), c.y + x * std::sin(angle) + y * std::cos(angle),
            p.z};
  }

  // What is cheap comes first: a place that cannot lie deeper than `enough_mm` needs no more looking at.
  [[nodiscard]] double depth_of(const FlatPart& part, SpacePoint place, double enough_mm) const {
    const SpacePoint p = part.place.into(place);
    double depth = std::min(p.z, part.thickness_mm - p.z);
    if (depth <= enough_mm) return depth;
    depth = std::min(depth, depth_beside_holes(part, p));
    if (depth <= enough_mm) return depth;
    for (std::size_t i = 0; i < pockets_.size(); ++i) {
      const double under = part.thickness_mm - part.pockets[i].depth_mm - p.z;
      if (under >= depth) continue;
      depth = std::min(depth, std::max(-part_points::depth_in(pockets_[i], p.x, p.y), under));
    }
    for (const PlateOutline& opening : openings_)
      depth = std::min(depth, -part_points::depth_in(opening, p.x, p.y));
    if (depth <= enough_mm) return depth;
    return std::min(depth, part_points::depth_in(outline_, p.x, p.y));
  }

  [[nodiscard]] static double depth_beside_holes(const FlatPart& part, SpacePoint p) {
    double depth = 1e9;
    for (const PlateHole& hole : part.holes) {
      const double away = std::hypot(p.x - hole.centre.u, p.y - hole.centre.v);
      const double from_head = hole.sunk_in_back ? p.z : part.thickness_mm - p.z;
      depth = std::min(depth, away - hole.diameter_mm / 2);
      if (hole.sink_diameter_mm > 0)
        depth = std::min(depth, (away + from_head - hole.sink_diameter_mm / 2) / std::sqrt(2.0));
    }
    for (const PlateBore& bore : part.bores) {
      const SpaceVector v = p - bore.from;
      const double along = dot(v, bore.along);
      depth = std::min(depth,
                       std::max(length(v - along * bore.along) - bore.diameter_mm / 2, along - bore.depth_mm));
    }
    return depth;
  }

  [[nodiscard]] static double depth_of(const RoundPart& part, SpacePoint p, double = 0) {
    const SpaceVector v = p - part.from;
    const double along = dot(v, part.along);
    const double away = length(v - along * part.along);
    double inside = part.diameter_mm / 2 - away;
    if (part.head_mm > 0) inside = std::max(inside, (part.head_mm / 2 - along - away) / std::sqrt(2.0));
    double depth = std::min({inside, along, part.length_mm - along});
    if (part.bore_mm > 0) depth = std::min(depth, away - part.bore_mm / 2);
    return depth;
  }

  // Section, side planes and level cut of a ring about its panel's axis.
  [[nodiscard]] double depth_of(const TurnedBar& part, SpacePoint place, double = 0) const {
    const double x = place.x * std::cos(axis_) + place.y * std::sin(axis_);
    const double y = place.y * std::cos(axis_) - place.x * std::sin(axis_);
    const Trim& trim = part.shape.trim;
    PlateOutline section;
    for (const Face& face : part.shape.profile.faces) section.push_back({face.start().r, face.start().z});
    const double sign = trim.half == Half::lower ? -1 : 1;
    double depth = part_points::depth_in(section, x, sign * std::hypot(y, place.z));
    const double a = radians(trim.clockwise_side_deg);
    const double b = radians(trim.anticlockwise_side_deg);
    depth = std::min({depth, -x * std::sin(a) + y * std::cos(a) - trim.set_back_mm,
                      x * std::sin(b) - y * std::cos(b) - trim.set_back_mm, sign * place.z - trim.half_gap_mm});
    for (const PlateBore& bore : part.bores) {
      const SpaceVector v = SpacePoint{x, y, place.z} - bore.from;
      const double along = dot(v, bore.along);
      depth = std::min(depth,
                       std::max(length(v - along * bore.along) - bore.diameter_mm / 2, along - bore.depth_mm));
    }
    return depth;
  }

  void sample(const FlatPart& part) {
    std::vector<PlatePoint> rims;
    const auto along = [&](const PlateOutline& outline) {
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const PlatePoint a = outline[i];
        const PlatePoint b = outline[(i + 1) % outline.size()];
        const int steps = 1 + static_cast<int>(std::hypot(b.u - a.u, b.v - a.v) / 2);
        for (int k = 0; k < steps; ++k)
          rims.push_back({a.u + (b.u - a.u) * k / steps, a.v + (b.v - a.v) * k / steps});
      }
    };
    along(flattened(part.outline, 0.05));
    for (const PlateChain& opening : part.openings) along(flattened(opening, 0.05));
    for (const PlateHole& hole : part.holes) {
      for (int k = 0; k < 16; ++k) {
        const double angle = kPi / 8 * k;
        const double r = hole.diameter_mm / 2;
        rims.push_back({hole.centre.u + r * std::cos(angle), hole.centre.v + r * std::sin(angle)});
      }
    }
    for (const PlatePoint p : rims) {
      for (const double z : {0.0, part.thickness_mm / 2, part.thickness_mm})
        places.push_back(part.place.out_of(SpacePoint{p.u, p.v, z}));
    }
  }

  void sample(const RoundPart& part) {
    const SpaceVector side =
        unit(cross(part.along, std::abs(part.along.z) > 0.5 ? SpaceVector{1, 0, 0} : SpaceVector{0, 0, 1}));
    const SpaceVector up = cross(part.along, side);
    const double deep = part.head_mm > 0 ? (part.head_mm - part.diameter_mm) / 2 : 0;
    const auto circle = [&](double along, double r) {
      for (int k = 0; k < 16; ++k) {
        const double angle = kPi / 8 * k;
        places.push_back(part.from + along * part.along + (r * std::cos(angle)) * side +
                         (r * std::sin(angle)) * up);
      }
    };
    for (int i = 0; i <= 24; ++i) circle(deep + (part.length_mm - deep) * i / 24, part.diameter_mm / 2);
    if (deep > 0) {
      for (int i = 0; i <= 4; ++i) circle(deep * i / 4, part.head_mm / 2 - deep * i / 4);
    }
  }

  void sample(const TurnedBar& part) {
    const auto add = [&](SectionPoint p) {
      // Both ends of the upper half and of the lower are on the level of the axis.
      for (int k = 0; k <= 1200; ++k) {
        const double angle = kPi * std::clamp(k / 600.0, 1e-9, 2 - 1e-9);
        const double y = std::abs(p.z) * std::cos(angle);
        const SpacePoint place{p.r * std::cos(axis_) - y * std::sin(axis_),
                               p.r * std::sin(axis_) + y * std::cos(axis_), std::abs(p.z) * std::sin(angle)};
        if (depth_of(part, place) > -1e-9) places.push_back(place);
      }
    };
    for (const Face& face : part.shape.profile.faces) {
      for (int k = 0; k < 4; ++k) {
        const double t = k / 4.0;
        add({face.start().r + t * (face.end().r - face.start().r),
             face.start().z + t * (face.end().z - face.start().z)});
      }
    }
  }

  // What the sampling puts where a bore or hole has taken the metal away is no surface.
  void keep_surface() {
    const auto* flat = std::get_if<FlatPart>(&part_);
    if (!flat) return;
    std::erase_if(places, [&](SpacePoint p) { return depth_beside_holes(*flat, flat->place.into(p)) < -1e-6; });
  }

  void bound() {
    low_ = high_ = places.empty() ? SpacePoint{} : places.front();
    for (const SpacePoint p : places) {
      low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y), std::min(low_.z, p.z)};
      high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y), std::max(high_.z, p.z)};
    }
  }

  std::variant<FlatPart, RoundPart, TurnedBar> part_;
  PlateOutline outline_;
  std::vector<PlateOutline> openings_;
  std::vector<PlateOutline> pockets_;
  double axis_ = 0;
  SpacePoint centre_;
  double turn_ = 0;
  SpacePoint low_;
  SpacePoint high_;
};

/// Those of the whole lens, of the first two panels and the last one, and of a door and the panels beside it:
/// what the panels between them would say is the same again.
inline std::vector<PartPoints> points_of(const FramePlan& frame, const LensPlan& plan) {
  const int count = static_cast<int>(plan.panels.size());
  const int door = plan.values.frame.door_panel;
  const auto counts = [&](int panel) {
    return panel <= 2 || panel == count || (door > 0 && std::abs(panel - door) <= 1);
  };
  std::vector<PartPoints> parts;
  for (const FlatPart& part : frame.flats) {
    if (counts(part.panel)) parts.emplace_back(part);
  }
  for (const RoundPart& part : frame.rounds) {
    if (counts(part.panel)) parts.emplace_back(part);
  }
  for (const TurnedBar& part : frame.bars) {
    if (counts(part.panel)) parts.emplace_back(part, plan);
  }
  return parts;
}

/// How deep the surface of either part reaches into the other, at the places looked at; negative: how far the
/// nearest of them is away, within the boxes.
inline double overlap_mm(const PartPoints& a, const PartPoints& b, double within_mm) {
  double most = -std::numeric_limits<double>::max();
  for (const auto& [from, into] : {std::pair(&a, &b), std::pair(&b, &a)}) {
    for (const SpacePoint p : from->places) {
      if (into->near_box(p, within_mm)) most = std::max(most, into->depth(p, most));
    }
  }
  return most;
}

}  // namespace prismwright
