#pragma once

#include <string>
#include <vector>

#include "core/base/space.h"

namespace prismwright {

/// Why a piece of a face counts as undercut.
enum class UndercutKind {
  hidden,  ///< the other half would have to pass through the casting: cannot be drawn
  steep,   ///< can be drawn, but its draft is less than works.mould_draft_deg
};

/// The undercut of one face of the master in one draw direction.
struct Undercut {
  std::string face;  ///< "inner", "exit", "land", "end clockwise", "level cut", ... (see face_words)
  UndercutKind kind = UndercutKind::steep;
  double area_mm2 = 0;
  double depth_mm = 0;             ///< hidden: how far it reaches under the rest, square to the draw; steep: 0
  double draft_deg = 0;            ///< least draft found on the face
  std::vector<SpacePoint> places;  ///< places on the face where it is undercut, master's frame, mm
};

/// How one draw direction does.
struct DrawFacts {
  SpaceVector along{1, 0, 0};  ///< unit, master's frame: the upper half is lifted along it
  double height_mm = 0;        ///< of the master along it
  double draft_deg = 0;        ///< least draft of all faces
  std::vector<Undercut> undercuts;
  [[nodiscard]] bool free() const { return undercuts.empty(); }
  [[nodiscard]] bool drawable() const {  ///< nothing hidden; steep faces may be left
    for (const Undercut& undercut : undercuts) {
      if (undercut.kind == UndercutKind::hidden) return false;
    }
    return true;
  }
};

enum class PartingKind {
  plane,    ///< the halves meet in one plane
  surface,  ///< they meet along the corners that the draw sees edge-on, carried on outward
};

/// A round opening from the cavity to the top of the block, as the mould stands.
struct MouldOpening {
  bool gate = false;       ///< the pour gate; else a vent
  SpacePoint foot;         ///< on the cavity, master's frame, mm
  SpacePoint mouth;        ///< at the block's outside
  double diameter_mm = 0;  ///< from a little above the foot outward
  double throat_mm = 0;    ///< diameter at the foot: as the face there allows
  std::string face;        ///< face of the casting that it leaves its mark on
};

/// A register pin: stands on the lower half, its hole in the upper one.
struct MouldPin {
  SpacePoint root;  ///< on the parting, master's frame, mm
  double diameter_mm = 0;
  double hole_diameter_mm = 0;
  double length_mm = 0;  ///< above the parting at its middle
};

/// What a mould is, in numbers. The master's frame is the prism's panel frame: X along the panel's axis
/// (depth), Y along the prism's length, Z up.
struct MouldFacts {
  std::string mark;
  std::string shape_key;
  DrawFacts draw;
  PartingKind parting = PartingKind::surface;
  double parting_rise_mm = 0;    ///< lowest to highest place of the parting line along the draw
  SpaceFrame block;              ///< third = draw; origin = lowest corner of the block, master's frame
  double block_length_mm = 0;    ///< along block.first, the longest level side
  double block_width_mm = 0;     ///< along block.second
  double block_height_mm = 0;    ///< along the draw
  SpaceVector up{0, 1, 0};       ///< which way is up when it is filled, master's frame
  double standing_mm = 0;        ///< height of the block as it stands
  double footprint_long_mm = 0;  ///< its foot as it stands
  double footprint_short_mm = 0;
  std::vector<MouldOpening> openings;  ///< the gate first
  std::vector<MouldPin> pins;

  double block_mm3 = 0;     ///< whole block
  double master_mm3 = 0;    ///< cavity
  double lower_mm3 = 0;     ///< tooling material of the lower half, pins included
  double upper_mm3 = 0;     ///< tooling material of the upper half
  double openings_mm3 = 0;  ///< gate and vents, taken out of both halves
  double pins_mm3 = 0;      ///< pins, that the lower half has and the upper gave
  double pin_gap_mm3 = 0;   ///< room round the pins, in neither half
  double resin_mm3 = 0;     ///< with works.resin_head_percent
  double resin_g = 0;       ///< of the liquid syrup
};

/// (lower + upper + master + openings + pin gap) / block - 1: nought but for the kernel's rounding.
double volume_departure(const MouldFacts& facts);

}  // namespace prismwright
