#pragma once

#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "app/batch/json_print.h"
#include "geometry/clearances.h"
#include "geometry/door_sweep.h"

namespace prismwright {

/// What the verb `clearances` answers.
struct ClearanceAnswer {
  std::vector<Clearance> pairs;  ///< in the order of the plan
  std::optional<DoorSweep> door;
  double door_wanted_deg = 0;
  std::vector<std::string> notes;
};

long count_of(const std::vector<Clearance>& pairs, Verdict verdict);
Json clearances_json(const ClearanceAnswer& answer);
/// Counts, the `most` tightest pairs, the door's way and the notes.
void print_clearances(ClearanceAnswer answer, std::size_t most, std::ostream& out);

}  // namespace prismwright
