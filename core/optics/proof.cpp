#include "core/optics/proof.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/optics/light_runs.h"

namespace prismwright {

namespace {

constexpr double kSameElevation_deg = 1e-9;

/// Adds traced rays to the proof.
class Sums : public SweepWitness {
 public:
  Sums(Proof& proof, const SectionPieces& section, double flux)
      : proof_(proof), section_(section), first_(section.held.zones.data()), flux_(flux) {
    for (const Zone& zone : section.held.zones) {
      proof_.zones.push_back({zone.mark, zone.kind, zone.from_deg, zone.to_deg, 0, {}, 0, 0, 0});
    }
  }

  void start(const SectionView& view, Band band) {
    view_ = &view;
    runs_.start(band);
  }

  void see(const TracedRay& ray, double from, double to) override {
    runs_.see(ray, from, to);
    ZoneProof* zone = zone_of(ray);
    if (zone) take_worst(*zone, ray);
    if (to <= from) return;
    const double weight = (std::sin(to) - std::sin(from)) / flux_;
    add(ray, weight, 0.5 * (from + to));
    if (!zone) return;
    zone->share += weight;
    if (ray.fate == Fate::level) {
      const double kept = weight * (1 - ray.lost_at_reflection);
      zone->share_level += kept;
      zone->through += kept * ray.through;
    }
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
    std::stable_sort(proof_.losses.begin(), proof_.losses.end(),
                     [](const LossByCause& a, const LossByCause& b) { return a.share > b.share; });
    show_strips();
  }

 private:
  /// Where the light of a ray goes.
  void add(const TracedRay& ray, double weight, double elevation) {
    const double gone = weight * ray.lost_at_reflection;
    const bool split = ray.fate == Fate::lost_reflecting;
    const double kept = weight - gone;
    proof_.share[static_cast<int>(split ? Fate::stray : ray.fate)] += kept;
    proof_.share[static_cast<int>(Fate::lost_reflecting)] += gone;
    if (ray.fate == Fate::level && gone == 0) return;
    const std::string& place = place_of(ray, elevation);
    if (gone > 0) lose(LossCause::reflection, place, gone);
    if (ray.fate != Fate::level) lose(split ? LossCause::off_aim : ray.cause, place, kept);
  }

  void lose(LossCause cause, const std::string& place, double share) {
    if (share <= 0) return;
    for (LossByCause& loss : proof_.losses) {
      if (loss.cause != cause || loss.zone != place) continue;
      loss.share += share;
      return;
    }
    proof_.losses.push_back({cause, place, share});
  }

  [[nodiscard]] const std::string& place_of(const TracedRay& ray, double elevation) const {
    static const std::string nowhere;
    if (ray.rib) return ray.rib->mark;
    if (ray.cause == LossCause::filled_gap) {
      const Zone* before = section_.zone_before_gap(*view_, elevation);
      if (before) return before->mark;
    }
    return ray.piece ? ray.piece->zone->mark : nowhere;
  }

  ZoneProof* zone_of(const TracedRay& ray) {
    return ray.piece ? &proof_.zones[static_cast<std::size_t>(ray.piece->zone - first_)] : nullptr;
  }

  static void take_worst(ZoneProof& zone, const TracedRay& ray) {
    if (!ray.regular) return;
    zone.worst_departure_deg = std::max(zone.worst_departure_deg, std::abs(ray.departure_deg));
    if (!is_refracting(zone.kind)) {
      zone.least_margin_deg = std::min(zone.least_margin_deg.value_or(90), degrees(ray.least_margin));
    }
  }

  void show_strips() {
    std::vector<LightStrip> lit;
    for (const LightRun& run : runs_.wide_runs()) {
      const TracedRay& ray = run.ray;
      const std::string zone = ray.piece ? ray.piece->zone->mark : std::string();
      add_lamp_strip(
          {run.band, degrees(run.from), degrees(run.to), ray.rib ? ray.rib->mark : zone, ray.fate, ray.cause});
      if (ray.fate == Fate::level) lit.push_back({run.beam_from_mm, run.beam_to_mm, zone});
    }
    proof_.beam = with_dark_between(std::move(lit));
    for (const LightStrip& strip : proof_.beam) {
      if (strip.dark()) proof_.dark_strips.push_back({strip.from_mm, strip.to_mm});
    }
  }

  /// Runs that differ in nothing that is shown are one strip.
  void add_lamp_strip(LampStrip strip) {
    if (!proof_.lamp.empty()) {
      LampStrip& last = proof_.lamp.back();
      const bool alike = last.band == strip.band && last.zone == strip.zone && last.fate == strip.fate &&
                         last.cause == strip.cause;
      if (alike && std::abs(strip.from_deg - last.to_deg) < kSameElevation_deg) {
        last.to_deg = strip.to_deg;
        return;
      }
    }
    proof_.lamp.push_back(std::move(strip));
  }

  Proof& proof_;
  const SectionPieces& section_;
  const Zone* first_;
  double flux_;
  const SectionView* view_ = nullptr;
  LightRuns runs_;
};

}  // namespace

Proof prove(const Section& section, int elevations) {
  const SectionPieces pieces(section);
  Proof proof;
  proof.lowest_deg = section.lowest_deg;
  proof.highest_deg = section.highest_deg;
  double flux = 0;
  double angle = 0;
  for (const BandSweep& sweep : pieces.sweeps) {
    flux += std::sin(sweep.span.high) - std::sin(sweep.span.low);
    angle += sweep.span.high - sweep.span.low;
  }
  proof.share_of_source = flux / 2;
  Sums sums(proof, pieces, flux);
  for (const BandSweep& sweep : pieces.sweeps) {
    const SectionView view = pieces.seen_from(sweep.focus_z_mm);
    sums.start(view, sweep.band);
    proof.elevations += sweep_light(pieces, view, sweep.span, elevations / angle, sums);
  }
  sums.close();
  return proof;
}

}  // namespace prismwright
