#include "core/frame/panel_joints.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/angle.h"
#include "core/frame/joint_pattern.h"
#include "core/frame/rib_holes.h"

namespace prismwright {
namespace {

constexpr int kDiscCorners = 48;

// Round a disc, so that its edge lies nowhere inside it.
PlateOutline disc(PlatePoint centre, double radius_mm) {
  PlateOutline outline;
  const double circumscribed = radius_mm / std::cos(kPi / kDiscCorners);
  for (int i = 0; i < kDiscCorners; ++i) {
    const double angle = 2 * kPi * i / kDiscCorners;
    outline.push_back({centre.u + circumscribed * std::cos(angle), centre.v + circumscribed * std::sin(angle)});
  }
  return outline;
}

// A rib's brass that nothing else lies on or goes through.
class FreeBrass {
 public:
  explicit FreeBrass(FrameDesk& desk) : desk_(desk) {}

  const PlateRegion& of(const RibPlan& rib) {
    const std::string key = likeness(rib);
    const auto known = regions_.find(key);
    if (known != regions_.end()) return known->second;
    std::vector<PlateOutline> taken = desk_.covered(rib);
    for (const Pocket& pocket : rib.pockets) taken.push_back(pocket.outline);
    for (const PlateHole& hole : desk_.flat(rib.mark).holes) {
      taken.push_back(disc(place_of(rib, hole), std::max(hole.diameter_mm, hole.sink_diameter_mm) / 2));
    }
    return regions_.emplace(key, first_less_second({rib.outline}, united(taken))).first->second;
  }

  // Equal for ribs, on whichever side, whose free brass is the same region.
  std::string likeness(const RibPlan& rib) {
    std::string key = rib.shape_key;
    for (const PlateHole& hole : desk_.flat(rib.mark).holes) {
      const PlatePoint at = place_of(rib, hole);
      key +=
          fmt::format(" {:.4f},{:.4f},{:.4f}", at.u, at.v, std::max(hole.diameter_mm, hole.sink_diameter_mm));
    }
    for (const PlateOutline& outline : desk_.covered(rib)) {
      const PlateExtent extent = extent_of({outline});
      key += fmt::format(" {:.4f},{:.4f},{:.4f},{:.4f},{}", extent.low.u, extent.low.v, extent.high.u,
                         extent.high.v, outline.size());
    }
    return key;
  }

 private:
  PlatePoint place_of(const RibPlan& rib, const PlateHole& hole) {
    const SpacePoint p = desk_.flat(rib.mark).place.out_of(SpacePoint{hole.centre.u, hole.centre.v, 0});
    return {dot(p - SpacePoint{}, outward_of(rib)), p.z};
  }

  FrameDesk& desk_;
  std::map<std::string, PlateRegion> regions_;
};

class JointMaker {
 public:
  explicit JointMaker(FrameDesk& desk) : desk_(desk), brass_(desk) {
    for (const FacingRibs& pair : desk.facing_ribs()) {
      if (!pair.at_door) pairs_.push_back(pair);
    }
  }

  void make() {
    const JointPattern common = common_pattern();
    if (common.whole()) {
      for (const FacingRibs& pair : pairs_) drill(pair, common);
      return;
    }
    // Places are found for all pairs before any hole is made, so that equal pairs find equal places.
    std::vector<JointPattern> patterns;
    for (const FacingRibs& pair : pairs_) patterns.push_back(pattern_of(pair));
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      drill(pairs_[i], patterns[i]);
      warn_of_missing(pairs_[i], patterns[i]);
    }
  }

 private:
  [[nodiscard]] JointNeeds needs() const {
    const FrameSettings& settings = desk_.settings();
    JointNeeds needs;
    // Sunk or not is a matter of each rib; the wider room serves both.
    needs.screw_room_mm = room_round_screw_mm(settings.screw_mm, settings.least_brass_mm, true);
    needs.dowel_room_mm = settings.dowel_mm / 2 + settings.least_brass_mm;
    needs.low_v_mm = desk_.low_v_mm();
    needs.high_v_mm = desk_.high_v_mm();
    return needs;
  }

