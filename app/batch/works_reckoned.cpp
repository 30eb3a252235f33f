#include "app/batch/works_reckoned.h"

#include "app/batch/progress_line.h"
#include "core/frame/frame_plan.h"
#include "core/frame/parts_list.h"
#include "geometry/works_moulds.h"

namespace prismwright {

WorksReckoning reckon(const WorksDesk& desk, double brass_kg, std::vector<MouldFacts> moulds) {
  WorksFacts facts;
  facts.moulds = std::move(moulds);
  facts.brass_kg = brass_kg;
  facts.today = today();
  return reckon_works(desk.plan, desk.book.ledger(), desk.book.works_log(), facts);
}

void add_moulds_option(CLI::App& command, bool& wanted) {
  command.add_flag("--moulds", wanted,
                   "work the moulds out first: their own sizes, gates up, in place of a guess; takes a while");
}

Outcome<std::vector<MouldFacts>> moulds_of(const WorksDesk& desk, bool wanted, Voice& voice) {
  if (!wanted) return std::vector<MouldFacts>{};
  const auto worked = [&] {
    ProgressLine line(voice);
    return MouldDesk().work_out(desk.plan, masters_of(desk.plan), {}, line.of("Moulds"));
  }();
  if (!worked) return worked.problem();
  for (const WorkedMould& mould : *worked)
    if (mould.answer.problem) voice.err << mould.answer.problem->text << '\n';
  return facts_of(*worked);
}

double frame_brass_kg(const LensPlan& plan) {
  constexpr double kGramsPerKilogram = 1000;
  const FramePlan frame = plan_frame(plan);
  return totals_of(parts_list(frame, drawn_volumes(frame))).brass_g / kGramsPerKilogram;
}

}  // namespace prismwright
