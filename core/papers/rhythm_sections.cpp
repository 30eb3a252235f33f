#include <fmt/format.h>

#include "core/papers/document_type.h"
#include "core/papers/flash_figure.h"
#include "core/papers/light_sections.h"

namespace prismwright {

namespace {

using Cells = DocumentPages::Cells;

constexpr double kFlash_mm = 52;

std::string miles(double nmi) { return decimals(nmi, 1) + " nautical miles"; }

}  // namespace

std::string character_words(const LensPlan& plan, const LightReport& light) {
  const std::string& wished = plan.values.brief.character;
  const std::string given = light.character.empty() ? "none" : light.character;
  if (wished.empty()) return given + "; none was asked for";
  if (light.differs.empty()) return given + ", as asked for";
  return fmt::format("{}; asked for was {}: {}", given, wished, light.differs);
}

void write_rhythm(DocumentPages& pages, const LensPlan& plan, const LightReport& light) {
  const Rhythm& rhythm = light.rhythm;
  pages.section("Character", 30);
  pages.paragraph(fmt::format("Character: {}.", character_words(plan, light)));
  std::vector<DocumentPages::Fact> facts;
  if (rhythm.turn_s > 0) {
    facts.push_back({"One turn of the lens", decimals(rhythm.turn_s, 2) + " s"});
    facts.push_back({"Period", rhythm.period_s > 0 ? decimals(rhythm.period_s, 2) + " s" : "steady light"});
  } else {
    facts.push_back({"The lens", "stands still"});
  }
  facts.push_back({"Peak, of the lens alone", candela_words(rhythm.peak_cd)});
  facts.push_back({"Least, of the lens alone", candela_words(rhythm.least_cd)});
  if (light.horizon) {
    facts.push_back({"Mean round the horizon", candela_words(light.horizon->mean_cd)});
    facts.push_back(
        {"Dark, under half of the mean", fmt::format("{} of {} deg", decimals(light.horizon->dark_deg, 1),
                                                     decimals(light.horizon->lit_deg, 1))});
  }
  pages.facts(facts);
  if (has_flash_figure(light)) {
    const PaperBox room = pages.figure(kFlash_mm);
    draw_flash(pages.maker(), room, light, document_type::kFigure_mm * pages.scale());
    pages.skip(2);
  }
  std::vector<Cells> rows;
  for (const Flash& flash : rhythm.flashes)
    rows.push_back({decimals(flash.peak_s, 2), std::to_string(flash.panel),
                    std::string(colour_word(flash.screen)), decimals(flash.peak_cd, 0),
                    decimals(flash.length_s(), 3), decimals(flash.foot_length_s(), 3),
                    decimals(flash.effective.blondel_rey_cd, 0)});
  if (rows.empty()) return;
  pages.table({{"flash at s", 0.13, true},
               {"panel", 0.1, true},
               {"colour", 0.13},
               {"peak cd", 0.15, true},
               {"at half s", 0.14, true},
               {"at a twentieth s", 0.18, true},
               {"effective cd", 0.17, true}},
              rows);
}

void write_ranges(DocumentPages& pages, const LensPlan& plan, const LightReport& light) {
  const EffectiveIntensities& effective = light.effective;
  const LightSettings& settings = plan.values.light;
  pages.section("Effective intensity and range", 36);
  pages.facts({{"Effective, Blondel and Rey", candela_words(effective.blondel_rey_cd)},
               {"Form factor", candela_words(effective.form_factor_cd)},
               {"Allard", candela_words(effective.allard_cd)},
               {"Modified Allard", candela_words(effective.modified_allard_cd)},
               {"Nominal range", miles(light.nominal_range_nmi)},
               {"Luminous range", miles(light.luminous_range_nmi)},
               {"Geographic range", miles(light.geographic_range_nmi)}});
  pages.note(fmt::format(
      "Of the {}, through glazing ({}) and with the service factor ({}). Nominal "
      "range: at {:g} nautical "
      "miles of visibility; luminous: at {} nautical miles and {:g} lux at the eye; geographic: "
      "for an eye {} m over "
      "the sea and a focus {} m over it.",
      light.rhythm.steady ? "steady light" : "strongest flash", shortest(settings.glazing_factor),
      shortest(settings.service_factor), kNominalVisibility_nmi, shortest(settings.visibility_nmi),
      settings.threshold_lux, shortest(settings.eye_height_m), shortest(plan.values.brief.height_m)));
  std::vector<Cells> rows;
  for (const RangeRow& row : light.ranges)
    rows.push_back({decimals(row.visibility_nmi, 1), decimals(row.white_nmi, 1), decimals(row.red_nmi, 1),
                    decimals(row.green_nmi, 1), decimals(row.yellow_nmi, 1)});
  if (rows.empty()) return;
  pages.table({{"visibility, nautical miles", 0.28, true},
               {"range: white", 0.18, true},
               {"red", 0.18, true},
               {"green", 0.18, true},
               {"yellow", 0.18, true}},
              rows, true);
}

}  // namespace prismwright
