#pragma once

#include <ostream>
#include <span>
#include <string>

#include "app/batch/json_print.h"
#include "core/light/bench_check.h"

namespace prismwright {

/// The bench of one lens as it is answered: the plan, and every prism with its first and last reading.
struct BenchAnswer {
  const BenchPlan& plan;
  std::span<const BenchedPrism> prisms;
  std::span<const BenchReading> readings;
  double within_deg;
};

void print_bench(const BenchAnswer& answer, std::ostream& out);
Json bench_json(const BenchAnswer& answer);
/// One line for each prism, blanks where there is no spot or no reading.
std::string bench_csv(const BenchAnswer& answer);

/// One reading and what it says: "P01-U05: the beam goes 0.20 deg too high: shim the inner edge 0.05 mm".
std::string mend_line(const std::string& mark, const BenchMend& mend);
Json mend_json(const BenchMend& mend);

}  // namespace prismwright
