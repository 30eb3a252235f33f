#pragma once

#include <array>
#include <vector>

#include "core/base/space.h"
#include "core/lens/plan.h"

namespace prismwright {

/// A place of a profile seen from its turning axis, mm: how far along the axis and how far from it.
struct TurnPoint {
  double along = 0;
  double off = 0;
};

/// The place of a profile as its turning axis has it: (r, z) -> along z, off r about the lens axis; along r,
/// off z about a panel's axis.
inline TurnPoint turned(SectionPoint p, TurningAxis axis) {
  return axis == TurningAxis::lens ? TurnPoint{p.z, p.r} : TurnPoint{p.r, p.z};
}

/// A ray as it goes past a turning axis (local x): along = start + s d, off^2 = q0 + 2 q1 s + q2 s^2.
struct TurnRay {
  explicit TurnRay(const SpaceRay& local)
      : start(local.from.x),
        d(local.along.x),
        q0(local.from.y * local.from.y + local.from.z * local.from.z),
        q1(local.from.y * local.along.y + local.from.z * local.along.z),
        q2(local.along.y * local.along.y + local.along.z * local.along.z) {}
  [[nodiscard]] double along(double s) const { return start + s * d; }
  [[nodiscard]] double off(double s) const { return std::sqrt(std::max(0.0, q0 + s * (2 * q1 + s * q2))); }

  double start, d, q0, q1, q2;
};

/// Where a ray meets a turned face.
struct TurnHit {
  double s = 0;             ///< mm along the ray
  double share = 0;         ///< place on the face, 0 to 1 along its walk
  double normal_along = 0;  ///< unit normal that points out of the glass
  double normal_off = 0;
};
struct TurnHits {
  int count = 0;
  std::array<TurnHit, 2> hits;
};

/// A face of a profile turned about its axis, ready for rays: a cone, plane, cylinder, or a chain of cubic
/// pieces turned. A chain bends by no more than kMostBend, so that a ray meets it twice at most; see pieces_of.
/// Places lie within 1e-9 of the face's length of the exact curve.
class TurnedFace {
 public:
  static constexpr double kMostBend = 0.35;  ///< radians

  [[nodiscard]] FaceRole role() const { return role_; }
  [[nodiscard]] TurnHits meet(const TurnRay& ray) const;
  [[nodiscard]] TurnPoint place(double share) const;
  /// Outward unit normal at a place, as a TurnHit has it.
  [[nodiscard]] TurnPoint normal(double share) const;
  /// Length of the face in the profile, mm, and of the walk per share there.
  [[nodiscard]] double length_mm() const { return length_; }
  [[nodiscard]] double speed_mm(double share) const;

  /// The faces of a profile, curved ones split where they bend too far. Faces on the turning axis are left out.
  static std::vector<TurnedFace> pieces_of(const Profile& profile, TurningAxis axis);

 private:
  struct Cubic {
    std::array<double, 4> along;
    std::array<double, 4> off;
  };
  struct Start {
    double s;
    double share;
  };
  TurnedFace(FaceRole role, bool flipped, std::vector<Cubic> pieces, bool straight);
  [[nodiscard]] std::pair<const Cubic&, double> piece_at(double share) const;
  [[nodiscard]] int chord_starts(const TurnRay& ray, std::array<Start, 2>& starts) const;
  [[nodiscard]] bool polish(const TurnRay& ray, Start& start) const;

  FaceRole role_;
  double out_ = 1;  ///< turns the walk's right-hand normal outward
  bool straight_;
  std::vector<Cubic> pieces_;
  TurnPoint from_;
  TurnPoint chord_;
  double chord2_ = 0;
  double length_ = 0;
};

}  // namespace prismwright
