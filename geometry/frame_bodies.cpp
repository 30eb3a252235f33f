#include "geometry/frame_bodies.h"

#include <cmath>
#include <map>
#include <new>
#include <utility>

#include <fmt/format.h>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <gp_Ax1.hxx>
#include <gp_Trsf.hxx>

#include "core/base/angle.h"
#include "geometry/plate_solid.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

constexpr double kBrass_g_per_mm3 = 8.49e-3;
constexpr double kVolumeWithin = 1e-4;

Problem not_whole(const std::string& mark, const char* why) {
  return request_problem("frame-solid", mark,
                         fmt::format("The solid of {} could not be made ({}). Change the rib's margin or its "
                                     "pockets' gap a little.",
                                     mark, why));
}

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps props;
  BRepGProp::VolumeProperties(shape, props);
  return props.Mass();
}

FrameBody weighed(std::string mark, TopoDS_Shape shape, double volume_mm3) {
  return {std::move(mark), std::move(shape), volume_mm3, volume_mm3 * kBrass_g_per_mm3};
}

// Every edge bounds two faces.
bool is_closed(const TopoDS_Shape& solid) {
  TopTools_IndexedDataMapOfShapeListOfShape faces_at;
  TopExp::MapShapesAndAncestors(solid, TopAbs_EDGE, TopAbs_FACE, faces_at);
  for (int i = 1; i <= faces_at.Extent(); ++i) {
    if (faces_at(i).Extent() != 2) return false;
  }
  return true;
}

// A plate must be closed and hold the volume that its outlines say. The kernel's own check of a face takes
// seconds over a thousand edges, so the tests run it, not every making: outlines come from the clipper, which
// leaves none that cross themselves.
Outcome<FrameBody> checked_plate(const RibPlan& rib) {
  const PlateShape plate = plate_of(rib);
  const TopoDS_Shape shape = plate_solid(plate);
  const double expected = plate_volume_mm3(plate);
  if (!is_closed(shape)) return not_whole(rib.mark, "its faces do not close");
  const double volume = volume_of(shape);
  if (std::abs(volume - expected) > kVolumeWithin * expected) {
    return not_whole(rib.mark, "its volume is not that of its outline");
  }
  return weighed(rib.mark, shape, volume);
}

TopoDS_Shape ring_solid(const RingPlan& ring) {
  const double low = ring.z_low_mm;
  const double high = low + ring.thickness_mm;
  BRepBuilderAPI_MakePolygon section;
  section.Add(gp_Pnt(ring.inner_radius_mm, 0, low));
  section.Add(gp_Pnt(ring.outer_radius_mm, 0, low));
  section.Add(gp_Pnt(ring.outer_radius_mm, 0, high));
  section.Add(gp_Pnt(ring.inner_radius_mm, 0, high));
  section.Close();
  const gp_Ax1 lens_axis(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1));
  return BRepPrimAPI_MakeRevol(BRepBuilderAPI_MakeFace(section.Wire(), true).Face(), lens_axis).Shape();
}

// Congruent ribs are made once and turned to their places.
class RibShop {
 public:
  Outcome<FrameBody> make(const RibPlan& rib) {
    const auto key = std::pair(rib.shape_key, rib.side);
    auto found = made_.find(key);
    if (found == made_.end()) {
      auto plate = checked_plate(rib);
      if (!plate) return plate.problem();
      found = made_.emplace(key, *plate).first;
    }
    const FrameBody& like = found->second;
    return weighed(rib.mark, like.shape.Moved(TopLoc_Location(rib_turn(rib))), like.volume_mm3);
  }

 private:
  std::map<std::pair<std::string, Side>, FrameBody> made_;
};

Outcome<std::vector<FrameBody>> make_all(const FramePlan& frame, const Progress& progress) {
  std::vector<FrameBody> bodies;
  RibShop shop;
  const auto count = static_cast<double>(frame.ribs.size() + frame.rings.size());
  for (const RibPlan& rib : frame.ribs) {
    if (!goes_on(progress, static_cast<double>(bodies.size()) / count, rib.mark)) {
      return Problem{Trouble::stopped, "stopped", rib.mark,
                     "The frame was stopped before all its parts were made."};
    }
    auto body = shop.make(rib);
    if (!body) return body.problem();
    bodies.push_back(std::move(*body));
  }
  for (const RingPlan& ring : frame.rings) {
    const TopoDS_Shape shape = ring_solid(ring);
    bodies.push_back(weighed(ring.mark, shape, volume_of(shape)));
  }
  return bodies;
}

}  // namespace

Outcome<std::vector<FrameBody>> make_frame(const FramePlan& frame, const Progress& progress) {
  try {
    return make_all(frame, progress);
  } catch (const Standard_Failure& failure) {
    return not_whole("the frame", failure.GetMessageString());
  } catch (const std::bad_alloc&) {
    return not_whole("the frame", "memory ran out");
  }
}

}  // namespace prismwright
