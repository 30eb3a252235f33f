#include "geometry/part_solid.h"

#include <cmath>

#include <fmt/format.h>
#include <BRepCheck_Analyzer.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>

#include "core/base/angle.h"
#include "core/frame/ring_part.h"
#include "core/lens/trimmed_volume.h"
#include "geometry/flat_solid.h"
#include "geometry/plate_solid.h"
#include "geometry/prism_shape.h"
#include "geometry/rib_place.h"
#include "geometry/round_solid.h"
#include "geometry/solid_check.h"

namespace prismwright {
namespace {

constexpr double kVolumeWithin = 1e-4;

// Every edge bounds two faces.
bool is_closed(const TopoDS_Shape& solid) {
  TopTools_IndexedDataMapOfShapeListOfShape faces_at;
  TopExp::MapShapesAndAncestors(solid, TopAbs_EDGE, TopAbs_FACE, faces_at);
  for (int i = 1; i <= faces_at.Extent(); ++i) {
    if (faces_at(i).Extent() != 2) return false;
  }
  return true;
}

// The kernel's own check of a face takes long over a thousand edges, so the tests run it, not every making.
Outcome<PartSolid> checked(const std::string& mark, const TopoDS_Shape& shape, double expected_mm3) {
  if (!is_closed(shape)) return no_frame_solid(mark, "its faces do not close");
  const double volume = measured(shape).volume_mm3;
  if (!(std::abs(volume - expected_mm3) <= kVolumeWithin * expected_mm3)) {
    return no_frame_solid(mark, "its volume is not that of its outline");
  }
  return PartSolid{shape, volume};
}

// What is bored may meet other holes, so that its closed form is only the least that is left.
Outcome<PartSolid> checked_cut(const std::string& mark, const TopoDS_Shape& shape, double least_mm3,
                               double most_mm3) {
  if (!BRepCheck_Analyzer(shape).IsValid()) return no_frame_solid(mark, "its bores leave no sound solid");
  const double volume = measured(shape).volume_mm3;
  const double within = kVolumeWithin * most_mm3;
  if (!(volume >= least_mm3 - within && volume <= most_mm3 + within)) {
    return no_frame_solid(mark, "its bores took more than they hold");
  }
  return PartSolid{shape, volume};
}

double disc_mm2(double diameter_mm) { return kPi * diameter_mm * diameter_mm / 4; }

}  // namespace

Problem no_frame_solid(const std::string& mark, const char* why) {
  return request_problem("frame-solid", mark,
                         fmt::format("The solid of {} could not be made ({}). Change the rib's margin, its "
                                     "pockets' gap or the screws a little.",
                                     mark, why));
}

Outcome<PartSolid> checked_solid(const FlatPart& part) {
  const TopoDS_Shape shape = flat_solid(part);
  const FlatPart plain = without_cuts(part);
  const double volume = flat_volume_mm3(part);
  if (part.bores.empty() && plain.holes.size() == part.holes.size()) return checked(part.mark, shape, volume);
  return checked_cut(part.mark, shape, volume, flat_volume_mm3(plain));
}

Outcome<PartSolid> checked_solid(const RoundPart& part) {
  return checked(part.mark, round_solid(part), round_volume_mm3(part));
}

Outcome<PartSolid> checked_solid(const TurnedBar& bar) {
  const auto whole = prism_shape(bar.shape);
  if (!whole) return whole.problem();
  const double volume = trimmed_volume_mm3(bar.shape);
  if (bar.bores.empty()) return checked(bar.mark, *whole, volume);
  double taken = 0;
  for (const PlateBore& bore : bar.bores) taken += disc_mm2(bore.diameter_mm) * bore.depth_mm;
  return checked_cut(bar.mark, bored(*whole, bar.bores), volume - taken, volume);
}

Outcome<PartSolid> checked_solid(const RibPlan& rib) {
  const PlateShape plate = plate_of(rib);
  return checked(rib.mark, plate_solid(plate), plate_volume_mm3(plate));
}

Outcome<PartSolid> checked_solid(const RingPlan& ring) {
  const FlatPart flat = ring_part(ring);
  auto made = checked_solid(flat);
  if (made) made->shape.Move(TopLoc_Location(frame_place(flat.place)));
  return made;
}

}  // namespace prismwright
