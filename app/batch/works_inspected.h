#pragma once

#include <optional>
#include <vector>

#include "app/batch/json_print.h"
#include "app/batch/works_desk.h"
#include "core/works/inspection.h"

namespace prismwright {

/// What was recorded of the lens's prisms. The bench is planned only where it has readings.
class InspectionBook {
 public:
  static Outcome<InspectionBook> of(const WorksDesk& desk);
  [[nodiscard]] InspectionRecord record(const WorksDesk& desk) const;

 private:
  std::optional<BenchPlan> bench_;
};

Outcome<std::vector<InspectedPrism>> inspected(const WorksDesk& desk);
/// One prism, by its mark or that of a spare.
Outcome<InspectedPrism> inspected(const WorksDesk& desk, const std::string& mark);

Json inspected_json(const InspectedPrism& prism);
void print_features(const InspectedPrism& prism, bool how, std::ostream& out);

}  // namespace prismwright
