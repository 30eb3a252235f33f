#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/frame/door_places.h"
#include "core/frame/fasteners.h"
#include "core/frame/frame_desk.h"
#include "core/frame/plate_edges.h"

namespace prismwright {

/// Where a rib is brass from back to front: inside its outline, clear of pockets and of the holes that its
/// plate has so far. Works on the rib's polygons, for places within some heights.
class RibBrass {
 public:
  RibBrass(const RibPlan& rib, const FlatPart& plate, HeightRange heights);
  /// Radius of the largest disc about a centre within the heights, mm, as far as 100 mm; negative where there
  /// is no brass.
  [[nodiscard]] double room_at(PlatePoint centre) const;

 private:
  struct Disc {
    PlatePoint centre;
    double radius_mm;
  };
  PlateEdges outline_;
  std::vector<PlateEdges> pockets_;
  std::vector<Disc> holes_;
};

/// A stretch of u on a rib.
struct Stretch {
  double from_u_mm = 0;
  double to_u_mm = 0;
  [[nodiscard]] double width_mm() const { return to_u_mm - from_u_mm; }
};
/// The widest stretch of u over which the rib's plate is brass at every one of the heights, clear of pockets.
/// Blank when there is none.
std::optional<Stretch> widest_brass(const RibPlan& rib, HeightRange heights);

/// A screw through a rib, its head in the rib's outer face, into a part that lies on the rib's inner face.
struct RibScrew {
  const RibPlan* rib = nullptr;
  PlatePoint at;
  double hold_mm = 0;  ///< length in the part
  std::string part;    ///< the part's mark
};
/// Adds hole, screw and joints. The part's own tapped bore begins where the screw leaves the rib: at
/// `place_in(rib, at, rib.thickness_mm)`, along the task's axis.
ScrewTask add_rib_screw(FrameDesk& desk, const RibScrew& screw);
/// Whether the rib is thick enough for a sunk head; says so in a warning where it is not.
bool sinks_in_rib(FrameDesk& desk, const RibPlan& rib);

/// How far seaward a rib reaches, in u.
struct OuterEdge {
  double least_u_mm = 0;
  double most_u_mm = 0;
};
/// Over the heights: least and most. Blank where the outline does not reach all of them.
std::optional<OuterEdge> outer_edge(const PlateOutline& outline, HeightRange heights);

}  // namespace prismwright
