#include "geometry/turned_part.h"

#include <cmath>
#include <utility>

#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>

#include "core/base/angle.h"
#include "geometry/convert.h"
#include "geometry/nearest_place.h"
#include "geometry/rib_place.h"

namespace prismwright {
namespace {

constexpr double kSectionChord_mm = 1e-5;
constexpr double kCornerWithin_mm = 2e-4;
// Sections of coaxial parts keep their distance all the way round: cells need only tell a section's corners
// apart.
constexpr double kCellsAcross = 12;
constexpr double kCutsMatter_mm = 2e-4;
constexpr double kOnCut_mm = 1e-6;

PlateRegion section_of(const PlannedPrism& prism) {
  const bool below = prism.turning == TurningAxis::panel && centroid(prism.profile).z < 0;
  PlateOutline outline;
  for (const SectionPoint p : polygon_of(below ? mirrored(prism.profile) : prism.profile, kSectionChord_mm)) {
    outline.push_back({p.r, p.z});
  }
  return {outline};
}

double extent_across(const PlateRegion& section) {
  const PlateExtent extent = extent_of(section);
  return std::hypot(extent.high.u - extent.low.u, extent.high.v - extent.low.v);
}

}  // namespace

TurnedPart::TurnedPart(const PlateRegion& section, bool about_z, std::optional<Trim> trim, double dip,
                       const gp_Trsf& to_lens, const TopoDS_Shape& shape)
    : field_(section, about_z),
      cell_mm_(extent_across(section) / kCellsAcross),
      about_z_(about_z),
      trim_(std::move(trim)),
      dip_(dip),
      to_lens_(to_lens),
      solid_(shape.Moved(TopLoc_Location(to_lens.Inverted()))) {}

std::shared_ptr<const TurnedPart> TurnedPart::of(const PlannedPrism& prism, const TopoDS_Shape& shape) {
  const bool about_z = prism.turning == TurningAxis::lens;
  std::shared_ptr<const TurnedPart> part(
      new TurnedPart(section_of(prism), about_z, prism.trim, about_z ? 0 : radians(prism.axis_dip_deg),
                     turn_about_lens(prism.axis_deg) * axis_place(prism), shape));
  return part->corners_fit() ? part : nullptr;
}

std::shared_ptr<const TurnedPart> TurnedPart::of(const RingPlan& ring, const TopoDS_Shape& shape) {
  const PlateRegion section{plate_rectangle({ring.inner_radius_mm, ring.z_low_mm},
                                            {ring.outer_radius_mm, ring.z_low_mm + ring.thickness_mm})};
  std::shared_ptr<const TurnedPart> part(new TurnedPart(section, true, std::nullopt, 0, gp_Trsf(), shape));
  return part->corners_fit() ? part : nullptr;
}

bool TurnedPart::corners_fit() const {
  TopTools_IndexedMapOfShape corners;
  TopExp::MapShapes(solid_, TopAbs_VERTEX, corners);
  for (int i = 1; i <= corners.Extent(); ++i) {
    if (field_.to_boundary(BRep_Tool::Pnt(TopoDS::Vertex(corners(i)))) > kCornerWithin_mm) return false;
  }
  return corners.Extent() > 0;
}

bool TurnedPart::can_measure(const PlannedPrism& other) const {
  if (!trim_) return true;
  return trim_->half == other.trim.half || trim_->half == Half::whole || other.trim.half == Half::whole;
}

bool TurnedPart::within_cuts(const gp_Pnt& p) const {
  if (!trim_) return true;
  const double clockwise = radians(trim_->clockwise_side_deg);
  const double anticlockwise = radians(trim_->anticlockwise_side_deg);
  // Along the panel's own axis: the side planes are upright.
  const double x = p.X() * std::cos(dip_) + p.Z() * std::sin(dip_);
  const double least = trim_->set_back_mm - kOnCut_mm;
  if (-std::sin(clockwise) * x + std::cos(clockwise) * p.Y() < least) return false;
  if (std::sin(anticlockwise) * x - std::cos(anticlockwise) * p.Y() < least) return false;
  if (about_z_ && trim_->flat_inner_mm && x < *trim_->flat_inner_mm - kOnCut_mm) return false;
  if (about_z_ || trim_->half == Half::whole) return true;
  const double level = trim_->half == Half::upper ? p.Z() : -p.Z();
  return level > trim_->half_gap_mm - kOnCut_mm;
}

std::optional<SolidGap> TurnedPart::gap_from(const TopoDS_Shape& other) const {
  const auto nearest =
      nearest_place(other, field_, cell_mm_, [this](const gp_Pnt& foot) { return within_cuts(foot); });
  if (!nearest || nearest->distance_mm - nearest->least_mm > kCutsMatter_mm) return std::nullopt;
  // Sections are polygons within the chord, so parts that share a face come out as far apart as that.
  SolidGap gap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
  if (gap.gap_mm < 2 * kSectionChord_mm) {
    gap.gap_mm = 0;
    gap.overlap_mm3 = common_volume_mm3(other, solid_);
  }
  return gap;
}

}  // namespace prismwright
