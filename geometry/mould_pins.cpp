#include "geometry/mould_pins.h"

#include <algorithm>
#include <cmath>

#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>

#include "geometry/mould_plan.h"

namespace prismwright {

namespace {

constexpr int kLooks = 36;            ///< places looked at along each side of the block
constexpr double kThirdApart = 0.15;  ///< of the way between the first two that the third keeps from their line
constexpr double kLeastEnd_mm = 0.5;  ///< room over the tip of a pin

class PinSearch {
 public:
  PinSearch(const RimmedMaster& master, const BlockPlan& plan, const Standing& standing,
            const WorksSettings& settings)
      : plan_(plan), standing_(standing), settings_(settings), hole_mm_(pin_size(settings).hole_radius_mm) {
    for (const gp_Pnt& p : master.loops.front().places) rim_.emplace_back(p.X(), p.Y());
  }

  std::vector<gp_XY> find() {
    const double edge = hole_mm_ + settings_.mould_wall_mm / 2;
    const gp_XY low(plan_.x0 + edge, plan_.y0 + edge),
        size(plan_.x1 - edge - low.X(), plan_.y1 - edge - low.Y());
    if (size.X() < 0 || size.Y() < 0) return {};
    for (int i = 0; i <= kLooks; ++i) {
      for (int k = 0; k <= kLooks; ++k) {
        const gp_XY p = low + gp_XY(size.X() * i / kLooks, size.Y() * k / kLooks);
        if (is_clear(p)) places_.push_back(p);
      }
    }
    return chosen();
  }

 private:
  [[nodiscard]] bool is_clear(const gp_XY& p) const {
    if (is_within(rim_, p) || distance_from(rim_, p) < hole_mm_ + settings_.mould_wall_mm - 1e-9) return false;
    return std::all_of(
        standing_.openings.begin(), standing_.openings.end(), [&](const PlannedOpening& opening) {
          const gp_XY from(opening.foot.X(), opening.foot.Y()), up(standing_.up.X(), standing_.up.Y());
          const double along = std::max(0.0, (p - from) * up);
          // A channel widens towards the parting: half its bore again is kept for that.
          return (p - from - up * along).Modulus() >
                 hole_mm_ + 0.75 * opening.bore_mm + settings_.mould_wall_mm / 2;
        });
  }

  [[nodiscard]] std::vector<gp_XY> chosen() const {
    std::vector<gp_XY> best;
    double most = 0;
    for (std::size_t i = 0; i < places_.size(); ++i) {
      for (std::size_t k = i + 1; k < places_.size(); ++k) {
        const double apart = (places_[i] - places_[k]).Modulus();
        if (apart <= std::max(most + 1e-9, 4 * hole_mm_)) continue;
        most = apart;
        best = {places_[i], places_[k]};
      }
    }
    if (best.size() < 2) return best;
    const gp_XY along = (best[1] - best[0]) / most;
    double farthest = std::max(kThirdApart * most, 4 * hole_mm_);
    std::optional<gp_XY> third;
    for (const gp_XY& p : places_) {
      const double off = std::abs(along ^ (p - best[0]));
      // Not midway, so that the halves go together in one way only.
      const double middle = std::abs((p - best[0]) * along - most / 2);
      if (off <= farthest || middle < 0.05 * most) continue;
      farthest = off;
      third = p;
    }
    if (third) best.push_back(*third);
    return best;
  }

  BlockPlan plan_;
  const Standing& standing_;
  const WorksSettings& settings_;
  double hole_mm_;
  std::vector<gp_XY> rim_;
  std::vector<gp_XY> places_;
};

}  // namespace

PinSize pin_size(const WorksSettings& settings) {
  PinSize size;
  size.radius_mm = settings.pin_mm / 2;
  size.hole_radius_mm = size.radius_mm + settings.pin_gap_mm;
  size.length_mm = settings.pin_mm;
  size.hole_length_mm = size.length_mm + std::max(settings.pin_gap_mm, kLeastEnd_mm);
  size.tip_mm = settings.pin_mm / 8;
  return size;
}

double pin_room_mm(const WorksSettings& settings) {
  return 1.5 * settings.mould_wall_mm + 2 * pin_size(settings).hole_radius_mm + 0.1;
}

std::vector<gp_XY> pin_places(const RimmedMaster& master, const BlockPlan& plan, const Standing& standing,
                              const WorksSettings& settings) {
  return PinSearch(master, plan, standing, settings).find();
}

TopoDS_Shape pin_solid(const gp_Pnt& root, const PinSize& size, double depth_mm) {
  BRepBuilderAPI_MakePolygon outline;
  const auto add = [&](double away, double up) {
    outline.Add(gp_Pnt(root.X() + away, root.Y(), root.Z() + up));
  };
  add(0, -depth_mm);
  add(size.radius_mm, -depth_mm);
  add(size.radius_mm, size.length_mm - size.tip_mm);
  add(size.radius_mm - size.tip_mm, size.length_mm);
  add(0, size.length_mm);
  outline.Close();
  const TopoDS_Face face = BRepBuilderAPI_MakeFace(outline.Wire(), Standard_True).Face();
  return BRepPrimAPI_MakeRevol(face, gp_Ax1(root, gp::DZ())).Shape();
}

TopoDS_Shape pin_hole(const gp_Pnt& root, const PinSize& size, double depth_mm) {
  const gp_Pnt from(root.X(), root.Y(), root.Z() - depth_mm);
  return BRepPrimAPI_MakeCylinder(gp_Ax2(from, gp::DZ()), size.hole_radius_mm, depth_mm + size.hole_length_mm)
      .Shape();
}

}  // namespace prismwright
