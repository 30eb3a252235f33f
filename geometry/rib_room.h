#pragma once

#include <optional>

#include <TopoDS_Shape.hxx>

#include "core/frame/frame_plan.h"
#include "geometry/room_field.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// Gaps from a prism to a rib, kept apart by what they are for.
struct RibGaps {
  std::optional<SolidGap> floor;  ///< prism end to the brass under the pockets; blank for pockets right through
  std::optional<SolidGap> walls;  ///< to the brass beside the pockets
};

/// Measures prisms against one rib. Points are in the rib's own frame (plate_solid.h).
///
/// A rib has a thousand faces, too many for the kernel's face by face distances. Its brass is two layers of
/// flat outlines, so the distance of a place from it is exact and quick, and the prism's own faces and edges
/// are searched for the least (nearest_place.h). Where a prism touches the brass the kernel measures their
/// common volume. One RibRoom may be asked from several threads.
class RibRoom {
 public:
  explicit RibRoom(const RibPlan& rib);

  /// The prism must be given in the rib's own frame. Throws Standard_Failure.
  [[nodiscard]] RibGaps gaps_to(const TopoDS_Shape& prism) const;

 private:
  struct Layer {
    double from_mm = 0;
    double to_mm = 0;
    PlateRegion region;
    LayerField field;
  };
  [[nodiscard]] Layer layer(PlateRegion region, double from_mm, double to_mm) const;
  [[nodiscard]] SolidGap gap_to(const TopoDS_Shape& prism, const Layer& layer) const;
  [[nodiscard]] double overlap_mm3(const TopoDS_Shape& prism, const Layer& layer) const;

  RibPlan rib_;
  std::optional<Layer> floor_;
  std::optional<Layer> walls_;
};

/// True where the shape is the planned rib's solid at its planned place: faces and corners are compared.
bool stands_as_planned(const TopoDS_Shape& shape, const RibPlan& rib);

}  // namespace prismwright
