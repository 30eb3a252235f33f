#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/lens/plan.h"

namespace prismwright {

/// A prism that is cast from a master.
struct MasterUse {
  std::string mark;     ///< "P03-U07"
  bool turned = false;  ///< its casting is turned end for end (half a turn about the panel's axis)
};

/// One solid to be modelled and moulded, and the prisms that are cast from it.
struct Master {
  /// The zone's piece ("U07", "R2a") where the lens has one kind of it, else with the panel of the first use
  /// ("U07-P02").
  std::string name;
  std::size_t prism = 0;        ///< index into LensPlan::prisms of the one it is drawn from: its first use
  std::vector<MasterUse> uses;  ///< in the order of the plan, never empty
  /// Name of an earlier master whose mirror image this is. Blank also where a motion makes one of the other.
  std::string mirror_of;
  /// Name of an earlier master that becomes this one when turned end for end; only with HalfTurn::own.
  std::string turned_twin_of;
};

/// How near two solids must come to share a master, mm: corners, curves and cutting planes all over.
inline constexpr double kCongruent_mm = 1e-6;

/// The masters of a lens, in the order of their first uses.
///
/// Prisms share a master when a rigid motion that keeps up up takes one solid to the other: a turn about an
/// upright line, a shift, or (for a ring that is tilted to an aim) a turn about the tilted axis. The solids are
/// compared as what they are: a profile turned about its axis and the planes that do cut it; a side plane
/// that passes clear of the glass does not count. So a ring that stands clear of the ribs is one in panels of
/// any width, and belt prisms of panels of equal width are one wherever the panel's axis lies.
/// Motions that turn it end for end share with HalfTurn::shared only (plan.values.works.half_turn), and are
/// named else. Mirror images never share and are named. Faces that carry light and faces that carry none are
/// told apart, since stock is laid on by that.
std::vector<Master> masters_of(const LensPlan& plan);

/// The piece of a mark, without its panel or spare number: "P03-R2a" gives "R2a", "S01-U07" "U07".
std::string piece_of_mark(std::string_view mark);

/// The master that serves the mark, or null.
const Master* master_of_mark(std::span<const Master> masters, std::string_view mark);
/// The master of that name, or null.
const Master* find_master(std::span<const Master> masters, std::string_view name);

/// How many masters fewer there would be with HalfTurn::shared.
int half_turn_saves(std::span<const Master> masters);

}  // namespace prismwright
