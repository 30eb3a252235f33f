#pragma once

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/light/bench_plan.h"
#include "core/light/bench_reading.h"

namespace prismwright {

/// A beam within this of where it should go is left alone; common practice, from memory.
inline constexpr double kBenchWithin_deg = 0.05;
/// A prism whose beam turns by less than this per degree of tilt is moved and not shimmed: the shim would be
/// thick and the prism would stand askew in its band. Our own choice.
inline constexpr double kLeastTurn = 0.25;

/// What a reading says of a prism, and what mends it.
struct BenchMend {
  double error_deg = 0;  ///< of the beam over its way, + up
  double aside_deg = 0;  ///< of the beam beside its way, + to the left looking seaward
  bool within = false;   ///< both together within the tolerance
  double tilt_deg = 0;   ///< nose up, that takes the error away: -error / k
  double shim_mm = 0;    ///< thickness under the edge: tan of the tilt by the length of the seat
  std::string edge;      ///< under which the shim goes: "lower", "outer"
  double move_mm = 0;    ///< that takes the error away instead, + up
  std::string words;     ///< "leave it", "shim the lower edge 0.34 mm"

  [[nodiscard]] double off_deg() const { return std::hypot(error_deg, aside_deg); }
};

/// The aim must be without trouble. The error is the angle at the place where the light leaves the prism as it
/// is drawn: atan(height / distance) for a level beam.
BenchMend mend_of(const BenchAim& aim, const BenchReading& reading, double within_deg = kBenchWithin_deg);

/// Refuses a mark that the lens has not or that gives no spot, a board within the lens, and a spot higher,
/// lower or farther aside than a quarter of the board's distance.
Done check_reading(const BenchPlan& bench, const BenchReading& reading);

/// A prism before and after: its first reading and its last, with what they say. Both the same where there is
/// one reading; blank where there is none.
struct BenchedPrism {
  const BenchAim* aim = nullptr;
  std::optional<BenchReading> first, last;
  std::optional<BenchMend> before, now;
};
/// In the order of the bench's plan. Readings of marks that the lens no longer has, or that give no spot, are
/// left out. The bench must outlive the answer.
std::vector<BenchedPrism> benched(const BenchPlan& bench, std::span<const BenchReading> readings,
                                  double within_deg = kBenchWithin_deg);

struct BenchSummary {
  int prisms = 0;  ///< of the lens
  int read = 0;
  int within = 0;             ///< by their last reading
  std::string worst;          ///< mark; empty when none is read
  double worst_deg = 0;       ///< how far the worst one's beam is off by its last reading
  double rms_before_deg = 0;  ///< of what the first readings are off
  double rms_now_deg = 0;     ///< of what the last readings are off
};
BenchSummary summary_of(std::span<const BenchedPrism> prisms);

}  // namespace prismwright
