#pragma once

#include <vector>

#include "core/optics/profile.h"

namespace prismwright {

/// Where a straight line of sight meets a face.
struct FaceHit {
  double along_mm = 0;  ///< from the start of the ray; may be slightly negative at a shared corner
  SectionPoint place;
  SectionDirection outward;  ///< unit normal that points out of the glass (right of the walk)
};

/// A face made ready for meeting rays. A true curve is held as cubic pieces through its exact points and
/// tangents; their slope is within 1e-6 deg of the exact one for the point spacing that the zones use.
class FaceCurve {
 public:
  explicit FaceCurve(const Face& face);

  [[nodiscard]] const Face& face() const { return face_; }
  [[nodiscard]] FaceRole role() const { return face_.role; }
  /// Whether a ray that leaves the face at this cosine of incidence, inside the glass, may meet it once more:
  /// only one that runs nearly along it.
  [[nodiscard]] bool may_meet_again(double cosine) const { return cosine < turn_; }
  /// Appends the elevations at which rays from `from` touch the face between its ends, radians.
  void touches(SectionPoint from, std::vector<double>& elevations) const;
  /// Appends every meeting of the ray with the face to `hits`. Ends count within `kEndSlack_mm`.
  void meet(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const;
  /// Place on a true curve: `share` 0..1 over piece `piece`.
  [[nodiscard]] SectionPoint place(std::size_t piece, double share) const;
  [[nodiscard]] std::size_t pieces() const { return reach_.size(); }

  static constexpr double kEndSlack_mm = 1e-8;

 private:
  [[nodiscard]] SectionOffset slope(std::size_t piece, double share) const;
  void meet_straight(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const;
  void meet_arc(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const;
  void meet_curve(SectionPoint from, SectionDirection ray, std::vector<FaceHit>& hits) const;
  void touch_arc(SectionPoint from, std::vector<double>& elevations) const;
  void touch_curve(SectionPoint from, std::vector<double>& elevations) const;

  Face face_;
  double turn_ = 0;  ///< sine of the greatest angle between two places of the face, 0 for a straight one
  std::vector<double> reach_;  ///< length of the end slopes of each cubic piece
};

}  // namespace prismwright
