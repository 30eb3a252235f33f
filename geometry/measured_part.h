#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"
#include "geometry/plate_room.h"
#include "geometry/turned_part.h"

namespace prismwright {

/// A prism or a metal part as it stands, with whatever is known of its form.
struct MeasuredPart {
  std::string mark;
  int panel = 0;                        ///< 0: of the whole lens
  const PlannedPrism* prism = nullptr;  ///< null for metal
  PartKind kind = PartKind::side_rib;   ///< of metal
  double greatest_length_mm = 0;        ///< of a prism
  gp_Trsf place;                        ///< from the frame that its solid was made in to the lens frame
  std::shared_ptr<const SolidForm> form;
  std::shared_ptr<const TurnedPart> turned;  ///< where it is a turned section
  std::shared_ptr<const PlateRoom> plate;    ///< where it is a flat part

  [[nodiscard]] TopoDS_Shape shape() const;  ///< lens frame
};

/// Knows the forms of solids from one survey to the next. A solid is known again by itself or, when it was made
/// anew, by its corners and edges. A solid that is not the planned one is told by its own faces alone.
class PartBook {
 public:
  /// Prisms in the order of the bodies, then metal in its order. `plan` must outlive the parts. Throws
  /// Standard_Failure.
  std::vector<MeasuredPart> parts_of(const LensPlan& plan, const LensBodies& bodies, const FramePlan& frame,
                                     const std::vector<FrameBody>& metal);

 private:
  struct Known {
    TopoDS_Shape made;  // keeps the solid, so that its address is not given away
    std::shared_ptr<const SolidForm> form;
  };
  std::shared_ptr<const SolidForm> form_of(const TopoDS_Shape& made);
  void add_metal_form(const FramePlan& frame, MeasuredPart& part);
  std::shared_ptr<const TurnedPart> turned_prism(const PlannedPrism& prism,
                                                 const std::shared_ptr<const SolidForm>& form);
  std::shared_ptr<const PlateRoom> plate_of_part(const FlatPart& flat, const gp_Trsf& to_made,
                                                 const std::shared_ptr<const SolidForm>& form);
  void forget_unused();

  std::map<const void*, Known> by_solid_;
  std::map<std::string, std::shared_ptr<const SolidForm>> by_word_;
  std::map<std::string, std::shared_ptr<const TurnedPart>> turned_;
  std::map<std::string, std::shared_ptr<const PlateRoom>> plates_;
};

}  // namespace prismwright
