#pragma once

#include "core/lens/plan.h"
#include "tests/bench/embree_tracer.h"

namespace prismwright::bench {

/// Share that a ray square to both faces of a pane keeps: (1 - ((n - 1) / (n + 1))^2)^2.
double straight_through(double index);

/// Share that the ray from the focus along the axis of panel 1 keeps, by the tracer: twenty thousand rays of
/// all polarisations.
double traced_straight_through(const EmbreeTracer& tracer, const TraceOrder& order);

/// Glass along that ray, mm, by what it loses when the glass absorbs.
double traced_glass_mm(const EmbreeTracer& tracer, const TraceOrder& order);

/// Mean intensity of the bare lamp within ten degrees of level, by its own rays, cd; in closed form luminance x
/// the mean area seen: of a cylinder w h cos e + pi / 4 w^2 sin e at elevation e, over the band's solid angle.
double bare_lamp_cd(const BenchLamp& lamp, std::uint64_t rays);
double bare_lamp_closed_cd(const BenchLamp& lamp);

/// Closed form of a belt's intensity at its axis (cd): luminance x lamp diameter x integral of T cos t dz over
/// the height lit, from a fan of rays from the focus over the elevations that the section serves; holds for a
/// small upright lamp that every level ray sent back meets. Rays count that leave within half a degree of
/// level.
double belt_peak_cd(const EmbreeTracer& tracer, const TraceOrder& order, double from_deg, double to_deg);

/// The intensity at azimuth 0, elevation 0 from the far side: level rays sent back from evenly drawn places of
/// a box before the lens, each counting what is left of it when it meets the lamp. Free of the cell's width.
struct SentBack {
  double cd = 0;
  double error_cd = 0;
};
SentBack sent_back_cd(const EmbreeTracer& tracer, const TraceOrder& order, std::uint64_t rays);

}  // namespace prismwright::bench
