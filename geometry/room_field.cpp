#include "geometry/room_field.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace prismwright {
namespace {

constexpr double kSegmentsABand = 6;

PlatePoint nearest_on(PlatePoint from, PlatePoint to, PlatePoint p) {
  const double du = to.u - from.u;
  const double dv = to.v - from.v;
  const double length2 = du * du + dv * dv;
  if (length2 == 0) return from;
  const double share = std::clamp(((p.u - from.u) * du + (p.v - from.v) * dv) / length2, 0.0, 1.0);
  return {from.u + share * du, from.v + share * dv};
}

}  // namespace

RegionField::RegionField(const PlateRegion& region) {
  for (const PlateOutline& outline : region) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
      segments_.push_back({outline[i], outline[(i + 1) % outline.size()]});
    }
  }
  lay_bands();
}

RegionField RegionField::within(const std::vector<std::vector<PlatePoint>>& lines) {
  RegionField field;
  for (const auto& line : lines) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) field.segments_.push_back({line[i], line[i + 1]});
  }
  field.lay_bands();
  return field;
}

void RegionField::lay_bands() {
  if (segments_.empty()) return;
  low_ = segments_.front().from.v;
  double high_v = low_;
  for (const Segment& s : segments_) {
    low_ = std::min({low_, s.from.v, s.to.v});
    high_v = std::max({high_v, s.from.v, s.to.v});
  }
  const double height = high_v - low_;
  const double bands = std::max(1.0, static_cast<double>(segments_.size()) / kSegmentsABand);
  band_mm_ = height > 0 ? height / bands : 1;
  bands_.resize(static_cast<std::size_t>(bands) + 1);
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    const auto [low, high] = std::minmax(segments_[i].from.v, segments_[i].to.v);
    for (int band = band_of(low); band <= band_of(high); ++band) bands_[band].push_back(static_cast<int>(i));
  }
}

int RegionField::band_of(double v) const {
  const double band = std::floor((v - low_) / band_mm_);
  return static_cast<int>(std::clamp(band, 0.0, static_cast<double>(bands_.size()) - 1));
}

bool RegionField::holds(PlatePoint p) const {
  if (segments_.empty()) return false;
  bool odd = false;
  for (const int i : bands_[band_of(p.v)]) {
    const Segment& s = segments_[i];
    if ((s.from.v <= p.v) == (s.to.v <= p.v)) continue;
    const double u = s.from.u + (p.v - s.from.v) / (s.to.v - s.from.v) * (s.to.u - s.from.u);
    if (u > p.u) odd = !odd;
  }
  return odd;
}

RegionField::Hit RegionField::to_boundary(PlatePoint p) const {
  Hit best{std::numeric_limits<double>::max(), p};
  double best2 = std::numeric_limits<double>::max();
  const int home = band_of(p.v);
  const int count = static_cast<int>(bands_.size());
  const auto look = [&](int band) {
    if (band < 0 || band >= count) return;
    for (const int i : bands_[band]) {
      const auto [left, right] = std::minmax(segments_[i].from.u, segments_[i].to.u);
      const double aside = std::max({0.0, left - p.u, p.u - right});
      if (aside * aside >= best2) continue;
      const PlatePoint foot = nearest_on(segments_[i].from, segments_[i].to, p);
      const double away2 = (foot.u - p.u) * (foot.u - p.u) + (foot.v - p.v) * (foot.v - p.v);
      if (away2 >= best2) continue;
      best2 = away2;
      best.foot = foot;
    }
  };
  for (int step = 0; step < count; ++step) {
    // A band so many steps away is no nearer than this, wherever in its own band the place stands.
    const double least = (step - 1) * band_mm_;
    if (least > 0 && least * least > best2) break;
    look(home - step);
    if (step > 0) look(home + step);
  }
  best.distance_mm = std::sqrt(best2);
  return best;
}

RegionField::Hit RegionField::at(PlatePoint p) const {
  if (segments_.empty()) return {std::numeric_limits<double>::max(), p};
  if (holds(p)) return {0, p};
  return to_boundary(p);
}

RoomField::Hit LayerField::at(const gp_Pnt& p) const {
  const double depth = hand_ * p.Y();
  const RegionField::Hit flat = region_.at({p.X(), p.Z()});
  const double foot_depth = std::clamp(depth, from_, to_);
  return {std::hypot(flat.distance_mm, depth - foot_depth),
          gp_Pnt(flat.foot.u, hand_ * foot_depth, flat.foot.v)};
}

PlatePoint TurnedField::flat(const gp_Pnt& p) const {
  return about_z_ ? PlatePoint{std::hypot(p.X(), p.Y()), p.Z()} : PlatePoint{p.X(), std::hypot(p.Y(), p.Z())};
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

}  // namespace prismwright
