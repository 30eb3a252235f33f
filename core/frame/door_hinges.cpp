#include "core/frame/door_hinges.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/angle.h"
#include "core/frame/hinge_leaf.h"
#include "core/frame/rib_holes.h"

namespace prismwright {
namespace {

constexpr double kKnucklePins = 1.1;       // radius of the knuckle in pin diameters (common practice)
constexpr double kKnuckleRoomPins = 0.1;   // between the knuckle and the other rib's edge
constexpr double kPinPlay_mm = 0.1;        // of the door's leaf on its pin, in diameter
constexpr double kBetweenLeaves_mm = 0.3;  // in height
constexpr double kRoomBeside_mm = 0.5;     // between a leaf and what else lies on the rib
constexpr double kOverPocket_mm = 0.2;
constexpr double kScrewInside_mm = 0.5;  // of a leaf's screws, farther from the rib's edge than they must be

double most_u(const RibPlan& rib) { return extent_of({rib.outline}).high.u; }

class HingeMaker {
 public:
  HingeMaker(FrameDesk& desk, const DoorSide& side) : desk_(desk), settings_(desk.settings()), side_(side) {
    gap_mm_ = side.door->set_back_mm + side.fixed->set_back_mm;
    const double pin = settings_.hinge_pin_mm;
    // A gap wider than the knuckle would leave a leaf no round to hold the pin in.
    knuckle_mm_ = std::max(kKnucklePins * pin, 0.6 * pin + gap_mm_ / 2);
    pin_u_mm_ = std::max(most_u(*side.door), most_u(*side.fixed)) + knuckle_mm_ + kKnuckleRoomPins * pin;
  }

  [[nodiscard]] SpacePoint axis_at(double z) const {
    return place_in(*side_.door, {pin_u_mm_, z}, side_.door->set_back_mm - gap_mm_ / 2);
  }

  void make(const char* name, HeightRange heights) {
    const double middle = (heights.low + heights.high) / 2;
    const std::string mark = fmt::format("door-hinge-{}", name);
    const auto lower = free_heights(*side_.fixed, {heights.low, middle - kBetweenLeaves_mm / 2});
    const auto upper = free_heights(*side_.door, {middle + kBetweenLeaves_mm / 2, heights.high});
    if (!lower || !upper) return refuse(mark);
    add_leaf(mark + "-fixed", *side_.fixed, *lower, 0);
    add_leaf(mark + "-leaf", *side_.door, *upper, kPinPlay_mm);
    if (upper->low - lower->high < 1.5 * kBetweenLeaves_mm) desk_.join(mark + "-fixed", mark + "-leaf");
    add_pin(mark, {lower->low, upper->high});
  }

 private:
  void refuse(const std::string& mark) {
    desk_.warn(FrameWarning::Kind::no_room, mark, 0, least_height(),
               "left out, as at its height the side rib has no outer edge, too little brass behind it, or "
               "something else that lies on it. Hang the door at its other side or take a wider rib margin.");
  }

  [[nodiscard]] double least_height() const { return settings_.screw_mm + 2 * settings_.least_brass_mm; }

  // The tallest stretch at which nothing else lies on the rib where the leaf would.
  [[nodiscard]] std::optional<HeightRange> free_heights(const RibPlan& rib, HeightRange heights) const {
    const auto edge = outer_edge(rib.outline, heights);
    if (!edge) return std::nullopt;
    HeightRange best;
    const double flange_u = edge->least_u_mm - 2 * screw_inside(rib);
    std::vector<HeightRange> taken{{heights.high, heights.high}};
    const auto take = [&](const PlateOutline& outline, double from_u) {
      std::optional<HeightRange> range;
      for (const PlatePoint p : outline) {
        if (p.u < from_u) continue;
        if (!range) range = HeightRange{p.v, p.v};
        range = HeightRange{std::min(range->low, p.v), std::max(range->high, p.v)};
      }
      if (range) taken.push_back({range->low - kRoomBeside_mm, range->high + kRoomBeside_mm});
    };
    for (const PlateOutline& outline : desk_.covered(rib)) take(outline, flange_u - kRoomBeside_mm);
    // Glass stands the setting gap within its pocket: a flange may just cover a pocket's edge.
    for (const Pocket& pocket : rib.pockets) take(pocket.outline, flange_u + kOverPocket_mm);
    std::sort(taken.begin(), taken.end(), [](HeightRange a, HeightRange b) { return a.low < b.low; });
    double from = heights.low;
    for (const HeightRange range : taken) {
      const double to = std::min(range.low, heights.high);
      if (to - from > best.high - best.low) best = {from, to};
      from = std::max(from, range.high);
    }
    if (best.high - best.low < least_height()) return std::nullopt;
    return best;
  }

