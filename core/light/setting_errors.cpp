#include "core/light/setting_errors.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace prismwright {

namespace {

constexpr int kSpotsForTurns = 1500;  ///< of a panel that has no trials

TrialSpread spread_of(std::vector<double> values) {
  TrialSpread spread;
  const auto count = static_cast<double>(values.size());
  for (const double value : values) spread.mean += value / count;
  double squares = 0;
  for (const double value : values) squares += (value - spread.mean) * (value - spread.mean);
  if (values.size() > 1) spread.deviation = std::sqrt(squares / (count - 1));
  std::sort(values.begin(), values.end());
  const auto below = [&](double share) {
    const double at = share * (count - 1);
    const auto i = static_cast<std::size_t>(at);
    const std::size_t next = std::min(i + 1, values.size() - 1);
    return values[i] + (at - static_cast<double>(i)) * (values[next] - values[i]);
  };
  spread.p5 = below(0.05);
  spread.p50 = below(0.5);
  spread.p95 = below(0.95);
  return spread;
}

KindSizes alone(ErrorKind kind, double size) {
  KindSizes sizes{};
  sizes[static_cast<std::size_t>(kind)] = size;
  return sizes;
}

Problem stopped() { return {Trouble::stopped, "stopped", "light", "The setting errors were stopped."}; }

/// A zone's prisms in a panel.
struct ZonePrisms {
  std::string zone;
  std::vector<int> prisms;
};

std::vector<ZonePrisms> zones_of(const std::vector<TurningPrism>& prisms) {
  std::vector<ZonePrisms> zones;
  for (std::size_t p = 0; p < prisms.size(); ++p) {
    auto zone =
        std::find_if(zones.begin(), zones.end(), [&](const ZonePrisms& z) { return z.zone == prisms[p].zone; });
    if (zone == zones.end()) zone = zones.insert(zone, {prisms[p].zone, {}});
    zone->prisms.push_back(static_cast<int>(p));
  }
  return zones;
}

class ErrorsWork {
 public:
  ErrorsWork(const LensPlan& plan, const LampBody& lamp, const ErrorsAsk& ask, const Progress& progress)
      : plan_(plan), lamp_(lamp), ask_(ask), progress_(progress), lens_(plan) {}

  Outcome<SettingErrors> work() {
    const LightSettings& light = plan_.values.light;
    result_.trials = light.trials;
    result_.seed = light.seed;
    for (std::size_t k = 0; k < kErrorKinds.size(); ++k)
      result_.deviations[k] = deviation_of(kErrorKinds[k], light);
    const PanelInLight* panel = panel_of_trials();
    if (!panel) return no_light(ask_.panel);
    result_.panel = panel->number;
    if (!goes_on(progress_, 0, "spots")) return stopped();
    const PanelSpots spots(request(ask_.spots), *panel);
    if (spots.spots().empty()) return no_light(result_.panel);
    list_prisms(*panel, spots);
    if (!goes_on(progress_, 0.3, "beams of the prisms")) return stopped();
    const BeamPieces beam(spots, lamp_);
    const SettingDraws draws(result_.trials, spots.prisms().size(), result_.seed);
    const TrialBeams trials(beam, draws);
    result_.planned = trials.planned();
    result_.map_error = beam.between_error();
    if (!(result_.planned.cd > 0)) return no_light(result_.panel);
    if (!goes_on(progress_, 0.5, "trials")) return stopped();
    spread(trials);
    if (!tolerances(trials, zones_of(spots.prisms()))) return stopped();
    return std::move(result_);
  }

 private:
  [[nodiscard]] SpotsRequest request(int spots) const {
    return {&lens_, &lamp_, {plan_.section.input.index, plan_.values.material.absorption_per_m / 1000}, spots};
  }

  [[nodiscard]] const PanelInLight* panel_of_trials() const {
    for (const PanelInLight& panel : lens_.panels())
      if (!panel.bodies.empty() && (ask_.panel == 0 || panel.number == ask_.panel)) return &panel;
    return nullptr;
  }

