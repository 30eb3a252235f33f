#pragma once

#include <optional>
#include <vector>

#include <gp_Trsf.hxx>

#include "core/frame/frame_plan.h"
#include "geometry/measured_part.h"
#include "geometry/surroundings.h"

namespace prismwright {

/// A part of the door and something that stands still. A door that turns and a lens that turns the other way
/// about its hinge are the same, so the gap changes no faster than the farthest radius about the hinge of
/// whichever of the two reaches less far from it.
struct DoorPair {
  std::size_t moving = 0;  ///< in DoorMotion::moving
  std::size_t fixed = 0;   ///< in DoorMotion::fixed, or in DoorMotion::round when `is_round`
  bool is_round = false;
  double height_apart_mm = 0;  ///< stays as it is while the door turns
  double reach_mm = 0;         ///< the gap changes no faster than this per radian
};

/// The parts of a door and what they may meet, with the door at any angle.
class DoorMotion {
 public:
  /// `parts` must outlive this.
  DoorMotion(const LensPlan& plan, const FramePlan& frame, const std::vector<MeasuredPart>& parts);

  [[nodiscard]] const std::vector<const MeasuredPart*>& moving() const { return moving_; }
  [[nodiscard]] const std::vector<const MeasuredPart*>& fixed() const { return fixed_; }
  [[nodiscard]] const std::vector<Surrounding>& round() const { return round_; }
  [[nodiscard]] const std::vector<DoorPair>& pairs() const { return pairs_; }

  /// Never greater than the gap at this angle: by the parts' boxes.
  [[nodiscard]] double least_by_boxes_mm(const DoorPair& pair, double angle_deg) const;
  /// The gap at this angle, lens frame; blank where it is over `no_farther_mm`. Throws Standard_Failure.
  [[nodiscard]] std::optional<SolidGap> gap_at(const DoorPair& pair, double angle_deg,
                                               double no_farther_mm) const;
  [[nodiscard]] const std::string& mark_of_first(const DoorPair& pair) const;
  [[nodiscard]] const std::string& mark_of_second(const DoorPair& pair) const;

 private:
  [[nodiscard]] gp_Trsf turn(double angle_deg) const;
  [[nodiscard]] MeasuredPart turned(const MeasuredPart& part, double angle_deg) const;
  [[nodiscard]] double farthest_radius_mm(const MeasuredPart& part) const;
  void find_pairs(const FramePlan& frame);

  gp_Pnt hinge_;
  bool clockwise_;
  std::vector<const MeasuredPart*> moving_;
  std::vector<const MeasuredPart*> fixed_;
  std::vector<Surrounding> round_;
  std::vector<DoorPair> pairs_;
};

}  // namespace prismwright
