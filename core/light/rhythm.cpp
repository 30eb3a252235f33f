#include "core/light/rhythm.h"

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"

namespace prismwright {

namespace {

constexpr double kStep_deg = 0.02;  ///< of the whole lens's curve
constexpr int kSteps = 18000;

/// The lens's light over azimuth as the observer meets it, from the axis of panel 1 on.
std::vector<double> round_the_lens(const std::vector<PanelCurve>& panels, TurnWay way) {
  std::vector<double> cd(kSteps);
  const double sense = way == TurnWay::clockwise ? 1 : -1;
  for (const PanelCurve& panel : panels) {
    if (panel.cd.empty()) continue;
    const double half =
        std::max(std::abs(panel.from_deg),
                 std::abs(panel.from_deg + panel.step_deg * static_cast<double>(panel.cd.size())));
    const int reach = static_cast<int>(std::ceil(std::min(180.0, half) / kStep_deg));
    const int axis = static_cast<int>(std::lround(sense * panel.axis_deg / kStep_deg));
    const double off = panel.axis_deg - sense * axis * kStep_deg;
    for (int i = -reach; i < reach; ++i) {
      const int at = ((axis + i) % kSteps + kSteps) % kSteps;
      cd[static_cast<std::size_t>(at)] += panel.at(sense * i * kStep_deg - off);
    }
  }
  return cd;
}

const PanelCurve* brightest(const std::vector<PanelCurve>& panels, double azimuth_deg, std::size_t& number) {
  const PanelCurve* best = nullptr;
  double most = -1;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    const double here = panels[i].at(std::remainder(azimuth_deg - panels[i].axis_deg, 360));
    if (here <= most) continue;
    most = here;
    best = &panels[i];
    number = i;
  }
  return best;
}

class FlashFinder {
 public:
  FlashFinder(const std::vector<PanelCurve>& panels, const std::vector<double>& cd, double turn_s, TurnWay way,
              double a_s)
      : panels_(panels),
        cd_(cd),
        step_s_(turn_s / kSteps),
        sense_(way == TurnWay::clockwise ? 1 : -1),
        a_s_(a_s) {}

  std::vector<Flash> find() const {
    const auto peak = *std::max_element(cd_.begin(), cd_.end());
    const auto dark = std::min_element(cd_.begin(), cd_.end());
    std::vector<Flash> flashes;
    if (peak <= 0 || *dark >= kFoot * peak) return flashes;
    // Walked once round from the darkest place, so that no flash is parted.
    const int start = static_cast<int>(dark - cd_.begin());
    int first = -1;
    for (int i = 0; i <= kSteps; ++i) {
      const bool lit = i < kSteps && at(start + i) >= kFoot * kFoot * peak;
      if (lit && first < 0) first = i;
      if (lit || first < 0) continue;
      part(start + first, start + i, peak, flashes);
      first = -1;
    }
    for (Flash& flash : flashes) into_turn(flash);
    std::sort(flashes.begin(), flashes.end(),
              [](const Flash& a, const Flash& b) { return a.peak_s < b.peak_s; });
    return flashes;
  }

 private:
  [[nodiscard]] double at(int i) const { return cd_[static_cast<std::size_t>((i % kSteps + kSteps) % kSteps)]; }

  /// A stretch of light, parted where it falls under 5 % of the lesser of the peaks beside. `cut_low`,
  /// `cut_high`: the stretch ends there on the slope of a greater flash.
  void part(int from, int to, double peak, std::vector<Flash>& flashes, bool cut_low = false,
            bool cut_high = false) const {
    while (cut_low && from + 1 < to && at(from + 1) <= at(from)) ++from;
    while (cut_high && to - 1 > from && at(to - 2) <= at(to - 1)) --to;
    if (to - from < 2) return;
    int top = from;
    for (int i = from; i < to; ++i)
      if (at(i) > at(top)) top = i;
    const double foot = kFoot * at(top);
    // A glimmer is no flash, and a bump on a slope belongs to the flash whose slope it is.
    if (at(top) < 0.02 * peak) return;
    if (cut_low && least(from, top) >= foot) return;
    if (cut_high && least(top, to - 1) >= foot) return;
    int low = top;
    int high = top;
    while (low > from && at(low - 1) >= foot) --low;
    while (high + 1 < to && at(high + 1) >= foot) ++high;
    flashes.push_back(measured(low, top, high));
    part(from, low, peak, flashes, cut_low, true);
    part(high + 1, to, peak, flashes, true, cut_high);
  }

  [[nodiscard]] double least(int from, int to) const {
    double low = at(from);
    for (int i = from; i <= to; ++i) low = std::min(low, at(i));
    return low;
  }

