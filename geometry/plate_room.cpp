#include "geometry/plate_room.h"

#include <algorithm>
#include <cmath>

#include <BRepBndLib.hxx>
#include <Bnd_Box.hxx>
#include <TopLoc_Location.hxx>
#include <gp_Ax3.hxx>

#include "geometry/flat_solid.h"
#include "geometry/nearest_place.h"

namespace prismwright {
namespace {

constexpr double kThrough_mm = 1e-6;
constexpr double kCornerWithin_mm = 2e-4;
constexpr double kNearMouth_mm = 1e-3;
constexpr double kVolumeChord_mm = 1e-3;
constexpr double kRoundBox_mm = 1;
constexpr double kSquare = 1e-9;  // sine of what a face may lean and still be level

std::vector<double> levels_of(const FlatPart& part) {
  std::vector<double> levels{0, part.thickness_mm};
  for (const PlatePocket& pocket : part.pockets) {
    const double floor = part.thickness_mm - pocket.depth_mm;
    const bool known = std::any_of(levels.begin(), levels.end(),
                                   [&](double level) { return std::abs(level - floor) < kThrough_mm; });
    if (!known && floor > kThrough_mm) levels.push_back(floor);
  }
  std::sort(levels.begin(), levels.end());
  return levels;
}

// Outline, openings, holes and the pockets that reach down past the middle of a layer.
std::vector<PlateChain> chains_at(const FlatPart& part, double depth) {
  std::vector<PlateChain> chains{part.outline};
  chains.insert(chains.end(), part.openings.begin(), part.openings.end());
  for (const PlateHole& hole : part.holes) chains.push_back(circle_chain(hole.centre, hole.diameter_mm / 2));
  for (const PlatePocket& pocket : part.pockets) {
    if (part.thickness_mm - pocket.depth_mm < depth) chains.push_back(pocket.outline);
  }
  return chains;
}

// A field all of whose feet count.
class Filled : public RoomField {
 public:
  explicit Filled(const RoomField& field) : field_(field) {}
  [[nodiscard]] Hit at(const gp_Pnt& p) const override { return field_.at(p); }
  void each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                 const std::function<void(const RoomPiece&)>& take) const override {
    field_.each_near(p, within_mm, reach_mm, take);
  }

 private:
  const RoomField& field_;
};

double deepest_pocket(const FlatPart& part) {
  double deepest = 0;
  for (const PlatePocket& pocket : part.pockets) deepest = std::max(deepest, pocket.depth_mm);
  return deepest;
}

// Between which depths of a plate's frame a solid lies: no flat face square to the depth lets it reach past.
struct Depths {
  double low;
  double high;
};
Depths depths_of(const SolidForm& solid, const gp_Trsf& place, Depths depths) {
  for (const CapFace& cap : solid.caps()) {
    const gp_Dir out = cap.plane.Axis().Direction().Transformed(place);
    if (std::hypot(out.X(), out.Y()) > kSquare) continue;
    const double depth = cap.plane.Location().Transformed(place).Z();
    (out.Z() < 0 ? depths.low : depths.high) = depth;
  }
  return depths;
}

// Circles and arcs as polygons: only volumes are taken from them.
PlateRegion flat_region(const std::vector<PlateChain>& chains) {
  std::vector<PlateOutline> taken;
  for (std::size_t i = 1; i < chains.size(); ++i) taken.push_back(flattened(chains[i], kVolumeChord_mm));
  return first_less_second({flattened(chains.front(), kVolumeChord_mm)}, taken);
}

}  // namespace

PlateRoom::PlateRoom(const FlatPart& part, const gp_Trsf& to_made) : part_(part), to_made_(to_made) {
  const std::vector<double> levels = levels_of(part);
  const double deepest = deepest_pocket(part);
  for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
    const double middle = (levels[i] + levels[i + 1]) / 2;
    const bool floor = deepest > 0 && middle < part.thickness_mm - deepest;
    layers_.push_back(std::make_unique<Layer>(chains_at(part, middle), levels[i], levels[i + 1], floor, *this));
  }
}

std::shared_ptr<const PlateRoom> PlateRoom::of(const FlatPart& part, const gp_Trsf& to_made,
                                               const SolidForm& form) {
  std::shared_ptr<const PlateRoom> room(new PlateRoom(part, to_made));
  return room->fits(form) ? room : nullptr;
}

bool PlateRoom::fits(const SolidForm& form) const {
  const gp_Trsf to_plate = to_made_.Inverted();
  PlateExtent found{{1e9, 1e9}, {-1e9, -1e9}};
  double low = 1e9;
  double high = -1e9;
  for (const gp_Pnt& corner : form.corners()) {
    const gp_Pnt p = corner.Transformed(to_plate);
    const bool on = std::any_of(layers_.begin(), layers_.end(),
                                [&](const auto& layer) { return layer->at(p).distance_mm < kCornerWithin_mm; });
    if (!on) return false;
    if (is_taken_away(p)) continue;  // the floor of a bore may lie past the outline's own corners
    found.low = {std::min(found.low.u, p.X()), std::min(found.low.v, p.Y())};
    found.high = {std::max(found.high.u, p.X()), std::max(found.high.v, p.Y())};
    low = std::min(low, p.Z());
    high = std::max(high, p.Z());
  }
  if (form.corners().empty()) return false;
  // A whole circle shows a single corner: then only the depth tells.
  const PlateOutline ends = [&] {
    PlateOutline corners;
    for (const PlateStep& step : part_.outline) corners.push_back(step.from);
    return corners;
  }();
  const PlateExtent planned = extent_of({ends});
  const bool fills = ends.size() <= 2 || (std::abs(found.low.u - planned.low.u) < kCornerWithin_mm &&
                                          std::abs(found.low.v - planned.low.v) < kCornerWithin_mm &&
                                          std::abs(found.high.u - planned.high.u) < kCornerWithin_mm &&
                                          std::abs(found.high.v - planned.high.v) < kCornerWithin_mm);
  return fills && std::abs(low) < kCornerWithin_mm && std::abs(high - part_.thickness_mm) < kCornerWithin_mm;
}

