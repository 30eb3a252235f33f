#include "geometry/door_motion.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <utility>

#include <gp_Ax1.hxx>

#include "core/base/angle.h"
#include "geometry/near_pairs.h"
#include "geometry/pair_gap.h"

namespace prismwright {
namespace {

struct Heights {
  double low = 0;
  double high = 0;
};

Heights heights_of(const MeasuredPart& part) {
  const Bnd_Box box = part.form->box().Transformed(part.place);
  return {box.CornerMin().Z(), box.CornerMax().Z()};
}

std::array<gp_Pnt, 8> box_corners(const MeasuredPart& part) {
  const gp_Pnt low = part.form->box().CornerMin();
  const gp_Pnt high = part.form->box().CornerMax();
  std::array<gp_Pnt, 8> corners;
  for (int i = 0; i < 8; ++i) {
    corners[i] = gp_Pnt(i & 1 ? high.X() : low.X(), i & 2 ? high.Y() : low.Y(), i & 4 ? high.Z() : low.Z())
                     .Transformed(part.place);
  }
  return corners;
}

}  // namespace

DoorMotion::DoorMotion(const LensPlan& plan, const FramePlan& frame, const std::vector<MeasuredPart>& parts)
    : hinge_(frame.hinge->place.x, frame.hinge->place.y, 0),
      clockwise_(frame.hinge->opens_clockwise),
      round_(surroundings_of(plan.values.frame)) {
  const int door = plan.values.frame.door_panel;
  for (const MeasuredPart& part : parts) {
    if (!part.prism && part.kind == PartKind::latch) continue;
    (part.panel == door ? moving_ : fixed_).push_back(&part);
  }
  find_pairs(frame);
}

void DoorMotion::find_pairs(const FramePlan& frame) {
  std::set<std::pair<std::string, std::string>> joints;
  for (const FrameJoint& joint : frame.joints) {
    joints.emplace(joint.first, joint.second);
    joints.emplace(joint.second, joint.first);
  }
  std::vector<double> fixed_reach;
  for (const MeasuredPart* part : fixed_) fixed_reach.push_back(farthest_radius_mm(*part));
  for (std::size_t m = 0; m < moving_.size(); ++m) {
    const double reach = farthest_radius_mm(*moving_[m]);
    const Heights own = heights_of(*moving_[m]);
    for (std::size_t f = 0; f < fixed_.size(); ++f) {
      if (joints.contains({moving_[m]->mark, fixed_[f]->mark})) continue;
      const Heights other = heights_of(*fixed_[f]);
      const double apart = std::max({0.0, own.low - other.high, other.low - own.high});
      pairs_.push_back({m, f, false, apart, std::min(reach, fixed_reach[f])});
    }
    for (std::size_t r = 0; r < round_.size(); ++r) pairs_.push_back({m, r, true, 0, reach});
  }
}

double DoorMotion::farthest_radius_mm(const MeasuredPart& part) const {
  double farthest = 0;
  for (const gp_Pnt& corner : box_corners(part)) {
    farthest = std::max(farthest, std::hypot(corner.X() - hinge_.X(), corner.Y() - hinge_.Y()));
  }
  return farthest;
}

gp_Trsf DoorMotion::turn(double angle_deg) const {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(hinge_, gp_Dir(0, 0, 1)), radians(clockwise_ ? -angle_deg : angle_deg));
  return turn;
}

MeasuredPart DoorMotion::turned(const MeasuredPart& part, double angle_deg) const {
  MeasuredPart there = part;
  there.place = turn(angle_deg) * part.place;
  return there;
}

double DoorMotion::least_by_boxes_mm(const DoorPair& pair, double angle_deg) const {
  if (pair.is_round) return 0;
  return box_distance_mm(turned(*moving_[pair.moving], angle_deg), *fixed_[pair.fixed]);
}

std::optional<SolidGap> DoorMotion::gap_at(const DoorPair& pair, double angle_deg, double no_farther_mm) const {
  const MeasuredPart there = turned(*moving_[pair.moving], angle_deg);
  if (pair.is_round) return gap_to(there, round_[pair.fixed], no_farther_mm);
  return gap_filled(there, *fixed_[pair.fixed], no_farther_mm);
}

const std::string& DoorMotion::mark_of_first(const DoorPair& pair) const { return moving_[pair.moving]->mark; }

const std::string& DoorMotion::mark_of_second(const DoorPair& pair) const {
  return pair.is_round ? round_[pair.fixed].mark : fixed_[pair.fixed]->mark;
}

}  // namespace prismwright
