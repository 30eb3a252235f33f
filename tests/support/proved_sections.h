#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <string>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/optics/proof.h"

namespace prismwright {

/// A section of an order without gaps and lands, with true curves.
inline SectionInput tight_section(const char* order, Faces faces = Faces::true_curve) {
  LensValues values = starting_values(order, Work::bullseye, 8);
  values.section.faces = faces;
  values.section.gap_mm = values.section.land_mm = 0;
  return values.section_input();
}

inline Section solved(const SectionInput& input) {
  auto section = solve_section(input);
  EXPECT_TRUE(section.ok()) << (section ? "" : section.problem().text);
  return *section;
}

inline double sum_of_shares(const double (&share)[kFates]) {
  return std::accumulate(share, share + kFates, 0.0);
}

inline double share_of(const Proof& proof, LossCause cause, const std::string& zone = {}) {
  double sum = 0;
  for (const LossByCause& loss : proof.losses)
    if (loss.cause == cause && (zone.empty() || loss.zone == zone)) sum += loss.share;
  return sum;
}

/// Where the focal ray of elevation `t` leaves a true refracting ring (equal optical path, by hand): inner face
/// at r = f, s(t) = (K - f / cos t) / (n - cos a), the thin upper edge e thick along r.
inline SectionPoint true_ring_exit(const Section& section, const Zone& ring, double t) {
  const double f = section.input.focal_mm;
  const double n = section.input.index;
  const double top = radians(ring.to_deg);
  const double a1 = std::asin(std::sin(top) / n);
  const double k = section.input.settings.edge_mm / std::cos(a1) * (n - std::cos(a1)) + f / std::cos(top);
  const double a = std::asin(std::sin(t) / n);
  const double s = (k - f / std::cos(t)) / (n - std::cos(a));
  return {f + s * std::cos(a), f * std::tan(t) + s * std::sin(a)};
}

/// Elevation at which a true ring's light leaves at height z, by halving.
inline double true_ring_elevation(const Section& section, const Zone& ring, double z) {
  double low = radians(ring.from_deg);
  double high = radians(ring.to_deg);
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (true_ring_exit(section, ring, middle).z < z ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace prismwright