  static Problem no_light(int panel) {
    return request_problem(
        "light.panel", "light.panel",
        panel == 0
            ? std::string("No panel sends light of the lamp along its axis. Give the lens prisms, or set "
                          "the lamp nearer to the focus.")
            : fmt::format("Panel {} sends no light of the lamp along its axis. Name one that is not "
                          "blind, or set the lamp nearer to the focus.",
                          panel));
  }

  /// Of all panels: those congruent with the panel of the trials have its turns; any other kind is traced for
  /// itself.
  void list_prisms(const PanelInLight& of_trials, const PanelSpots& spots) {
    std::map<int, std::vector<TurningPrism>> known{{of_trials.like, spots.prisms()}};
    for (const PanelInLight& panel : lens_.panels()) {
      if (panel.bodies.empty()) continue;
      if (!known.contains(panel.like)) known[panel.like] = PanelSpots(request(kSpotsForTurns), panel).prisms();
      std::size_t p = 0;
      for (const LightBody& body : panel.bodies) {
        if (body.metal()) continue;
        const TurningPrism& prism = known[panel.like][p++];
        result_.prisms.push_back(
            {body.mark(), body.zone(), panel.number, prism.flux_lm, prism.mean, prism.spread_deg});
      }
    }
  }

  void spread(const TrialBeams& trials) {
    std::vector<double> shares;
    std::vector<double> elevations;
    std::vector<double> heights;
    for (const BeamPeak& peak : trials.peaks(result_.deviations)) {
      shares.push_back(peak.cd / result_.planned.cd);
      elevations.push_back(peak.elevation_deg);
      heights.push_back(peak.height_deg);
    }
    result_.peak_share = spread_of(std::move(shares));
    result_.elevation_deg = spread_of(std::move(elevations));
    result_.height_deg = spread_of(std::move(heights));
  }

  bool tolerances(const TrialBeams& trials, const std::vector<ZonePrisms>& zones) {
    ToleranceRow whole{{}, 1, {}};
    for (std::size_t k = 0; k < kErrorKinds.size(); ++k) {
      if (!goes_on(progress_, 0.6 + 0.06 * static_cast<double>(k), "tolerances")) return false;
      whole.deviation[k] = tolerance(kErrorKinds[k], [&](double size) {
        return trials.mean_peak_cd(alone(kErrorKinds[k], size)) / result_.planned.cd;
      });
    }
    result_.tolerances.push_back(std::move(whole));
    for (std::size_t z = 0; z < zones.size(); ++z) {
      const double share = static_cast<double>(z) / static_cast<double>(zones.size());
      if (!goes_on(progress_, 0.9 + 0.1 * share, zones[z].zone)) return false;
      judge_zone(trials, zones[z]);
    }
    std::stable_sort(result_.losses.begin(), result_.losses.end(),
                     [](const LossRow& a, const LossRow& b) { return a.loss_percent > b.loss_percent; });
    return true;
  }

  void judge_zone(const TrialBeams& trials, const ZonePrisms& zone) {
    const auto part = [&](ErrorKind kind, double size) {
      return trials.mean_part_cd(zone.prisms, result_.planned, alone(kind, size));
    };
    const double planned = part(ErrorKind::tilt, 0);
    ToleranceRow row{zone.zone, planned / result_.planned.cd, {}};
    for (std::size_t k = 0; k < kErrorKinds.size(); ++k) {
      const ErrorKind kind = kErrorKinds[k];
      if (planned > 0)
        row.deviation[k] = tolerance(kind, [&](double size) { return part(kind, size) / planned; });
      result_.losses.push_back(
          {zone.zone, kind, 100 * (planned - part(kind, result_.deviations[k])) / result_.planned.cd});
    }
    result_.tolerances.push_back(std::move(row));
  }

  const LensPlan& plan_;
  const LampBody& lamp_;
  const ErrorsAsk& ask_;
  const Progress& progress_;
  LightLens lens_;
  SettingErrors result_;
};

}  // namespace

Outcome<SettingErrors> setting_errors(const LensPlan& plan, const ErrorsAsk& ask, const Progress& progress) {
  const auto lamp = LampBody::make(plan.values.lamp);
  if (!lamp) return lamp.problem();
  return ErrorsWork(plan, *lamp, ask, progress).work();
}

}  // namespace prismwright
