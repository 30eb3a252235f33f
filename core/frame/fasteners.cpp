#include "core/frame/fasteners.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {
namespace {

constexpr double kUnderHead_mm = 0.5;
constexpr double kRoundHead_mm = 0.5;

PlatePoint on_plate(const FlatPart& plate, SpacePoint p) {
  const SpacePoint local = plate.place.into(p);
  return {local.x, local.y};
}

}  // namespace

double clear_hole_mm(double screw_mm) {
  // What a product of two decimal numbers lies over the exact one must not become a whole tenth.
  return std::ceil(11 * screw_mm - 1e-6) / 10;
}

double screw_head_mm(double screw_mm) { return 2 * screw_mm; }

double head_depth_mm(double screw_mm) { return (screw_head_mm(screw_mm) - screw_mm) / 2; }

bool can_sink(double plate_mm, double screw_mm) { return plate_mm >= head_depth_mm(screw_mm) + kUnderHead_mm; }

double room_round_screw_mm(double screw_mm, double least_brass_mm, bool sunk) {
  const double round_hole = clear_hole_mm(screw_mm) / 2 + least_brass_mm;
  return sunk ? std::max(round_hole, screw_head_mm(screw_mm) / 2 + kRoundHead_mm) : round_hole;
}

std::string add_screw(FrameDesk& desk, const ScrewTask& task) {
  RoundPart screw;
  screw.mark = desk.next_mark('S');
  screw.kind = PartKind::screw;
  screw.panel = task.panel;
  screw.from = task.axis.from;
  screw.along = task.axis.along;
  screw.length_mm = task.grip_mm + task.hold_mm;
  screw.diameter_mm = task.screw_mm;
  screw.head_mm = task.sunk ? screw_head_mm(task.screw_mm) : 0;
  desk.frame().rounds.push_back(screw);
  return screw.mark;
}

void add_clear_hole(FlatPart& plate, const ScrewTask& task, bool with_sink) {
  PlateHole hole;
  hole.centre = on_plate(plate, task.axis.from);
  hole.diameter_mm = clear_hole_mm(task.screw_mm);
  hole.sink_diameter_mm = with_sink ? screw_head_mm(task.screw_mm) : 0;
  hole.sunk_in_back = dot(task.axis.along, plate.place.third) > 0;
  hole.use = "clears " + screw_name(task.screw_mm);
  plate.holes.push_back(std::move(hole));
}

void add_tapped_hole(FlatPart& plate, const ScrewTask& task) {
  add_plain_hole(plate, task.axis.from, task.screw_mm, "taps " + screw_name(task.screw_mm));
}

void add_plain_hole(FlatPart& plate, SpacePoint on_axis, double diameter_mm, std::string use) {
  plate.holes.push_back({on_plate(plate, on_axis), diameter_mm, 0, true, std::move(use)});
}

void add_tapped_bore(FlatPart& plate, SpacePoint from, const ScrewTask& task, double depth_mm) {
  plate.bores.push_back({plate.place.into(from), plate.place.into(task.axis.along), depth_mm, task.screw_mm,
                         "taps " + screw_name(task.screw_mm)});
}

std::string screw_name(double screw_mm) { return fmt::format("M{:g}", screw_mm); }

}  // namespace prismwright
