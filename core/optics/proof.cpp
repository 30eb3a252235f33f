#include "core/optics/proof.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/section_pieces.h"

namespace prismwright {

namespace {

constexpr double kSeenStrip_mm = 1e-3;
constexpr double kJustInside = 1e-9;  ///< radians: end rays are traced this far inside their zone
constexpr int kStripHalvings = 18;
constexpr int kBoundaryHalvings = 14;
constexpr int kLeastRays = 3;          ///< between two corners
constexpr double kSameCorner = 1e-10;  ///< radians

/// Adds traced rays to the proof. `section` must be the one that the traced pieces point into.
class Sums {
 public:
  Sums(Proof& proof, const Section& section) : proof_(proof), first_(section.zones.data()) {
    for (const Zone& zone : section.zones) {
      proof_.zones.push_back({zone.mark, zone.kind, zone.from_deg, zone.to_deg, 0, {}, 0, 0, 0});
    }
  }

  void add(const TracedRay& path, double weight) {
    const double kept = 1 - path.lost_at_reflection;
    const Fate after = path.fate == Fate::lost_reflecting ? Fate::stray : path.fate;
    proof_.share[static_cast<int>(after)] += weight * kept;
    proof_.share[static_cast<int>(Fate::lost_reflecting)] += weight * path.lost_at_reflection;
    ZoneProof* zone = zone_of(path);
    if (!zone) return;
    zone->share += weight;
    if (path.fate == Fate::level) {
      zone->share_level += weight * kept;
      zone->through += weight * kept * path.through;
    }
    take_worst(*zone, path);
  }

  /// Departure and margin only, without any flux.
  void add_worst(const TracedRay& path) {
    if (ZoneProof* zone = zone_of(path)) take_worst(*zone, path);
  }

  void close() {
    double level_through = 0;
    for (ZoneProof& zone : proof_.zones) {
      level_through += zone.through;
      if (zone.share_level > 0) zone.through /= zone.share_level;
      if (zone.worst_departure_deg > proof_.worst_departure_deg || proof_.worst_zone.empty()) {
        proof_.worst_departure_deg = zone.worst_departure_deg;
        proof_.worst_zone = zone.mark;
      }
      if (zone.least_margin_deg) {
        proof_.least_margin_deg = std::min(proof_.least_margin_deg.value_or(90), *zone.least_margin_deg);
      }
    }
    const double level = proof_.of(Fate::level);
    proof_.through = level > 0 ? level_through / level : 0;
  }

 private:
  ZoneProof* zone_of(const TracedRay& path) {
    return path.piece ? &proof_.zones[static_cast<std::size_t>(path.piece->zone - first_)] : nullptr;
  }

  static void take_worst(ZoneProof& zone, const TracedRay& path) {
    if (!path.regular) return;
    zone.worst_departure_deg = std::max(zone.worst_departure_deg, std::abs(path.departure_deg));
    if (!is_refracting(zone.kind)) {
      zone.least_margin_deg = std::min(zone.least_margin_deg.value_or(90), degrees(path.least_margin));
    }
  }

