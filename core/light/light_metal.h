#pragma once

#include <optional>
#include <vector>

#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"
#include "core/light/light_body.h"

namespace prismwright {

/// A side rib as it stands in the way of light: a plate with blind pockets. Rays are in the frame of the rib's
/// panel. Outlines are followed within 0.02 mm.
class RibInLight {
 public:
  /// `axis_deg`: azimuth of the panel's axis.
  RibInLight(const RibPlan& rib, double axis_deg);

  /// The first metal farther along the ray than `least_mm` and nearer than `most_mm`; `least_mm` itself when
  /// the ray begins in the metal.
  [[nodiscard]] std::optional<double> meet(const SpaceRay& ray, double least_mm, double most_mm) const;

 private:
  struct Outline {
    PlateOutline points;
    PlateExtent extent;
  };
  static Outline outline_of(const PlateOutline& points);
  [[nodiscard]] bool in_metal(double u, double v, double depth) const;

  SpaceFrame frame_;         ///< first: along the plate (u), second: up (v), third: into the panel
  double outer_mm_ = 0;      ///< depth of the outer face
  double thickness_mm_ = 0;  ///< depth of the inner face
  double floor_mm_ = 0;      ///< depth of the pockets' floor
  Outline outline_;
  std::vector<Outline> pockets_;
};

/// A flat ring about the lens axis.
class RingInLight {
 public:
  explicit RingInLight(const RingPlan& ring) : ring_(ring) {}
  /// As RibInLight, for rays in any frame whose third axis is upright at the lens axis.
  [[nodiscard]] std::optional<double> meet(const SpaceRay& ray, double least_mm, double most_mm) const;

 private:
  RingPlan ring_;
};

}  // namespace prismwright
