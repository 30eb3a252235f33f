#include "geometry/mould_block.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <Bnd_Box.hxx>
#include <Standard_Failure.hxx>
#include <TopTools_ListOfShape.hxx>
#include <gp_Ax3.hxx>

#include "geometry/mould_halves.h"
#include "geometry/mould_pins.h"
#include "geometry/mould_shadow.h"
#include "geometry/mould_standing.h"
#include "geometry/solid_check.h"

namespace prismwright {

namespace {

constexpr double kVolumeShare = 1e-5;  ///< of the block, by which volumes may fail to add up
constexpr double kStripShare = 0.25;   ///< of the mould wall
constexpr double kWidestStrip_mm = 4;
constexpr double kMm3PerCm3 = 1000;
constexpr int kTurnsLooked = 90;
constexpr double kAxisGift = 1.05;  ///< a block along the master's own length may have so much more plan

SpaceVector vector_of(const gp_Dir& d) { return {d.X(), d.Y(), d.Z()}; }

struct Bounds {
  gp_XYZ low{1e300, 1e300, 1e300};
  gp_XYZ high{-1e300, -1e300, -1e300};
  void add(const gp_XYZ& p) {
    for (int k = 1; k <= 3; ++k) {
      low.SetCoord(k, std::min(low.Coord(k), p.Coord(k)));
      high.SetCoord(k, std::max(high.Coord(k), p.Coord(k)));
    }
  }
  [[nodiscard]] double plan_area() const { return (high.X() - low.X()) * (high.Y() - low.Y()); }
};

/// Turns the block about the draw until it has the least plan; its longer side comes to lie along first.
SpaceFrame block_frame(const MouldSkin& skin, SpaceVector along) {
  const SpaceFrame start = frame_along(along);
  std::vector<SpacePoint> seen;
  for (const gp_Pnt& p : skin.points) seen.push_back(start.into(place_of(p)));
  double least = std::numeric_limits<double>::infinity();
  SpaceFrame best = start;
  for (int i = 0; i < kTurnsLooked; ++i) {
    const double turn = kPi / 2 * i / kTurnsLooked;
    Bounds bounds;
    for (const SpacePoint& p : seen)
      bounds.add(
          {p.x * std::cos(turn) + p.y * std::sin(turn), -p.x * std::sin(turn) + p.y * std::cos(turn), 0});
    const double area = bounds.plan_area() * (i == 0 ? 1 : kAxisGift);
    if (area >= least) continue;
    least = area;
    const SpaceVector one = std::cos(turn) * start.first + std::sin(turn) * start.second;
    const bool longer = bounds.high.X() - bounds.low.X() >= bounds.high.Y() - bounds.low.Y();
    best.first = longer ? one : cross(along, one);
    best.second = cross(along, best.first);
  }
  return best;
}

gp_Trsf into_frame(const SpaceFrame& f) {
  gp_Trsf move;
  move.SetTransformation(gp_Ax3(gp_Pnt(0, 0, 0), gp_Dir(f.third.x, f.third.y, f.third.z),
                                gp_Dir(f.first.x, f.first.y, f.first.z)));
  return move;
}

TopTools_ListOfShape list_of(const std::vector<TopoDS_Shape>& shapes) {
  TopTools_ListOfShape list;
  for (const TopoDS_Shape& shape : shapes) list.Append(shape);
  return list;
}

template <class Operation>
TopoDS_Shape worked(const TopoDS_Shape& body, const std::vector<TopoDS_Shape>& tools) {
  Operation operation;
  TopTools_ListOfShape bodies;
  bodies.Append(body);
  operation.SetArguments(bodies);
  operation.SetTools(list_of(tools));
  operation.SetNonDestructive(Standard_True);
  operation.Build();
  if (!operation.IsDone() || operation.HasErrors()) throw Standard_Failure("a hole could not be cut");
  return operation.Shape();
}

double volume_of(const TopoDS_Shape& shape) { return measured(shape).volume_mm3; }

class BlockMaker {
 public:
  BlockMaker(const MouldOrder& order, const MouldSkin& skin, const DrawFacts& draw,
             const WorksSettings& settings)
      : order_(order),
        settings_(settings),
        frame_(block_frame(skin, draw.along)),
        move_(into_frame(frame_)),
        skin_(skin) {
    for (gp_Pnt& p : skin_.points) p.Transform(move_);
    for (SkinTriangle& t : skin_.triangles) t.normal.Transform(move_);
    for (const gp_Pnt& p : skin_.points) bounds_.add(p.XYZ());
    facts_.mark = order.prism.mark;
    facts_.shape_key = order.prism.shape_key;
    facts_.draw = draw;
  }

