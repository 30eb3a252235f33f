#include "core/light/light_lens.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

/// The prism whose turning and cuts a rib between bands shares: the panel's first of the refracting band.
const PlannedPrism* pattern_for_ribs(const LensPlan& plan, int panel) {
  for (const PlannedPrism& prism : plan.prisms)
    if (prism.panel == panel && is_refracting(prism.kind)) return &prism;
  return nullptr;
}

double farthest(const SpaceBox& box) {
  double most = 0;
  for (const double x : {box.low.x, box.high.x})
    for (const double y : {box.low.y, box.high.y})
      for (const double z : {box.low.z, box.high.z}) most = std::max(most, length({x, y, z}));
  return most;
}

}  // namespace

LightLens::LightLens(const LensPlan& plan) : LightLens(plan, plan_frame(plan)) {}

LightLens::LightLens(const LensPlan& plan, const FramePlan& frame) {
  for (const PanelPlace& place : plan.panels) {
    PanelInLight panel;
    panel.number = place.number;
    panel.axis = radians(place.axis_deg);
    panel.screen = plan.values.panels[static_cast<std::size_t>(place.number - 1)].screen;
    for (const PlannedPrism& prism : plan.prisms)
      if (prism.panel == place.number) panel.bodies.emplace_back(prism);
    if (const PlannedPrism* like = pattern_for_ribs(plan, place.number))
      for (const SectionRib& rib : plan.section.ribs) panel.bodies.emplace_back(rib, *like);
    for (const RibPlan& rib : frame.ribs)
      if (rib.panel == place.number) panel.ribs.emplace_back(rib, place.axis_deg);
    for (const LightBody& body : panel.bodies) panel.box.take_in(body.box());
    if (!panel.bodies.empty()) reach_mm_ = std::max(reach_mm_, farthest(panel.box));
    panels_.push_back(std::move(panel));
  }
  for (const RingPlan& ring : frame.rings) {
    rings_.emplace_back(ring);
    reach_mm_ =
        std::max(reach_mm_, std::hypot(ring.outer_radius_mm, std::abs(ring.z_low_mm) + ring.thickness_mm));
  }
  for (const RibPlan& rib : frame.ribs)
    for (const PlatePoint p : rib.outline)
      reach_mm_ = std::max(reach_mm_, std::hypot(p.u, p.v) + rib.thickness_mm);
  find_alike(plan);
}

void LightLens::find_alike(const LensPlan& plan) {
  std::vector<std::vector<std::string>> keys(panels_.size());
  for (const PlannedPrism& prism : plan.prisms)
    keys[static_cast<std::size_t>(prism.panel - 1)].push_back(prism.shape_key);
  for (std::size_t i = 0; i < panels_.size(); ++i) {
    panels_[i].like = static_cast<int>(i);
    for (std::size_t k = 0; k < i; ++k) {
      if (keys[k] != keys[i]) continue;
      panels_[i].like = static_cast<int>(k);
      break;
    }
  }
}

std::optional<LightMeeting> LightLens::meet(const SpaceRay& ray, double least_mm, double most_mm) const {
  std::optional<LightMeeting> first;
  double nearest = most_mm;
  for (const PanelInLight& panel : panels_) {
    const SpaceFrame frame = panel.frame();
    const SpaceRay local = frame.into(ray);
    for (const RibInLight& rib : panel.ribs) {
      const auto at = rib.meet(local, least_mm, nearest);
      if (!at || *at >= nearest) continue;
      nearest = *at;
      first = LightMeeting{nearest, &panel, nullptr, {}, std::nullopt};
    }
    if (panel.bodies.empty() || !panel.box.meets(local, nearest)) continue;
    for (const LightBody& body : panel.bodies) {
      if (!body.box().meets(local, nearest)) continue;
      const auto hit = body.meet(local, least_mm, nearest);
      if (!hit) continue;
      nearest = hit->along_mm;
      first = LightMeeting{nearest, &panel, &body, frame.out_of(hit->outward), hit->role};
    }
  }
  for (const RingInLight& ring : rings_) {
    const auto at = ring.meet(ray, least_mm, nearest);
    if (!at || *at >= nearest) continue;
    nearest = *at;
    first = LightMeeting{nearest, nullptr, nullptr, {}, std::nullopt};
  }
  return first;
}

std::optional<LightMeeting> LightLens::meet_inside(const PanelInLight& panel, const LightBody& body,
                                                   const SpaceRay& ray, double least_mm) {
  const SpaceFrame frame = panel.frame();
  const auto hit = body.meet(frame.into(ray), least_mm, kNever);
  if (!hit) return std::nullopt;
  return LightMeeting{hit->along_mm, &panel, &body, frame.out_of(hit->outward), hit->role};
}

}  // namespace prismwright
