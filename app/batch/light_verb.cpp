#include <fmt/format.h>

#include "app/batch/books.h"
#include "app/batch/json_print.h"
#include "app/batch/light_errors.h"
#include "app/batch/progress_line.h"
#include "app/batch/text_table.h"
#include "app/batch/verbs.h"
#include "core/lens/choice_words.h"
#include "core/light/light_report.h"
#include "core/papers/light_paper.h"
#include "geometry/safe_file.h"

namespace prismwright {

namespace {

Json flash_json(const Flash& flash) {
  return {{"panel", flash.panel},
          {"colour", word_of(flash.screen)},
          {"peak_s", flash.peak_s},
          {"peak_cd", flash.peak_cd},
          {"length_at_half_s", flash.length_s()},
          {"length_at_twentieth_s", flash.foot_length_s()},
          {"effective_cd", flash.effective.blondel_rey_cd}};
}

Json effective_json(const EffectiveIntensities& e) {
  return {{"blondel_rey_cd", e.blondel_rey_cd},
          {"form_factor_cd", e.form_factor_cd},
          {"allard_cd", e.allard_cd},
          {"modified_allard_cd", e.modified_allard_cd},
          {"integral_cd_s", e.integral_cd_s}};
}

Json beam_json(const LightReport& report) {
  const BeamMap& beam = report.beam;
  return {{"panel", report.panel},
          {"peak_cd", beam.peak_cd},
          {"peak_azimuth_deg", beam.grid.azimuth_deg(beam.peak_azimuth)},
          {"peak_elevation_deg", beam.grid.elevation_deg(beam.peak_elevation)},
          {"bound_cd", beam.bound_cd},
          {"half_width_deg", report.half_width_deg},
          {"half_height_deg", report.half_height_deg},
          {"error_rms_of_peak", beam.error},
          {"error_of_peak", beam.peak_error},
          {"error_as_wanted", beam.reached},
          {"glass_mm", beam.glass_mm}};
}

Json budget_json(const FluxBudget& budget) {
  Json parts = Json::array();
  for (int i = 0; i < kLightFates; ++i) {
    const auto at = static_cast<std::size_t>(i);
    parts.push_back({{"fate", name_of(static_cast<LightFate>(i))},
                     {"lm", budget.lm[at]},
                     {"share", budget.flux_lm > 0 ? budget.lm[at] / budget.flux_lm : 0},
                     {"error_lm", budget.error_lm[at]}});
  }
  Json zones = Json::array();
  for (const ZoneFlux& zone : budget.zones)
    zones.push_back({{"zone", zone.zone}, {"level_lm", zone.level_lm}, {"stray_lm", zone.stray_lm}});
  return {{"flux_lm", budget.flux_lm}, {"parts", parts}, {"zones", zones}};
}

Json colour_json(const LightColours& colours) {
  Json screens = Json::array();
  for (const ScreenColour& screen : colours.screens) {
    Json regions = Json::array();
    for (const RegionVerdict& verdict : screen.regions)
      regions.push_back({{"rule", verdict.region->rule}, {"margin", verdict.margin}, {"inside", verdict.held}});
    screens.push_back({{"colour", colour_word(screen.screen)},
                       {"factor", screen.factor},
                       {"x", screen.at.x},
                       {"y", screen.at.y},
                       {"regions", regions}});
  }
  return {{"lamp_x", colours.lamp.x},           {"lamp_y", colours.lamp.y},     {"glass_mm", colours.glass_mm},
          {"tint_factor", colours.tint_factor}, {"lines_nm", colours.lines_nm}, {"screens", screens}};
}

Json report_json(const LightReport& report) {
  Json json;
  json["lamp_flux_lm"] = report.flux_lm;
  json["lamp_luminance_cd_mm2"] = report.luminance_cd_mm2;
  json["beam"] = beam_json(report);
  json["peak_cd"] = report.rhythm.peak_cd;
  json["outside_cd"] = report.outside_cd;
  json["service_cd"] = report.service_cd;
  if (report.horizon)
    json["horizon"] = {{"lit_deg", report.horizon->lit_deg},
                       {"dark_deg", report.horizon->dark_deg},
                       {"mean_cd", report.horizon->mean_cd},
                       {"least_cd", report.horizon->least_cd}};
  json["character"] = report.character;
  json["differs"] = report.differs;
  json["turn_s"] = report.rhythm.turn_s;
  json["period_s"] = report.rhythm.period_s;
  json["flashes"] = Json::array();
  for (const Flash& flash : report.rhythm.flashes) json["flashes"].push_back(flash_json(flash));
  json["warnings"] = report.warnings;
  json["effective"] = effective_json(report.effective);
  json["nominal_range_nmi"] = report.nominal_range_nmi;
  json["luminous_range_nmi"] = report.luminous_range_nmi;
  json["geographic_range_nmi"] = report.geographic_range_nmi;
  json["ranges"] = Json::array();
  for (const RangeRow& row : report.ranges)
    json["ranges"].push_back({{"visibility_nmi", row.visibility_nmi},
                              {"white_nmi", row.white_nmi},
                              {"red_nmi", row.red_nmi},
                              {"green_nmi", row.green_nmi},
                              {"yellow_nmi", row.yellow_nmi}});
  json["colour"] = colour_json(report.colours);
  json["budget"] = budget_json(report.budget);
  json["sun"] = {{"panel", report.sun.panel},
                 {"image_mm", report.sun.image_mm},
                 {"worst_kw_m2", report.sun.worst_kw_m2},
                 {"kindles_wood", report.sun.kindles}};
  json["sun"]["spots"] = Json::array();
  for (const SunSpot& spot : report.sun.spots)
    json["sun"]["spots"].push_back(
        {{"diameter_mm", spot.diameter_mm}, {"watts", spot.watts}, {"kw_m2", spot.kw_m2}});
  return json;
}

void print_beam(const LightReport& report, std::ostream& out) {
  const BeamMap& beam = report.beam;
  out << fmt::format("Lamp: {:.0f} lm, {:.3g} cd/mm2\n", report.flux_lm, report.luminance_cd_mm2);
  out << fmt::format(
      "Beam of panel {}: {:.0f} cd at azimuth {:.2f}, elevation {:.2f} deg (within {:.2f} %{})\n", report.panel,
      beam.peak_cd, beam.grid.azimuth_deg(beam.peak_azimuth), beam.grid.elevation_deg(beam.peak_elevation),
      100 * beam.peak_error, beam.reached ? "" : ", not as well as wanted");
  const auto width = [](double deg) { return deg > 0 ? fmt::format("{:.2f} deg", deg) : "beyond the map"; };
  out << fmt::format("  {} wide and {} high at half of it\n", width(report.half_width_deg),
                     width(report.half_height_deg));
  out << fmt::format("Through the glazing {:.0f} cd, in service {:.0f} cd\n", report.outside_cd,
                     report.service_cd);
}

void print_rhythm(const LightReport& report, std::ostream& out) {
  out << fmt::format("Character: {}\n", report.character);
  if (report.horizon)
    out << fmt::format("Round the horizon {:.0f} cd on average, {:.0f} at the least; dark over {:.1f} deg\n",
                       report.horizon->mean_cd, report.horizon->least_cd, report.horizon->dark_deg);
  TextTable table({{"flash at s", true},
                   {"panel", true},
                   {"colour"},
                   {"peak cd", true},
                   {"at half s", true},
                   {"at a twentieth s", true},
                   {"effective cd", true}});
  for (const Flash& flash : report.rhythm.flashes)
    table.add({fmt::format("{:.2f}", flash.peak_s), fmt::format("{}", flash.panel),
               flash.screen == Screen::none ? "white" : std::string(word_of(flash.screen)),
               fmt::format("{:.0f}", flash.peak_cd), fmt::format("{:.3f}", flash.length_s()),
               fmt::format("{:.3f}", flash.foot_length_s()),
               fmt::format("{:.0f}", flash.effective.blondel_rey_cd)});
  if (!table.empty()) table.print(out);
  const EffectiveIntensities& e = report.effective;
  out << fmt::format(
      "Effective intensity in service: Blondel-Rey {:.0f}, form factor {:.0f}, Allard {:.0f}, modified "
      "Allard {:.0f} cd\n",
      e.blondel_rey_cd, e.form_factor_cd, e.allard_cd, e.modified_allard_cd);
  out << fmt::format("Range: nominal {:.1f}, luminous {:.1f}, geographic {:.1f} nautical miles\n",
                     report.nominal_range_nmi, report.luminous_range_nmi, report.geographic_range_nmi);
  TextTable ranges({{"visibility", true}, {"white", true}, {"red", true}, {"green", true}, {"yellow", true}});
  const auto miles = [](double nmi) { return fmt::format("{:.1f}", nmi); };
  for (const RangeRow& row : report.ranges)
    ranges.add({miles(row.visibility_nmi), miles(row.white_nmi), miles(row.red_nmi), miles(row.green_nmi),
                miles(row.yellow_nmi)});
  ranges.print(out);
}

void print_colours(const LightReport& report, std::ostream& out) {
  const LightColours& colours = report.colours;
  out << fmt::format("Lamp at x {:.3f}, y {:.3f}; {:.1f} mm of glass leave {:.1f} % of its light inside\n",
                     colours.lamp.x, colours.lamp.y, colours.glass_mm, 100 * colours.tint_factor);
  TextTable table({{"light"}, {"% of white", true}, {"x", true}, {"y", true}, {"region"}, {"margin", true}});
  for (const ScreenColour& screen : colours.screens)
    for (const RegionVerdict& verdict : screen.regions)
      table.add({std::string(colour_word(screen.screen)), fmt::format("{:.1f}", 100 * screen.factor),
                 fmt::format("{:.4f}", screen.at.x), fmt::format("{:.4f}", screen.at.y),
                 fmt::format("{} {}", verdict.held ? "inside" : "outside", verdict.region->rule),
                 fmt::format("{:.4f}", verdict.margin)});
  table.print(out);
}

void print_budget(const LightReport& report, std::ostream& out) {
  TextTable table({{"where the light goes"}, {"lm", true}, {"%", true}, {"+- %", true}});
  const FluxBudget& budget = report.budget;
  for (int i = 0; i < kLightFates; ++i) {
    const auto at = static_cast<std::size_t>(i);
    table.add({std::string(name_of(static_cast<LightFate>(i))), fmt::format("{:.1f}", budget.lm[at]),
               fmt::format("{:.2f}", 100 * budget.lm[at] / budget.flux_lm),
               fmt::format("{:.2f}", 100 * budget.error_lm[at] / budget.flux_lm)});
  }
  table.print(out);
  if (report.sun.panel == 0) return;
  out << fmt::format(
      "Sun in the beam of panel {}: up to {:.0f} kW/m2 at the focus, {:.1f} W on a ball of {:.0f} mm.\n",
      report.sun.panel, report.sun.worst_kw_m2, report.sun.spots.back().watts,
      report.sun.spots.back().diameter_mm);
  if (report.sun.kindles)
    out << fmt::format(
        "  Wood takes fire from {} kW/m2: keep the lens covered whenever the sun can reach it.\n",
        kWoodKindles_kw_m2);
}

class LightVerb : public Verb {
 public:
  std::string_view name() const override { return "light"; }
  std::string_view help() const override { return "beam, flux, rhythm and range from the prisms as drawn"; }

