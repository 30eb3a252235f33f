#include "core/frame/level_plates.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {
namespace {

constexpr double kLeastLength_mm = 2;
constexpr double kSearchStep_mm = 0.5;

// Where the plate's arcs meet the inner faces, from the panel's middle.
double angle_at_face(const PanelBay& bay, const RibPlan& rib, double radius_mm) {
  return bay.half_width() - std::asin(std::min(1.0, rib.thickness_mm / radius_mm));
}

PlatePoint polar(double radius_mm, double angle) {
  return {radius_mm * std::cos(angle), radius_mm * std::sin(angle)};
}

PlateStep straight(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

PlateChain outline_of(const PanelBay& bay, const LevelPlate& plate) {
  const double inner = plate.inner_radius_mm;
  const double outer = plate.outer_radius_mm;
  const double left_in = angle_at_face(bay, *bay.left, inner);
  const double left_out = angle_at_face(bay, *bay.left, outer);
  const double right_in = -angle_at_face(bay, *bay.right, inner);
  const double right_out = -angle_at_face(bay, *bay.right, outer);
  const PlatePoint a = polar(outer, right_out);
  const PlatePoint b = polar(outer, left_out);
  const PlatePoint c = polar(inner, left_in);
  const PlatePoint d = polar(inner, right_in);
  return {{a, b, left_out - right_out, {}, outer},
          straight(b, c),
          {c, d, right_in - left_in, {}, inner},
          straight(d, a)};
}

// The places along one end at which a screw keeps brass all round.
class EndPlaces {
 public:
  EndPlaces(FrameDesk& desk, const PanelBay& bay, const LevelPlate& plate, const RibPlan& rib)
      : plate_(plate),
        rib_(rib),
        brass_(rib, desk.flat(rib.mark), plate.heights),
        half_width_(bay.half_width()),
        screw_(desk.settings().screw_mm),
        wall_(screw_ / 2 + desk.settings().least_brass_mm),
        room_(room_round_screw_mm(screw_, desk.settings().least_brass_mm,
                                  can_sink(plate_thickness_mm(rib), screw_))) {}

  // Those of the outer and the inner end of what is free, or one in its middle.
  [[nodiscard]] std::vector<PlatePoint> places(double hold_mm) const {
    const double v = (plate_.heights.low + plate_.heights.high) / 2;
    if (plate_.thickness_mm() / 2 < wall_) return {};
    std::vector<double> free;
    for (double u = plate_.outer_radius_mm; u > 0 && u > plate_.inner_radius_mm - rib_.thickness_mm;
         u -= kSearchStep_mm) {
      if (stays_inside(u, hold_mm) && brass_.room_at({u, v}) >= room_) free.push_back(u);
    }
    if (free.empty()) return {};
    if (free.front() - free.back() >= 2 * room_) return {{free.front(), v}, {free.back(), v}};
    return {{free[free.size() / 2], v}};
  }

 private:
  // The bore runs level from the end face at right angles to it, into a plate that is bent.
  [[nodiscard]] bool stays_inside(double u, double hold_mm) const {
    const double depth = rib_.thickness_mm + hold_mm;
    if (radius_at(u - wall_, rib_.thickness_mm) < plate_.inner_radius_mm) return false;
    if (radius_at(u + wall_, depth) > plate_.outer_radius_mm) return false;
    // The bore from the other end must not meet it: each keeps to its half of the panel.
    return u * std::sin(half_width_) - depth * std::cos(half_width_) >= wall_;
  }

  const LevelPlate& plate_;
  const RibPlan& rib_;
  RibBrass brass_;
  double half_width_;
  double screw_;
  double wall_;
  double room_;
};

void add_end_screws(FrameDesk& desk, const PanelBay& bay, const LevelPlate& plate, const RibPlan& rib) {
  const double screw = desk.settings().screw_mm;
  const EndPlaces end(desk, bay, plate, rib);
  for (const double hold : {2 * screw, 1.5 * screw, screw}) {
    const auto places = end.places(hold);
    if (places.empty()) continue;
    for (const PlatePoint at : places) {
      const ScrewTask task = add_rib_screw(desk, {&rib, at, hold, plate.mark});
      add_tapped_bore(desk.flat(plate.mark), place_in(rib, at, rib.thickness_mm), task, hold);
    }
    return;
  }
  const double brass = desk.settings().least_brass_mm;
  desk.warn(FrameWarning::Kind::no_room, plate.mark, plate.thickness_mm(), screw + 2 * brass,
            fmt::format(
                "an end gets no screw, as no place of {} and side rib keeps {:g} mm of brass round one of {}. "
                "Take smaller screws, a wider rib margin or a larger {}.",
                name_of(plate.kind), brass, screw_name(screw), name_of(plate.kind)));
}

void cover_end(FrameDesk& desk, const RibPlan& rib, const LevelPlate& plate) {
  const auto u_at = [&](double radius) {
    return std::sqrt(std::max(0.0, radius * radius - rib.thickness_mm * rib.thickness_mm));
  };
  desk.cover(rib, plate_rectangle({u_at(plate.inner_radius_mm), plate.heights.low},
                                  {u_at(plate.outer_radius_mm), plate.heights.high}));
}

}  // namespace

double least_plate_radius_mm(const PanelBay& bay) {
  const double depth = std::max(bay.left->thickness_mm, bay.right->thickness_mm);
  const double half = bay.half_width();
  // From face to face the plate is 2 (u sin(half) - depth cos(half)) long.
  const double u = (kLeastLength_mm / 2 + depth * std::cos(half)) / std::sin(half);
  return radius_at(u, depth);
}

void add_level_plate(FrameDesk& desk, const PanelBay& bay, const LevelPlate& plate) {
  FlatPart part;
  part.mark = plate.mark;
  part.kind = plate.kind;
  part.panel = bay.place.number;
  part.thickness_mm = plate.thickness_mm();
  part.outline = outline_of(bay, plate);
  part.place = level_frame(bay.middle(), plate.heights.low);
  desk.add(std::move(part));
  for (const RibPlan* rib : {bay.left, bay.right}) {
    desk.join(plate.mark, rib->mark);
    add_end_screws(desk, bay, plate, *rib);
    cover_end(desk, *rib, plate);
  }
}

}  // namespace prismwright
