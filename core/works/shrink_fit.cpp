#include "core/works/shrink_fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/works/student_t.h"

namespace prismwright {
namespace {

constexpr std::array<ShrinkDirection, 3> kDirections = {ShrinkDirection::length, ShrinkDirection::depth,
                                                        ShrinkDirection::height};

bool is_length(double mm) { return std::isfinite(mm) && mm > 0; }

/// Sums of a line through the origin.
struct Line {
  double mm = 0;       ///< sum of m m
  double k = 1;        ///< slope
  double squares = 0;  ///< of the residuals
};

Line line_through(const std::vector<ShrinkPoint>& points) {
  Line line;
  double mc = 0;
  for (const ShrinkPoint& p : points) {
    line.mm += p.master_mm * p.master_mm;
    mc += p.master_mm * p.casting_mm;
  }
  line.k = mc / line.mm;
  for (const ShrinkPoint& p : points) {
    const double residual = p.casting_mm - line.k * p.master_mm;
    line.squares += residual * residual;
  }
  return line;
}

/// Studentised without the point itself: its residual against the scatter of the others.
bool is_outlier(const ShrinkPoint& p, const Line& line, double count, double limit) {
  const double free = 1 - p.master_mm * p.master_mm / line.mm;
  if (free <= 1e-12) return false;
  const double own = p.residual_mm * p.residual_mm / free;
  const double others = std::max(0.0, line.squares - own) / (count - 2);
  // What lies within a millionth of a length departs by rounding alone.
  if (std::abs(p.residual_mm) < 1e-6 * p.master_mm) return false;
  return own > others * limit * limit;
}

void fit(ShrinkFactor& factor) {
  factor.count = static_cast<int>(factor.points.size());
  if (factor.points.empty()) return;
  const Line line = line_through(factor.points);
  factor.percent = 100 * (1 - line.k);
  for (ShrinkPoint& p : factor.points) p.residual_mm = p.casting_mm - line.k * p.master_mm;
  if (factor.count < 2) return;
  const double degrees = factor.count - 1;
  factor.scatter_mm = std::sqrt(line.squares / degrees);
  factor.standard_percent = 100 * *factor.scatter_mm / std::sqrt(line.mm);
  const double reach = student_t_at(0.975, degrees) * *factor.standard_percent;
  factor.low_percent = *factor.percent - reach;
  factor.high_percent = *factor.percent + reach;
  if (factor.count < 4) return;
  const double count = factor.count;
  const double limit = student_t_at(1 - kOutlierChance / (2 * count), count - 2);
  for (ShrinkPoint& p : factor.points) p.outlier = is_outlier(p, line, count, limit);
}

std::vector<ShrinkPoint> points_of(std::span<const ShrinkReading> readings, ShrinkDirection direction,
                                   const std::string& resin, const std::string* lot) {
  std::vector<ShrinkPoint> points;
  for (const ShrinkReading& r : readings) {
    if (r.direction != direction || r.resin != resin || (lot && r.resin_lot != *lot)) continue;
    if (!is_length(r.master_mm) || !is_length(r.casting_mm)) continue;
    points.push_back({r.number, r.piece, r.master_mm, r.casting_mm, 0, false});
  }
  return points;
}

std::string readings_words(std::size_t count) {
  return count == 0 ? "no reading" : count == 1 ? "1 reading" : fmt::format("{} readings", count);
}

std::string note_of(const ShrinkFactor& factor, const std::string& lot) {
  const std::string_view direction = name_of(factor.direction);
  if (factor.count == 0) return fmt::format("Nothing is measured along the {} yet", direction);
  std::string note;
  if (!factor.of_lot) {
    note = fmt::format("Lot {} has {} along the {}, {} are needed; this is the resin's over all lots",
                       lot.empty() ? "without a name" : lot,
                       readings_words(static_cast<std::size_t>(factor.lot_count)), direction,
                       kLeastShrinkReadings);
  }
  if (!factor.usable()) {
    if (!note.empty()) note += ". ";
    note += fmt::format("{} along the {}; {} are needed before it is taken over",
                        readings_words(factor.points.size()), direction, kLeastShrinkReadings);
  }
  return note;
}

ShrinkFactor factor_of(std::span<const ShrinkReading> readings, ShrinkDirection direction,
                       const std::string& resin, const std::string& lot) {
  ShrinkFactor factor;
  factor.direction = direction;
  factor.points = points_of(readings, direction, resin, &lot);
  factor.lot_count = static_cast<int>(factor.points.size());
  if (factor.lot_count < kLeastShrinkReadings) {
    auto all = points_of(readings, direction, resin, nullptr);
    if (all.size() > factor.points.size()) {
      factor.of_lot = false;
      factor.points = std::move(all);
    }
  }
  fit(factor);
  factor.note = note_of(factor, lot);
  return factor;
}

}  // namespace

ShrinkFit fit_shrinkage(std::span<const ShrinkReading> readings, const std::string& resin,
                        const std::string& resin_lot) {
  ShrinkFit fit;
  fit.resin = resin;
  fit.resin_lot = resin_lot;
  for (const ShrinkDirection direction : kDirections)
    fit.factors[static_cast<std::size_t>(direction)] = factor_of(readings, direction, resin, resin_lot);
  for (const ShrinkReading& r : readings) {
    if (r.resin == resin && !(is_length(r.master_mm) && is_length(r.casting_mm)))
      fit.left_out.push_back(r.number);
  }
  return fit;
}

std::vector<ShrinkFit> fit_all_shrinkage(std::span<const ShrinkReading> readings) {
  std::vector<std::pair<std::string, std::string>> lots;
  for (const ShrinkReading& r : readings) {
    const std::pair lot(r.resin, r.resin_lot);
    if (std::find(lots.begin(), lots.end(), lot) == lots.end()) lots.push_back(lot);
  }
  std::vector<ShrinkFit> fits;
  for (const auto& [resin, lot] : lots) fits.push_back(fit_shrinkage(readings, resin, lot));
  return fits;
}

std::vector<Assignment> shrink_assignments(const ShrinkFit& fit) {
  std::vector<Assignment> assignments;
  for (const ShrinkFactor& factor : fit.factors) {
    if (!factor.usable()) continue;
    assignments.emplace_back(fmt::format("works.shrink_{}_percent", name_of(factor.direction)),
                             fmt::format("{:.4f}", *factor.percent));
  }
  return assignments;
}

std::string_view name_of(ShrinkDirection direction) {
  switch (direction) {
    case ShrinkDirection::length:
      return "length";
    case ShrinkDirection::depth:
      return "depth";
    case ShrinkDirection::height:
      return "height";
  }
  return "length";
}

std::optional<ShrinkDirection> find_shrink_direction(std::string_view name) {
  for (const ShrinkDirection direction : kDirections) {
    if (name_of(direction) == name) return direction;
  }
  return std::nullopt;
}

}  // namespace prismwright
