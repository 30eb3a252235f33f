#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/space.h"
#include "core/lens/brief.h"

namespace prismwright {

/// One shining (or dark) body in the lens frame.
struct LampPart {
  LampShape shape = LampShape::cylinder;
  SpacePoint middle;
  SpaceVector facing{1, 0, 0};  ///< disc, tile: the side that shines; unit
  double width_mm = 0;
  double height_mm = 0;
  bool alight = true;

  /// Surface that shines, mm2.
  [[nodiscard]] double surface_mm2() const;
  /// Radius of the sphere about its middle that holds it, mm.
  [[nodiscard]] double radius_mm() const;
  /// Where the ray meets it from outside, mm along the ray; blank when it misses.
  [[nodiscard]] std::optional<double> meet(const SpaceRay& ray) const;
  /// Whether a place on it seen along the ray shines (flat ones only to one side).
  [[nodiscard]] bool shines_towards(SpaceVector ray_along) const;
};

/// The lamp as it stands in the lens: Lambertian bodies of one luminance, alight or dark.
class LampBody {
 public:
  /// Refuses a lamp without size, with the key to change.
  static Outcome<LampBody> make(const Lamp& lamp);

  [[nodiscard]] const std::vector<LampPart>& parts() const { return parts_; }
  [[nodiscard]] double luminance_cd_mm2() const { return luminance_; }
  /// Of all parts that are alight, lm.
  [[nodiscard]] double flux_lm() const { return flux_; }
  /// Sphere that holds everything alight.
  [[nodiscard]] SpacePoint middle() const { return middle_; }
  [[nodiscard]] double radius_mm() const { return radius_; }

  /// Luminance seen along a straight line of sight with nothing else in the way, cd/mm2; 0 where the lamp is
  /// missed or its dark side is seen. The line runs both ways from `from`.
  [[nodiscard]] double luminance_along(const SpaceRay& ray) const;
  /// Where a ray from outside meets the lamp, alight or dark.
  [[nodiscard]] std::optional<double> meet(const SpaceRay& ray) const;

  /// A ray of the lamp's light from four numbers between 0 and 1: evenly over the surface that shines, by the
  /// cosine law in direction. Every ray carries the same flux.
  [[nodiscard]] SpaceRay ray(const std::array<double, 4>& numbers) const;

 private:
  LampBody() = default;
  std::vector<LampPart> parts_;
  double luminance_ = 0;
  double flux_ = 0;
  SpacePoint middle_;
  double radius_ = 0;
};

}  // namespace prismwright
