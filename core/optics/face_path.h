#pragma once

#include <functional>

#include "core/optics/profile.h"

namespace prismwright {

/// A face as it is designed: a smooth way in the section, walked as its profile is, that can be cut to any part
/// of itself. Shares run from 0 at its start to 1 at its end and a little beyond where the curve goes on.
class FacePath {
 public:
  static FacePath straight(FaceRole role, SectionPoint from, SectionPoint to);
  /// The shorter arc from `from` to `to` about `centre`.
  static FacePath arc(FaceRole role, SectionPoint from, SectionPoint to, SectionPoint centre);
  /// A curve given by its places and exact unit tangents in the direction of travel.
  static FacePath curve(FaceRole role, std::function<SectionPoint(double)> place,
                        std::function<SectionDirection(double)> tangent);

  [[nodiscard]] FaceRole role() const { return role_; }
  [[nodiscard]] FaceKind kind() const { return kind_; }
  [[nodiscard]] SectionPoint place(double share) const;
  [[nodiscard]] SectionDirection tangent(double share) const;
  /// Unit normal out of the glass: right of the walk.
  [[nodiscard]] SectionDirection outward(double share) const {
    return tangent(share).quarter_turn().reversed();
  }
  [[nodiscard]] double chord_mm() const { return distance(place(0), place(1)); }
  /// Share at which the face is `cut_mm` away, straight, from its start or end.
  [[nodiscard]] double share_at(double cut_mm, bool from_end) const;
  /// The face between two shares. True curves get 33 exact points and tangents.
  [[nodiscard]] Face part(double from, double to) const;

 private:
  FaceRole role_ = FaceRole::land;
  FaceKind kind_ = FaceKind::straight;
  SectionPoint from_;
  SectionPoint to_;
  SectionPoint centre_;
  double radius_mm_ = 0;
  double turn_ = 0;  ///< of the spoke from start to end, radians, anticlockwise positive
  std::function<SectionPoint(double)> place_;
  std::function<SectionDirection(double)> tangent_;
};

}  // namespace prismwright
