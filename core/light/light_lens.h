#pragma once

#include <optional>
#include <vector>

#include "core/light/light_metal.h"

namespace prismwright {

/// One panel as light meets it. Bodies and ribs are in the panel's frame: x along its level axis, z up.
struct PanelInLight {
  int number = 1;
  double axis = 0;  ///< azimuth of its axis in the lens frame, radians
  Screen screen = Screen::none;
  std::vector<LightBody> bodies;
  std::vector<RibInLight> ribs;
  SpaceBox box;
  int like = 0;  ///< index of the first panel that is congruent with this one

  /// From the lens frame into the panel's, and back.
  [[nodiscard]] SpaceFrame frame() const {
    return {{}, {std::cos(axis), std::sin(axis), 0}, {-std::sin(axis), std::cos(axis), 0}, {0, 0, 1}};
  }
};

/// What a ray meets first.
struct LightMeeting {
  double along_mm = 0;
  const PanelInLight* panel = nullptr;  ///< null: a ring
  const LightBody* body = nullptr;      ///< null: rib or ring
  SpaceVector outward;                  ///< of the body there, unit, in the lens frame
  std::optional<FaceRole> role;
  [[nodiscard]] bool metal() const { return !body || body->metal(); }
};

/// The whole lens made ready for rays in space: every prism as it was planned, with its cuts, and the brass.
class LightLens {
 public:
  /// Works out the frame too.
  explicit LightLens(const LensPlan& plan);
  LightLens(const LensPlan& plan, const FramePlan& frame);

  [[nodiscard]] const std::vector<PanelInLight>& panels() const { return panels_; }
  [[nodiscard]] std::vector<PanelInLight>& panels() { return panels_; }
  /// Radius of a sphere about the focus that holds the whole lens, mm.
  [[nodiscard]] double reach_mm() const { return reach_mm_; }

  /// The first thing that a ray in air meets farther than `least_mm` and nearer than `most_mm`.
  [[nodiscard]] std::optional<LightMeeting> meet(const SpaceRay& ray, double least_mm, double most_mm) const;
  /// The same of one body, for a ray inside it.
  [[nodiscard]] static std::optional<LightMeeting> meet_inside(const PanelInLight& panel, const LightBody& body,
                                                               const SpaceRay& ray, double least_mm);

 private:
  void find_alike(const LensPlan& plan);

  std::vector<PanelInLight> panels_;
  std::vector<RingInLight> rings_;
  double reach_mm_ = 0;
};

}  // namespace prismwright
