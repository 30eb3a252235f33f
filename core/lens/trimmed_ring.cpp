#include "core/lens/trimmed_ring.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/base/angle.h"
#include "core/lens/dense_outline.h"

namespace prismwright {

namespace {

constexpr double kUpright = 1e-9;  ///< cosine under which a side plane counts as square to the panel axis
constexpr double kChord_mm = 0.02;
constexpr double kLongest_mm = 2;
constexpr double kClear_mm = 1e-5;

double low_of(const Profile& profile) {
  double low = std::numeric_limits<double>::infinity();
  for (const Face& face : profile.faces) {
    for (const SectionPoint& p : face.points) low = std::min(low, p.z);
  }
  return low;
}

constexpr double kCarriedOn = 0.03;  ///< share of the focal distance by which joints are carried on inward

/// The point as far inward of `from` on the straight line from `to` through it.
SectionPoint carried_on(SectionPoint from, SectionPoint to, double inward_mm) {
  const double share = inward_mm / (to.r - from.r);
  return {from.r - inward_mm, from.z - share * (to.z - from.z)};
}

/// The profile with its hollow inner face moved inward along the joints.
Profile with_room_for_flat(Profile profile) {
  const std::size_t count = profile.faces.size();
  for (std::size_t i = 0; i < count; ++i) {
    Face& inner = profile.faces[i];
    if (inner.role != FaceRole::inner) continue;
    Face& above = profile.faces[(i + count - 1) % count];
    Face& below = profile.faces[(i + 1) % count];
    const double inward = kCarriedOn * inner.start().r;
    above.points.back() = inner.points.front() = carried_on(above.end(), above.start(), inward);
    below.points.front() = inner.points.back() = carried_on(below.start(), below.end(), inward);
  }
  return profile;
}

using Spans = std::vector<TrimmedRing::Span>;

Spans common(const Spans& one, const Spans& other) {
  Spans both;
  for (const auto& a : one) {
    for (const auto& b : other) {
      const TrimmedRing::Span span = {std::max(a.from, b.from), std::min(a.to, b.to)};
      if (span.from < span.to) both.push_back(span);
    }
  }
  return both;
}

/// Where a cos t + b sin t is at least c, for t between -pi and 2 pi.
Spans at_least(double a, double b, double c) {
  const double most = std::hypot(a, b);
  if (c <= -most) return {{-kPi, 2 * kPi}};
  if (c >= most) return {};
  const double middle = std::atan2(b, a);
  const double wide = std::acos(c / most);
  Spans spans;
  for (const double turn : {-2 * kPi, 0.0, 2 * kPi})
    spans.push_back({middle - wide + turn, middle + wide + turn});
  return spans;
}

}  // namespace

TrimmedRing::TrimmedRing(const PlannedPrism& prism)
    : turning_(prism.turning), trim_(prism.trim), profile_(prism.profile) {
  if (turning_ == TurningAxis::lens) trim_.half = Half::whole;
  if (turning_ == TurningAxis::panel) dip_ = radians(prism.axis_dip_deg);
  if (turning_ == TurningAxis::panel) trim_.flat_inner_mm.reset();
  if (trim_.flat_inner_mm) profile_ = with_room_for_flat(std::move(profile_));
  const bool below = turning_ == TurningAxis::panel && low_of(profile_) < -1e-9;
  if (below) profile_ = mirrored(profile_);
  outline_ = dense_outline(profile_, kChord_mm, kLongest_mm);
  lay_limits();
}

void TrimmedRing::lay_limits() {
  const double a = radians(trim_.clockwise_side_deg);
  const double b = radians(trim_.anticlockwise_side_deg);
  const double s = trim_.set_back_mm;
  for (const auto& [x, y] : {std::pair{-std::sin(a), std::cos(a)}, std::pair{std::sin(b), -std::cos(b)}}) {
    sides_.push_back({x * std::cos(dip_), y, x * std::sin(dip_)});
  }
  const double half_width = (b - a) / 2;
  if (turning_ == TurningAxis::lens) {
    nearest_room_mm_ = s / std::sin(half_width);
    return;
  }
  // Clockwise side: -x sin a + y cos a >= s. Anticlockwise side: x sin b - y cos b >= s.
  const bool one_plane = half_width > kPi / 2 - kUpright;
  const double apex = s / std::sin(half_width);
  nearest_room_mm_ = one_plane ? -std::numeric_limits<double>::infinity() : apex * std::cos((a + b) / 2);
  if (std::abs(std::cos(a)) > kUpright) {
    limits_.push_back({std::tan(a), s / std::cos(a), std::cos(a) > 0});
  } else {
    nearest_room_mm_ = std::max(nearest_room_mm_, s);
  }
  if (std::abs(std::cos(b)) > kUpright) {
    limits_.push_back({std::tan(b), -s / std::cos(b), std::cos(b) < 0});
  } else {
    nearest_room_mm_ = std::max(nearest_room_mm_, s);
  }
}

std::optional<TrimmedRing::Span> TrimmedRing::kept(SectionPoint p) const {
  if (turning_ == TurningAxis::lens) return kept_about_lens(p);
  if (dip_ == 0) return kept_about_panel(p);
  const Spans all = spans_about_dipping(p, trim_.half);
  const auto widest = std::max_element(
      all.begin(), all.end(), [](const Span& m, const Span& n) { return m.to - m.from < n.to - n.from; });
  return widest == all.end() ? std::nullopt : std::optional(*widest);
}

std::vector<TrimmedRing::Span> TrimmedRing::spans(SectionPoint p, Half side) const {
  if (turning_ == TurningAxis::panel && dip_ != 0) return spans_about_dipping(p, side);
  const auto span = kept(p);
  return span ? Spans{*span} : Spans{};
}

std::vector<TrimmedRing::Span> TrimmedRing::spans_about_dipping(SectionPoint p, Half side) const {
  const double gap = trim_.half == Half::whole ? 0 : std::max(0.0, trim_.half_gap_mm);
  if (p.z < gap) return {};
  const double level = p.z > 0 ? std::asin(gap / p.z) : 0;
  Spans left = {{level, kPi - level}};
  for (const Side& plane : sides_) {
    const double up = side == Half::lower ? -plane.z : plane.z;
    left = common(left, at_least(plane.y * p.z, up * p.z, trim_.set_back_mm - plane.x * p.r));
  }
  return left;
}

std::optional<TrimmedRing::Span> TrimmedRing::kept_about_lens(SectionPoint p) const {
  if (p.r < std::abs(trim_.set_back_mm)) return std::nullopt;
  const double back = std::asin(trim_.set_back_mm / p.r);
  Span span = {radians(trim_.clockwise_side_deg) + back, radians(trim_.anticlockwise_side_deg) - back};
  if (trim_.flat_inner_mm) {
    if (p.r <= *trim_.flat_inner_mm) return std::nullopt;
    const double open = std::acos(*trim_.flat_inner_mm / p.r);
    span = {std::max(span.from, -open), std::min(span.to, open)};
  }
  return span.from < span.to ? std::optional(span) : std::nullopt;
}

std::optional<TrimmedRing::Span> TrimmedRing::kept_about_panel(SectionPoint p) const {
  const double gap = trim_.half == Half::whole ? 0 : std::max(0.0, trim_.half_gap_mm);
  if (p.r < nearest_room_mm_ || p.z < gap) return std::nullopt;
  // y / z falls from 1 to -1 as the angle runs from 0 to pi.
  double most = p.z > 0 ? std::sqrt(std::max(0.0, 1 - gap * gap / (p.z * p.z))) : 1;
  double least = -most;
  for (const Limit& limit : limits_) {
    const double y = limit.slope * p.r + limit.start_mm;
    const double share = p.z > 0 ? y / p.z : std::copysign(2.0, y);
    if (limit.at_least) {
      least = std::max(least, share);
    } else {
      most = std::min(most, share);
    }
  }
  if (least >= most) return std::nullopt;
  return Span{std::acos(most), std::acos(least)};
}

std::optional<TrimmedRing::Span> TrimmedRing::kept_anywhere() const {
  std::optional<Span> all;
  for (const SectionPoint& p : outline_) {
    for (const Span& here : spans(p, trim_.half)) {
      if (!all) all = here;
      all->from = std::min(all->from, here.from);
      all->to = std::max(all->to, here.to);
    }
  }
  return all;
}

bool TrimmedRing::clears_sides() const {
  if (dip_ != 0) {
    return std::all_of(outline_.begin(), outline_.end(), [&](const SectionPoint& p) {
      return std::all_of(sides_.begin(), sides_.end(), [&](const Side& plane) {
        const double room = plane.x * p.r - std::hypot(plane.y, plane.z) * p.z - trim_.set_back_mm;
        return room >= -kClear_mm;
      });
    });
  }
  return std::all_of(outline_.begin(), outline_.end(), [&](const SectionPoint& p) {
    if (p.r < nearest_room_mm_) return false;
    return std::all_of(limits_.begin(), limits_.end(), [&](const Limit& limit) {
      const double y = limit.slope * p.r + limit.start_mm;
      return limit.at_least ? y <= -p.z + kClear_mm : y >= p.z - kClear_mm;
    });
  });
}

bool TrimmedRing::needs_no_cut() const {
  if (trim_.half != Half::whole || trim_.flat_inner_mm) return false;
  return turning_ == TurningAxis::lens ? std::abs(trim_.set_back_mm) < 1e-6 : clears_sides();
}

std::optional<TrimmedRing::FacetEnds> TrimmedRing::facet_ends() const {
  if (!trim_.flat_inner_mm) return std::nullopt;
  const auto end = [&](double side) {
    if (std::cos(side) < kUpright) return std::numeric_limits<double>::infinity();
    return (*trim_.flat_inner_mm * std::sin(side) - trim_.set_back_mm) / std::cos(side);
  };
  return FacetEnds{end(-radians(trim_.clockwise_side_deg)), end(radians(trim_.anticlockwise_side_deg))};
}

}  // namespace prismwright
