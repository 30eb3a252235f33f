#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "core/lens/turned_face.h"
#include "core/light/rigid_move.h"

namespace prismwright {

/// A half-space in a body's own frame: what lies at `least_mm` or more along the unit vector is kept.
struct KeptSide {
  SpaceVector inward;
  double least_mm = 0;
  std::optional<FaceRole> role;  ///< of the face that this cut makes; blank: an end face
};

/// An upright box.
struct SpaceBox {
  SpacePoint low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
                 std::numeric_limits<double>::infinity()};
  SpacePoint high{-low.x, -low.y, -low.z};

  void take_in(SpacePoint p);
  void take_in(const SpaceBox& box);
  /// Whether the ray comes into the box before `most_mm`.
  [[nodiscard]] bool meets(const SpaceRay& ray, double most_mm) const;
};

/// Where a ray meets a body.
struct BodyHit {
  double along_mm = 0;
  SpaceVector outward;           ///< unit normal that points out of the body, in the ray's frame
  std::optional<FaceRole> role;  ///< blank: an end face
};

/// One prism, or one piece of metal that is turned like a prism: a profile turned about an axis and cut by side
/// planes. Rays and hits are in the frame of the body's panel: origin at the principal focus, x along the level
/// panel axis, z up.
class LightBody {
 public:
  /// A prism of the plan.
  explicit LightBody(const PlannedPrism& prism);
  /// A rectangle of the section turned and cut as `like` is: a rib between two bands.
  LightBody(const SectionRib& rib, const PlannedPrism& like);

  [[nodiscard]] const std::string& mark() const { return mark_; }
  [[nodiscard]] const std::string& zone() const { return zone_; }
  [[nodiscard]] ZoneKind kind() const { return kind_; }
  [[nodiscard]] bool metal() const { return metal_; }
  [[nodiscard]] const SpaceBox& box() const { return box_; }
  [[nodiscard]] const std::vector<TurnedFace>& faces() const { return faces_; }
  [[nodiscard]] TurningAxis turning() const { return turning_; }
  /// Whether its inner face is a flat one, cut across the turned glass.
  [[nodiscard]] bool flat_inside() const {
    return std::any_of(cuts_.begin(), cuts_.end(), [](const KeptSide& cut) { return cut.role.has_value(); });
  }
  /// The body's own frame: its first axis is the one that the profile is turned about.
  [[nodiscard]] const SpaceFrame& frame() const { return frame_; }

  /// The first meeting farther along the ray than `least_mm` and nearer than `most_mm`, from outside or inside.
  [[nodiscard]] std::optional<BodyHit> meet(const SpaceRay& ray, double least_mm, double most_mm) const;

  /// Moves it as it stands, in its panel's frame.
  void move(const RigidMove& move);
  /// The first meeting farther along the ray than `least_mm` with a face of that role, as if the side planes
  /// had taken nothing away.
  [[nodiscard]] std::optional<BodyHit> meet_role(const SpaceRay& ray, FaceRole role, double least_mm) const;
  /// The tangent about which a face is ground to a wrong angle, through its middle in the plane of the profile
  /// through a place near it: it turns the seaward side away from the turning axis (upward, about the lens
  /// axis). The faces of a bull's-eye centre are turned as a whole about a level line instead. Blank: no such
  /// face.
  struct FaceHinge {
    SpacePoint at;
    SpaceVector along;  ///< unit
  };
  [[nodiscard]] std::optional<FaceHinge> hinge(FaceRole role, SpacePoint near) const;

  /// Place on one of the turned faces at an angle about the turning axis (from the frame's second axis to its
  /// third); blank where the cuts have taken it away.
  struct Place {
    SpacePoint at;
    SpaceVector outward;  ///< unit
    double area_per_share_radian_mm2 = 0;
  };
  [[nodiscard]] std::optional<Place> place(const TurnedFace& face, double share, double angle) const;
  /// Angles about the turning axis that may be kept, radians: a whole turn at most.
  struct Angles {
    double from = 0;
    double to = 0;
  };
  [[nodiscard]] Angles angles() const { return angles_; }

 private:
  void lay_cuts(const PlannedPrism& prism);
  void lay_bounds(const Trim& trim);
  [[nodiscard]] bool kept(SpacePoint local, const KeptSide* but) const;
  [[nodiscard]] bool in_profile(double along, double off) const;

  std::string mark_;
  std::string zone_;
  ZoneKind kind_ = ZoneKind::centre;
  bool metal_ = false;
  TurningAxis turning_ = TurningAxis::panel;
  SpaceFrame frame_;  ///< first: the turning axis
  std::vector<TurnedFace> faces_;
  std::vector<KeptSide> cuts_;
  std::vector<TurnPoint> outline_;
  TurnPoint low_, high_;
  SpaceBox box_;
  Angles angles_;
};

}  // namespace prismwright
