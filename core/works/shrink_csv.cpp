#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/base/csv_cell.h"
#include "core/works/shrink_fit.h"

namespace prismwright {
namespace {

std::string number(std::optional<double> value) { return value ? fmt::format("{:.4f}", *value) : ""; }

std::string csv_line(const ShrinkFit& fit, const ShrinkFactor& factor) {
  std::vector<long long> outliers;
  for (const ShrinkPoint& p : factor.points) {
    if (p.outlier) outliers.push_back(p.number);
  }
  return fmt::format("{},{},{},{},{},{},{},{},{},{},{},{}\n", csv_cell(fit.resin), csv_cell(fit.resin_lot),
                     name_of(factor.direction), factor.count, factor.of_lot ? "lot" : "resin",
                     number(factor.percent), number(factor.standard_percent), number(factor.low_percent),
                     number(factor.high_percent), number(factor.scatter_mm), fmt::join(outliers, " "),
                     csv_cell(factor.note));
}

}  // namespace

std::string shrink_csv(std::span<const ShrinkFit> fits) {
  std::string text =
      "resin,resin_lot,direction,readings,of,percent,standard_percent,low_percent,high_percent,scatter_mm,"
      "outliers,note\n";
  for (const ShrinkFit& fit : fits) {
    for (const ShrinkFactor& factor : fit.factors) text += csv_line(fit, factor);
  }
  return text;
}

}  // namespace prismwright
