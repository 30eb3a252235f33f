#include "core/frame/frame_plan.h"

#include <fmt/format.h>
#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/frame/frame_assembly.h"
#include "core/frame/frame_heights.h"
#include "core/frame/prism_end.h"
#include "core/frame/rib_part.h"
#include "core/frame/rib_shape.h"

namespace prismwright {
namespace {

constexpr double kRingOverhang_mm = 3;  // ring beyond the ribs' tabs

class FramePlanner {
 public:
  FramePlanner(const LensPlan& plan, const FrameHeights& heights)
      : plan_(plan), frame_(plan.values.frame), heights_(heights) {}

  FramePlan plan() {
    shape_ribs();
    for (std::size_t i = 0; i < tasks_.size(); ++i) place_rib(i);
    add_ring("ring-top", heights_.high_v, heights_.high_v);
    add_ring("ring-bottom", heights_.low_v, heights_.low_v - frame_.ring_mm);
    for (const RibPlan& rib : result_.ribs) result_.flats.push_back(rib_part(rib));
    add_frame_parts(result_, plan_, heights_);
    return std::move(result_);
  }

 private:
  [[nodiscard]] std::vector<const PlannedPrism*> prisms_of(int panel) const {
    std::vector<const PlannedPrism*> prisms;
    for (const PlannedPrism& prism : plan_.prisms) {
      if (prism.panel == panel) prisms.push_back(&prism);
    }
    return prisms;
  }

  // Ribs that are alike are worked out once.
  void shape_ribs() {
    std::map<std::string, std::size_t> known;
    std::vector<std::size_t> own;  // the tasks whose shapes are worked out
    for (const PanelPlace& place : plan_.panels) {
      for (const Side side : {Side::anticlockwise, Side::clockwise}) {
        tasks_.push_back({place, side, prisms_of(place.number)});
        const auto [like, is_new] =
            known.emplace(likeness_of(tasks_.back(), plan_, heights_), shape_of_.size());
        if (is_new) own.push_back(shape_of_.size());
        shape_of_.push_back(like->second);
      }
    }
    shapes_.resize(tasks_.size());
    tbb::parallel_for(std::size_t{0}, own.size(),
                      [&](std::size_t i) { shapes_[own[i]] = shaped_rib(tasks_[own[i]], plan_, heights_); });
  }

  void place_rib(std::size_t i) {
    const RibTask& task = tasks_[i];
    const RibShape& shape = shapes_[shape_of_[i]];
    if (shape.rib.outline.empty()) return;
    RibPlan rib = shape_of_[i] == i ? shape.rib : renamed(shape.rib, task.place.number);
    const bool left = task.side == Side::anticlockwise;
    rib.mark = fmt::format("P{:02}-rib-{}", task.place.number, left ? "left" : "right");
    rib.panel = task.place.number;
    rib.side = task.side;
    rib.azimuth_deg = left ? task.place.to_deg : task.place.from_deg;
    if (shape_of_[i] == i) {
      result_.notes.insert(result_.notes.end(), shape.notes.begin(), shape.notes.end());
      for (FrameWarning warning : shape.warnings) {
        warning.mark = rib.mark;
        result_.warnings.push_back(std::move(warning));
      }
    }
    result_.ribs.push_back(std::move(rib));
  }

  // Prism marks differ between congruent panels in their panel number alone.
  static RibPlan renamed(RibPlan rib, int panel) {
    for (Pocket& pocket : rib.pockets) {
      for (std::string& mark : pocket.marks) {
        const std::size_t dash = mark.find('-');
        if (dash != std::string::npos) mark = fmt::format("P{:02}{}", panel, mark.substr(dash));
      }
    }
    return rib;
  }

  // As wide as the tabs of all ribs at this height, thickness included.
  void add_ring(const char* mark, double joint_v, double z_low) {
    double inner = std::numeric_limits<double>::max();
    double outer = 0;
    for (const RibPlan& rib : result_.ribs) {
      for (const PlatePoint p : rib.outline) {
        if (std::abs(p.v - joint_v) > 1e-3) continue;
        inner = std::min(inner, p.u);
        outer = std::max(outer, std::hypot(p.u, rib.thickness_mm));
      }
    }
    if (outer == 0) return;
    result_.rings.push_back(
        {mark, std::max(1.0, inner - kRingOverhang_mm), outer + kRingOverhang_mm, z_low, frame_.ring_mm});
  }

  const LensPlan& plan_;
  const FrameSettings& frame_;
  const FrameHeights& heights_;
  FramePlan result_;
  std::vector<RibTask> tasks_;
  std::vector<std::size_t> shape_of_;  // of each task: which task's shape it has
  std::vector<RibShape> shapes_;
};

}  // namespace

FramePlan plan_frame(const LensPlan& plan) {
  const auto heights = frame_heights(plan);
  if (!heights) {
    FramePlan none;
    none.notes.push_back("There is no zone to hold, so there is no frame.");
    return none;
  }
  return FramePlanner(plan, *heights).plan();
}

std::vector<PlateOutline> end_outlines(const PlannedPrism& prism, Side side, double depth_mm, double chord_mm) {
  return filled(end_slice(prism, side, depth_mm, chord_mm));
}

}  // namespace prismwright