  Proof& proof_;
  const Zone* first_;
};

/// The strip of the level beam that one piece lights, to the ray: its end rays are found by halving.
std::optional<BeamStrip> lit_strip(const SectionPieces& section, const PieceCurves& piece) {
  const auto level_at = [&](double t) -> std::optional<double> {
    const TracedRay path = section.trace(t);
    if (path.fate != Fate::level || path.piece != &piece) return std::nullopt;
    return path.exit_z_mm;
  };
  const double low = piece.low + kJustInside;
  const double high = piece.high - kJustInside;
  double inside = 0.5 * (low + high);
  auto somewhere = level_at(inside);
  for (int i = 1; i < 8 && !somewhere; ++i) somewhere = level_at(inside = low + (high - low) * i / 8);
  if (!somewhere) return std::nullopt;
  const auto end_from = [&](double end) {
    if (const auto at_end = level_at(end)) return *at_end;
    double lit = inside;
    double height = *somewhere;
    for (int i = 0; i < kStripHalvings; ++i) {
      const double middle = 0.5 * (lit + end);
      if (const auto found = level_at(middle)) {
        lit = middle;
        height = *found;
      } else {
        end = middle;
      }
    }
    return height;
  };
  const double a = end_from(low);
  const double b = end_from(high);
  return BeamStrip{std::min(a, b), std::max(a, b)};
}

std::vector<BeamStrip> dark_between(std::vector<BeamStrip> lit) {
  std::sort(lit.begin(), lit.end(), [](BeamStrip a, BeamStrip b) { return a.from_mm < b.from_mm; });
  std::vector<BeamStrip> dark;
  for (std::size_t i = 1; i < lit.size(); ++i) {
    if (lit[i].from_mm - lit[i - 1].to_mm > kSeenStrip_mm) dark.push_back({lit[i - 1].to_mm, lit[i].from_mm});
    lit[i].to_mm = std::max(lit[i].to_mm, lit[i - 1].to_mm);
  }
  return dark;
}

/// Elevations at which a corner of the glass is seen: between two of them fates change only inside the glass.
std::vector<double> corner_elevations(const SectionPieces& section, double low, double high) {
  std::vector<double> corners = {low, high};
  for (const PieceCurves& piece : section.pieces) {
    for (const double elevation : piece.corners) {
      if (elevation > low && elevation < high) corners.push_back(elevation);
    }
  }
  std::sort(corners.begin(), corners.end());
  const auto same = [](double a, double b) { return b - a < kSameCorner; };
  corners.erase(std::unique(corners.begin(), corners.end(), same), corners.end());
  corners.back() = high;
  return corners;
}

/// Where between two rays the fate or the prism changes, found by halving.
double boundary(const SectionPieces& section, double low, const TracedRay& at_low, double high) {
  for (int i = 0; i < kBoundaryHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    const TracedRay here = section.trace(middle);
    (here.fate == at_low.fate && here.piece == at_low.piece ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// Sums the rays between two corners: each stands for the light up to the middle between it and its neighbour,
/// or up to the place where the fate changes between the two.
void sum_between(const SectionPieces& section, double low, double high, int rays, double flux, Sums& sums) {
  const double step = (high - low) / rays;
  double from = std::sin(low);
  TracedRay ray = section.trace(low + 0.5 * step);
  for (int i = 0; i < rays; ++i) {
    const double here = low + (i + 0.5) * step;
    double end = high;
    TracedRay next;
    if (i + 1 < rays) {
      next = section.trace(here + step);
      const bool same = next.fate == ray.fate && next.piece == ray.piece;
      end = same ? here + 0.5 * step : boundary(section, here, ray, here + step);
    }
    const double to = std::sin(end);
    sums.add(ray, (to - from) / flux);
    from = to;
    ray = next;
  }
}

}  // namespace

Proof prove(const Section& section, int elevations) {
  const SectionPieces pieces(section);
  Proof proof;
  proof.lowest_deg = section.lowest_deg;
  proof.highest_deg = section.highest_deg;
  const double low = radians(section.lowest_deg);
  const double high = radians(section.highest_deg);
  const double flux = std::sin(high) - std::sin(low);
  proof.share_of_source = flux / 2;
  Sums sums(proof, pieces.held);
  const auto corners = corner_elevations(pieces, low, high);
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    const double part = (corners[i + 1] - corners[i]) / (high - low);
    const int rays = std::max(kLeastRays, static_cast<int>(std::ceil(elevations * part)));
    sum_between(pieces, corners[i], corners[i + 1], rays, flux, sums);
    proof.elevations += rays;
  }
  std::vector<BeamStrip> lit;
  for (const PieceCurves& piece : pieces.pieces) {
    // A zone's extreme rays are where an arc, or a corner, departs most.
    sums.add_worst(pieces.trace(piece.low + kJustInside));
    sums.add_worst(pieces.trace(piece.high - kJustInside));
    if (const auto strip = lit_strip(pieces, piece)) lit.push_back(*strip);
  }
  sums.close();
  proof.dark_strips = dark_between(std::move(lit));
  return proof;
}

}  // namespace prismwright
