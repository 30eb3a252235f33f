#include "core/light/light_path.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/light/polarised.h"
#include "core/optics/space_refraction.h"

namespace prismwright {

namespace {

constexpr double kStepOff_mm = 1e-6;
constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr int kMostFaces = 40;

/// The walk of one ray.
class Walk {
 public:
  Walk(const LightLens& lens, const GlassRules& rules, const SpaceRay& ray)
      : lens_(lens), rules_(rules), ray_(ray), light_(ray.along) {}

  LightPath from_air() {
    for (; path_.faces < kMostFaces;) {
      const auto met = lens_.meet(ray_, kStepOff_mm, kNever);
      if (!met) return ended(PathEnd::free);
      if (met->metal()) return ended(PathEnd::stopped);
      ray_.from = place_on(ray_, met->along_mm);
      enter(*met->panel, *met->body, met->outward, met->role);
      if (!cross_glass(*met->panel, *met->body)) return ended(PathEnd::trapped);
    }
    return ended(PathEnd::trapped);
  }

  LightPath through_one(const PanelInLight& panel, const LightBody& body, SpaceVector outward,
                        std::optional<FaceRole> role) {
    enter(panel, body, outward, role);
    return ended(cross_glass(panel, body) ? PathEnd::free : PathEnd::trapped);
  }

 private:
  void note(std::optional<FaceRole> role) {
    if (path_.faces < 3) roles_[path_.faces] = role;
    ++path_.faces;
  }

  /// Rounding never gives power back.
  void lose(double& to, double left) {
    left = std::min(left, power_);
    to += power_ - left;
    power_ = left;
  }

  void enter(const PanelInLight& panel, const LightBody& body, SpaceVector outward,
             std::optional<FaceRole> role) {
    if (path_.prisms++ == 0) {
      path_.panel = &panel;
      path_.body = &body;
    }
    note(role);
    const Refracted in = refract(ray_.along, outward, 1, rules_.index);
    light_.refract(ray_.along, in.along, outward, 1, rules_.index);
    ray_.along = in.along;
    lose(path_.reflected, light_.power() * clear_);
  }

  /// On to the face where the ray leaves the prism; false when it does not.
  bool cross_glass(const PanelInLight& panel, const LightBody& body) {
    while (path_.faces < kMostFaces) {
      const auto met = LightLens::meet_inside(panel, body, ray_, kStepOff_mm);
      if (!met) return false;
      note(met->role);
      path_.glass_mm += met->along_mm;
      clear_ = std::exp(-rules_.absorption_per_mm * path_.glass_mm);
      lose(path_.absorbed, light_.power() * clear_);
      ray_.from = place_on(ray_, met->along_mm);
      const Refracted out = refract(ray_.along, met->outward, rules_.index, 1);
      if (out.total) {
        const SpaceVector turned = reflect(ray_.along, met->outward);
        light_.reflect(ray_.along, turned, met->outward, rules_.index, 1);
        ray_.along = unit(turned);
        continue;
      }
      light_.refract(ray_.along, out.along, met->outward, rules_.index, 1);
      ray_.along = out.along;
      lose(path_.reflected, light_.power() * clear_);
      return true;
    }
    return false;
  }

  [[nodiscard]] bool own_way() const {
    if (path_.prisms != 1) return false;
    using enum FaceRole;
    const auto& r = roles_;
    if (path_.faces == 2) return (r[0] == inner && r[1] == outer) || (r[0] == outer && r[1] == inner);
    return path_.faces == 3 && r[1] == reflecting &&
           ((r[0] == entry && r[2] == exit) || (r[0] == exit && r[2] == entry));
  }

  LightPath ended(PathEnd end) {
    path_.end = end;
    path_.last = ray_;
    path_.through = power_;
    path_.own_way = own_way();
    return path_;
  }

  const LightLens& lens_;
  const GlassRules& rules_;
  SpaceRay ray_;
  PolarisedLight light_;
  double power_ = 1;
  double clear_ = 1;
  std::array<std::optional<FaceRole>, 3> roles_;
  LightPath path_;
};

}  // namespace

LightPath PathFinder::follow(const SpaceRay& ray) const { return Walk(*lens_, rules_, ray).from_air(); }

LightPath PathFinder::cross_one(const SpaceRay& ray, const PanelInLight& panel, const LightBody& body,
                                SpaceVector outward, std::optional<FaceRole> role) const {
  return Walk(*lens_, rules_, ray).through_one(panel, body, outward, role);
}

bool PathFinder::is_free(const SpaceRay& ray, double most_mm) const {
  return !lens_->meet(ray, kStepOff_mm, most_mm);
}

}  // namespace prismwright
