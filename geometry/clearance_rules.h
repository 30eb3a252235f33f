#pragma once

#include <map>
#include <string>

#include "geometry/clearances.h"
#include "geometry/measured_part.h"
#include "geometry/near_pairs.h"
#include "geometry/pair_gap.h"

namespace prismwright {

/// Needed gaps and verdicts for the pairs of one plan.
class ClearanceRules {
 public:
  explicit ClearanceRules(const LensPlan& plan) : plan_(plan) {}

  /// Found gaps in the lens frame, of which there must be one.
  Clearance judged(const MeasuredPart& first, const MeasuredPart& second, bool joint, const GapsFound& gaps);
  [[nodiscard]] Clearance judged_round(const MeasuredPart& part, const std::string& surrounding,
                                       const SolidGap& gap) const;

 private:
  struct Needed {
    double side_mm = 0;
    double end_mm = 0;
  };
  Needed needed(const MeasuredPart& first, const MeasuredPart& second, bool joint);
  [[nodiscard]] double grows(double extent_mm) const;
  double side_growth(const PlannedPrism& prism);

  const LensPlan& plan_;
  std::map<std::string, double> side_growth_;
};

}  // namespace prismwright
