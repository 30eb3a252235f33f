#include "core/works/mould_facts.h"

namespace prismwright {

double volume_departure(const MouldFacts& facts) {
  const double sum =
      facts.lower_mm3 + facts.upper_mm3 + facts.master_mm3 + facts.openings_mm3 + facts.pin_gap_mm3;
  return sum / facts.block_mm3 - 1;
}

}  // namespace prismwright