bool PlateRoom::has_floor() const {
  return std::any_of(layers_.begin(), layers_.end(), [](const auto& layer) { return layer->is_floor(); });
}

bool PlateRoom::is_taken_away(const gp_Pnt& p) const {
  for (const PlateHole& hole : part_.holes) {
    if (hole.sink_diameter_mm <= hole.diameter_mm) continue;
    const double deep = hole.sunk_in_back ? p.Z() : part_.thickness_mm - p.Z();
    const double radius = hole.sink_diameter_mm / 2 - deep;  // a cone of 90 degrees
    if (std::hypot(p.X() - hole.centre.u, p.Y() - hole.centre.v) < radius + kNearMouth_mm) return true;
  }
  return std::any_of(part_.bores.begin(), part_.bores.end(), [&](const PlateBore& bore) {
    const SpaceVector to = SpacePoint{p.X(), p.Y(), p.Z()} - bore.from;
    const double along = dot(to, bore.along);
    if (along < -bore.diameter_mm || along > bore.depth_mm + kNearMouth_mm) return false;
    return length(to - along * bore.along) < bore.diameter_mm / 2 + kNearMouth_mm;
  });
}

PlateRoom::Found PlateRoom::gaps_to(const SolidForm& solid, const gp_Trsf& place) const {
  Found found;
  for (std::size_t i = 0; i < layers_.size(); ++i) {
    const auto& layer = layers_[i];
    const auto nearest = nearest_place(solid, place, *layer);
    if (!nearest || nearest->distance_mm < kMeets_mm) found.met.push_back(i);
    if (!nearest) {
      found.sure = false;
      continue;
    }
    std::optional<SolidGap>& kept = layer->is_floor() ? found.floor : found.walls;
    if (!kept || nearest->distance_mm < kept->gap_mm) {
      kept = SolidGap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
    }
  }
  return found;
}

std::optional<SolidGap> PlateRoom::gap_filled(const SolidForm& solid, const gp_Trsf& place,
                                              double no_farther_mm) const {
  std::optional<SolidGap> least;
  for (const auto& layer : layers_) {
    const auto nearest = nearest_place(solid, place, Filled(*layer), no_farther_mm);
    if (!nearest) continue;
    least = SolidGap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
    no_farther_mm = nearest->distance_mm;
  }
  return least;
}

// Only the part of a layer that the solid's box covers can overlap it.
std::optional<double> PlateRoom::overlap_mm3(const SolidForm& solid, const gp_Trsf& place,
                                             const std::vector<std::size_t>& met) const {
  const TopoDS_Shape there = solid.shape().Moved(TopLoc_Location(place));
  Bnd_Box box;
  BRepBndLib::Add(there, box);
  box.Enlarge(kRoundBox_mm);
  const gp_Pnt low = box.CornerMin();
  const gp_Pnt high = box.CornerMax();
  const PlateRegion covered{plate_rectangle({low.X(), low.Y()}, {high.X(), high.Y()})};
  const Depths depths = depths_of(solid, place, {low.Z(), high.Z()});
  std::optional<double> overlap;
  for (const std::size_t i : met) {
    const auto& layer = layers_[i];
    if (layer->from_mm() > depths.high - kTouching_mm || layer->to_mm() < depths.low + kTouching_mm) continue;
    if (!overlap) overlap = 0;
    for (const PlatePiece& piece : pieces_of(common_part(flat_region(layer->chains()), covered))) {
      FlatPart slab;
      slab.thickness_mm = layer->to_mm() - layer->from_mm();
      slab.outline = straight_chain(piece.outer);
      for (const PlateOutline& hole : piece.holes) {
        slab.openings.push_back(straight_chain(PlateOutline(hole.rbegin(), hole.rend())));
      }
      gp_Trsf lift;
      lift.SetTranslation(gp_Vec(0, 0, layer->from_mm()));
      *overlap += common_volume_mm3(there, flat_solid(slab).Moved(TopLoc_Location(lift)));
    }
  }
  return overlap;
}

// Seen from the front, where pockets open: u runs right for a left rib and left for a right one.
FlatPart flat_of(const RibPlan& rib) {
  const auto seen = [&](const PlateOutline& outline) {
    const PlateChain chain = straight_chain(outline);
    return rib.side == Side::clockwise ? mirrored(chain) : chain;
  };
  FlatPart part;
  part.mark = rib.mark;
  part.panel = rib.panel;
  part.thickness_mm = rib.thickness_mm - rib.set_back_mm;
  part.outline = seen(rib.outline);
  for (const Pocket& pocket : rib.pockets) {
    part.pockets.push_back({seen(pocket.outline), rib.pocket_mm, pocket.marks});
  }
  return part;
}

gp_Trsf flat_to_rib(const RibPlan& rib) {
  const double hand = rib.side == Side::clockwise ? 1 : -1;
  gp_Trsf place;
  place.SetTransformation(gp_Ax3(gp_Pnt(0, 0, 0), gp_Dir(0, hand, 0), gp_Dir(-hand, 0, 0)), gp_Ax3());
  return place;
}

}  // namespace prismwright
