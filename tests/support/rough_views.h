#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/angle.h"
#include "core/base/space.h"
#include "core/drawing/prism_sheet.h"
#include "core/lens/trimmed_ring.h"
#include "core/works/prism_size.h"

namespace prismwright {

/// A prism as wires without the solid modeller: the edge that every corner makes and the outlines of its ends,
/// hidden lines and all. In the panel's frame.
class RoughWires {
 public:
  explicit RoughWires(const PlannedPrism& prism) : prism_(prism), ring_(prism) {
    for (const Face& face : prism.profile.faces) add_edge(face.start());
    add_ends();
  }

  [[nodiscard]] LineView seen(SpaceVector right, SpaceVector up) const {
    LineView view;
    view.low = {1e30, 1e30};
    view.high = {-1e30, -1e30};
    for (const auto& wire : wires_) {
      ViewLine line;
      for (const SpacePoint& p : wire) {
        line.points.push_back(
            {p.x * right.x + p.y * right.y + p.z * right.z, p.x * up.x + p.y * up.y + p.z * up.z});
        const PaperPoint& at = line.points.back();
        view.low = {std::min(view.low.x, at.x), std::min(view.low.y, at.y)};
        view.high = {std::max(view.high.x, at.x), std::max(view.high.y, at.y)};
      }
      line.outline = true;
      view.lines.push_back(std::move(line));
    }
    return view;
  }

 private:
  static constexpr int kSteps = 90;

  [[nodiscard]] bool lens() const { return prism_.turning == TurningAxis::lens; }

  [[nodiscard]] SpacePoint place(SectionPoint p, double angle, bool below) const {
    if (lens()) return {p.r * std::cos(angle), p.r * std::sin(angle), p.z};
    const double away = std::abs(p.z);
    const double up = (below ? -1 : 1) * away * std::sin(angle);
    const double dip = ring_.dip();
    return {p.r * std::cos(dip) + up * std::sin(dip), away * std::cos(angle),
            up * std::cos(dip) - p.r * std::sin(dip) + prism_.axis_z_mm};
  }
  [[nodiscard]] std::vector<bool> sides() const {
    if (!lens() && prism_.trim.half == Half::whole) return {false, true};
    return {!lens() && prism_.trim.half == Half::lower};
  }
  [[nodiscard]] std::vector<TrimmedRing::Span> spans(SectionPoint p, bool below) const {
    if (!lens()) return ring_.spans({p.r, std::abs(p.z)}, below ? Half::lower : Half::upper);
    const auto kept = ring_.kept(p);
    return kept ? std::vector<TrimmedRing::Span>{*kept} : std::vector<TrimmedRing::Span>{};
  }

  void add_edge(SectionPoint p) {
    for (const bool below : sides()) {
      for (const TrimmedRing::Span& span : spans(p, below)) {
        std::vector<SpacePoint> wire;
        for (int i = 0; i <= kSteps; ++i)
          wire.push_back(place(p, span.from + (span.to - span.from) * i / kSteps, below));
        wires_.push_back(std::move(wire));
      }
    }
  }

  void add_ends() {
    const bool below = !lens() && prism_.trim.half == Half::lower;
    std::vector<SpacePoint> first, last;
    for (const SectionPoint p : polygon_of(prism_.profile, 0.05)) {
      const auto kept = spans(p, below);
      if (kept.empty()) continue;
      first.push_back(place(p, kept.front().from, below));
      last.push_back(place(p, kept.back().to, below));
    }
    if (first.empty()) return;
    first.push_back(first.front());
    last.push_back(last.front());
    wires_.push_back(std::move(first));
    wires_.push_back(std::move(last));
  }

  const PlannedPrism& prism_;
  TrimmedRing ring_;
  std::vector<std::vector<SpacePoint>> wires_;
};

/// What the solid modeller would tell, by rough wires and by quadrature.
inline PrismSolidFacts rough_facts(const PlannedPrism& prism, double density_g_cm3) {
  const PrismSize size = prism_size(prism, density_g_cm3);
  const RoughWires wires(prism);
  const double side = radians(prism.trim.anticlockwise_side_deg);
  PrismSolidFacts facts;
  facts.volume_mm3 = size.volume_mm3;
  facts.mass_g = size.mass_g;
  facts.from_sea = wires.seen({0, 1, 0}, {0, 0, 1});
  facts.from_end = wires.seen({-std::cos(side), -std::sin(side), 0}, {0, 0, 1});
  return facts;
}

}  // namespace prismwright
