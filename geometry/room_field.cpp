#include "geometry/room_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/frame/step_foot.h"

#include "core/frame/plate_step.h"

namespace prismwright {
namespace {

constexpr double kStepsABand = 6;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

PlateStep line(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

// Lengths here are far from what would overflow a square: std::hypot's care costs half the search.
double length_of(double x, double y) { return std::sqrt(x * x + y * y); }

bool is_within(const PlateExtent& box, PlatePoint p, double distance_mm) {
  const double u = std::max({0.0, box.low.u - p.u, p.u - box.high.u});
  const double v = std::max({0.0, box.low.v - p.v, p.v - box.high.v});
  return u * u + v * v < distance_mm * distance_mm;
}

double past(double distance, double reach) { return distance > reach ? 1 / (distance - reach) : kInfinite; }

// How far a place beyond an arc's ends stands from the nearer of the radii to them.
double off_arc_mm(const PlateStep& arc, PlatePoint p, double away) {
  const double angle = along_arc(arc, p);
  const double past_end = std::min(angle - std::abs(arc.turn), 2 * std::numbers::pi - angle);
  return past_end < std::numbers::pi / 2 ? away * std::sin(std::max(0.0, past_end)) : away;
}

RegionField::Piece seen(const PlateStep& step, PlatePoint p, double reach) {
  const StepFoot foot = foot_on(step, p);
  RegionField::Piece piece{distance(p, foot.place), foot.place};
  const bool well_inside = foot.from_end_mm > reach;
  if (step.straight()) {
    piece.swing_per_mm = well_inside ? 0 : past(piece.distance_mm, reach);
    return piece;
  }
  const double away = distance(p, step.centre);
  if (foot.from_end_mm == 0) {
    // Off the arc's end the distance to the end point counts, which bends up, until a move leads past the
    // radius to the end: only what is left of the move then bends it down.
    const double left = std::max(0.0, reach - off_arc_mm(step, p, away));
    piece.sag_per_mm = left == 0 ? 0 : past(away, reach) * (left / reach) * (left / reach);
    piece.swing_per_mm = std::max(piece.sag_per_mm, past(piece.distance_mm, reach));
    return piece;
  }
  if (away > 4 * reach) {
    // Within the circle the distance bends down across the slope, outside it bends up.
    piece.turn_per_mm = (away < step.radius_mm ? -1 : 1) / away;
  } else {
    piece.sag_per_mm = past(away, reach);
  }
  piece.swing_per_mm = std::max(piece.sag_per_mm, well_inside ? 0 : past(piece.distance_mm, reach));
  return piece;
}

}  // namespace

RegionField::RegionField(const PlateRegion& region) {
  for (const PlateOutline& outline : region) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
      steps_.push_back(line(outline[i], outline[(i + 1) % outline.size()]));
    }
  }
  lay_bands();
}

RegionField::RegionField(const std::vector<PlateChain>& chains) {
  for (const PlateChain& chain : chains) steps_.insert(steps_.end(), chain.begin(), chain.end());
  lay_bands();
}

RegionField RegionField::within(const std::vector<std::vector<PlatePoint>>& lines) {
  RegionField field;
  for (const auto& points : lines) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) field.steps_.push_back(line(points[i], points[i + 1]));
  }
  field.lay_bands();
  return field;
}

void RegionField::lay_bands() {
  if (steps_.empty()) return;
  for (const PlateStep& step : steps_) boxes_.push_back(extent_of(step));
  low_ = boxes_.front().low.v;
  double high_v = low_;
  for (const PlateExtent& box : boxes_) {
    low_ = std::min(low_, box.low.v);
    high_v = std::max(high_v, box.high.v);
  }
  const double height = high_v - low_;
  const double bands = std::max(1.0, static_cast<double>(steps_.size()) / kStepsABand);
  band_mm_ = height > 0 ? height / bands : 1;
  bands_.resize(static_cast<std::size_t>(bands) + 1);
  for (std::size_t i = 0; i < steps_.size(); ++i) {
    const int last = band_of(boxes_[i].high.v);
    for (int band = band_of(boxes_[i].low.v); band <= last; ++band) bands_[band].push_back(static_cast<int>(i));
  }
}