  Outcome<Mould> make() {
    standing_ = chosen_standing(skin_, settings_);
    const double strip = std::min(kStripShare * settings_.mould_wall_mm, kWidestStrip_mm);
    const TopoDS_Shape local = BRepBuilderAPI_Transform(order_.master, move_, Standard_True).Shape();
    bound(local);
    const RimmedMaster master = rimmed(local, strip);
    lay_plan(master);
    SharedEdges edges;
    const PartingSheet sheet = parting_sheet(master, plan_, strip, 2 * settings_.mould_wall_mm, edges);
    lay_heights(sheet);
    const auto halves = mould_halves(master, sheet, plan_, bottom_mm_, top_mm_, edges, order_.prism.mark);
    if (!halves) return refused("the halves are not sound");
    tell_block(sheet);
    facts_.master_mm3 = volume_of(local);
    return finished(*halves);
  }

  [[nodiscard]] Problem refused(std::string_view why) const {
    return request_problem(
        "mould", order_.prism.mark,
        fmt::format("{}: no mould could be made of it ({}). Change the mould wall of {:g} mm or "
                    "the gate of {:g} mm a little, or make its mould by hand from the master.",
                    order_.prism.mark, why, settings_.mould_wall_mm, settings_.gate_mm));
  }

 private:
  /// By the true faces: the skin's triangles fall short of round ones.
  void bound(const TopoDS_Shape& local) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(local, box, Standard_False, Standard_False);
    bounds_.add(box.CornerMin().XYZ());
    bounds_.add(box.CornerMax().XYZ());
  }

  [[nodiscard]] BlockPlan plan_with(double beside_x, double beside_y) const {
    return {bounds_.low.X() - beside_x, bounds_.low.Y() - beside_y, bounds_.high.X() + beside_x,
            bounds_.high.Y() + beside_y};
  }

  /// As small as the walls allow; longer, or else wider too, where the pins find no room.
  void lay_plan(const RimmedMaster& master) {
    const double wall = std::max(settings_.mould_wall_mm, settings_.gate_mm / 2 + 2);
    const double room = std::max(wall, pin_room_mm(settings_));
    for (const auto& [x, y] : {std::pair(wall, wall), std::pair(room, wall), std::pair(room, room)}) {
      plan_ = plan_with(x, y);
      pins_ = pin_places(master, plan_, standing_, settings_);
      if (pins_.size() >= 2) return;
    }
    throw Standard_Failure("its register pins find no room");
  }

  void lay_heights(const PartingSheet& sheet) {
    const PinSize size = pin_size(settings_);
    bottom_mm_ = bounds_.low.Z() - settings_.mould_wall_mm;
    top_mm_ = bounds_.high.Z() + settings_.mould_wall_mm;
    for (const auto& wall : sheet.triangles) {
      for (const gp_Pnt& p : wall) {
        bottom_mm_ = std::min(bottom_mm_, p.Z() - settings_.mould_wall_mm / 2);
        top_mm_ = std::max(top_mm_, p.Z() + settings_.mould_wall_mm / 2);
      }
    }
    for (const gp_XY& at : pins_) {
      const auto height = sheet.height_mm(at.X(), at.Y());
      if (!height) throw Standard_Failure("a register pin stands beside the parting");
      roots_.emplace_back(at.X(), at.Y(), *height);
      top_mm_ = std::max(top_mm_, *height + size.hole_length_mm + settings_.mould_wall_mm / 2);
    }
    pin_depth_mm_ = settings_.mould_wall_mm / 4;
    for (const gp_Pnt& root : roots_) {
      // Deep enough to stand in the half all round, where the parting leans.
      for (int i = 0; i < 8; ++i) {
        const double angle = 2 * kPi * i / 8;
        const auto beside = sheet.height_mm(root.X() + size.hole_radius_mm * std::cos(angle),
                                            root.Y() + size.hole_radius_mm * std::sin(angle));
        if (beside) pin_depth_mm_ = std::max(pin_depth_mm_, root.Z() - *beside + 1);
      }
      bottom_mm_ = std::min(bottom_mm_, root.Z() - pin_depth_mm_ - 1);
    }
  }

  void tell_block(const PartingSheet& sheet) {
    facts_.parting = sheet.one_plane ? PartingKind::plane : PartingKind::surface;
    facts_.parting_rise_mm = sheet.high_mm - sheet.low_mm;
    facts_.block = frame_;
    facts_.block.origin = out(gp_Pnt(plan_.x0, plan_.y0, bottom_mm_));
    facts_.block_length_mm = plan_.x1 - plan_.x0;
    facts_.block_width_mm = plan_.y1 - plan_.y0;
    facts_.block_height_mm = top_mm_ - bottom_mm_;
    facts_.block_mm3 = facts_.block_length_mm * facts_.block_width_mm * facts_.block_height_mm;
    const std::array<double, 3> sides = {facts_.block_length_mm, facts_.block_width_mm, facts_.block_height_mm};
    const std::size_t up = std::abs(standing_.up.X()) > 0.5 ? 0 : std::abs(standing_.up.Y()) > 0.5 ? 1 : 2;
    facts_.up = vector_of(standing_.up.Transformed(move_.Inverted()));
    facts_.standing_mm = sides[up];
    facts_.footprint_long_mm = std::max(sides[(up + 1) % 3], sides[(up + 2) % 3]);
    facts_.footprint_short_mm = std::min(sides[(up + 1) % 3], sides[(up + 2) % 3]);
    for (const PlannedOpening& opening : standing_.openings) {
      facts_.openings.push_back({opening.gate, out(opening.foot),
                                 out(mouth_of(opening, standing_.up, plan_, bottom_mm_, top_mm_)),
                                 opening.bore_mm, opening.throat_mm, opening.face});
    }
    const PinSize size = pin_size(settings_);
    for (const gp_Pnt& root : roots_)
      facts_.pins.push_back({out(root), 2 * size.radius_mm, 2 * size.hole_radius_mm, size.length_mm});
  }

