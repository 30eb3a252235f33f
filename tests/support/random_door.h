#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <set>
#include <string>

#include "core/frame/door_places.h"
#include "geometry/door_sweep.h"
#include "tests/support/random_frame.h"

namespace prismwright {

/// Leaves two neighbours in the door and what stands in the same zones of the panels beside it.
inline void keep_prisms_at_door(LensPlan& plan, const DoorPlaces& door, Lot& lot) {
  std::vector<NeighbourPair> own;
  for (const NeighbourPair& pair : neighbours(plan)) {
    const auto is_own = [&](std::size_t i) { return plan.prisms[i].panel == door.panel; };
    if (is_own(pair.first) && is_own(pair.second)) own.push_back(pair);
  }
  std::set<std::string> zones;
  if (!own.empty()) {
    const NeighbourPair pair = own[static_cast<std::size_t>(lot.whole(0, static_cast<int>(own.size()) - 1))];
    zones = {plan.prisms[pair.first].mark.substr(3), plan.prisms[pair.second].mark.substr(3)};
  }
  const std::set<int> panels{door.panel, door.next_at_hinge, door.next_at_latch};
  std::erase_if(plan.prisms, [&](const PlannedPrism& prism) {
    return !panels.contains(prism.panel) || !zones.contains(prism.mark.substr(3));
  });
}

/// Leaves the door's plates, hinges and latch, the ribs that face it, sometimes the rings, and a few screws.
inline void keep_metal_at_door(FramePlan& frame, const DoorPlaces& door, Lot& lot) {
  std::set<std::string> ribs;
  for (const RibPlan& rib : frame.ribs) {
    const bool faces = (rib.panel == door.next_at_hinge && rib.side != door.hinge_side) ||
                       (rib.panel == door.next_at_latch && rib.side == door.hinge_side);
    if (rib.panel == door.panel || faces) ribs.insert(rib.mark);
  }
  const bool rings = lot.once_in(3);
  std::erase_if(frame.ribs, [&](const RibPlan& rib) { return !ribs.contains(rib.mark); });
  std::erase_if(frame.flats, [&](const FlatPart& part) {
    if (part.kind == PartKind::side_rib) return !ribs.contains(part.mark);
    if (part.kind == PartKind::ring) return !rings;
    return part.kind != PartKind::hinge_leaf && part.kind != PartKind::latch && part.panel != door.panel;
  });
  if (!rings) frame.rings.clear();
  std::erase_if(frame.bars, [&](const TurnedBar& bar) { return bar.panel != door.panel; });
  int screws = 0;
  std::erase_if(frame.rounds, [&](const RoundPart& round) {
    return round.kind != PartKind::hinge_pin && (round.panel != door.panel || ++screws > 4);
  });
}

/// The first warning of a frame that holds the words; empty where none does.
inline std::string said_of(const FramePlan& frame, const std::string& words) {
  for (const FrameWarning& warning : frame.warnings) {
    if (warning.sentence.find(words) != std::string::npos) return warning.sentence;
  }
  return {};
}

/// A door with its prisms and the brass near it, drawn by lot; or why there is none.
inline std::optional<RandomFrame> drawn_door(const LensValues& values, Lot& lot, Refusals& refusals) {
  if (const Done fit = check_values(values); !fit) return refusals.take(fit.problem());
  auto plan = plan_lens(values);
  if (!plan) return refusals.take(plan.problem());
  RandomFrame drawn;
  drawn.plan = std::move(plan).value();
  const auto door = door_places(drawn.plan);
  if (!door) return refusals.take("no door", "The lens has one panel.");
  keep_prisms_at_door(drawn.plan, *door, lot);
  drawn.frame = plan_frame(drawn.plan);
  if (!drawn.frame.hinge) return refusals.take("no hinge", said_of(drawn.frame, "no rib to hang it from"));
  keep_metal_at_door(drawn.frame, *door, lot);
  return with_solids(std::move(drawn));
}

inline RandomFrame random_door(Lot& lot, Refusals& refusals) {
  for (;;) {
    if (auto drawn = drawn_door(random_door_values(lot), lot, refusals)) return std::move(*drawn);
  }
}

}  // namespace prismwright
