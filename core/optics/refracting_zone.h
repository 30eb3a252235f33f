#pragma once

#include "core/base/outcome.h"
#include "core/optics/section.h"

namespace prismwright {

/// Own derivation; historic arcs after A. Stevenson, Account of the Skerryvore Lighthouse (1848), Notes.
///
/// The inner face is flat and upright at r = focal_mm. A focal ray at elevation t meets it at (f, f tan t) and
/// goes on at a = asin(sin t / n); the outer face sends it out level. True curve (equal optical path): s(t) =
/// (K - f / cos t) / (n - cos a), with K fixed by the thin upper edge. Historic arc: the circle through the
/// thin edge that sends the two extreme rays out level.
struct RefractingBand {
  double focal_mm = 250;
  double index = 1.4925;
  double edge_mm = 4;
  Faces faces = Faces::true_curve;
  Joint joint = Joint::along_ray;
  /// Depression of the beam, radians: the light leaves along w = (cos aim, -sin aim) in place of (1, 0); s(t) =
  /// (K - f / cos t + P.w) / (n - u.w). The inner face stays upright.
  double aim = 0;

  /// Elevation of the ray that crosses the depth of the thin edge at height `margin_mm`, radians.
  [[nodiscard]] double elevation_of_margin(double margin_mm) const;
  /// Height at which the ray of that elevation crosses the depth of the thin edge, mm.
  [[nodiscard]] double margin_of_elevation(double elevation) const;
  /// Greatest glass thickness of a ring between two elevations, along r, mm (along-ray joints, true curve).
  [[nodiscard]] double thickness(double from, double to) const;
  /// Upper elevation of the ring that begins at `from` and is `thickness_mm` thick.
  [[nodiscard]] double elevation_of_thickness(double from, double thickness_mm) const;

  /// The ring between two elevations (radians), above the focal plane. Refuses rings that cannot exist.
  [[nodiscard]] Outcome<Profile> ring(double from, double to) const;
  /// The centre: from -to to +to.
  [[nodiscard]] Outcome<Profile> centre(double to) const;

 private:
  [[nodiscard]] double elevation_by_halving(double from, double thickness_mm) const;
};

}  // namespace prismwright