  void configure(CLI::App& command) override {
    add_book_argument(command, path_);
    command.add_flag("--json", json_, "answer in JSON");
    command.add_flag("--errors", with_errors_, "what errors in setting and making do to the beam as well");
    command.add_option("--csv", csv_, "write the beam's map to this file");
    command.add_option("--panel", ask_.panel, "whose beam is mapped; the first that holds prisms unless said")
        ->check(CLI::Range(1, 32));
    command.add_option("--elevation", ask_.elevation_deg, "at which the observer stands, degrees")
        ->check(CLI::Range(-60.0, 60.0))
        ->capture_default_str();
  }

  ExitCode run(Voice& voice) override {
    const auto book = open_to_read(path_, voice);
    if (!book) return refuse(book.problem(), voice.err);
    const auto plan = plan_lens(book->values());
    if (!plan) return refuse(plan.problem(), voice.err);
    if (ask_.panel > static_cast<int>(plan->panels.size()) ||
        (ask_.panel > 0 && plan->values.panels[static_cast<std::size_t>(ask_.panel - 1)].blind))
      return refuse(
          request_problem("light.panel", "--panel",
                          fmt::format("--panel {} holds no prisms: the lens has {} panels. Name one that "
                                      "is not blind",
                                      ask_.panel, plan->panels.size())),
          voice.err);
    auto report = [&] {
      ProgressLine line(voice);
      return light_report(*plan, ask_, line.of("light"));
    }();
    if (!report) return refuse(report.problem(), voice.err);
    if (!csv_.empty()) {
      if (const Done written = write_whole(csv_, beam_csv(report->beam)); !written)
        return refuse(written.problem(), voice.err);
    }
    std::optional<SettingErrors> errors;
    if (with_errors_) {
      ProgressLine line(voice);
      auto found = setting_errors(*plan, {.panel = report->panel}, line.of("setting errors"));
      if (!found) return refuse(found.problem(), voice.err);
      errors = std::move(*found);
    }
    const bool well = report->warnings.empty() && report->differs.empty();
    const ExitCode code = well ? ExitCode::done : ExitCode::not_well;
    if (json_) {
      Json json = report_json(*report);
      if (errors) json["errors"] = errors_json(*errors);
      return print_json(json, code, voice.out, voice.err);
    }
    print_beam(*report, voice.out);
    print_rhythm(*report, voice.out);
    print_colours(*report, voice.out);
    print_budget(*report, voice.out);
    if (errors) print_errors(*errors, voice.out);
    for (const std::string& warning : report->warnings) voice.err << "Not well: " << warning << '\n';
    if (!report->differs.empty()) voice.err << "Not well: " << report->differs << ".\n";
    return code;
  }

 private:
  std::string path_;
  std::string csv_;
  bool json_ = false;
  bool with_errors_ = false;
  LightAsk ask_;
};

}  // namespace

std::unique_ptr<Verb> light_verb() { return std::make_unique<LightVerb>(); }

}  // namespace prismwright
