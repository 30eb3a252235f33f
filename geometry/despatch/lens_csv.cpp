#include "geometry/despatch/lens_csv.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/csv_cell.h"
#include "core/lens/choice_words.h"

namespace prismwright {

namespace {

std::string number_or_blank(long long number) { return number == 0 ? "" : std::to_string(number); }

bool is_turned(const Master* master, const std::string& mark) {
  return master && std::ranges::any_of(master->uses,
                                       [&](const MasterUse& use) { return use.mark == mark && use.turned; });
}

}  // namespace

long long casting_of(const StageByMark& stages, const std::string& mark) {
  const auto found = stages.serial.find(mark);
  return found == stages.serial.end() ? 0 : found->second;
}

std::string prisms_csv(const LensPlan& plan, const LensBodies& bodies, std::span<const Master> masters,
                       const StageByMark& stages) {
  std::string text = "mark,panel,zone,kind,master,turned,volume_mm3,mass_g,length_mm,stage,serial\n";
  for (std::size_t i = 0; i < plan.prisms.size(); ++i) {
    const PlannedPrism& prism = plan.prisms[i];
    const PrismBody& body = bodies.prisms[i];
    const Master* master = master_of_mark(masters, prism.mark);
    text += fmt::format("{},{},{},{},{},{},{:.3f},{:.3f},{:.3f},{},{}\n", csv_cell(prism.mark), prism.panel,
                        csv_cell(prism.zone), name_of(prism.kind), csv_cell(master ? master->name : ""),
                        is_turned(master, prism.mark) ? "yes" : "no", body.volume_mm3, body.mass_g,
                        body.greatest_length_mm, name_of(stages.stage_of(prism.mark)),
                        number_or_blank(casting_of(stages, prism.mark)));
  }
  return text;
}

std::string zones_csv(const Section& section) {
  std::string text = "mark,kind,from_deg,to_deg,thickness_mm,section_thickness_mm,area_mm2,side_mm\n";
  for (const Zone& zone : section.zones) {
    text += fmt::format("{},{},{},{},{},{},{},{}\n", csv_cell(zone.mark), name_of(zone.kind), zone.from_deg,
                        zone.to_deg, zone.thickness_mm, zone.section_thickness_mm, area_mm2(zone.profile),
                        is_refracting(zone.kind) ? "" : fmt::format("{}", zone.side_mm));
  }
  return text;
}

std::string flashes_csv(const LightReport& report) {
  std::string text = "panel,colour,peak_s,peak_cd,length_at_half_s,length_at_twentieth_s,effective_cd\n";
  for (const Flash& flash : report.rhythm.flashes) {
    text += fmt::format("{},{},{},{},{},{},{}\n", flash.panel,
                        flash.screen == Screen::none ? "white" : word_of(flash.screen), flash.peak_s,
                        flash.peak_cd, flash.length_s(), flash.foot_length_s(), flash.effective.blondel_rey_cd);
  }
  return text;
}

std::string ranges_csv(const LightReport& report) {
  std::string text = "visibility_nmi,white_nmi,red_nmi,green_nmi,yellow_nmi\n";
  for (const RangeRow& row : report.ranges)
    text += fmt::format("{},{},{},{},{}\n", row.visibility_nmi, row.white_nmi, row.red_nmi, row.green_nmi,
                        row.yellow_nmi);
  return text;
}

std::string flux_csv(const LightReport& report) {
  std::string text = "fate,lm,share,error_lm\n";
  const FluxBudget& budget = report.budget;
  for (int i = 0; i < kLightFates; ++i) {
    const auto at = static_cast<std::size_t>(i);
    text += fmt::format("{},{},{},{}\n", csv_cell(name_of(static_cast<LightFate>(i))), budget.lm[at],
                        budget.flux_lm > 0 ? budget.lm[at] / budget.flux_lm : 0, budget.error_lm[at]);
  }
  return text;
}

std::string bench_readings_csv(std::span<const BenchReading> readings) {
  std::string text = "number,when_utc,mark,height_mm,aside_mm,board_mm,by,note\n";
  for (const BenchReading& one : readings)
    text += fmt::format("{},{},{},{},{},{},{},{}\n", one.number, csv_cell(one.when_utc), csv_cell(one.mark),
                        one.height_mm, one.aside_mm, one.board_mm, csv_cell(one.by), csv_cell(one.note));
  return text;
}

}  // namespace prismwright
