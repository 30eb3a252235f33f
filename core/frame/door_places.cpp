#include "core/frame/door_places.h"

#include <algorithm>

namespace prismwright {
namespace {

constexpr double kPinsTall = 8;
constexpr double kMostOfRib = 0.1;
constexpr double kHingeAt = 0.2;

HeightRange around(double middle, double height) { return {middle - height / 2, middle + height / 2}; }

}  // namespace

std::optional<DoorPlaces> door_places(const LensPlan& plan) {
  const int door = plan.values.frame.door_panel;
  const auto count = static_cast<int>(plan.panels.size());
  if (door < 1 || door > count || count < 2) return std::nullopt;
  const int next = door % count + 1;  // panels run anticlockwise
  const int before = (door + count - 2) % count + 1;
  const bool left = plan.values.frame.door_hinge == DoorHinge::left;
  return DoorPlaces{door, left ? Side::anticlockwise : Side::clockwise, left ? next : before,
                    left ? before : next};
}

std::vector<HeightRange> pad_heights(const LensPlan& plan, int panel, Side side, double low_v_mm,
                                     double high_v_mm) {
  const auto door = door_places(plan);
  if (!door) return {};
  const bool own = panel == door->panel;
  // A neighbour meets the hinge with the side that faces the door.
  const bool hinge = own ? side == door->hinge_side : panel == door->next_at_hinge && side != door->hinge_side;
  const bool latch = own ? side != door->hinge_side : panel == door->next_at_latch && side == door->hinge_side;
  if (!hinge && !latch) return {};
  const double rib = high_v_mm - low_v_mm;
  const double height = std::min(kPinsTall * plan.values.frame.hinge_pin_mm, kMostOfRib * rib);
  if (latch) return {around((low_v_mm + high_v_mm) / 2, height)};
  return {around(low_v_mm + kHingeAt * rib, height), around(high_v_mm - kHingeAt * rib, height)};
}

}  // namespace prismwright
