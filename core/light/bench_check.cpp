#include "core/light/bench_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kMostShare = 0.25;  ///< of the board's distance that a spot may lie off

struct Off {
  double error_deg = 0;
  double aside_deg = 0;
};

Off off_of(const BenchAim& aim, const BenchReading& reading) {
  const BoardPlace spot = aim.spot_at(reading.board_mm);
  const double ahead = reading.board_mm - aim.leaves.x;
  const double rise = spot.height_mm - aim.leaves.z;
  const double left = spot.aside_mm - aim.leaves.y;
  const double run = std::hypot(ahead, left);
  return {degrees(std::atan2(rise + reading.height_mm, run) - std::atan2(rise, run)),
          degrees(std::atan2(left + reading.aside_mm, ahead) - std::atan2(left, ahead))};
}

std::string mend_words(const BenchAim& aim, const BenchMend& mend, double within_deg) {
  if (mend.within) return "leave it";
  std::string words;
  if (std::abs(mend.error_deg) > within_deg) {
    words = std::abs(aim.turn_per_tilt) >= kLeastTurn
                ? fmt::format("shim the {} edge {:.2f} mm", mend.edge, mend.shim_mm)
                : fmt::format("move it {} {:.2f} mm", mend.move_mm > 0 ? "up" : "down", std::abs(mend.move_mm));
  }
  if (std::abs(mend.aside_deg) > within_deg)
    words += fmt::format("{}set it straight: its beam goes {:.2f} deg to the {}", words.empty() ? "" : "; ",
                         std::abs(mend.aside_deg), mend.aside_deg > 0 ? "left" : "right");
  return words.empty() ? "set it up and sideways together: each alone is within" : words;
}

Problem off_the_board(const char* what, double value_mm, double most_mm, double board_mm) {
  return request_problem(
      "bench.reading", what,
      fmt::format("{} is {:g} mm: a spot lies within {:g} mm of its place, a quarter of the {:g} mm to the "
                  "board. Measure from where the spot should fall, or set the prism nearer first.",
                  what, value_mm, most_mm, board_mm));
}

}  // namespace

BenchMend mend_of(const BenchAim& aim, const BenchReading& reading, double within_deg) {
  const Off off = off_of(aim, reading);
  BenchMend mend;
  mend.error_deg = off.error_deg;
  mend.aside_deg = off.aside_deg;
  mend.within = mend.off_deg() <= within_deg;
  if (aim.turn_per_tilt != 0) mend.tilt_deg = -off.error_deg / aim.turn_per_tilt;
  if (aim.turn_per_mm != 0) mend.move_mm = -off.error_deg / aim.turn_per_mm;
  mend.shim_mm = std::tan(radians(std::abs(mend.tilt_deg))) * aim.seat_mm;
  mend.edge = mend.tilt_deg >= 0 ? aim.nose_up_edge : aim.nose_down_edge;
  mend.words = mend_words(aim, mend, within_deg);
  return mend;
}

Done check_reading(const BenchPlan& bench, const BenchReading& reading) {
  const BenchAim* aim = bench.find(reading.mark);
  if (!aim)
    return request_problem("bench.mark", reading.mark,
                           fmt::format("The lens has no prism {}. Use a mark of the bench's plan, as {}.",
                                       reading.mark, bench.aims.empty() ? "P01-C" : bench.aims.front().mark));
  if (!aim->trouble.empty())
    return request_problem("bench.no_spot", reading.mark,
                           fmt::format("{} Nothing can be read of it.", aim->trouble));
  if (!(reading.board_mm > aim->leaves.x))
    return request_problem("bench.board", reading.mark,
                           fmt::format("The board stands {:g} mm from the focus, but {} lets its light out at "
                                       "{:.0f} mm. Set the board well beyond that.",
                                       reading.board_mm, reading.mark, aim->leaves.x));
  const double most = kMostShare * reading.board_mm;
  // Written so that what is not a number is refused too.
  if (!(std::abs(reading.height_mm) <= most))
    return off_the_board("The height", reading.height_mm, most, reading.board_mm);
  if (!(std::abs(reading.aside_mm) <= most))
    return off_the_board("The place aside", reading.aside_mm, most, reading.board_mm);
  return {};
}

std::vector<BenchedPrism> benched(const BenchPlan& bench, std::span<const BenchReading> readings,
                                  double within_deg) {
  std::vector<BenchedPrism> prisms;
  for (const BenchAim& aim : bench.aims) {
    BenchedPrism prism{&aim, {}, {}, {}, {}};
    for (const BenchReading& reading : readings) {
      if (reading.mark != aim.mark || !aim.trouble.empty()) continue;
      if (!prism.first) prism.first = reading;
      prism.last = reading;
    }
    if (prism.first) prism.before = mend_of(aim, *prism.first, within_deg);
    if (prism.last) prism.now = mend_of(aim, *prism.last, within_deg);
    prisms.push_back(std::move(prism));
  }
  return prisms;
}

BenchSummary summary_of(std::span<const BenchedPrism> prisms) {
  BenchSummary sum;
  double before2 = 0;
  double now2 = 0;
  for (const BenchedPrism& prism : prisms) {
    ++sum.prisms;
    if (!prism.now) continue;
    ++sum.read;
    sum.within += prism.now->within ? 1 : 0;
    const double before = prism.before->off_deg();
    const double now = prism.now->off_deg();
    before2 += before * before;
    now2 += now * now;
    if (!sum.worst.empty() && now <= sum.worst_deg) continue;
    sum.worst = prism.aim->mark;
    sum.worst_deg = now;
  }
  if (sum.read == 0) return sum;
  sum.rms_before_deg = std::sqrt(before2 / sum.read);
  sum.rms_now_deg = std::sqrt(now2 / sum.read);
  return sum;
}

}  // namespace prismwright
