#include "core/drawing/unrolled_lens.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/drawing/ring_outline.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 0.01;
constexpr double kInside = 0.96;     ///< how far towards its right end a leader begins
constexpr double kLeader_deg = 40;   ///< on a ring, no nearer to the level than this
constexpr double kDiscLeader = 0.6;  ///< of a disc's radius

/// Where a prism lets its light out: heights over the axis, and how far out that is.
struct LitBand {
  double low_mm = 0;
  double high_mm = 0;
  double out_mm = 0;
};

LitBand lit_band(const PlannedPrism& prism) {
  const Face* face = prism.profile.find(is_refracting(prism.kind) ? FaceRole::outer : FaceRole::exit);
  std::vector<SectionPoint> points;
  if (face)
    points = face->points;
  else
    points = polygon_of(prism.profile, 0.1);
  LitBand band{std::numeric_limits<double>::max(), std::numeric_limits<double>::lowest(), 0};
  for (const SectionPoint point : points) {
    band.low_mm = std::min(band.low_mm, point.z);
    band.high_mm = std::max(band.high_mm, point.z);
    band.out_mm += point.r / static_cast<double>(points.size());
  }
  return band;
}

/// How far a piece reaches from its panel's axis to a side, seen along the axis; `reach_mm` where the side does
/// not cut it.
double side_mm(double side_deg, const LitBand& band, double set_back_mm, double reach_mm) {
  const double angle = radians(std::abs(side_deg));
  if (std::cos(angle) < 1e-3) return reach_mm;
  return std::clamp((band.out_mm * std::sin(angle) - set_back_mm) / std::cos(angle), 0.0, reach_mm);
}

/// A place on the middle line of a ring towards its right end, seen from its centre, in its upper half.
PlatePoint leader_place(double radius, double right) {
  const double u = std::min(radius * std::cos(radians(kLeader_deg)), kInside * right);
  return {u, std::sqrt(std::max(0.0, radius * radius - u * u))};
}

/// The face of a ring about the panel's axis between its sides, as seen from seaward: round the place where its
/// turning axis leaves the lens.
UnrolledPrism ring_face(const PlannedPrism& prism) {
  const LitBand band = lit_band(prism);
  const Trim& trim = prism.trim;
  CutRing ring;
  ring.outer_mm = std::max(std::abs(band.low_mm), std::abs(band.high_mm));
  const bool centre = prism.kind == ZoneKind::centre;
  if (!centre) ring.inner_mm = std::min(std::abs(band.low_mm), std::abs(band.high_mm));
  ring.left_u = -side_mm(trim.clockwise_side_deg, band, trim.set_back_mm, ring.outer_mm);
  ring.right_u = side_mm(trim.anticlockwise_side_deg, band, trim.set_back_mm, ring.outer_mm);
  auto loops = trim.half == Half::whole ? whole_ring(ring) : upper_half(ring, trim.half_gap_mm);
  if (trim.half == Half::lower) loops = upside_down(loops);

  const double way = trim.half == Half::lower ? -1 : 1;
  const double up = prism.axis_z_mm - band.out_mm * std::sin(radians(prism.axis_dip_deg));
  for (PlateChain& loop : loops) loop = moved(loop, 0, {0, up});
  const double middle = (ring.inner_mm + ring.outer_mm) / 2;
  const PlatePoint leader = leader_place(centre ? kDiscLeader * ring.outer_mm : middle, ring.right_u);
  return {prism.mark, std::move(loops), {0, centre ? up : up + way * middle}, {leader.u, up + way * leader.v}};
}

/// A belt prism laid flat: its sides stand at equal angles, drawn at the focal distance.
UnrolledPrism belt_face(const PlannedPrism& prism, double focal_mm) {
  const LitBand band = lit_band(prism);
  const double left = focal_mm * radians(prism.trim.clockwise_side_deg) + prism.trim.set_back_mm;
  const double right = focal_mm * radians(prism.trim.anticlockwise_side_deg) - prism.trim.set_back_mm;
  const PlatePoint middle = {(left + right) / 2, (band.low_mm + band.high_mm) / 2};
  return {prism.mark,
          {straight_chain(plate_rectangle({left, band.low_mm}, {right, band.high_mm}))},
          middle,
          {middle.u + kInside * (right - middle.u), middle.v}};
}

/// Makes the panel hold the prism too.
void take_in(UnrolledPanel& panel, const UnrolledPrism& prism) {
  for (const PlateChain& loop : prism.loops) {
    const PlateExtent extent = extent_of({flattened(loop, kChord_mm)});
    panel.low = {std::min(panel.low.u, extent.low.u), std::min(panel.low.v, extent.low.v)};
    panel.high = {std::max(panel.high.u, extent.high.u), std::max(panel.high.v, extent.high.v)};
  }
}

/// A panel's own breadth at the focal distance, for one that holds no prisms.
void take_bare_breadth(UnrolledPanel& panel, const LensPlan& plan, const PanelPlace& place) {
  const double focal = plan.values.brief.focal_mm;
  const double half = radians((place.to_deg - place.from_deg) / 2);
  const double across = plan.values.turns_about_lens(Band::refracting)
                            ? focal * half
                            : focal * std::tan(std::min(half, radians(75)));
  panel.low.u = -across;
  panel.high.u = across;
}

UnrolledPanel unrolled_panel(const LensPlan& plan, const PanelPlace& place) {
  UnrolledPanel panel;
  panel.number = place.number;
  panel.blind = plan.values.panels[static_cast<std::size_t>(place.number - 1)].blind;
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel != place.number) continue;
    panel.prisms.push_back(prism.turning == TurningAxis::panel ? ring_face(prism)
                                                               : belt_face(prism, plan.values.brief.focal_mm));
    take_in(panel, panel.prisms.back());
  }
  if (panel.prisms.empty()) take_bare_breadth(panel, plan, place);
  return panel;
}

}  // namespace

std::vector<UnrolledPanel> unrolled(const LensPlan& plan) {
  std::vector<UnrolledPanel> panels;
  double low = 0;
  double high = 0;
  for (const PanelPlace& place : plan.panels) {
    panels.push_back(unrolled_panel(plan, place));
    low = std::min(low, panels.back().low.v);
    high = std::max(high, panels.back().high.v);
  }
  for (UnrolledPanel& panel : panels) {
    panel.low.v = low;
    panel.high.v = high;
  }
  return panels;
}

}  // namespace prismwright
