#pragma once

#include <optional>
#include <vector>

#include "core/base/space.h"
#include "core/lens/trimmed_ring.h"

namespace prismwright {

/// How far a trimmed prism reaches in space, in its panel's frame (x along the panel's level axis, z up),
/// without the solid modeller.
///
/// What is kept is bounded by the turned outline and by planes, and the farthest place of a plane face lies
/// on its rim: so the farthest place in any direction is searched along the outline alone, over the angles at
/// which each place of it is kept.
class PrismReach {
 public:
  explicit PrismReach(const PlannedPrism& prism);

  struct Extent {
    double low = 0;
    double high = 0;
    [[nodiscard]] double length() const { return high - low; }
  };
  /// Least and greatest coordinate along a unit vector, mm, within 1e-5; blank when nothing is kept.
  [[nodiscard]] std::optional<Extent> along(SpaceVector unit) const;

  /// Azimuth of the middle between the ends of a piece turned about the lens axis, radians; 0 about a panel's.
  [[nodiscard]] double middle_azimuth() const;

  /// Both ends of the edge that a place of the profile (as planned) makes: the widest kept of it; blank where
  /// nothing is kept. A ring without ends gives two opposite places.
  struct Ends {
    SpacePoint first;
    SpacePoint last;
    bool whole_turn = false;
  };
  [[nodiscard]] std::optional<Ends> ends_of(SectionPoint place) const;

 private:
  struct Arc {
    TrimmedRing::Span span;
    bool below = false;
  };
  [[nodiscard]] std::vector<Arc> arcs_at(SectionPoint p) const;
  [[nodiscard]] SpacePoint place(SectionPoint p, double angle, bool below) const;
  [[nodiscard]] std::optional<double> farthest(SectionPoint p, SpaceVector unit) const;
  [[nodiscard]] SectionPoint outline_at(double share) const;
  [[nodiscard]] std::optional<double> greatest(SpaceVector unit) const;
  [[nodiscard]] double refined(double middle, double half, SpaceVector unit) const;

  TrimmedRing ring_;
  double axis_z_mm_;
  bool mirrored_;
  std::vector<SectionPoint> outline_;
};

}  // namespace prismwright
