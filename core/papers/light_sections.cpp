#include "core/papers/light_sections.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/papers/beam_cuts_figure.h"
#include "core/papers/document_type.h"
#include "core/papers/proof_section.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

constexpr double kCuts_mm = 66;

std::string width_words(double deg) { return deg > 0 ? decimals(deg, 2) + " deg" : "beyond the map"; }

std::string lamp_shape(const Lamp& lamp, const LengthWords& lengths) {
  const auto size = [&](double mm) { return lengths.plain(mm); };
  switch (lamp.shape) {
    case LampShape::cylinder:
      return fmt::format("upright cylinder, {} wide, {} high, {}", size(lamp.width_mm), size(lamp.height_mm),
                         lengths.unit());
    case LampShape::sphere:
      return fmt::format("sphere, {} {} across", size(lamp.width_mm), lengths.unit());
    case LampShape::disc:
      return fmt::format("flat disc, {} {} across", size(lamp.width_mm), lengths.unit());
    case LampShape::tile:
      return fmt::format("flat tile, {} by {} {}", size(lamp.width_mm), size(lamp.height_mm), lengths.unit());
  }
  return {};
}

std::string lamp_set(const Lamp& lamp) {
  if (lamp.set == LampSet::ring) return fmt::format("{} in a ring, all alight", lamp.count);
  if (lamp.set == LampSet::changer) return fmt::format("one alight of {} on a changer", lamp.count);
  return "one, in the focus";
}

}  // namespace

std::string candela_words(double cd) { return decimals(cd, 0) + " cd"; }

void write_lamp(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
                const LengthWords& lengths) {
  const Lamp& lamp = plan.values.lamp;
  pages.section("Lamp", 20);
  pages.facts({{"Shape", lamp_shape(lamp, lengths)},
               {"Lamps", lamp_set(lamp)},
               {"Flux", decimals(light.flux_lm, 0) + " lm"},
               {"Luminance", fmt::format("{:.3g} cd/mm2", light.luminance_cd_mm2)}});
}

void write_beam(DocumentPages& pages, const LightReport& light, const LengthWords& lengths) {
  const BeamMap& beam = light.beam;
  const bool mapped = beam.peak_cd > 0 && !beam.cd.empty();
  pages.section(fmt::format("Beam of panel {}", light.panel), 24);
  if (!mapped) {
    pages.paragraph("No light was found in the mapped beam.");
    return;
  }
  pages.facts({{"Peak, of the lens alone", candela_words(beam.peak_cd)},
               {"At azimuth and elevation",
                fmt::format("{}, {} deg", decimals(beam.grid.azimuth_deg(beam.peak_azimuth), 2),
                            decimals(beam.grid.elevation_deg(beam.peak_elevation), 2))},
               {"Standard error of the peak",
                percent_words(beam.peak_error, 2) + (beam.reached ? "" : ", more than was wanted")},
               {"Wide at half of the peak", width_words(light.half_width_deg)},
               {"High at half of the peak", width_words(light.half_height_deg)},
               {"Behind the lantern's glazing", candela_words(light.outside_cd)},
               {"In service", candela_words(light.service_cd)},
               {"Mean path in the material", lengths.plain(beam.glass_mm) + " " + lengths.unit()}});
  const PaperBox room = pages.figure(kCuts_mm);
  draw_beam_cuts(pages.maker(), room, light, document_type::kFigure_mm * pages.scale());
  pages.note(
      "The mapped beam cut through its peak, level and upright: intensity of the lens alone, before glazing "
      "and "
      "service factor. The arrows show the width between the half peaks.");
}

void write_budget(DocumentPages& pages, const LightReport& light) {
  const FluxBudget& budget = light.budget;
  if (!(budget.flux_lm > 0)) return;
  std::vector<Cells> rows;
  for (int i = 0; i < kLightFates; ++i) {
    const auto at = static_cast<std::size_t>(i);
    rows.push_back({std::string(name_of(static_cast<LightFate>(i))), decimals(budget.lm[at], 1),
                    decimals(100 * budget.lm[at] / budget.flux_lm, 2),
                    decimals(100 * budget.error_lm[at] / budget.flux_lm, 2)});
  }
  pages.section("Where the lamp's light goes", 52);
  pages.table(
      {{"light of the lamp", 0.4}, {"lm", 0.2, true}, {"%", 0.2, true}, {"standard error %", 0.2, true}}, rows);
  rows.clear();
  for (const ZoneFlux& zone : budget.zones)
    rows.push_back({zone.zone, decimals(zone.level_lm, 1), decimals(zone.stray_lm, 1)});
  if (rows.empty()) return;
  pages.section("Light by zone, all its prisms together", 20);
  pages.twin_table({{"zone", 0.4}, {"by its own way lm", 0.32, true}, {"stray lm", 0.28, true}}, rows);
}

void write_colours(DocumentPages& pages, const LensPlan& plan, const LightReport& light,
                   const LengthWords& lengths) {
  const LightColours& colours = light.colours;
  const auto is_used = [&](Screen screen) {
    return std::ranges::any_of(plan.values.panels,
                               [&](const Panel& panel) { return !panel.blind && panel.screen == screen; });
  };
  std::vector<Cells> rows;
  for (const ScreenColour& colour : colours.screens)
    for (const RegionVerdict& verdict : colour.regions)
      rows.push_back(
          {std::string(colour_word(colour.screen)) + (is_used(colour.screen) ? "" : " (no panel has it)"),
           decimals(100 * colour.factor, 1), decimals(colour.at.x, 4), decimals(colour.at.y, 4),
           std::string(verdict.held ? "inside " : "outside ") +
               (verdict.region ? std::string(verdict.region->rule) : std::string()),
           decimals(verdict.margin, 4)});
  if (rows.empty()) return;
  pages.section("Colour", 45);
  pages.paragraph(fmt::format("Lamp at x {}, y {} (CIE 1931); {} {} of the material leave {} of its light.",
                              decimals(colours.lamp.x, 3), decimals(colours.lamp.y, 3),
                              lengths.plain(colours.glass_mm), lengths.unit(),
                              percent_words(colours.tint_factor, 1)));
  pages.table({{"light", 0.24},
               {"% of white", 0.12, true},
               {"x", 0.1, true},
               {"y", 0.1, true},
               {"published region", 0.3},
               {"margin", 0.14, true}},
              rows);
}

}  // namespace prismwright
