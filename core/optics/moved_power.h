#pragma once

#include <optional>

#include "core/optics/prism_shape.h"

namespace prismwright {

/// Prisms whose reflecting face is straight, with the power in a refracting side. Own derivation.
///
/// Power in the entry face: every ray inside runs along e' = 2 (e.tau) tau - e, which a straight reflecting
/// face of direction tau turns into e. The true entry curve is |P| = K1 + n P.e', in polar form rho(t) = K1 /
/// (1 - n cos(t - phi)) with phi the angle of e' and K1 = |B| - n B.e'. tau is the tangent that a true
/// reflecting curve has at C: so the ray at A still runs along the exit face and no glass is idle. Corner A
/// moves a little along its ray.
std::optional<PrismShape> power_in_entry(SectionPoint a, double side_mm, const PrismKind& kind);

/// Power in the exit face: with P, Q the places on the straight entry and reflecting faces and d2 = 2 (d.tau)
/// tau - d, the exit curve is X = Q + t d2, t = (K2 - |P| - n |PQ| + Q_r) / (n - d2_r), K2 from the ray through
/// B, which leaves at A. tau is the tangent that a true reflecting curve has at B: so the ray reflected at B
/// still runs along the entry face. The exit face bulges, so the direction of AB is moved until the ray at A
/// runs along its chord to C: no light is lost.
std::optional<PrismShape> power_in_exit(SectionPoint a, double side_mm, const PrismKind& kind);

/// The true entry curve through B for rays that shall run along `inside`.
struct EntryCurve {
  SectionPoint b;
  SectionDirection inside;
  double index = 1.4925;

  [[nodiscard]] double constant() const;  ///< K1, mm
  [[nodiscard]] SectionPoint at(double elevation) const;
  [[nodiscard]] SectionDirection outward(double elevation) const;
};

/// The true exit curve for a straight reflecting face through B along `tau`, by the place of the ray on the
/// entry side (share 0 at A, 1 at B).
struct ExitCurve {
  StraightEntry entry;
  SectionDirection tau;
  double constant = 0;  ///< K2, mm

  [[nodiscard]] SectionPoint reflected_at(double share) const;  ///< Q
  [[nodiscard]] SectionDirection after(double share) const;     ///< d2
  [[nodiscard]] SectionPoint at(double share) const;
  [[nodiscard]] SectionDirection outward(double share) const;
  /// K2 of the curve that the ray at `share` leaves at `leaving`.
  [[nodiscard]] double constant_for(double share, SectionPoint leaving) const;
};

}  // namespace prismwright
