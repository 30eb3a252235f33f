#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/space.h"
#include "core/frame/frame_parts.h"
#include "core/lens/plan.h"

namespace prismwright {

/// An upright box of places, mm.
struct FitBox {
  SpacePoint low;
  SpacePoint high;
  void take(SpacePoint p);
};

/// A part of a panel for the fit-up, in the panel's frame (x along its axis): how deep a place lies in it, and
/// places all over its skin.
class FitBody {
 public:
  virtual ~FitBody() = default;
  /// Negative within the part, positive outside; never more than the true distance to its skin.
  [[nodiscard]] virtual double signed_mm(SpacePoint p) const = 0;

  [[nodiscard]] const std::vector<SpacePoint>& skin() const { return skin_; }
  [[nodiscard]] const FitBox& box() const { return box_; }

 protected:
  void add_skin(SpacePoint p);

 private:
  std::vector<SpacePoint> skin_;
  FitBox box_{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
};

/// A prism or a turned bar: its profile round the turning line, within its cuts (chords of 0.002 mm). Its skin
/// is sampled round the profile every 1.5 mm, corners included, and along the turn every 0.75 mm over
/// `end_mm` from each end, every 10 mm or twelfth of its length between.
std::unique_ptr<FitBody> turned_body(const PlannedPrism& prism, double end_mm);

/// A plate: its outline, openings and pockets (chords of 0.005 mm) from depth to depth; round holes are left
/// out. Its skin is sampled along all edges every 1.5 mm. `place` stands in the panel's frame and may be
/// left-handed.
std::unique_ptr<FitBody> plate_body(const FlatPart& part, const SpaceFrame& place);

}  // namespace prismwright
