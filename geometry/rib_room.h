#pragma once

#include <optional>

#include <TopoDS_Shape.hxx>

#include "core/frame/frame_plan.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// Gaps from a prism to a rib, kept apart by what they are for.
struct RibGaps {
  std::optional<SolidGap> floor;  ///< prism end to the brass under the pockets; blank for pockets right through
  std::optional<SolidGap> walls;  ///< to the brass beside the pockets
};

/// Measures prisms against one rib. Points are in the rib's own frame (plate_solid.h).
///
/// A rib has a thousand faces, a prism is near to a few: for each prism only the part of the plate round the
/// prism's near end is built, from the same outlines as the whole, and the distance is exact because it is
/// smaller than what was left away is distant.
class RibRoom {
 public:
  explicit RibRoom(const RibPlan& rib) : rib_(rib) {}

  /// The prism must be given in the rib's own frame. Throws Standard_Failure.
  [[nodiscard]] RibGaps gaps_to(const TopoDS_Shape& prism) const;

 private:
  struct Window;
  [[nodiscard]] RibGaps gaps_within(const TopoDS_Shape& prism, const Window& window) const;
  [[nodiscard]] Window near_end(const TopoDS_Shape& prism) const;
  [[nodiscard]] Window whole(const TopoDS_Shape& prism, double reach_mm) const;
  [[nodiscard]] std::optional<SolidGap> gap_to_layer(const TopoDS_Shape& prism, const PlateOutline& window,
                                                     bool floor) const;

  const RibPlan& rib_;
};

/// True where the shape is the planned rib's solid at its planned place: faces and corners are compared.
bool stands_as_planned(const TopoDS_Shape& shape, const RibPlan& rib);

}  // namespace prismwright
