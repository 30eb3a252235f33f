#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/frame/frame_heights.h"
#include "core/frame/frame_plan.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

/// One panel and the two ribs that stand in it; null where a side has no rib.
struct PanelBay {
  PanelPlace place;
  const RibPlan* left = nullptr;
  const RibPlan* right = nullptr;
  bool is_door = false;

  /// Half the panel's width, radians.
  [[nodiscard]] double half_width() const;
  /// Azimuth of the panel's middle (not of its axis), radians.
  [[nodiscard]] double middle() const;
  [[nodiscard]] bool has_ribs() const { return left && right; }
};

/// Two ribs of neighbouring panels that stand back to back in one side plane.
struct FacingRibs {
  const RibPlan* left = nullptr;   ///< of the panel clockwise of the plane
  const RibPlan* right = nullptr;  ///< of the panel anticlockwise of it
  bool at_door = false;
};

/// What all the work on one frame shares: the plan, the parts found by their marks, joints without repeats.
class FrameDesk {
 public:
  /// Ribs and rings of `frame` must stand; both references must outlive the desk.
  FrameDesk(FramePlan& frame, const LensPlan& plan, const FrameHeights& heights);

  [[nodiscard]] const LensPlan& plan() const { return plan_; }
  [[nodiscard]] const FrameSettings& settings() const { return plan_.values.frame; }
  [[nodiscard]] FramePlan& frame() { return frame_; }
  [[nodiscard]] const std::vector<PanelBay>& bays() const { return bays_; }
  [[nodiscard]] std::vector<FacingRibs> facing_ribs() const;
  [[nodiscard]] const PanelBay* bay(int panel) const;
  [[nodiscard]] const RibPlan* rib(int panel, Side side) const;
  [[nodiscard]] const RingPlan* ring(bool top) const;
  /// Faces of the two rings that look at each other, between which the panels stand.
  [[nodiscard]] double low_v_mm() const { return heights_.low_v; }
  [[nodiscard]] double high_v_mm() const { return heights_.high_v; }

  void add(FlatPart part);
  /// The part must exist.
  FlatPart& flat(const std::string& mark) { return frame_.flats[index_.at(mark)]; }
  [[nodiscard]] bool has_flat(const std::string& mark) const { return index_.contains(mark); }

  void join(const std::string& first, const std::string& second);
  /// `what` is said of the part; of several parts it is said once, with the first one's figures.
  void warn(FrameWarning::Kind kind, const std::string& mark, double value_mm, double limit_mm,
            const std::string& what);
  /// Puts what was warned of into the frame.
  void finish_warnings();
  std::string next_mark(char letter);  ///< "S001", "S002"; "D001"

  /// A stretch of a rib's inner face, in (u, v), on which another part lies.
  void cover(const RibPlan& rib, PlateOutline outline) { covered_[rib.mark].push_back(std::move(outline)); }
  [[nodiscard]] const std::vector<PlateOutline>& covered(const RibPlan& rib) { return covered_[rib.mark]; }

 private:
  FramePlan& frame_;
  const LensPlan& plan_;
  std::vector<PanelBay> bays_;
  std::map<std::string, std::size_t> index_;
  std::set<std::pair<std::string, std::string>> joined_;
  std::map<char, int> counts_;
  struct Warned {
    FrameWarning warning;  // its sentence without the marks
    std::set<std::string> others;
  };
  std::vector<Warned> warned_;
  std::map<std::string, std::vector<PlateOutline>> covered_;
  FrameHeights heights_;
};

/// Unit vector along the rib's plane, level and seaward.
SpaceVector outward_of(const RibPlan& rib);
/// Unit vector from the rib's side plane into its panel.
SpaceVector inward_of(const RibPlan& rib);
/// The place `depth_mm` inside the side plane, in the lens frame.
SpacePoint place_in(const RibPlan& rib, PlatePoint p, double depth_mm);
/// Thickness of the plate itself.
double plate_thickness_mm(const RibPlan& rib);
/// A level frame: x towards the azimuth, z up, its origin on the lens axis.
SpaceFrame level_frame(double azimuth, double z_mm);
/// How far from the lens axis a place of the plane `depth_mm` inside the side plane stands, mm.
double radius_at(double u_mm, double depth_mm);

}  // namespace prismwright
