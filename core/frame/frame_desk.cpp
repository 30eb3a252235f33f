#include "core/frame/frame_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/door_places.h"

namespace prismwright {

double PanelBay::half_width() const { return radians((place.to_deg - place.from_deg) / 2); }
double PanelBay::middle() const { return radians((place.to_deg + place.from_deg) / 2); }

FrameDesk::FrameDesk(FramePlan& frame, const LensPlan& plan, const FrameHeights& heights)
    : frame_(frame), plan_(plan), heights_(heights) {
  for (std::size_t i = 0; i < frame.flats.size(); ++i) index_.emplace(frame.flats[i].mark, i);
  for (const FrameJoint& joint : frame.joints) joined_.insert(std::minmax(joint.first, joint.second));
  const auto door = door_places(plan);
  for (const PanelPlace& place : plan.panels) {
    PanelBay bay{place};
    bay.is_door = door && door->panel == place.number;
    for (const RibPlan& rib : frame.ribs) {
      if (rib.panel != place.number || !has_flat(rib.mark)) continue;
      (rib.side == Side::anticlockwise ? bay.left : bay.right) = &rib;
    }
    bays_.push_back(bay);
  }
}

std::vector<FacingRibs> FrameDesk::facing_ribs() const {
  std::vector<FacingRibs> pairs;
  for (std::size_t i = 0; i < bays_.size(); ++i) {
    const PanelBay& here = bays_[i];
    const PanelBay& next = bays_[(i + 1) % bays_.size()];
    if (here.left && next.right) pairs.push_back({here.left, next.right, here.is_door || next.is_door});
  }
  return pairs;
}

const PanelBay* FrameDesk::bay(int panel) const {
  for (const PanelBay& bay : bays_) {
    if (bay.place.number == panel) return &bay;
  }
  return nullptr;
}

const RibPlan* FrameDesk::rib(int panel, Side side) const {
  const PanelBay* found = bay(panel);
  if (!found) return nullptr;
  return side == Side::anticlockwise ? found->left : found->right;
}

const RingPlan* FrameDesk::ring(bool top) const {
  for (const RingPlan& ring : frame_.rings) {
    if (ring.mark == (top ? "ring-top" : "ring-bottom")) return &ring;
  }
  return nullptr;
}

void FrameDesk::add(FlatPart part) {
  index_.emplace(part.mark, frame_.flats.size());
  frame_.flats.push_back(std::move(part));
}

void FrameDesk::join(const std::string& first, const std::string& second) {
  if (!joined_.insert(std::minmax(first, second)).second) return;
  frame_.joints.push_back({first, second});
}

void FrameDesk::warn(FrameWarning::Kind kind, const std::string& mark, double value_mm, double limit_mm,
                     const std::string& what) {
  for (Warned& known : warned_) {
    if (known.warning.kind != kind || known.warning.sentence != what) continue;
    if (known.warning.mark != mark) known.others.insert(mark);
    return;
  }
  warned_.push_back({{kind, mark, value_mm, limit_mm, what}, {}});
}

void FrameDesk::finish_warnings() {
  for (Warned& warned : warned_) {
    FrameWarning& warning = warned.warning;
    const std::string marks = warned.others.empty()
                                  ? warning.mark
                                  : fmt::format("{} and {} more", warning.mark, warned.others.size());
    warning.sentence = marks + ": " + warning.sentence;
    frame_.warnings.push_back(std::move(warning));
  }
  warned_.clear();
}

std::string FrameDesk::next_mark(char letter) { return fmt::format("{}{:03}", letter, ++counts_[letter]); }

SpaceVector outward_of(const RibPlan& rib) { return direction_at(radians(rib.azimuth_deg), 0); }

SpaceVector inward_of(const RibPlan& rib) {
  const SpaceVector e = outward_of(rib);
  return rib.side == Side::clockwise ? SpaceVector{-e.y, e.x, 0} : SpaceVector{e.y, -e.x, 0};
}

SpacePoint place_in(const RibPlan& rib, PlatePoint p, double depth_mm) {
  return SpacePoint{0, 0, p.v} + p.u * outward_of(rib) + depth_mm * inward_of(rib);
}

double plate_thickness_mm(const RibPlan& rib) { return rib.thickness_mm - rib.set_back_mm; }

SpaceFrame level_frame(double azimuth, double z_mm) {
  return {{0, 0, z_mm},
          {std::cos(azimuth), std::sin(azimuth), 0},
          {-std::sin(azimuth), std::cos(azimuth), 0},
          {0, 0, 1}};
}

double radius_at(double u_mm, double depth_mm) { return std::hypot(u_mm, depth_mm); }

}  // namespace prismwright