  [[nodiscard]] Flash measured(int low, int top, int high) const {
    Flash flash;
    flash.peak_cd = at(top);
    flash.peak_s = top * step_s_;
    flash.start_s = crossing(low - 1, kFoot * flash.peak_cd);
    flash.end_s = crossing(high, kFoot * flash.peak_cd);
    int half_low = top;
    int half_high = top;
    while (at(half_low - 1) >= kHalfPeak * flash.peak_cd && half_low > low) --half_low;
    while (at(half_high + 1) >= kHalfPeak * flash.peak_cd && half_high < high) ++half_high;
    flash.half_start_s = crossing(half_low - 1, kHalfPeak * flash.peak_cd);
    flash.half_end_s = crossing(half_high, kHalfPeak * flash.peak_cd);
    std::size_t number = 0;
    const PanelCurve* panel = brightest(panels_, sense_ * top * kStep_deg, number);
    flash.screen = panel ? panel->screen : Screen::none;
    flash.panel = static_cast<int>(number) + 1;
    FlashCurve curve;
    for (int i = low - 1; i <= high + 1; ++i) {
      curve.s.push_back(i * step_s_);
      curve.cd.push_back(at(i));
    }
    flash.effective = effective_intensities(curve, a_s_);
    return flash;
  }

  /// Time between two steps at which the light passes a level.
  [[nodiscard]] double crossing(int i, double level) const {
    const double rise = at(i + 1) - at(i);
    const double share = rise != 0 ? std::clamp((level - at(i)) / rise, 0.0, 1.0) : 0;
    return (i + share) * step_s_;
  }

  void into_turn(Flash& flash) const {
    const double turn = step_s_ * kSteps;
    const double back = turn * std::floor(flash.peak_s / turn + 1e-9);
    for (double* time : {&flash.peak_s, &flash.start_s, &flash.end_s, &flash.half_start_s, &flash.half_end_s})
      *time -= back;
  }

  const std::vector<PanelCurve>& panels_;
  const std::vector<double>& cd_;
  double step_s_;
  double sense_;
  double a_s_;
};

bool alike(const Flash& a, const Flash& b) {
  return a.screen == b.screen &&
         std::abs(a.peak_cd - b.peak_cd) <= kAlikePeaks * std::max(a.peak_cd, b.peak_cd) &&
         std::abs(a.length_s() - b.length_s()) <= kAlikeTimes_s + 0.1 * a.length_s();
}

/// How many flashes make the smallest part of the turn that repeats.
std::size_t flashes_of_period(const std::vector<Flash>& all, double turn_s) {
  const std::size_t n = all.size();
  const auto space = [&](std::size_t i) {
    const double next = all[(i + 1) % n].peak_s + (i + 1 == n ? turn_s : 0);
    return next - all[i].peak_s;
  };
  for (std::size_t k = 1; k < n; ++k) {
    if (n % k != 0) continue;
    bool same = true;
    for (std::size_t i = 0; i < n && same; ++i) {
      const std::size_t j = (i + k) % n;
      same = alike(all[i], all[j]) && std::abs(space(i) - space(j)) <= kAlikeTimes_s;
    }
    if (same) return k;
  }
  return n;
}

}  // namespace

double PanelCurve::at(double azimuth_deg) const {
  if (cd.empty()) return 0;
  const double x = (azimuth_deg - from_deg) / step_deg;
  if (!(x >= 0) || x > static_cast<double>(cd.size() - 1)) return 0;
  const auto i = std::min(static_cast<std::size_t>(x), cd.size() - 1);
  const std::size_t next = std::min(i + 1, cd.size() - 1);
  const double share = x - static_cast<double>(i);
  return (1 - share) * cd[i] + share * cd[next];
}

Rhythm rhythm_of(const std::vector<PanelCurve>& panels, double turn_s, TurnWay way, double a_s) {
  Rhythm rhythm;
  rhythm.turn_s = turn_s;
  const std::vector<double> cd = round_the_lens(panels, way);
  rhythm.peak_cd = *std::max_element(cd.begin(), cd.end());
  rhythm.least_cd = *std::min_element(cd.begin(), cd.end());
  rhythm.steady = turn_s <= 0 || rhythm.least_cd >= kHalfPeak * rhythm.peak_cd;
  const double step_s = std::max(turn_s, 0.0) / kSteps;
  for (int i = 0; i <= kSteps && turn_s > 0; i += 5) {
    rhythm.light.s.push_back(i * step_s);
    rhythm.light.cd.push_back(cd[static_cast<std::size_t>(i % kSteps)]);
  }
  if (rhythm.steady) return rhythm;
  const std::vector<Flash> all = FlashFinder(panels, cd, turn_s, way, a_s).find();
  if (all.empty()) return rhythm;
  const std::size_t n = all.size();
  const std::size_t k = flashes_of_period(all, turn_s);
  rhythm.period_s = turn_s * static_cast<double>(k) / static_cast<double>(n);
  rhythm.flashes.assign(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(k));
  return rhythm;
}

double turn_for_period_s(const Rhythm& rhythm, double period_s) {
  return rhythm.period_s > 0 ? rhythm.turn_s * period_s / rhythm.period_s : 0;
}

double flash_by_geometry_s(double lamp_width_mm, double focal_mm, double turn_s) {
  return turn_s * degrees(std::asin(std::min(1.0, lamp_width_mm / focal_mm))) / 360;
}

}  // namespace prismwright