  void add_leaf(const std::string& mark, const RibPlan& rib, HeightRange heights, double play_mm) {
    const auto edge = outer_edge(rib.outline, heights);
    const double back = gap_mm_ / 2;
    LeafPlan leaf{settings_.hinge_pin_mm, knuckle_mm_, back, back + plate_thickness_mm(rib), 0, 0, 0, 0};
    leaf.inside_radius_mm = settings_.inside_radius_mm;
    leaf.edge_x_mm = edge->most_u_mm - pin_u_mm_;
    leaf.flange_x_mm = edge->least_u_mm - 2 * screw_inside(rib) - pin_u_mm_;
    leaf.flange_mm = 2 * settings_.screw_mm;
    desk_.add(leaf_part(mark, rib, heights, leaf, play_mm));
    desk_.join(mark, rib.mark);
    desk_.cover(rib,
                plate_rectangle({leaf.flange_x_mm + pin_u_mm_, heights.low}, {edge->most_u_mm, heights.high}));
    add_leaf_screws(mark, rib, heights, edge->least_u_mm - screw_inside(rib));
  }

  // How far from the rib's outer edge the screws of a leaf stand.
  [[nodiscard]] double screw_inside(const RibPlan& rib) const { return screw_room(rib) + kScrewInside_mm; }
  [[nodiscard]] double screw_room(const RibPlan& rib) const {
    return room_round_screw_mm(settings_.screw_mm, settings_.least_brass_mm,
                               can_sink(plate_thickness_mm(rib), settings_.screw_mm));
  }

  FlatPart leaf_part(const std::string& mark, const RibPlan& rib, HeightRange heights, const LeafPlan& leaf,
                     double play_mm) {
    FlatPart part;
    part.mark = mark;
    part.kind = PartKind::hinge_leaf;
    part.making = PartMaking::machined;
    part.panel = rib.panel;
    part.thickness_mm = heights.high - heights.low;
    const SpaceVector seaward = outward_of(rib);
    part.place = {axis_at(heights.low), seaward, cross({0, 0, 1}, seaward), {0, 0, 1}};
    part.outline = leaf_outline(leaf);
    // The frame's y runs into the panel anticlockwise of the plane; the other leaf is its mirror image there.
    if (rib.side == Side::anticlockwise) part.outline = moved(mirrored(part.outline), kPi, {});
    const double bore = settings_.hinge_pin_mm + play_mm;
    part.holes.push_back({{}, bore, 0, true, fmt::format("pin {:g} mm", settings_.hinge_pin_mm)});
    return part;
  }

  void add_leaf_screws(const std::string& mark, const RibPlan& rib, HeightRange heights, double u_mm) {
    const double height = heights.high - heights.low;
    const double room = screw_room(rib);
    std::vector<double> shares{0.5};
    if (height / 2 >= 2 * room) shares = {0.25, 0.75};
    const RibBrass brass(rib, desk_.flat(rib.mark), heights);
    for (const double share : shares) {
      const PlatePoint at{u_mm, heights.low + share * height};
      const double wall = settings_.screw_mm / 2 + settings_.least_brass_mm;
      const double found = std::min(brass.room_at(at) - room, share * height - wall);
      if (found < 0) {
        desk_.warn(
            FrameWarning::Kind::no_room, mark, room + found, room,
            fmt::format("no room for its screws of {} in the rib's edge. Take a wider rib margin or smaller "
                        "screws.",
                        screw_name(settings_.screw_mm)));
        return;
      }
      const double hold = 1.5 * settings_.screw_mm;
      const ScrewTask task = add_rib_screw(desk_, {&rib, at, hold, mark});
      add_tapped_bore(desk_.flat(mark), place_in(rib, at, rib.thickness_mm), task, hold);
    }
  }

  void add_pin(const std::string& hinge, HeightRange heights) {
    RoundPart pin;
    pin.mark = hinge + "-pin";
    pin.kind = PartKind::hinge_pin;
    pin.panel = side_.fixed->panel;
    pin.from = axis_at(heights.low);
    pin.length_mm = heights.high - heights.low;
    pin.diameter_mm = settings_.hinge_pin_mm;
    desk_.frame().rounds.push_back(pin);
    desk_.join(hinge + "-pin", hinge + "-fixed");
    desk_.join(hinge + "-pin", hinge + "-leaf");
  }

  FrameDesk& desk_;
  const FrameSettings& settings_;
  DoorSide side_;
  double gap_mm_ = 0;
  double knuckle_mm_ = 0;
  double pin_u_mm_ = 0;
};

}  // namespace

void add_hinges(FrameDesk& desk, const DoorSide& side, const std::vector<HeightRange>& heights) {
  HingeMaker maker(desk, side);
  maker.make("low", heights.front());
  maker.make("high", heights.back());
  desk.frame().hinge = FramePlan::Hinge{maker.axis_at(0), side.door->side == Side::clockwise};
}

}  // namespace prismwright
