#include "geometry/room_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace prismwright {
namespace {

constexpr double kStepsABand = 6;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

PlateStep line(PlatePoint from, PlatePoint to) { return {from, to, 0, {}, 0}; }

// Lengths here are far from what would overflow a square: std::hypot's care costs half the search.
double length_of(double x, double y) { return std::sqrt(x * x + y * y); }
double apart(PlatePoint a, PlatePoint b) { return length_of(a.u - b.u, a.v - b.v); }

// How far along an arc, in radians from its start in its own direction, the bearing of a place lies: 0 to 2 pi.
double along_arc(const PlateStep& arc, PlatePoint p) {
  const double start = std::atan2(arc.from.v - arc.centre.v, arc.from.u - arc.centre.u);
  const double here = std::atan2(p.v - arc.centre.v, p.u - arc.centre.u);
  double angle = arc.turn > 0 ? here - start : start - here;
  while (angle < 0) angle += 2 * std::numbers::pi;
  return angle;
}

// Foot on a step and how far it lies from the nearer end of the step (0: at an end).
struct Foot {
  PlatePoint place;
  double from_end_mm = 0;
};

Foot foot_on_line(const PlateStep& step, PlatePoint p) {
  const double du = step.to.u - step.from.u;
  const double dv = step.to.v - step.from.v;
  const double length2 = du * du + dv * dv;
  if (length2 == 0) return {step.from, 0};
  const double share = ((p.u - step.from.u) * du + (p.v - step.from.v) * dv) / length2;
  if (share <= 0) return {step.from, 0};
  if (share >= 1) return {step.to, 0};
  return {{step.from.u + share * du, step.from.v + share * dv},
          std::min(share, 1 - share) * std::sqrt(length2)};
}

// Across the radius to a point of the circle, positive in the arc's own direction, times the radius.
double past_radius(const PlateStep& arc, PlatePoint on_circle, PlatePoint p) {
  const double cross =
      (on_circle.u - arc.centre.u) * (p.v - arc.centre.v) - (on_circle.v - arc.centre.v) * (p.u - arc.centre.u);
  return arc.turn > 0 ? cross : -cross;
}

bool bears_on_arc(const PlateStep& arc, PlatePoint p) {
  const double past_start = past_radius(arc, arc.from, p);
  const double past_end = past_radius(arc, arc.to, p);
  return std::abs(arc.turn) <= std::numbers::pi ? past_start >= 0 && past_end <= 0
                                                : past_start >= 0 || past_end <= 0;
}

Foot foot_on_arc(const PlateStep& arc, PlatePoint p) {
  const double away = apart(p, arc.centre);
  if (away == 0) return {arc.from, 0};
  if (!bears_on_arc(arc, p)) return {apart(p, arc.from) <= apart(p, arc.to) ? arc.from : arc.to, 0};
  const double scale = arc.radius_mm / away;
  // Across the nearer end's radius is no more than along the arc.
  const double off = std::min(std::abs(past_radius(arc, arc.from, p)), std::abs(past_radius(arc, arc.to, p)));
  return {{arc.centre.u + (p.u - arc.centre.u) * scale, arc.centre.v + (p.v - arc.centre.v) * scale},
          off / away};
}

Foot foot_on(const PlateStep& step, PlatePoint p) {
  return step.straight() ? foot_on_line(step, p) : foot_on_arc(step, p);
}

PlateExtent box_of(const PlateStep& step) {
  PlateExtent box{{std::min(step.from.u, step.to.u), std::min(step.from.v, step.to.v)},
                  {std::max(step.from.u, step.to.u), std::max(step.from.v, step.to.v)}};
  if (step.straight()) return box;
  for (const auto& [u, v] : {std::pair(1, 0), {0, 1}, {-1, 0}, {0, -1}}) {
    const PlatePoint far{step.centre.u + u * step.radius_mm, step.centre.v + v * step.radius_mm};
    if (along_arc(step, far) > std::abs(step.turn)) continue;
    box.low = {std::min(box.low.u, far.u), std::min(box.low.v, far.v)};
    box.high = {std::max(box.high.u, far.u), std::max(box.high.v, far.v)};
  }
  return box;
}

bool is_within(const PlateExtent& box, PlatePoint p, double distance_mm) {
  const double u = std::max({0.0, box.low.u - p.u, p.u - box.high.u});
  const double v = std::max({0.0, box.low.v - p.v, p.v - box.high.v});
  return u * u + v * v < distance_mm * distance_mm;
}

// Crossings of a step with the level line from a place towards greater u.
int crossings_of_line(PlatePoint from, PlatePoint to, PlatePoint p) {
  if ((from.v <= p.v) == (to.v <= p.v)) return 0;
  return from.u + (p.v - from.v) / (to.v - from.v) * (to.u - from.u) > p.u ? 1 : 0;
}

// Crossings of the chord, and one more where the place lies between chord and arc.
int crossings_of_arc(const PlateStep& arc, PlatePoint p) {
  const int chord = crossings_of_line(arc.from, arc.to, p);
  if (apart(p, arc.centre) >= arc.radius_mm) return chord;
  const double side =
      (arc.to.u - arc.from.u) * (p.v - arc.from.v) - (arc.to.v - arc.from.v) * (p.u - arc.from.u);
  const bool arc_on_right = (arc.turn > 0) == (std::abs(arc.turn) <= std::numbers::pi);
  // An arc of up to half a turn bulges to one side of its chord; a longer one holds the other side too.
  const bool between = std::abs(arc.turn) <= std::numbers::pi ? (arc_on_right ? side < 0 : side > 0)
                                                              : (arc.turn > 0 ? side < 0 : side > 0);
  return chord + (between ? 1 : 0);
}

double past(double distance, double reach) { return distance > reach ? 1 / (distance - reach) : kInfinite; }

// How far a place beyond an arc's ends stands from the nearer of the radii to them.
double off_arc_mm(const PlateStep& arc, PlatePoint p, double away) {
  const double angle = along_arc(arc, p);
  const double past_end = std::min(angle - std::abs(arc.turn), 2 * std::numbers::pi - angle);
  return past_end < std::numbers::pi / 2 ? away * std::sin(std::max(0.0, past_end)) : away;
}

RegionField::Piece seen(const PlateStep& step, PlatePoint p, double reach) {
  const Foot foot = foot_on(step, p);
  RegionField::Piece piece{apart(p, foot.place), foot.place};
  const bool well_inside = foot.from_end_mm > reach;
  if (step.straight()) {
    piece.swing_per_mm = well_inside ? 0 : past(piece.distance_mm, reach);
    return piece;
  }
  const double away = apart(p, step.centre);
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
  for (const PlateStep& step : steps_) boxes_.push_back(box_of(step));
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
  for (const int i : bands_[band_of(p.v)]) {
    const PlateStep& s = steps_[i];
    crossings += s.straight() ? crossings_of_line(s.from, s.to, p) : crossings_of_arc(s, p);
  }
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
      const double away = apart(foot, p);
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

void LayerField::each_near(const gp_Pnt& p, double within_mm, double reach_mm,
                           const std::function<void(const RoomPiece&)>& take) const {
  const double off = p.Z() - std::clamp(p.Z(), from_, to_);
  const double height = std::abs(off);
  if (height > within_mm) return;
  const PlatePoint here{p.X(), p.Y()};
  const bool over = region_.holds(here);
  const double inside = std::sqrt(within_mm * within_mm - height * height);
  double nearest = std::numeric_limits<double>::max();
  const bool within_depth = std::min(p.Z() - from_, to_ - p.Z()) > reach_mm;
  region_.each_near(here, std::max(inside, reach_mm), reach_mm, [&](const RegionField::Piece& flat) {
    nearest = std::min(nearest, flat.distance_mm);
    const double distance = length_of(flat.distance_mm, height);
    if (distance > within_mm) return;
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
  // Beside the layer the walls' own bounds hold past its edges too.
  if (height == 0) return;
  if (!over && nearest > reach_mm) return;
  RoomPiece face;
  face.distance_mm = height;
  face.away = gp_Vec(0, 0, off > 0 ? 1 : -1);
  face.swing_per_mm = nearest > reach_mm ? 0 : past(height, reach_mm);
  // Beside the region the face's height says nothing yet.
  if (!over) face.sag_per_mm = kInfinite;
  take(face);
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
