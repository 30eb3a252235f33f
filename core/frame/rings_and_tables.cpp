#include "core/frame/rings_and_tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/fasteners.h"
#include "core/frame/ring_part.h"

namespace prismwright {
namespace {

constexpr double kTableBeyondRing_mm = 10;
constexpr double kSpacerScrews = 3;        // outer diameter of a spacer in nominal screw diameters
constexpr double kLeftOverScrew_mm = 0.5;  // of the ring, so that no screw comes out of its other face

FlatPart round_plate(const std::string& mark, PartKind kind, double z_mm, double thickness_mm,
                     double radius_mm) {
  FlatPart part;
  part.mark = mark;
  part.kind = kind;
  part.thickness_mm = thickness_mm;
  part.outline = circle_chain({}, radius_mm);
  part.place = level_frame(0, z_mm);
  return part;
}

// Base table and finial plate are one another's image: the screws run from the plate's far face to the ring.
class StandMaker {
 public:
  StandMaker(FrameDesk& desk, const RingPlan& ring, bool top)
      : desk_(desk), settings_(desk.settings()), ring_(ring), top_(top) {}

  void make() {
    if (plate_mm() <= 0) return;
    add_plate();
    if (settings_.spacer_mm <= 0) desk_.join(ring_.mark, mark_);
    if (!has_room()) return;
    int number = 0;
    for (const PanelBay& bay : desk_.bays()) add_stand(radians(bay.place.to_deg), ++number);
  }

 private:
  [[nodiscard]] double plate_mm() const { return top_ ? settings_.finial_mm : settings_.base_mm; }
  [[nodiscard]] double outer_face_z() const {
    return top_ ? ring_.z_low_mm + ring_.thickness_mm : ring_.z_low_mm;
  }
  [[nodiscard]] double middle_radius() const { return (ring_.inner_radius_mm + ring_.outer_radius_mm) / 2; }
  [[nodiscard]] double up() const { return top_ ? 1 : -1; }

  void add_plate() {
    mark_ = top_ ? "finial-plate" : "base-table";
    const double near_z = outer_face_z() + up() * settings_.spacer_mm;
    const double low_z = top_ ? near_z : near_z - plate_mm();
    const double radius = ring_.outer_radius_mm + (top_ ? 0 : kTableBeyondRing_mm);
    FlatPart part =
        round_plate(mark_, top_ ? PartKind::finial_plate : PartKind::base_table, low_z, plate_mm(), radius);
    if (top_) {
      const double vent = std::min(ring_.inner_radius_mm, ring_.outer_radius_mm / 3);
      part.holes.push_back({{}, 2 * vent, 0, true, "vent"});
    } else {
      part.openings.push_back(circle_chain({}, table_opening(low_z)));
    }
    desk_.add(std::move(part));
  }

  // As wide as the ring's, but clear of a pedestal that stands up into it as far as the spacers allow.
  double table_opening(double low_z) {
    const double wanted = settings_.pedestal_radius_mm + settings_.room_round_mm;
    const bool stands_in =
        settings_.pedestal_radius_mm > 0 && settings_.pedestal_top_mm + settings_.room_round_mm > low_z;
    if (!stands_in || wanted <= ring_.inner_radius_mm) return ring_.inner_radius_mm;
    const double most = middle_radius() - kSpacerScrews / 2 * settings_.screw_mm - settings_.least_brass_mm;
    if (wanted <= most) return wanted;
    desk_.warn(FrameWarning::Kind::no_room, mark_, std::max(most, ring_.inner_radius_mm), wanted,
               fmt::format("the pedestal asks for an opening of radius {:.1f} mm in it; its spacers leave "
                           "{:.1f} mm. Lower the pedestal or make it narrower.",
                           wanted, most));
    return std::max(most, ring_.inner_radius_mm);
  }

  bool has_room() {
    const double ring_wall = (ring_.outer_radius_mm - ring_.inner_radius_mm) / 2 - settings_.screw_mm / 2;
    if (ring_wall < settings_.least_brass_mm) return refuse(ring_wall, settings_.least_brass_mm);
    double least = 2 * kPi;
    for (const PanelBay& bay : desk_.bays()) least = std::min(least, 2 * bay.half_width());
    const double apart = 2 * middle_radius() * std::sin(least / 2);
    const double wanted = kSpacerScrews * settings_.screw_mm + settings_.least_brass_mm;
    return apart >= wanted || refuse(apart, wanted);
  }

  bool refuse(double value, double limit) {
    desk_.warn(
        FrameWarning::Kind::no_room, mark_, value, limit,
        fmt::format("{} has no room for the screws of {} that hold it: there are {:.2f} mm for {:.2f} mm. Take "
                    "smaller screws or a wider rib margin.",
                    ring_.mark, screw_name(settings_.screw_mm), value, limit));
    return false;
  }

  void add_stand(double azimuth, int number) {
    ScrewTask task;
    const double far_z = outer_face_z() + up() * (settings_.spacer_mm + plate_mm());
    task.axis = {level_frame(azimuth, far_z).out_of(SpacePoint{middle_radius(), 0, 0}), {0, 0, -up()}};
    task.screw_mm = settings_.screw_mm;
    task.grip_mm = plate_mm() + settings_.spacer_mm;
    task.hold_mm =
        std::max(std::min(2 * task.screw_mm, ring_.thickness_mm - kLeftOverScrew_mm), ring_.thickness_mm / 2);
    task.sunk = can_sink(plate_mm(), task.screw_mm);
    add_clear_hole(desk_.flat(mark_), task, task.sunk);
    add_tapped_hole(desk_.flat(ring_.mark), task);
    const std::string screw = add_screw(desk_, task);
    desk_.join(screw, mark_);
    desk_.join(screw, ring_.mark);
    if (settings_.spacer_mm > 0) add_spacer(task, screw, number);
  }

  void add_spacer(const ScrewTask& task, const std::string& screw, int number) {
    RoundPart spacer;
    spacer.mark = fmt::format("spacer-{}-{}", top_ ? "top" : "bottom", number);
    spacer.kind = PartKind::spacer;
    spacer.making = PartMaking::machined;
    spacer.metal = PartMetal::brass;
    spacer.along = {0, 0, up()};
    spacer.from = {task.axis.from.x, task.axis.from.y, outer_face_z()};
    spacer.length_mm = settings_.spacer_mm;
    spacer.diameter_mm = kSpacerScrews * task.screw_mm;
    spacer.bore_mm = clear_hole_mm(task.screw_mm);
    for (const std::string& other : {ring_.mark, mark_, screw}) desk_.join(spacer.mark, other);
    desk_.frame().rounds.push_back(std::move(spacer));
  }

  FrameDesk& desk_;
  const FrameSettings& settings_;
  const RingPlan& ring_;
  bool top_;
  std::string mark_;
};

}  // namespace

void add_ring_plates(FrameDesk& desk) {
  for (const RingPlan& ring : desk.frame().rings) {
    desk.add(ring_part(ring));
    for (const PanelBay& bay : desk.bays()) {
      for (const RibPlan* rib : {bay.left, bay.right}) {
        if (rib && !bay.is_door) desk.join(rib->mark, ring.mark);
      }
    }
  }
}

void add_base_and_finial(FrameDesk& desk) {
  for (const bool top : {true, false}) {
    const RingPlan* ring = desk.ring(top);
    if (ring) StandMaker(desk, *ring, top).make();
  }
}

}  // namespace prismwright
