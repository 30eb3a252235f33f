#include "geometry/fit_words.h"

#include <fmt/format.h>

namespace prismwright {
namespace {

constexpr double kAtHome_mm = 0.01;

std::string all_of(const std::vector<std::string>& marks) {
  if (marks.size() == 1) return marks.front();
  return fmt::format("{} to {}, cemented together,", marks.front(), marks.back());
}

std::string together(const FitStep& step, const PanelFit& fit) {
  const std::string first = fmt::format("Put {} together on the bench, then", fmt::join(step.marks, ", "));
  if (step.way == FitWay::square_to_rib) {
    return fmt::format("{} lower them as one square to {} into its pockets.", first, fit.first_rib);
  }
  return fmt::format("{} bring them in as one {}.", first, name_of(step.way));
}

std::string into_pocket(const FitStep& step, const std::string& rib) {
  if (step.into_pocket_mm <= 0) return "";
  return fmt::format(", then {:.1f} mm square into {}", step.into_pocket_mm, rib);
}

std::string words_of(const FitStep& step, const PanelFit& fit) {
  if (step.put_together) return together(step, fit);
  const std::string what = all_of(step.marks);
  switch (step.way) {
    case FitWay::laid:
      return fmt::format("Lay {} down with its pockets upward.", what);
    case FitWay::screwed:
      return fmt::format("Screw {} to {}.", what, fit.first_rib);
    case FitWay::from_sea:
      return fmt::format("Bring {} in straight from the sea side.", what);
    case FitWay::from_lamp:
      return fmt::format("Bring {} in straight from the lamp side.", what);
    case FitWay::from_sea_then_in:
      return fmt::format("Bring {} in from the sea side{}.", what, into_pocket(step, fit.first_rib));
    case FitWay::from_lamp_then_in:
      return fmt::format("Bring {} in from the lamp side{}.", what, into_pocket(step, fit.first_rib));
    case FitWay::square_to_rib:
      break;
  }
  if (step.marks.front() == fit.second_rib) {
    return fmt::format("Lower {} square onto the ends of all prisms and screw it to rails and cross ribs.",
                       what);
  }
  return fmt::format("Lower {} square to {} into its pocket.", what, fit.first_rib);
}

std::string words_of(const FitBlocked& blocked, const PanelFit& fit) {
  const std::string what = all_of(blocked.marks);
  if (blocked.left_mm < kAtHome_mm) {
    return fmt::format("{} cannot go {}: {} stands where it belongs. Make room there.", what,
                       blocked.marks.front() == fit.second_rib ? "on" : "in", blocked.blocked_by);
  }
  if (blocked.marks.front() == fit.second_rib) {
    return fmt::format(
        "{} cannot go on: {} holds it up {:.1f} mm before it is home. Give the pockets more room or less "
        "depth.",
        what, blocked.blocked_by, blocked.left_mm);
  }
  return fmt::format(
      "{} cannot go in: the best way is {}, and there {} holds it up {:.1f} mm before it is home. Give "
      "shallower pockets, more room between them, or other faces of the prism.",
      what, name_of(blocked.way), blocked.blocked_by, blocked.left_mm);
}

}  // namespace

const char* name_of(FitWay way) {
  switch (way) {
    case FitWay::laid:
      return "laid down";
    case FitWay::screwed:
      return "screwed on";
    case FitWay::from_sea:
      return "straight from the sea side";
    case FitWay::from_lamp:
      return "straight from the lamp side";
    case FitWay::from_sea_then_in:
      return "from the sea side, then into the rib";
    case FitWay::from_lamp_then_in:
      return "from the lamp side, then into the rib";
    case FitWay::square_to_rib:
      return "square to the rib";
  }
  return "";
}

void put_in_words(PanelFit& fit) {
  for (FitStep& step : fit.steps) step.words = words_of(step, fit);
  for (FitBlocked& blocked : fit.cannot) blocked.words = words_of(blocked, fit);
}

}  // namespace prismwright
