#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "core/base/space.h"
#include "geometry/pictures/pictured_solid.h"

namespace prismwright {

/// A divided solid where it stands; congruent parts share it.
struct ScenePart {
  std::shared_ptr<const PicturedSolid> solid;
  SpaceFrame place;
  bool glass = true;
};

/// Where a line of sight passes a facet.
struct Meeting {
  float along_mm = 0;
  std::uint32_t part = 0;
  std::uint32_t facet = 0;
  float u = 0;        ///< of the facet's second corner
  float v = 0;        ///< of its third
  bool front = true;  ///< the facet is met from outside its solid
};

/// Every part's facets, for lines of sight. Several threads may ask at once; equal questions get equal answers.
class PictureScene {
 public:
  explicit PictureScene(std::vector<ScenePart> parts);
  ~PictureScene();
  PictureScene(const PictureScene&) = delete;
  PictureScene& operator=(const PictureScene&) = delete;

  [[nodiscard]] const std::vector<ScenePart>& parts() const { return parts_; }

  /// Whether anything lies on the ray.
  [[nodiscard]] bool is_blocked(const SpaceRay& ray) const;
  /// The first metal on the ray and all glass before it, nearest first; each face counts once, also where the
  /// ray runs along a side between two of its facets.
  void meetings(const SpaceRay& ray, std::vector<Meeting>& met) const;

 private:
  struct Inside;
  std::vector<ScenePart> parts_;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
