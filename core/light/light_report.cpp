#include "core/light/light_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace prismwright {

namespace {

constexpr int kColourLines = 5;  ///< that tell how the beam's peak differs from one colour to the next
constexpr int kColourSpots = 40;
constexpr double kColourError = 0.005;  ///< to which each of them is known
constexpr double kDarkAllowed =
    0.1;  ///< share of its horizon that a fixed light may leave dark; our own choice
constexpr double kBeltPeakError = 0.01;
constexpr double kCurveBeyond_deg = 12;  ///< that a panel's curve is followed beyond its sides

/// Width between half peaks of a row of the map through its peak; 0 where an end lies beyond the map.
double width_at_half(const std::vector<double>& row, std::size_t peak, double step_deg) {
  const double half = 0.5 * row[peak];
  const auto reach = [&](int way) {
    auto i = static_cast<std::ptrdiff_t>(peak);
    const auto end = static_cast<std::ptrdiff_t>(row.size());
    while (i >= 0 && i < end && row[static_cast<std::size_t>(i)] >= half) i += way;
    if (i < 0 || i >= end) return -1.0;
    const double outside = row[static_cast<std::size_t>(i)];
    const double inside = row[static_cast<std::size_t>(i - way)];
    return std::abs(static_cast<double>(i - static_cast<std::ptrdiff_t>(peak))) -
           (half - outside) / (inside - outside);
  };
  const double low = reach(-1);
  const double high = reach(1);
  return low < 0 || high < 0 ? 0 : (low + high) * step_deg;
}

class Reporter {
 public:
  Reporter(const LensPlan& plan, const LampBody& lamp, const LensColours& colours, const LightAsk& ask)
      : plan_(plan), values_(plan.values), lamp_(lamp), spectra_(colours), ask_(ask), lens_(plan) {
    report_.panel = ask_.panel;
    for (const PanelInLight& panel : lens_.panels())
      if (report_.panel == 0 && !panel.bodies.empty()) report_.panel = panel.number;
  }

  Outcome<LightReport> work(const Progress& progress, const BeamWatcher& watcher) {
    report_.flux_lm = lamp_.flux_lm();
    report_.luminance_cd_mm2 = lamp_.luminance_cd_mm2();
    choose_colours();
    if (const Done done = map_beam(part_of(progress, 0, 0.4), watcher); !done) return done.problem();
    if (const Done done = find_rhythm(part_of(progress, 0.4, 0.75)); !done) return done.problem();
    auto budget = flux_budget(lens_, lamp_, {traced_, ask_.rays / static_cast<long>(traced_.size())},
                              part_of(progress, 0.75, 0.95));
    if (!budget) return budget.problem();
    report_.budget = std::move(*budget);
    tell_colours();
    judge();
    report_.sun = sun_hazard(lens_, values_.brief.focal_mm, design_glass(), values_.light.sun_w_m2, aim_deg());
    return std::move(report_);
  }

 private:
  static Progress part_of(const Progress& progress, double from, double to) {
    if (!progress) return {};
    return [=, &progress](double share, std::string_view what) {
      return progress(from + share * (to - from), what);
    };
  }

  [[nodiscard]] GlassRules design_glass() const {
    return {plan_.section.input.index, values_.material.absorption_per_m / 1000};
  }
  [[nodiscard]] double aim_deg() const { return plan_.section.aim_of(ZoneKind::centre).aim_deg; }

  /// The beam of the mapped panel in one direction alone, without its screen.
  [[nodiscard]] BeamMap one_way(double azimuth_deg, double elevation_deg, const GlassRules& glass) const {
    BeamRequest request;
    request.panel = report_.panel;
    request.colours = {{glass, 1}};
    request.grid = {azimuth_deg, 1, 1, elevation_deg, 1, 1};
    request.wanted_error = request.wanted_peak_error = kColourError;
    request.first_spots = kColourSpots;
    request.most_rounds = 4;
    return *beam_map(lens_, lamp_, request);
  }

  void choose_colours() {
    path_mm_ = one_way(0, -aim_deg(), {plan_.section.input.index, 0}).glass_mm;
    traced_ = spectra_.beam_colours(values_.material, ask_.lines, path_mm_);
    for (const PanelInLight& panel : lens_.panels())
      factors_.push_back(spectra_.factor(panel.screen, path_mm_));
  }

  /// What the lens itself makes of each wavelength at the beam's peak, relative to the greatest.
  [[nodiscard]] Spectrum spread_at_peak() const {
    const BeamMap& beam = report_.beam;
    std::vector<SpectrumPoint> points;
    const std::vector<double> lines = spectra_.beam_lines_nm(kColourLines);
    double most = 0;
    for (const double nm : lines) {
      const BeamMap at =
          one_way(beam.grid.azimuth_deg(beam.peak_azimuth), beam.grid.elevation_deg(beam.peak_elevation),
                  {values_.material.index_at(nm), 0});
      points.push_back({nm, at.peak_cd});
      most = std::max(most, at.peak_cd);
    }
    if (!(most > 0)) return Spectrum::flat(1);
    for (SpectrumPoint& point : points) point.value /= most;
    return *Spectrum::from_points(std::move(points), SpectrumKind::transmittance, "beam");
  }

