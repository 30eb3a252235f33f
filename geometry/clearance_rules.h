#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "geometry/clearances.h"
#include "geometry/measured_part.h"
#include "geometry/near_pairs.h"
#include "geometry/pair_gap.h"

namespace prismwright {

/// Needed gaps and verdicts for the pairs of one plan: see find_clearances.
class ClearanceRules {
 public:
  ClearanceRules(const LensPlan& plan, const FramePlan& frame);

  /// Found gaps in the lens frame, of which there must be one.
  Clearance judged(const MeasuredPart& first, const MeasuredPart& second, bool joint, const GapsFound& gaps);
  [[nodiscard]] Clearance judged_round(const MeasuredPart& part, const std::string& surrounding,
                                       const SolidGap& gap) const;

 private:
  struct Needed {
    double side_mm = 0;
    double end_mm = 0;
  };
  struct Extents {
    double side_mm = 0;  ///< greatest extent of the section
    double end_mm = 0;   ///< from end to end
  };
  Needed needed(const MeasuredPart& first, const MeasuredPart& second, bool joint);
  Needed between_prisms(const PlannedPrism& first, const PlannedPrism& second);
  Needed at_metal(const PlannedPrism& prism, const MeasuredPart& metal);
  const Extents& extents_of(const PlannedPrism& prism);

  const LensPlan& plan_;
  std::set<std::pair<std::string_view, std::string_view>> held_;  ///< marks of prism and rib
  std::map<std::string_view, Extents> extents_;                   ///< by shape key
};

}  // namespace prismwright