int RegionField::band_of(double v) const {
  const double band = std::floor((v - low_) / band_mm_);
  return static_cast<int>(std::clamp(band, 0.0, static_cast<double>(bands_.size()) - 1));
}

bool RegionField::holds(PlatePoint p) const {
  if (steps_.empty()) return false;
  int crossings = 0;
  for (const int i : bands_[band_of(p.v)]) crossings += crossings_of(steps_[i], p);
  return crossings % 2 == 1;
}

RegionField::Hit RegionField::to_boundary(PlatePoint p) const {
  Hit best{std::numeric_limits<double>::max(), p};
  const int home = band_of(p.v);
  const int count = static_cast<int>(bands_.size());
  const auto look = [&](int band) {
    if (band < 0 || band >= count) return;
    for (const int i : bands_[band]) {
      if (!is_within(boxes_[i], p, best.distance_mm)) continue;
      const PlatePoint foot = foot_on(steps_[i], p).place;
      const double away = distance(foot, p);
      if (away < best.distance_mm) best = {away, foot};
    }
  };
  for (int step = 0; step < count; ++step) {
    // A band so many steps away is no nearer than this, wherever in its own band the place stands.
    if ((step - 1) * band_mm_ > best.distance_mm) break;
    look(home - step);
    if (step > 0) look(home + step);
  }
  return best;
}

RegionField::Hit RegionField::at(PlatePoint p) const {
  if (steps_.empty()) return {std::numeric_limits<double>::max(), p};
  if (holds(p)) return {0, p};
  return to_boundary(p);
}

void RegionField::each_near(PlatePoint p, double within_mm, double reach_mm,
                            const std::function<void(const Piece&)>& take) const {
  if (steps_.empty()) return;
  const int first = band_of(p.v - within_mm);
  const int last = band_of(p.v + within_mm);
  for (int band = first; band <= last; ++band) {
    for (const int i : bands_[band]) {
      // A step that runs through several bands is told in the first of them that is looked at.
      if (std::max(band_of(boxes_[i].low.v), first) != band) continue;
      if (!is_within(boxes_[i], p, within_mm)) continue;
      const Piece piece = seen(steps_[i], p, reach_mm);
      if (piece.distance_mm <= within_mm) take(piece);
    }
  }
}

RoomField::Hit LayerField::at(const gp_Pnt& p) const {
  const RegionField::Hit flat = region_.at({p.X(), p.Y()});
  const double foot_z = std::clamp(p.Z(), from_, to_);
  return {length_of(flat.distance_mm, p.Z() - foot_z), gp_Pnt(flat.foot.u, flat.foot.v, foot_z)};
}

// Over the layer its level face is all that counts: once a move leads past the face's rim, the distance is no
// less than the height still, and its slope turns no faster than about a point as high. Beside it the walls are
// all that counts: the distance to a wall with what lies behind it bends up, so what is said of the rim holds
// past it too.
void LayerField::each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                           const std::function<void(const RoomPiece&)>& take) const {
  const double off = p.Z() - std::clamp(p.Z(), from_, to_);
  const double height = std::abs(off);
  if (height > within_mm) return;
  if (height > 0 && region_.holds({p.X(), p.Y()})) {
    RoomPiece face;
    face.distance_mm = height;
    face.away = gp_Vec(0, 0, off > 0 ? 1 : -1);
    const bool near_rim = region_.to_boundary({p.X(), p.Y()}).distance_mm <= reach_mm;
    face.swing_per_mm = near_rim ? past(height, reach_mm) : 0;
    take(face);
  } else {
    each_wall(p, off, within_mm, reach_mm, take);
  }
}

