#include "geometry/turned_part.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <ElSLib.hxx>
#include <gp_Ax3.hxx>

#include "core/base/angle.h"
#include "core/frame/smooth_arcs.h"
#include "geometry/convert.h"
#include "geometry/nearest_place.h"
#include "geometry/section_gap.h"

namespace prismwright {
namespace {

constexpr double kSectionWithin_mm = 1e-6;
constexpr double kCornerWithin_mm = 2e-4;
constexpr double kNearMouth_mm = 1e-3;
constexpr double kFootPastCut_mm = 1e-5;
constexpr double kWellWithin_mm = 0.01;  // the modeller may set a cut back by a thousandth
constexpr int kAngles = 48;

PlateChain section_of(const PlannedPrism& prism) {
  const bool below = prism.turning == TurningAxis::panel && centroid(prism.profile).z < 0;
  return section_chain(below ? mirrored(prism.profile) : prism.profile, kSectionWithin_mm);
}

// Anticlockwise: shank with its bore, and a sunk head that widens to the lower end by 45 degrees.
PlateChain section_of(const RoundPart& round) {
  const double bore = round.bore_mm / 2;
  const double shank = round.diameter_mm / 2;
  const double head = round.head_mm / 2;
  PlateOutline outline{{bore, 0}};
  if (head > shank) {
    outline.push_back({head, 0});
    outline.push_back({shank, head - shank});
  } else {
    outline.push_back({shank, 0});
  }
  outline.push_back({shank, round.length_mm});
  outline.push_back({bore, round.length_mm});
  return straight_chain(outline);
}

}  // namespace

TurnedPart::TurnedPart(const PlateChain& section, bool about_z, std::optional<Trim> trim, double dip,
                       const gp_Trsf& to_made, std::shared_ptr<const SolidForm> form)
    : field_(section, about_z, *this),
      about_z_(about_z),
      trim_(std::move(trim)),
      dip_(dip),
      to_made_(to_made),
      form_(std::move(form)) {
  if (trim_) find_flats();
}

std::shared_ptr<const TurnedPart> TurnedPart::of(const PlannedPrism& prism,
                                                 const std::shared_ptr<const SolidForm>& form) {
  const bool about_z = prism.turning == TurningAxis::lens;
  std::shared_ptr<const TurnedPart> part(new TurnedPart(section_of(prism), about_z, prism.trim,
                                                        about_z ? 0 : radians(prism.axis_dip_deg),
                                                        axis_place(prism), form));
  return part->corners_fit() ? part : nullptr;
}

std::shared_ptr<const TurnedPart> TurnedPart::of(const TurnedBar& bar,
                                                 const std::shared_ptr<const SolidForm>& form) {
  const bool about_z = bar.shape.turning == TurningAxis::lens;
  std::shared_ptr<TurnedPart> part(new TurnedPart(section_of(bar.shape), about_z, bar.shape.trim,
                                                  about_z ? 0 : radians(bar.shape.axis_dip_deg),
                                                  axis_place(bar.shape), form));
  part->bores_ = bar.bores;
  return part->corners_fit(true) ? part : nullptr;
}

bool TurnedPart::in_a_bore(const gp_Pnt& p) const {
  if (bores_.empty()) return false;
  const gp_Pnt made = p.Transformed(to_made_);
  return std::any_of(bores_.begin(), bores_.end(), [&](const PlateBore& bore) {
    const SpaceVector to = SpacePoint{made.X(), made.Y(), made.Z()} - bore.from;
    const double along = dot(to, bore.along);
    if (along < -bore.diameter_mm || along > bore.depth_mm + kNearMouth_mm) return false;
    return length(to - along * bore.along) < bore.diameter_mm / 2 + kNearMouth_mm;
  });
}

std::shared_ptr<const TurnedPart> TurnedPart::of(const RoundPart& round, const gp_Trsf& place,
                                                 const std::shared_ptr<const SolidForm>& form) {
  std::shared_ptr<TurnedPart> part(new TurnedPart(section_of(round), true, std::nullopt, 0, place, form));
  part->round_ = round;
  return part->corners_fit() ? part : nullptr;
}

bool TurnedPart::corners_fit(bool inside_too) const {
  const gp_Trsf to_part = to_made_.Inverted();
  for (const gp_Pnt& corner : form_->corners()) {
    const gp_Pnt p = corner.Transformed(to_part);
    const double off = inside_too ? field_.TurnedField::at(p).distance_mm : field_.to_boundary(p);
    if (off > kCornerWithin_mm || !within_cuts(p)) return false;
  }
  return !form_->corners().empty();
}

bool TurnedPart::within_cuts(const gp_Pnt& p, double slack_mm) const {
  if (!trim_) return true;
  const double clockwise = radians(trim_->clockwise_side_deg);
  const double anticlockwise = radians(trim_->anticlockwise_side_deg);
  // Along the panel's own axis: the side planes are upright.
  const double x = p.X() * std::cos(dip_) + p.Z() * std::sin(dip_);
  const double least = trim_->set_back_mm - slack_mm;
  if (-std::sin(clockwise) * x + std::cos(clockwise) * p.Y() < least) return false;
  if (std::sin(anticlockwise) * x - std::cos(anticlockwise) * p.Y() < least) return false;
  if (about_z_ && trim_->flat_inner_mm && x < *trim_->flat_inner_mm - slack_mm) return false;
  if (about_z_ || trim_->half == Half::whole) return true;
  const double level = trim_->half == Half::upper ? p.Z() : -p.Z();
  return level > trim_->half_gap_mm - slack_mm;
}

// Every place of a face that a cut leaves lies on that cut; a flat face of the section itself has rims within.
bool TurnedPart::is_cut(const CapFace& cap) const {
  const gp_Trsf made_to_part = to_made_.Inverted();
  for (const PlateOutline& outline : cap.outlines) {
    for (const PlatePoint p : outline) {
      const gp_Pnt rim = ElSLib::Value(p.u, p.v, cap.plane).Transformed(made_to_part);
      if (within_cuts(rim, -kWellWithin_mm)) return false;
    }
  }
  return true;
}

void TurnedPart::find_flats() {
  const gp_Trsf made_to_part = to_made_.Inverted();
  for (const CapFace& cap : form_->caps()) {
    if (!is_cut(cap)) continue;
    gp_Ax3 axes = cap.plane.Position();
    gp_Trsf to_plane;
    // The outlines are in the plane's own axes, which may be left-handed: then v runs the other way.
    const bool direct = axes.Direct();
    if (!direct) axes = gp_Ax3(axes.Location(), axes.Direction(), axes.XDirection());
    to_plane.SetTransformation(axes);
    std::vector<PlateChain> chains;
    for (PlateOutline outline : cap.outlines) {
      if (!direct) {
        for (PlatePoint& p : outline) p.v = -p.v;
      }
      chains.push_back(straight_chain(outline));
    }
    const gp_Trsf part_to_plane = to_plane * to_made_;
    flats_.push_back({part_to_plane, made_to_part * to_plane.Inverted(), LayerField(chains, 0, 0)});
  }
}

RoomField::Hit TurnedPart::CutField::at(const gp_Pnt& p) const {
  Hit hit = TurnedField::at(p);
  // Past a cut the flat face that it leaves tells, so that no foot lies off the solid.
  if (part_.flats_.empty() || part_.within_cuts(hit.foot, kFootPastCut_mm)) return hit;
  hit.distance_mm = std::numeric_limits<double>::max();
  for (const FlatFace& flat : part_.flats_) {
    const Hit on = flat.layer.at(p.Transformed(flat.to_plane));
    if (on.distance_mm < hit.distance_mm) hit = {on.distance_mm, on.foot.Transformed(flat.to_part)};
  }
  return hit;
}

void TurnedPart::CutField::each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                                     const std::function<void(const RoomPiece&)>& take) const {
  TurnedField::each_near(p, within_mm, reach_mm, [&](const RoomPiece& piece) {
    const gp_Pnt foot = p.Translated(-piece.distance_mm * piece.away);
    if (part_.within_cuts(foot, kCutSlack_mm + 2 * reach_mm)) take(piece);
  });
  for (const FlatFace& flat : part_.flats_) {
    flat.layer.each_near(p.Transformed(flat.to_plane), within_mm, reach_mm, [&](RoomPiece piece) {
      piece.away.Transform(flat.to_part);
      for (RoomPiece::Turn& turn : piece.turns) turn.along.Transform(flat.to_part);
      take(piece);
    });
  }
}

