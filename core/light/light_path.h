#pragma once

#include "core/light/light_lens.h"

namespace prismwright {

/// What light meets in the glass.
struct GlassRules {
  double index = 1.4925;
  double absorption_per_mm = 0;  ///< natural logarithm of the power lost per mm of path inside
};

/// How a ray ended.
enum class PathEnd {
  free,     ///< runs on in air with nothing before it
  stopped,  ///< by metal
  trapped,  ///< still inside glass after many faces
};

/// A ray followed through the lens along its main branch: at each face it is refracted, or reflected where the
/// reflection is total; what a refracting face reflects is counted and not followed.
struct LightPath {
  PathEnd end = PathEnd::free;
  SpaceRay last;         ///< the last stretch in air; meaningful when free
  double through = 1;    ///< share of the power on that stretch, or that the metal stopped, or that is trapped
  double reflected = 0;  ///< share reflected at refracting faces
  double absorbed = 0;   ///< share absorbed in the glass. The three add to 1
  double glass_mm = 0;   ///< path inside glass
  int prisms = 0;        ///< entered
  int faces = 0;         ///< met
  const PanelInLight* panel = nullptr;  ///< of the first prism entered
  const LightBody* body = nullptr;      ///< the first prism entered
  /// Through one prism by the way it was made for: inner and outer face, or entry, reflecting and exit face,
  /// either way round.
  bool own_way = false;
};

/// Follows rays through a lens. Holds no copy of the lens.
class PathFinder {
 public:
  PathFinder(const LightLens& lens, GlassRules rules) : lens_(&lens), rules_(rules) {}

  /// A ray that begins in air.
  [[nodiscard]] LightPath follow(const SpaceRay& ray) const;
  /// A ray that comes from air and enters a prism at its start, through the face with this unit normal (lens
  /// frame), followed through that one prism alone: the path ends where the ray leaves it.
  [[nodiscard]] LightPath cross_one(const SpaceRay& ray, const PanelInLight& panel, const LightBody& body,
                                    SpaceVector outward, std::optional<FaceRole> role) const;
  /// Whether nothing stands before a ray that leaves a face, nearer than `most_mm`.
  [[nodiscard]] bool is_free(const SpaceRay& ray, double most_mm) const;

  [[nodiscard]] const LightLens& lens() const { return *lens_; }
  [[nodiscard]] const GlassRules& rules() const { return rules_; }

 private:
  const LightLens* lens_;
  GlassRules rules_;
};

}  // namespace prismwright
