#include "app/batch/works_reckoned.h"

#include "core/frame/frame_plan.h"
#include "core/frame/parts_list.h"

namespace prismwright {

WorksReckoning reckon(const WorksDesk& desk, double brass_kg) {
  WorksFacts facts;
  facts.brass_kg = brass_kg;
  facts.today = today();
  return reckon_works(desk.plan, desk.book.ledger(), desk.book.works_log(), facts);
}

double frame_brass_kg(const LensPlan& plan) {
  constexpr double kGramsPerKilogram = 1000;
  const FramePlan frame = plan_frame(plan);
  return totals_of(parts_list(frame, drawn_volumes(frame))).brass_g / kGramsPerKilogram;
}

}  // namespace prismwright
