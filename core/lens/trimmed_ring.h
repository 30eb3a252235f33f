#pragma once

#include <optional>
#include <vector>

#include "core/lens/plan.h"

namespace prismwright {

/// A profile laid out for turning, and the angles about the turning line at which the trim keeps it: plain
/// geometry, without the solid modeller.
///
/// Angles in radians. About the lens axis: the azimuth from the panel's axis. About the panel's axis: the
/// angle from +Y towards +Z on the upper side, 0 to pi; what is kept below is its mirror image in the level
/// plane (a lower half keeps the image alone, a whole ring both). About an axis that dips the side planes lean,
/// and the lower side keeps other angles than the upper: there they run from +Y towards -Z. A half is a half of
/// a ring about the panel's axis; with lens turning it means nothing and is taken as whole.
///
/// A flat inner face touches the hollow one of the profile along the panel's middle. So that no cut runs along
/// a face, the profile is then laid out with its joints carried on inward, where nothing of it is kept.
class TrimmedRing {
 public:
  explicit TrimmedRing(const PlannedPrism& prism);

  struct Span {
    double from = 0;
    double to = 0;
  };

  /// The profile with z >= 0 for panel turning (mirrored when it was given below), as given for lens turning
  /// but for what a flat inner face cuts away.
  [[nodiscard]] const Profile& profile() const { return profile_; }
  [[nodiscard]] TurningAxis turning() const { return turning_; }
  [[nodiscard]] const Trim& trim() const { return trim_; }
  /// How far the turning axis falls seaward, radians.
  [[nodiscard]] double dip() const { return dip_; }
  /// Angles kept at a place of the profile, on the side of a half or the upper of a whole; the widest of them
  /// where a leaning side plane nicks the ring; blank when the trim takes it away altogether.
  [[nodiscard]] std::optional<Span> kept(SectionPoint p) const;
  /// All angles kept on the upper or the lower side, rising.
  [[nodiscard]] std::vector<Span> spans(SectionPoint p, Half side) const;
  /// The angles that hold everything that is kept of any place of the outline.
  [[nodiscard]] std::optional<Span> kept_anywhere() const;
  /// A whole ring that clears the side planes altogether.
  [[nodiscard]] bool clears_sides() const;
  /// Nothing is to be cut: the turn between the plain side planes is the prism.
  [[nodiscard]] bool needs_no_cut() const;

  /// Where a flat inner face ends, as seen along the panel's axis: the way from the axis to the corner with a
  /// side plane, mm; negative where that side lies beyond the axis, infinite where the side never meets it.
  struct FacetEnds {
    double clockwise_mm = 0;
    double anticlockwise_mm = 0;
  };
  [[nodiscard]] std::optional<FacetEnds> facet_ends() const;

  /// A side plane, seen from the turning axis: what lies at `set_back_mm` or more along a unit vector is kept.
  struct Side {
    double x = 0;
    double y = 0;
    double z = 0;
  };
  [[nodiscard]] const std::vector<Side>& sides() const { return sides_; }

  /// A side plane as a limit on y (panel turning, level axis): y is at least or at most slope x + start_mm.
  struct Limit {
    double slope = 0;
    double start_mm = 0;
    bool at_least = true;
  };
  [[nodiscard]] const std::vector<Limit>& limits() const { return limits_; }
  /// Least distance from the lens axis (lens turning) or along the panel axis (panel turning) at which there
  /// is room between the side planes, mm.
  [[nodiscard]] double nearest_room_mm() const { return nearest_room_mm_; }

 private:
  void lay_limits();
  [[nodiscard]] std::optional<Span> kept_about_lens(SectionPoint p) const;
  [[nodiscard]] std::optional<Span> kept_about_panel(SectionPoint p) const;
  [[nodiscard]] std::vector<Span> spans_about_dipping(SectionPoint p, Half side) const;

  TurningAxis turning_;
  Trim trim_;
  double dip_ = 0;
  std::vector<Side> sides_;
  Profile profile_;
  std::vector<SectionPoint> outline_;
  std::vector<Limit> limits_;
  double nearest_room_mm_ = 0;
};

}  // namespace prismwright
