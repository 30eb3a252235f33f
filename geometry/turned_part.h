#pragma once

#include <memory>
#include <optional>
#include <string>

#include <TopoDS_Shape.hxx>
#include <gp_Trsf.hxx>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/room_field.h"
#include "geometry/solid_gap.h"

namespace prismwright {

/// A prism or a ring as what it is: a section turned about a line and cut. The distance of any place from it is
/// that from the turned section, as long as the nearest place lies within the cuts.
class TurnedPart {
 public:
  /// The prism as it stands, or null where its solid does not stand as the plan says (every corner of it must
  /// lie on the turned profile within 2e-4 mm).
  static std::shared_ptr<const TurnedPart> of(const PlannedPrism& prism, const TopoDS_Shape& shape);
  /// A flat ring, likewise.
  static std::shared_ptr<const TurnedPart> of(const RingPlan& ring, const TopoDS_Shape& shape);

  /// From the part's own frame (that of a prism's turning axis) to the lens frame.
  [[nodiscard]] const gp_Trsf& to_lens() const { return to_lens_; }
  /// The solid in its own frame.
  [[nodiscard]] const TopoDS_Shape& solid() const { return solid_; }
  /// A ring has no cuts and looks the same from every side.
  [[nodiscard]] bool is_round() const { return !trim_; }
  /// Can the nearest places of these two be told by their sections? Halves that face each other across the
  /// level plane cannot.
  [[nodiscard]] bool can_measure(const PlannedPrism& other) const;

  /// Gap to another solid given in the part's frame; blank when the cuts change it by more than 2e-4 mm.
  /// Throws Standard_Failure.
  [[nodiscard]] std::optional<SolidGap> gap_from(const TopoDS_Shape& other) const;

 private:
  TurnedPart(const PlateRegion& section, bool about_z, std::optional<Trim> trim, double dip,
             const gp_Trsf& to_lens, const TopoDS_Shape& shape);
  [[nodiscard]] bool corners_fit() const;
  [[nodiscard]] bool within_cuts(const gp_Pnt& p) const;

  TurnedField field_;
  double cell_mm_;
  bool about_z_;
  std::optional<Trim> trim_;
  double dip_;
  gp_Trsf to_lens_;
  TopoDS_Shape solid_;
};

}  // namespace prismwright