  JointPattern common_pattern() {
    std::set<std::string> seen;
    PlateRegion shared;
    for (const FacingRibs& pair : pairs_) {
      for (const RibPlan* rib : {pair.left, pair.right}) {
        if (!seen.insert(brass_.likeness(*rib)).second) continue;
        shared = seen.size() == 1 ? brass_.of(*rib) : common_part(shared, brass_.of(*rib));
      }
    }
    return joint_pattern(shared, needs());
  }

  const JointPattern& pattern_of(const FacingRibs& pair) {
    std::string first = brass_.likeness(*pair.left);
    std::string second = brass_.likeness(*pair.right);
    if (second < first) std::swap(first, second);
    const auto key = std::pair(first, second);
    const auto known = known_.find(key);
    if (known != known_.end()) return known->second;
    const PlateRegion shared = common_part(brass_.of(*pair.left), brass_.of(*pair.right));
    return known_.emplace(key, joint_pattern(shared, needs())).first->second;
  }

  void drill(const FacingRibs& pair, const JointPattern& pattern) {
    for (const PlatePoint at : pattern.screws) add_joint_screw(pair, at);
    for (const PlatePoint at : pattern.dowels) add_dowel(pair, at);
  }

  // From the left rib's inner face towards the right rib.
  void add_joint_screw(const FacingRibs& pair, PlatePoint at) {
    const RibPlan& near = *pair.left;
    const RibPlan& far = *pair.right;
    ScrewTask task;
    task.axis = {place_in(near, at, near.thickness_mm), -inward_of(near)};
    task.screw_mm = desk_.settings().screw_mm;
    task.grip_mm = plate_thickness_mm(near) + near.set_back_mm + far.set_back_mm;
    task.hold_mm = std::min(2 * task.screw_mm, plate_thickness_mm(far));
    task.sunk = sinks_in_rib(desk_, near);
    task.panel = near.panel;
    add_clear_hole(desk_.flat(near.mark), task, task.sunk);
    add_tapped_hole(desk_.flat(far.mark), task);
    const std::string screw = add_screw(desk_, task);
    for (const RibPlan* rib : {pair.left, pair.right}) desk_.join(screw, rib->mark);
  }

  void add_dowel(const FacingRibs& pair, PlatePoint at) {
    const RibPlan& near = *pair.left;
    const RibPlan& far = *pair.right;
    RoundPart dowel;
    dowel.mark = desk_.next_mark('D');
    dowel.kind = PartKind::dowel;
    dowel.panel = near.panel;
    dowel.from = place_in(near, at, near.thickness_mm);
    dowel.along = -inward_of(near);
    dowel.length_mm = near.thickness_mm + far.thickness_mm;
    dowel.diameter_mm = desk_.settings().dowel_mm;
    for (const RibPlan* rib : {pair.left, pair.right}) {
      add_plain_hole(desk_.flat(rib->mark), dowel.from, dowel.diameter_mm,
                     fmt::format("dowel {:g} mm", dowel.diameter_mm));
      desk_.join(dowel.mark, rib->mark);
    }
    desk_.frame().rounds.push_back(std::move(dowel));
  }

  void warn_of_missing(const FacingRibs& pair, const JointPattern& pattern) {
    if (pattern.whole()) return;
    const JointNeeds need = needs();
    desk_.warn(
        FrameWarning::Kind::no_room, pair.left->mark, 0, need.screw_room_mm,
        fmt::format("its joint with the next panel finds room for {} of 3 screws and {} of 2 dowels that keep "
                    "{:g} mm of brass round them. Take a wider rib margin, or smaller screws and dowels.",
                    pattern.screws.size(), pattern.dowels.size(), desk_.settings().least_brass_mm));
  }

  FrameDesk& desk_;
  FreeBrass brass_;
  std::vector<FacingRibs> pairs_;
  std::map<std::pair<std::string, std::string>, JointPattern> known_;
};

}  // namespace

void add_panel_joints(FrameDesk& desk) { JointMaker(desk).make(); }

}  // namespace prismwright