std::optional<SolidGap> TurnedPart::gap_from(const SolidForm& other, const gp_Trsf& place,
                                             double no_farther_mm) const {
  const auto nearest = nearest_place(other, place, field_, no_farther_mm);
  if (!nearest) return std::nullopt;
  return SolidGap{nearest->distance_mm, 0, nearest->on_solid, nearest->on_part};
}

gp_Pnt TurnedPart::at_angle(PlatePoint p, double angle) const {
  if (about_z_) return {p.u * std::cos(angle), p.u * std::sin(angle), p.v};
  return {p.u, p.v * std::cos(angle), p.v * std::sin(angle)};
}

std::optional<SolidGap> TurnedPart::gap_from_coaxial(const TurnedPart& other) const {
  if (about_z_ != other.about_z_) return std::nullopt;
  const auto gap = section_gap(other.field_.section(), field_.section());
  if (!gap) return std::nullopt;
  const double first = about_z_ ? 0 : radians(90);
  for (int i = 0; i < kAngles; ++i) {
    // To both sides of the middle, ever farther from it.
    const double angle = first + (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * radians(360.0 / kAngles);
    const gp_Pnt on_other = at_angle(gap->first, angle);
    const gp_Pnt on_this = at_angle(gap->second, angle);
    if (within_cuts(on_this) && other.within_cuts(on_other)) {
      return SolidGap{gap->gap_mm, 0, on_other, on_this};
    }
  }
  return std::nullopt;
}

}  // namespace prismwright
