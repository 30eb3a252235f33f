#pragma once

#include <string>
#include <vector>

#include "core/base/space.h"
#include "core/frame/plate_chain.h"
#include "core/lens/plan.h"

namespace prismwright {

/// What a part of the frame is for.
enum class PartKind {
  side_rib,
  cross_rib,  ///< level, between two bands of a panel
  rail,       ///< joins the two ribs of a panel at its top or bottom
  ring,
  base_table,
  finial_plate,
  spacer,
  hinge_leaf,
  hinge_pin,
  latch,
  screw,
  dowel,
};
const char* name_of(PartKind kind);  ///< "side rib", "cross rib", ...

/// How a part comes about.
enum class PartMaking { cut_flat, machined, bought };
const char* name_of(PartMaking making);  ///< "cut flat", "machined", "bought"

/// What a part is made of, with its density.
enum class PartMetal { brass, steel };
const char* name_of(PartMetal metal);  ///< "brass", "stainless steel"
/// Brass 8.49 g/cm3 (handbook value noted with the project's sources); stainless steel 7.9 (from memory).
double density_g_cm3(PartMetal metal);

/// A round hole square to a plate, right through.
struct PlateHole {
  PlatePoint centre;
  double diameter_mm = 0;
  /// A cone of 90 deg for a sunk screw head; 0: none. Its wide end lies in the face that it is sunk into.
  double sink_diameter_mm = 0;
  bool sunk_in_back = true;  ///< from depth 0; else from the front face
  std::string use;           ///< "clears M3", "taps M3", "dowel 3 mm", "vent", "pin 5 mm"
};

/// A pocket cut into the front face of a plate; as deep as the plate: a seat right through.
struct PlatePocket {
  PlateChain outline;  ///< anticlockwise
  double depth_mm = 0;
  std::vector<std::string> marks;  ///< of the prisms that it takes
};

/// A round hole in any direction, in the plate's own frame (x, y, depth): tapped holes in the ends of rails.
struct PlateBore {
  SpacePoint from;    ///< on the surface of the plate
  SpaceVector along;  ///< unit vector into the brass
  double depth_mm = 0;
  double diameter_mm = 0;
  std::string use;
};

/// A plate: an outline with thickness. Its own frame is `place`: x and y in the plate, depth along the third
/// axis from the back face (0) to the front face (thickness). Seen from the front, x runs right and y up: so is
/// it drawn and cut. Pockets open in the front face.
struct FlatPart {
  std::string mark;
  PartKind kind = PartKind::side_rib;
  PartMaking making = PartMaking::cut_flat;
  PartMetal metal = PartMetal::brass;
  int panel = 0;  ///< 0: of the whole lens
  double thickness_mm = 0;
  PlateChain outline;                ///< anticlockwise
  std::vector<PlateChain> openings;  ///< right through, anticlockwise, beside round holes
  std::vector<PlateHole> holes;
  std::vector<PlatePocket> pockets;
  std::vector<PlateBore> bores;
  SpaceFrame place;       ///< lens frame; right-handed
  std::string shape_key;  ///< equal keys: the same plate
};

/// A turned pin, tube or screw: a cylinder from `from` along the unit vector `along`, lens frame. A sunk head
/// is a cone from `head_mm` across at `from` down to the shank (90 deg), inside the length.
struct RoundPart {
  std::string mark;
  PartKind kind = PartKind::screw;
  PartMaking making = PartMaking::bought;
  PartMetal metal = PartMetal::steel;
  int panel = 0;
  SpacePoint from;
  SpaceVector along{0, 0, 1};
  double length_mm = 0;
  double diameter_mm = 0;
  double bore_mm = 0;  ///< diameter of the hole along it; 0: none
  double head_mm = 0;  ///< greatest diameter of the sunk head; 0: none
  std::string shape_key;
};

/// A bar turned about the panel's axis as the rings of a bull's-eye are: a cross rib that follows its band. Its
/// profile and trim are those of a prism.
struct TurnedBar {
  std::string mark;
  PartKind kind = PartKind::cross_rib;
  PartMaking making = PartMaking::machined;
  PartMetal metal = PartMetal::brass;
  int panel = 0;
  PlannedPrism shape;            ///< its mark is the bar's
  std::vector<PlateBore> bores;  ///< in the frame of its panel: x along the panel's axis, z up
};

/// Two parts that are meant to touch: a rib and its rail, a screw and what it holds.
struct FrameJoint {
  std::string first;
  std::string second;
};

/// Something about the frame that a maker should know before cutting.
struct FrameWarning {
  enum class Kind { thin_brass, small_landing, sharp_inside, no_room, pocket_cut_short, other };
  Kind kind = Kind::other;
  std::string mark;  ///< of the part
  double value_mm = 0;
  double limit_mm = 0;
  std::string sentence;  ///< value, limit and what to do
};

}  // namespace prismwright