  void tell_colours() {
    LightColours& colours = report_.colours;
    colours.lamp = spectra_.lamp();
    colours.glass_mm = path_mm_;
    colours.tint_factor = spectra_.tint_factor(path_mm_);
    colours.lines_nm = spectra_.beam_lines_nm(ask_.lines);
    const Spectrum spread = spread_at_peak();
    for (const Screen screen : {Screen::none, Screen::red, Screen::green, Screen::yellow})
      colours.screens.push_back(spectra_.seen(screen, path_mm_, spread));
  }

  void warn_of_colours() {
    std::vector<Screen> used;
    for (const PanelInLight& panel : lens_.panels()) {
      if (panel.bodies.empty() || std::count(used.begin(), used.end(), panel.screen) > 0) continue;
      used.push_back(panel.screen);
      const ScreenColour& colour = report_.colours.of(panel.screen);
      if (!colour.as_ruled()) report_.warnings.push_back(outside_region(colour));
    }
  }

  void warn_of_dark_sectors() {
    if (!report_.horizon || report_.horizon->dark_deg < kDarkAllowed * report_.horizon->lit_deg) return;
    report_.warnings.push_back(fmt::format(
        "A fixed light is wanted all round, but over {:.1f} of {:.0f} deg before the prisms it falls under "
        "half of "
        "its mean of {:.0f} cd, to {:.0f} cd. Take turned inner faces, fewer panels, thinner ribs or a wider "
        "lamp",
        report_.horizon->dark_deg, report_.horizon->lit_deg, report_.horizon->mean_cd,
        report_.horizon->least_cd));
  }

  static std::string outside_region(const ScreenColour& colour) {
    const RegionVerdict& verdict = colour.regions.front();
    return fmt::format("The {} light stands at x {:.3f}, y {:.3f}, {:.3f} outside the {} of {}. Change the {}",
                       colour_word(colour.screen), colour.at.x, colour.at.y, -verdict.margin,
                       verdict.region->colour, verdict.region->rule,
                       colour.screen == Screen::none ? "lamp or the tint" : "screen or the lamp");
  }

  [[nodiscard]] BeamRequest request_of(int panel) const {
    BeamRequest request;
    request.panel = panel;
    request.colours = traced_;
    request.panel_factors = factors_;
    request.wanted_error = request.wanted_peak_error = ask_.wanted_error;
    return request;
  }

  Done map_beam(const Progress& progress, const BeamWatcher& watcher) {
    BeamRequest request = request_of(report_.panel);
    request.grid = ask_.grid;
    auto map = beam_map(lens_, lamp_, request, progress, watcher);
    if (!map) return map.problem();
    report_.beam = std::move(*map);
    const BeamMap& beam = report_.beam;
    std::vector<double> level;
    std::vector<double> upright;
    for (int i = 0; i < beam.grid.azimuths; ++i) level.push_back(beam.at(i, beam.peak_elevation));
    for (int k = 0; k < beam.grid.elevations; ++k) upright.push_back(beam.at(beam.peak_azimuth, k));
    report_.half_width_deg =
        width_at_half(level, static_cast<std::size_t>(beam.peak_azimuth), beam.grid.azimuth_step_deg);
    report_.half_height_deg =
        width_at_half(upright, static_cast<std::size_t>(beam.peak_elevation), beam.grid.elevation_step_deg);
    return {};
  }

  Done find_rhythm(const Progress& progress) {
    const bool belt = values_.turns_about_lens(Band::refracting);
    std::vector<BeamMap> known(lens_.panels().size());
    for (std::size_t i = 0; i < lens_.panels().size(); ++i) {
      const PanelInLight& panel = lens_.panels()[i];
      PanelCurve curve;
      curve.axis_deg = plan_.panels[i].axis_deg;
      curve.screen = panel.screen;
      if (!panel.bodies.empty()) {
        const auto like = static_cast<std::size_t>(panel.like);
        if (known[like].cd.empty()) {
          auto map = curve_of(plan_.panels[like], belt, progress);
          if (!map) return map.problem();
          known[like] = std::move(*map);
        }
        curve.from_deg = known[like].grid.azimuth_from_deg;
        curve.step_deg = known[like].grid.azimuth_step_deg;
        curve.cd = known[like].cd;
        for (double& cd : curve.cd) cd *= factors_[i];
      }
      report_.curves.push_back(std::move(curve));
    }
    if (belt && values_.light.turn_s == 0) report_.horizon = horizon_of(report_.curves, plan_.panels);
    report_.rhythm =
        rhythm_of(report_.curves, values_.light.turn_s, values_.light.turn_way, values_.light.integration_s);
    return {};
  }

