#include "core/frame/pockets.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/corner_relief.h"
#include "core/frame/fit_rules.h"
#include "core/frame/prism_end.h"

namespace prismwright {
namespace {

constexpr double kChord_mm = 0.003;
constexpr double kLeanTo_deg = 80;
constexpr double kLeanStep_mm = 0.035;  // along the arc of the setting gap, for a prism that ends between two
constexpr int kFewLeanSteps = 10;
constexpr double kWeakLean = 0.7;
constexpr double kCoarseChord_mm = 0.02;
constexpr double kSmooth_mm = 1;  // far less than any hollow of a prism's end
constexpr double kTinyArea_mm2 = 1e-3;
constexpr double kArc_mm = 0.001;
constexpr double kFit_mm = 0.005;
constexpr double kLeastStep_mm = 0.02;
constexpr double kOver_mm =
    0.01;  // rooms are so much wider: fits may come nearer to the prism, or bend more keenly
constexpr double kRounding_mm = 0.001;  // jogs where outlines cross that nearly coincide
constexpr double kCorner_deg = 2;       // weak notches where rooms cross stay as they are
constexpr double kFlattened_mm = 0.002;
constexpr double kThinnestBrass_mm = 0.3;  // thinner strips bend or break off while they are cut

// A prism whose slices hardly move from one to the next needs few of them.
int lean_steps(const PlannedPrism& prism, Side side, const FrameSettings& frame) {
  const double gap = frame.setting_gap_mm;
  const PlateRegion near = end_slice(prism, side, frame.rib_mm, kCoarseChord_mm);
  const PlateRegion far = end_slice(prism, side, frame.rib_mm + gap, kCoarseChord_mm);
  if (!near.empty() && !far.empty()) {
    const PlateExtent a = extent_of(near);
    const PlateExtent b = extent_of(far);
    const double most = std::max({std::abs(a.low.u - b.low.u), std::abs(a.low.v - b.low.v),
                                  std::abs(a.high.u - b.high.u), std::abs(a.high.v - b.high.v)});
    if (most < kWeakLean * gap) return kFewLeanSteps;
  }
  return std::max(kFewLeanSteps, static_cast<int>(std::ceil(gap * radians(kLeanTo_deg) / kLeanStep_mm)));
}

// In front of the rib's inner face a prism that leans over the pocket's edge comes nearer to it than its
// end does: the room of a slice h in front of the face is what is left of the gap there, sqrt(g^2 - h^2).
void add_room_under_lean(const PlannedPrism& prism, Side side, const FrameSettings& frame,
                         std::vector<PlateOutline>& outlines) {
  const double gap = frame.setting_gap_mm;
  const int steps = lean_steps(prism, side, frame);
  for (int step = 1; step <= steps; ++step) {
    const double angle = kLeanTo_deg * step / steps;
    const double depth = frame.rib_mm + gap * std::sin(radians(angle));
    const PlateRegion room = grown(end_slice(prism, side, depth, kChord_mm),
                                   gap * std::cos(radians(angle)) + kOver_mm, Corner::round, kArc_mm);
    outlines.insert(outlines.end(), room.begin(), room.end());
  }
}

bool apart(const PlateExtent& a, const PlateExtent& b) {
  return a.high.u < b.low.u || b.high.u < a.low.u || a.high.v < b.low.v || b.high.v < a.low.v;
}

bool takes(const Pocket& pocket, const PlateRegion& room) {
  if (room.empty() || apart(extent_of({pocket.outline}), extent_of(room))) return false;
  return area_mm2(common_part({pocket.outline}, room)) > kTinyArea_mm2 / 2;
}

}  // namespace

PlateRegion pocket_room(const PlannedPrism& prism, Side side, const FrameSettings& frame) {
  std::vector<PlateOutline> outlines = grown(filled(swept_end(prism, side, 0, frame.rib_mm, kChord_mm)),
                                             frame.setting_gap_mm + kOver_mm, Corner::round, kArc_mm);
  if (prism.turning != TurningAxis::panel && !prism.trim.flat_inner_mm) return filled(outlines);
  add_room_under_lean(prism, side, frame, outlines);
  // Between the slices shallow notches stay, where the true room is smooth.
  return filled(
      grown(grown(united(outlines), kSmooth_mm, Corner::round, kArc_mm), -kSmooth_mm, Corner::round, kArc_mm));
}

std::vector<Pocket> united_pockets(const std::vector<const PlannedPrism*>& prisms,
                                   const std::vector<PlateRegion>& rooms, const FrameSettings& frame) {
  std::vector<PlateOutline> all;
  for (const PlateRegion& room : rooms) all.insert(all.end(), room.begin(), room.end());
  std::vector<PlateOutline> openings;
  for (const PlateOutline& outline : filled(without_thin_brass(united(all), kThinnestBrass_mm))) {
    if (signed_area_mm2(outline) >= kTinyArea_mm2) {
      openings.push_back(relieved(outline, frame.inside_radius_mm).outline);
    }
  }
  std::vector<Pocket> pockets;
  for (const PlateOutline& outline : filled(united(openings))) {
    Pocket pocket{thinned(outline, kRounding_mm), {}, {}};
    for (std::size_t i = 0; i < prisms.size(); ++i) {
      if (takes(pocket, rooms[i])) pocket.marks.push_back(prisms[i]->mark);
    }
    pockets.push_back(std::move(pocket));
  }
  std::sort(pockets.begin(), pockets.end(), [](const Pocket& a, const Pocket& b) {
    return extent_of({a.outline}).high.v > extent_of({b.outline}).high.v;
  });
  return pockets;
}

void fit_edge(Pocket& pocket, const FrameSettings& frame) {
  FitRules rules;
  rules.within_mm = kFit_mm;
  rules.right_corner_deg = kCorner_deg;
  rules.least_step_mm = kLeastStep_mm;
  rules.least_left_radius_mm = frame.inside_radius_mm;
  pocket.edge = fitted_chain(pocket.outline, rules);
  pocket.outline = flattened(pocket.edge, kFlattened_mm);
}

}  // namespace prismwright