void LayerField::each_wall(const gp_Pnt& p, double off, double within_mm, double reach_mm,
                           const std::function<void(const RoomPiece&)>& take) const {
  const PlatePoint here{p.X(), p.Y()};
  const double inside = std::sqrt(within_mm * within_mm - off * off);
  const bool within_depth = std::min(p.Z() - from_, to_ - p.Z()) > reach_mm;
  region_.each_near(here, inside, reach_mm, [&](const RegionField::Piece& flat) {
    const double distance = length_of(flat.distance_mm, off);
    RoomPiece piece;
    piece.distance_mm = distance;
    piece.away = gp_Vec(here.u - flat.foot.u, here.v - flat.foot.v, off);
    if (distance > 0) piece.away /= distance;
    if (flat.turn_per_mm != 0 && flat.distance_mm > 0) {
      const gp_Vec across(piece.away.Y(), -piece.away.X(), 0);
      piece.turns[0] = {across.Normalized(), flat.turn_per_mm * flat.distance_mm / distance};
    }
    piece.sag_per_mm = flat.sag_per_mm;
    piece.swing_per_mm =
        within_depth ? flat.swing_per_mm : std::max(flat.swing_per_mm, past(distance, reach_mm));
    take(piece);
  });
}

PlatePoint TurnedField::flat(const gp_Pnt& p) const {
  return about_z_ ? PlatePoint{length_of(p.X(), p.Y()), p.Z()} : PlatePoint{p.X(), length_of(p.Y(), p.Z())};
}

RoomField::Hit TurnedField::at(const gp_Pnt& p) const {
  const PlatePoint here = flat(p);
  const RegionField::Hit hit = section_.at(here);
  const double from = about_z_ ? here.u : here.v;
  const double to = about_z_ ? hit.foot.u : hit.foot.v;
  const double scale = from > 0 ? to / from : 0;
  const gp_Pnt foot = about_z_ ? gp_Pnt(p.X() * scale, p.Y() * scale, hit.foot.v)
                               : gp_Pnt(hit.foot.u, p.Y() * scale, p.Z() * scale);
  return {hit.distance_mm, foot};
}

void TurnedField::each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                            const std::function<void(const RoomPiece&)>& take) const {
  const PlatePoint here = flat(p);
  const double radius = about_z_ ? here.u : here.v;
  const gp_Vec outward = radius == 0 ? gp_Vec(0, 0, 0)
                         : about_z_  ? gp_Vec(p.X() / radius, p.Y() / radius, 0)
                                     : gp_Vec(0, p.Y() / radius, p.Z() / radius);
  const gp_Vec axis = about_z_ ? gp_Vec(0, 0, 1) : gp_Vec(1, 0, 0);
  section_.each_near(here, within_mm, reach_mm, [&](const RegionField::Piece& flat_piece) {
    RoomPiece piece;
    piece.distance_mm = flat_piece.distance_mm;
    const double scale = flat_piece.distance_mm > 0 ? 1 / flat_piece.distance_mm : 0;
    const double out = scale * (about_z_ ? here.u - flat_piece.foot.u : here.v - flat_piece.foot.v);
    const double along = scale * (about_z_ ? here.v - flat_piece.foot.v : here.u - flat_piece.foot.u);
    piece.away = out * outward + along * axis;
    piece.sag_per_mm = flat_piece.sag_per_mm;
    piece.swing_per_mm = flat_piece.swing_per_mm;
    if (flat_piece.turn_per_mm != 0) {
      piece.turns[1] = {out * axis - along * outward, flat_piece.turn_per_mm};
    }
    if (radius > 4 * reach_mm) {
      piece.turns[0] = {axis.Crossed(outward), out / radius};
    } else if (out < 0) {
      piece.sag_per_mm = std::max(piece.sag_per_mm, past(radius, reach_mm));
      piece.swing_per_mm = std::max(piece.swing_per_mm, past(radius, reach_mm));
    } else {
      piece.swing_per_mm = std::max(piece.swing_per_mm, past(radius, reach_mm));
    }
    take(piece);
  });
}

}  // namespace prismwright
