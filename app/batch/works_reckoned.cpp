#include "app/batch/works_reckoned.h"

#include "core/frame/frame_plan.h"
#include "core/frame/parts_list.h"

namespace prismwright {

WorksReckoning reckon(const WorksDesk& desk) {
  constexpr double kGramsPerKilogram = 1000;
  WorksFacts facts;
  facts.brass_kg = totals_of(parts_list(plan_frame(desk.plan))).brass_g / kGramsPerKilogram;
  facts.today = today();
  return reckon_works(desk.plan, desk.book.ledger(), desk.book.works_log(), facts);
}

}  // namespace prismwright