  [[nodiscard]] SpacePoint out(const gp_Pnt& local) const {
    return place_of(local.Transformed(move_.Inverted()));
  }

  /// The half less some tools; no more may be gone than the tools hold.
  TopoDS_Shape cut(const TopoDS_Shape& half, const std::vector<TopoDS_Shape>& tools, double& taken_mm3) const {
    const TopoDS_Shape left = worked<BRepAlgoAPI_Cut>(half, tools);
    double most = 0;
    for (const TopoDS_Shape& tool : tools) most += volume_of(tool);
    taken_mm3 = volume_of(half) - volume_of(left);
    const double slack = kVolumeShare * facts_.block_mm3;
    if (taken_mm3 < -slack || taken_mm3 > most + slack)
      throw Standard_Failure("its openings do not come out clean");
    return left;
  }

  Outcome<Mould> finished(const MouldHalves& halves) {
    std::vector<TopoDS_Shape> lower_tools, upper_tools, pins, holes;
    for (const PlannedOpening& opening : standing_.openings) {
      const OpeningTools tools = opening_tools(opening, standing_.up, plan_, bottom_mm_, top_mm_);
      lower_tools.insert(lower_tools.end(), tools.lower.begin(), tools.lower.end());
      upper_tools.insert(upper_tools.end(), tools.upper.begin(), tools.upper.end());
    }
    for (const gp_Pnt& root : roots_) {
      pins.push_back(pin_solid(root, pin_size(settings_), pin_depth_mm_));
      holes.push_back(pin_hole(root, pin_size(settings_), pin_depth_mm_));
    }
    TopoDS_Shape lower = halves.lower, upper = halves.upper;
    double from_lower = 0, from_upper = 0, from_holes = 0;
    if (!lower_tools.empty()) lower = cut(lower, lower_tools, from_lower);
    if (!upper_tools.empty()) upper = cut(upper, upper_tools, from_upper);
    upper = cut(upper, holes, from_holes);
    const double before = volume_of(lower);
    lower = worked<BRepAlgoAPI_Fuse>(lower, pins);
    const auto sound_lower = sound_solid(lower, order_.prism.mark),
               sound_upper = sound_solid(upper, order_.prism.mark);
    if (!sound_lower || !sound_upper) return refused("gate, vents or pins cut its halves apart");
    facts_.lower_mm3 = volume_of(*sound_lower);
    facts_.upper_mm3 = volume_of(*sound_upper);
    facts_.openings_mm3 = from_lower + from_upper;
    facts_.pins_mm3 = facts_.lower_mm3 - before;
    facts_.pin_gap_mm3 = from_holes - facts_.pins_mm3;
    facts_.resin_mm3 = facts_.master_mm3 * (1 + settings_.resin_head_percent / 100);
    facts_.resin_g = facts_.resin_mm3 / kMm3PerCm3 * settings_.resin_density_g_cm3;
    if (std::abs(volume_departure(facts_)) > kVolumeShare) return refused("its halves do not fill the block");
    const TopLoc_Location back(move_.Inverted());
    return Mould{facts_, order_.master, sound_lower->Moved(back), sound_upper->Moved(back)};
  }

  const MouldOrder& order_;
  const WorksSettings& settings_;
  SpaceFrame frame_;
  gp_Trsf move_;
  MouldSkin skin_;  ///< in the block's frame
  Bounds bounds_;
  Standing standing_;
  BlockPlan plan_;
  double bottom_mm_ = 0;
  double top_mm_ = 0;
  double pin_depth_mm_ = 0;
  std::vector<gp_XY> pins_;
  std::vector<gp_Pnt> roots_;
  MouldFacts facts_;
};

}  // namespace

Outcome<Mould> mould_block(const MouldOrder& order, const MouldSkin& skin, const DrawFacts& draw,
                           const WorksSettings& settings) {
  BlockMaker maker(order, skin, draw, settings);
  try {
    return maker.make();
  } catch (const Standard_Failure& failure) {
    return maker.refused(failure.GetMessageString());
  }
}

}  // namespace prismwright
