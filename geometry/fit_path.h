#pragma once

#include <optional>
#include <vector>

#include "geometry/fit_body.h"

namespace prismwright {

/// A touch no deeper than this does not hold a part up, mm.
inline constexpr double kFitTouch_mm = 0.02;
/// A touch that lasts less of the way than this may be passed over, mm.
inline constexpr double kFitStep_mm = 0.25;

/// One leg of a way: straight, or round the upright line through the frame's origin, which is the lens axis.
class FitLeg {
 public:
  static FitLeg straight(SpaceVector by_mm);
  /// Anticlockwise seen from above. `radius_mm` is that of the place by which the way is counted.
  static FitLeg swing(double angle, double radius_mm);

  [[nodiscard]] FitLeg back() const;  ///< the same leg the other way
  [[nodiscard]] double length_mm() const { return length_mm_; }
  [[nodiscard]] bool is_swing() const { return radius_mm_ > 0; }
  /// Where a place is that stood at `p` when the leg began; gone may be negative.
  [[nodiscard]] SpacePoint place_at(SpacePoint p, double gone_mm) const;
  /// How much farther than the leg is long a place goes that stands there, at most; never under 1.
  [[nodiscard]] double pace_at(SpacePoint p) const;
  [[nodiscard]] SpaceVector along() const { return along_; }  ///< of a straight leg, unit
  [[nodiscard]] double angle() const { return angle_; }       ///< of a swing

 private:
  SpaceVector along_{};
  double angle_ = 0;
  double radius_mm_ = 0;
  double length_mm_ = 0;
};

/// Legs one after another.
using FitPath = std::vector<FitLeg>;

/// Where a part that moves is held up.
struct FitTouch {
  SpacePoint where;
  double after_mm = 0;  ///< way gone till then
};

/// The first touch deeper than kFitTouch_mm that is found when one part moves past another; blank when the way
/// is free. Places of either skin are followed into the other part; the distance to it says how far each can go
/// unasked. So what is missed is a touch between places of both skins (fit_body.h) or one that ends within
/// kFitStep_mm of the way.
std::optional<FitTouch> touch_on_way(const FitBody& moving, const FitPath& path, const FitBody& still);

/// Whether the way is free; quicker, for it is done with any touch.
bool is_free_way(const FitBody& moving, const FitPath& path, const FitBody& still);

/// Two parts that stand in each other.
struct FitSunk {
  SpacePoint where;
  double deep_mm = 0;  ///< at least: how far the deepest place of either skin lies from the other's
};

/// Whether two parts that do not move stand deeper in each other than kFitTouch_mm; blank when they do not.
std::optional<FitSunk> sunk(const FitBody& first, const FitBody& second);

}  // namespace prismwright
