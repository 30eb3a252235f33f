#include "core/works/prism_reach.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/lens/dense_outline.h"

namespace prismwright {

namespace {

constexpr double kChord_mm = 5e-5;
constexpr double kLongest_mm = 0.5;
constexpr double kNear_mm = 1;  ///< a lesser peak between two samples may pass the greatest by less than this
constexpr double kNothing = -std::numeric_limits<double>::infinity();

bool lies_below(const Profile& profile) {
  double low = 0;
  for (const Face& face : profile.faces)
    for (const SectionPoint p : face.points) low = std::min(low, p.z);
  return low < -1e-9;
}

/// The greatest a + b cos t + c sin t between two angles.
double greatest_wave(double a, double b, double c, TrimmedRing::Span span) {
  const double peak = std::atan2(c, b);
  for (const double turn : {-2 * kPi, 0.0, 2 * kPi})
    if (peak + turn >= span.from && peak + turn <= span.to) return a + std::hypot(b, c);
  return a + std::max(b * std::cos(span.from) + c * std::sin(span.from),
                      b * std::cos(span.to) + c * std::sin(span.to));
}

/// What of a span lies no farther than `past` beyond the level plane, at the distance z from the axis.
std::vector<TrimmedRing::Span> near_level(TrimmedRing::Span span, double z, double past) {
  if (past >= z) return {span};
  const double angle = std::asin(past / z);
  std::vector<TrimmedRing::Span> near;
  for (const TrimmedRing::Span level : {TrimmedRing::Span{0, angle}, TrimmedRing::Span{kPi - angle, kPi}}) {
    const TrimmedRing::Span both = {std::max(span.from, level.from), std::min(span.to, level.to)};
    if (both.from < both.to) near.push_back(both);
  }
  return near;
}

}  // namespace

PrismReach::PrismReach(const PlannedPrism& prism)
    : ring_(prism),
      axis_z_mm_(prism.turning == TurningAxis::panel ? prism.axis_z_mm : 0),
      mirrored_(prism.turning == TurningAxis::panel && lies_below(prism.profile)),
      outline_(dense_outline(ring_.profile(), kChord_mm, kLongest_mm)) {}

std::vector<PrismReach::Arc> PrismReach::arcs_at(SectionPoint p) const {
  std::vector<Arc> arcs;
  const Trim& trim = ring_.trim();
  for (const bool below : {false, true}) {
    if (ring_.turning() == TurningAxis::lens && below) continue;
    const auto spans = ring_.spans(p, below ? Half::lower : Half::upper);
    const bool own = trim.half == Half::whole || (trim.half == Half::lower) == below;
    for (const auto& span : spans) {
      if (own) {
        arcs.push_back({span, below});
      } else if (trim.half_gap_mm < 0) {  // a half that reaches past the level plane
        for (const auto& part : near_level(span, p.z, -trim.half_gap_mm)) arcs.push_back({part, below});
      }
    }
  }
  return arcs;
}

SpacePoint PrismReach::place(SectionPoint p, double angle, bool below) const {
  if (ring_.turning() == TurningAxis::lens) return {p.r * std::cos(angle), p.r * std::sin(angle), p.z};
  const double up = p.z * std::sin(angle) * (below ? -1 : 1);
  const double c = std::cos(ring_.dip());
  const double s = std::sin(ring_.dip());
  return {p.r * c + up * s, p.z * std::cos(angle), axis_z_mm_ - p.r * s + up * c};
}

std::optional<double> PrismReach::farthest(SectionPoint p, SpaceVector unit) const {
  double most = kNothing;
  const double c = std::cos(ring_.dip());
  const double s = std::sin(ring_.dip());
  for (const Arc& arc : arcs_at(p)) {
    if (ring_.turning() == TurningAxis::lens) {
      most = std::max(most, greatest_wave(p.z * unit.z, p.r * unit.x, p.r * unit.y, arc.span));
      continue;
    }
    const double along = p.r * (unit.x * c - unit.z * s) + axis_z_mm_ * unit.z;
    const double up = (unit.x * s + unit.z * c) * (arc.below ? -1 : 1);
    most = std::max(most, greatest_wave(along, p.z * unit.y, p.z * up, arc.span));
  }
  return most == kNothing ? std::nullopt : std::optional(most);
}

SectionPoint PrismReach::outline_at(double share) const {
  const auto count = static_cast<double>(outline_.size());
  share -= count * std::floor(share / count);
  const double whole = std::floor(share);
  const auto i = static_cast<std::size_t>(whole) % outline_.size();
  return between(outline_[i], outline_[(i + 1) % outline_.size()], share - whole);
}

double PrismReach::refined(double middle, double half, SpaceVector unit) const {
  constexpr int kParts = 4;
  double best = farthest(outline_at(middle), unit).value_or(kNothing);
  for (int round = 0; round < 14; ++round) {
    double next = middle;
    for (int k = -kParts; k <= kParts; ++k) {
      const double at = middle + half * k / kParts;
      const double here = farthest(outline_at(at), unit).value_or(kNothing);
      if (here > best) {
        best = here;
        next = at;
      }
    }
    middle = next;
    half /= kParts;
  }
  return best;
}

std::optional<double> PrismReach::greatest(SpaceVector unit) const {
  std::vector<double> reach;
  for (const SectionPoint p : outline_) reach.push_back(farthest(p, unit).value_or(kNothing));
  const double most = *std::ranges::max_element(reach);
  if (most == kNothing) return std::nullopt;
  double best = most;
  const std::size_t count = reach.size();
  for (std::size_t i = 0; i < count; ++i) {
    const double before = reach[(i + count - 1) % count];
    const double after = reach[(i + 1) % count];
    const bool peak = reach[i] >= before && reach[i] >= after && (reach[i] > before || reach[i] > after);
    if (peak && reach[i] > most - kNear_mm) best = std::max(best, refined(static_cast<double>(i), 1, unit));
  }
  return best;
}

std::optional<PrismReach::Extent> PrismReach::along(SpaceVector unit) const {
  const auto high = greatest(unit);
  const auto low = greatest(-unit);
  if (!high || !low) return std::nullopt;
  return Extent{-*low, *high};
}

double PrismReach::middle_azimuth() const {
  if (ring_.turning() == TurningAxis::panel) return 0;
  const auto kept = ring_.kept_anywhere();
  return kept ? (kept->from + kept->to) / 2 : 0;
}

std::optional<PrismReach::Ends> PrismReach::ends_of(SectionPoint place_mm) const {
  const SectionPoint p = mirrored_ ? SectionPoint{place_mm.r, -place_mm.z} : place_mm;
  const auto arcs = arcs_at(p);
  if (arcs.empty()) return std::nullopt;
  const auto widest =
      std::ranges::max_element(arcs, {}, [](const Arc& arc) { return arc.span.to - arc.span.from; });
  const TrimmedRing::Span span = widest->span;
  // A whole ring is kept from 0 to pi on either side; the ends of one lie opposite to each other.
  const bool whole = ring_.turning() == TurningAxis::panel && ring_.trim().half == Half::whole &&
                     span.to - span.from > kPi - 1e-9;
  return Ends{place(p, span.from, widest->below), place(p, span.to, widest->below), whole};
}

}  // namespace prismwright
