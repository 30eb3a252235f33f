#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/lens/quantities.h"
#include "core/works/works_log.h"

namespace prismwright {

/// Fewest readings of one direction that a factor is taken from. Own choice: two degrees of freedom.
inline constexpr int kLeastShrinkReadings = 3;

/// A reading is told as an outlier when a departure like its own (studentised without itself) would come up by
/// chance in one of twenty sets of that size at most (Bonferroni's bound). From four readings on.
inline constexpr double kOutlierChance = 0.05;

/// One reading seen from the fitted factor.
struct ShrinkPoint {
  long long number = 0;  ///< of the ShrinkReading
  std::string piece;
  double master_mm = 0;
  double casting_mm = 0;
  double residual_mm = 0;  ///< casting less what the factor makes of the master
  bool outlier = false;    ///< told, never dropped
};

/// What readings of one direction say. Percent as in the settings: casting = master (1 - percent / 100).
struct ShrinkFactor {
  ShrinkDirection direction = ShrinkDirection::length;
  int count = 0;                           ///< readings used
  std::optional<double> percent;           ///< blank without a reading
  std::optional<double> standard_percent;  ///< standard uncertainty; blank with fewer than two
  std::optional<double> low_percent;       ///< 95 % interval, by Student's t with count - 1 degrees
  std::optional<double> high_percent;
  std::optional<double> scatter_mm;  ///< standard deviation of one reading about the line
  bool of_lot = true;                ///< false: the lot has too few readings, these are the resin's
  int lot_count = 0;                 ///< readings of the lot itself
  std::vector<ShrinkPoint> points;   ///< in the order of the readings
  std::string note;                  ///< a sentence, or empty

  /// Whether it rests on enough readings to be taken over.
  [[nodiscard]] bool usable() const { return percent && count >= kLeastShrinkReadings; }
};

struct ShrinkFit {
  std::string resin;
  std::string resin_lot;                ///< asked for; may be empty
  std::array<ShrinkFactor, 3> factors;  ///< length, depth, height
  std::vector<long long> left_out;      ///< readings that are no lengths (not finite, not positive)

  [[nodiscard]] const ShrinkFactor& of(ShrinkDirection direction) const {
    return factors[static_cast<std::size_t>(direction)];
  }
};

/// Least squares of the line through the origin, casting = (1 - s) master, in each direction by itself. A
/// calliper errs by as much on a short length as on a long one, so all residuals have one spread and the ratio
/// of a length weighs by its square: k = sum(m c) / sum(m m), u(k) = scatter / sqrt(sum(m m)), scatter from
/// count - 1 degrees of freedom. Where the lot has fewer than kLeastShrinkReadings in a direction, all readings
/// of the resin are taken and the note says so.
ShrinkFit fit_shrinkage(std::span<const ShrinkReading> readings, const std::string& resin,
                        const std::string& resin_lot);

/// A fit for every resin and lot that has readings, in the order they first came.
std::vector<ShrinkFit> fit_all_shrinkage(std::span<const ShrinkReading> readings);

/// The edits that make the next masters use the fit (works.shrink_length_percent, ...), once the maker agrees;
/// usable factors only, none: empty. Four digits after the point.
std::vector<Assignment> shrink_assignments(const ShrinkFit& fit);

std::string_view name_of(ShrinkDirection direction);  ///< "length", "depth", "height"
std::optional<ShrinkDirection> find_shrink_direction(std::string_view name);

/// Columns: resin, resin_lot, direction, readings, of, percent, standard_percent, low_percent, high_percent,
/// scatter_mm, outliers (numbers of the readings), note.
std::string shrink_csv(std::span<const ShrinkFit> fits);

}  // namespace prismwright