  /// A panel's light round its own axis, without its screen.
  Outcome<BeamMap> curve_of(const PanelPlace& place, bool belt, const Progress& progress) const {
    BeamRequest request = request_of(place.number);
    request.panel_factors.clear();
    const double half = 0.5 * (place.to_deg - place.from_deg) + kCurveBeyond_deg;
    const double step = belt ? 0.25 : 0.05;
    const int steps = static_cast<int>(std::ceil(half / step));
    request.grid = {-steps * step, step, 2 * steps + 1, ask_.elevation_deg, 1, 1};
    if (belt) {
      // A belt's curve is flat; the ends of its panels, where the ribs stand, need not be known so well.
      request.wanted_peak_error = kBeltPeakError;
      request.most_rounds = 24;
    }
    return beam_map(lens_, lamp_, request, progress);
  }

  void judge() {
    const LightSettings& light = values_.light;
    const Rhythm& rhythm = report_.rhythm;
    const Character given = character_of(rhythm);
    report_.character = character_text(given);
    report_.warnings = rhythm_warnings(rhythm);
    if (!values_.brief.character.empty()) {
      const auto wished = read_character(values_.brief.character);
      report_.differs = wished ? difference(*wished, given) : wished.problem().text;
    }
    const double glazed = light.glazing_factor;
    report_.outside_cd = rhythm.peak_cd * glazed;
    report_.service_cd = report_.outside_cd * light.service_factor;
    report_.effective = strongest(rhythm);
    for (double* cd : {&report_.effective.peak_cd, &report_.effective.integral_cd_s,
                       &report_.effective.blondel_rey_cd, &report_.effective.form_factor_cd,
                       &report_.effective.allard_cd, &report_.effective.modified_allard_cd})
      *cd *= glazed * light.service_factor;
    const double seen = report_.effective.blondel_rey_cd;
    report_.nominal_range_nmi = luminous_range_nmi(seen);
    report_.luminous_range_nmi = luminous_range_nmi(seen, light.visibility_nmi, light.threshold_lux);
    report_.geographic_range_nmi = geographic_range_nmi(values_.brief.height_m, light.eye_height_m);
    const LightColours& colours = report_.colours;
    report_.ranges = range_table(
        seen / factor_of_strongest(),
        {colours.of(Screen::red).factor, colours.of(Screen::green).factor, colours.of(Screen::yellow).factor},
        light.threshold_lux);
    warn_of_colours();
    warn_of_dark_sectors();
  }

  /// What the screen before the strongest flash leaves of its light.
  [[nodiscard]] double factor_of_strongest() const {
    const Flash* best = nullptr;
    for (const Flash& flash : report_.rhythm.flashes)
      if (!best || flash.effective.blondel_rey_cd > best->effective.blondel_rey_cd) best = &flash;
    const Screen screen =
        best ? best->screen : lens_.panels()[static_cast<std::size_t>(report_.panel - 1)].screen;
    const double factor = report_.colours.of(screen).factor;
    return factor > 0 ? factor : 1;
  }

  /// Of the strongest flash; a steady light is seen with its own intensity, the least that it shows round the
  /// lens where it turns, else that of its brightest side.
  static EffectiveIntensities strongest(const Rhythm& rhythm) {
    EffectiveIntensities best;
    if (rhythm.steady) {
      const double cd = rhythm.turn_s > 0 ? rhythm.least_cd : rhythm.peak_cd;
      best = {cd, 0, cd, cd, cd, cd};
    }
    for (const Flash& flash : rhythm.flashes)
      if (flash.effective.blondel_rey_cd > best.blondel_rey_cd) best = flash.effective;
    return best;
  }

  const LensPlan& plan_;
  const LensValues& values_;
  const LampBody& lamp_;
  const LensColours& spectra_;
  const LightAsk& ask_;
  LightLens lens_;
  double path_mm_ = 0;  ///< mean path inside the prisms on the beam's axis
  std::vector<BeamColour> traced_;
  std::vector<double> factors_;
  LightReport report_;
};

}  // namespace

Outcome<LightReport> light_report(const LensPlan& plan, const LightAsk& ask, const Progress& progress,
                                  const BeamWatcher& watcher) {
  const auto lamp = LampBody::make(plan.values.lamp);
  if (!lamp) return lamp.problem();
  const auto colours = LensColours::make(plan.values);
  if (!colours) return colours.problem();
  return Reporter(plan, *lamp, *colours, ask).work(progress, watcher);
}

}  // namespace prismwright
