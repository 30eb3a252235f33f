#include "geometry/fit_up.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/base/angle.h"
#include "geometry/fit_changes.h"
#include "geometry/fit_panel.h"
#include "geometry/fit_rib.h"
#include "geometry/fit_words.h"

namespace prismwright {
namespace {

bool only_clashes(const PanelFit& fit) {
  return std::all_of(fit.cannot.begin(), fit.cannot.end(), [](const FitBlocked& b) { return b.deep_mm > 0; });
}

PanelFit better_of_both(const FitPanel& panel, const std::function<bool()>& go_on) {
  const std::vector<HomeClash> clashes = home_clashes(panel, go_on);
  PanelFit left = fit_on_rib(panel, 0, clashes, go_on);
  if (!only_clashes(left)) {
    PanelFit right = fit_on_rib(panel, 1, clashes, go_on);
    if (right.cannot.size() < left.cannot.size()) left = std::move(right);
  }
  left.open_seats = open_seats(panel, go_on);
  return left;
}

// Parts of congruent panels differ in the panel's number at the head of their marks alone.
std::string renamed(const std::string& mark, int from, int to) {
  const std::string head = fmt::format("P{:02}-", from);
  return mark.starts_with(head) ? fmt::format("P{:02}-{}", to, mark.substr(head.size())) : mark;
}

PanelFit moved_to(PanelFit fit, int number, double axis_deg) {
  const auto rename = [&](std::string& mark) { mark = renamed(mark, fit.panel, number); };
  const auto rename_all = [&](std::vector<std::string>& marks) {
    std::for_each(marks.begin(), marks.end(), rename);
  };
  rename(fit.first_rib);
  rename(fit.second_rib);
  for (FitStep& step : fit.steps) rename_all(step.marks);
  for (FitBlocked& blocked : fit.cannot) {
    rename_all(blocked.marks);
    rename(blocked.blocked_by);
    const double c = std::cos(radians(axis_deg));
    const double s = std::sin(radians(axis_deg));
    const SpacePoint p = blocked.where;
    blocked.where = {c * p.x - s * p.y, s * p.x + c * p.y, p.z};
  }
  for (OpenSeat& seat : fit.open_seats) rename(seat.mark);
  fit.panel = number;
  put_in_words(fit);
  return fit;
}

}  // namespace

Outcome<std::vector<PanelFit>> fit_up(const LensPlan& plan, const FramePlan& frame, const Progress& progress) {
  std::map<std::string, PanelFit> known;
  std::vector<PanelFit> fits;
  double share = 0;
  for (const PanelPlace& place : plan.panels) {
    if (!can_be_fitted(plan, frame, place.number)) continue;
    const std::string likeness = fit_likeness(plan, frame, place);
    const std::string what = fmt::format("P{:02}", place.number);
    auto found = known.find(likeness);
    if (found == known.end()) {
      try {
        const std::function<bool()> go_on = [&] { return goes_on(progress, share, what); };
        found = known.emplace(likeness, better_of_both(fit_panel(plan, frame, place), go_on)).first;
        PanelFit& fit = found->second;
        for (FitBlocked& blocked : fit.cannot) blocked.changes = changes_for(blocked, fit, plan);
      } catch (const FitStopped&) {
        return Problem{Trouble::stopped, "stopped", what,
                       "The fit-up was stopped before all panels were tried."};
      }
    }
    fits.push_back(moved_to(found->second, place.number, place.axis_deg));
    share = static_cast<double>(place.number) / static_cast<double>(plan.panels.size());
  }
  return fits;
}

}  // namespace prismwright
