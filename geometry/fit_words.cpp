#include "geometry/fit_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/lens/quantities.h"

namespace prismwright {
namespace {

constexpr double kThousandth_mm = 0.0254;  // of an inch

std::string all_of(const std::vector<std::string>& marks) {
  if (marks.size() == 1) return marks.front();
  return fmt::format("{} to {}, cemented together,", marks.front(), marks.back());
}

std::string together(const FitStep& step, const PanelFit& fit) {
  const std::string first = fmt::format("Put {} together on the bench, then", fmt::join(step.marks, ", "));
  if (step.way == FitWay::square_to_rib) {
    return fmt::format("{} lower them as one square to {}{}.", first, fit.first_rib,
                       step.into_pocket_mm > 0 ? " into its pockets" : "");
  }
  return fmt::format("{} bring them in as one {}.", first, name_of(step.way));
}

/// To a tenth of a millimetre, as fine as the ways are searched.
std::string length_words(double mm, LengthWords lengths) {
  return lengths.plain(std::round(mm * 10) / 10) + " " + lengths.unit();
}

/// A depth that may be small.
std::string fine_words(double mm, LengthWords lengths) { return lengths.plain(mm) + " " + lengths.unit(); }

std::string into_pocket(const FitStep& step, const std::string& rib, LengthWords lengths) {
  if (step.into_pocket_mm <= 0) return "";
  return fmt::format(", then {} square into {}", length_words(step.into_pocket_mm, lengths), rib);
}

// A rib that nothing reaches into has no pockets.
const char* upward(const PanelFit& fit) {
  const bool pockets =
      std::any_of(fit.steps.begin(), fit.steps.end(), [](const FitStep& s) { return s.into_pocket_mm > 0; }) ||
      std::any_of(fit.cannot.begin(), fit.cannot.end(), [](const FitBlocked& b) { return b.off_rib_mm > 0; });
  return pockets ? "pockets" : "inner face";
}

bool is_rail(const std::string& mark) { return mark.find("-rail-") != std::string::npos; }

// What brass between the ribs the second one is screwed to: of all that was screwed to the first.
std::string screwed_to(const PanelFit& fit) {
  bool rails = false;
  bool cross_ribs = false;
  for (const FitStep& step : fit.steps) {
    for (const std::string& mark : step.marks) {
      rails = rails || is_rail(mark);
      cross_ribs = cross_ribs || (step.way == FitWay::screwed && !is_rail(mark));
    }
  }
  if (!rails && !cross_ribs) return "";
  return fmt::format(" and screw it to {}{}{}", rails ? "rails" : "", rails && cross_ribs ? " and " : "",
                     cross_ribs ? "cross ribs" : "");
}

std::string lowered(const FitStep& step, const PanelFit& fit) {
  const std::string what = all_of(step.marks);
  if (step.marks.front() == fit.second_rib) {
    return fmt::format("Lower {} square onto the ends of all prisms{}.", what, screwed_to(fit));
  }
  return fmt::format("Lower {} square to {}{}.", what, fit.first_rib,
                     step.into_pocket_mm > 0 ? " into its pocket" : "");
}

std::string words_of(const FitStep& step, const PanelFit& fit, LengthWords lengths) {
  if (step.put_together) return together(step, fit);
  const std::string what = all_of(step.marks);
  switch (step.way) {
    case FitWay::laid:
      return fmt::format("Lay {} down with its {} upward.", what, upward(fit));
    case FitWay::screwed:
      return fmt::format("Screw {} to {}.", what, fit.first_rib);
    case FitWay::from_sea:
      return fmt::format("Bring {} in straight from the sea side.", what);
    case FitWay::from_lamp:
      return fmt::format("Bring {} in straight from the lamp side.", what);
    case FitWay::from_sea_then_in:
      return fmt::format("Bring {} in from the sea side{}.", what, into_pocket(step, fit.first_rib, lengths));
    case FitWay::from_lamp_then_in:
      return fmt::format("Bring {} in from the lamp side{}.", what, into_pocket(step, fit.first_rib, lengths));
    case FitWay::from_sea_then_round:
    case FitWay::from_lamp_then_round:
      return fmt::format("Bring {} in from the {} side, then swing it {} round the lens axis into {}.", what,
                         step.way == FitWay::from_sea_then_round ? "sea" : "lamp",
                         length_words(step.round_mm, lengths), fit.first_rib);
    case FitWay::round_the_axis:
      return fmt::format("Turn {} into its seat round the lens axis, from where {} is to stand.", what,
                         fit.second_rib);
    case FitWay::square_to_rib:
      break;
  }
  return lowered(step, fit);
}

// What is to be is found to a tenth of a millimetre; in inches it is told to a thousandth farther on, so that
// it is never less of a change than is asked for.
std::string wanted_words(const FitChange& change, LengthWords lengths) {
  if (!lengths.inches) return fine_words(change.to_mm, lengths);
  const double thousandths = change.to_mm / kThousandth_mm;
  const double whole =
      change.to_mm > change.now_mm ? std::ceil(thousandths - 1e-6) : std::floor(thousandths + 1e-6);
  return fine_words(whole * kThousandth_mm, lengths);
}

std::string change_words(const FitChange& change, LengthWords lengths) {
  const std::string what = fmt::format("{} ({})", change.label, change.key);
  if (!change.to.empty()) {
    const Quantity* quantity = find_quantity(change.key);
    const std::string unit = quantity && !quantity->unit.empty() ? " " + quantity->unit : "";
    return fmt::format("{} to {}{}, from {}{}", what, change.to, unit, change.now, unit);
  }
  std::string now = fine_words(change.now_mm, lengths);
  std::string to = wanted_words(change, lengths);
  if (now == to) {
    now = lengths.exact(change.now_mm) + " " + lengths.unit();
    to = lengths.exact(change.to_mm) + " " + lengths.unit();
  }
  return fmt::format("{} to about {}, from {}", what, to, now);
}

std::string what_to_do(const FitBlocked& blocked, LengthWords lengths, const char* else_words) {
  if (blocked.changes.empty()) return else_words;
  std::vector<std::string> all;
  for (const FitChange& change : blocked.changes) all.push_back(change_words(change, lengths));
  return fmt::format("Set {}.", fmt::join(all, ", and "));
}

std::string words_of(const FitBlocked& blocked, const PanelFit& fit, LengthWords lengths) {
  const std::string what = all_of(blocked.marks);
  const bool is_rib = blocked.marks.front() == fit.second_rib;
  if (blocked.deep_mm > 0) {
    return fmt::format("{} cannot go {}: {} stands at least {} deep where it belongs. {}", what,
                       is_rib ? "on" : "in", blocked.blocked_by, fine_words(blocked.deep_mm, lengths),
                       what_to_do(blocked, lengths, "Make room there."));
  }
  if (is_rib) {
    return fmt::format("{} cannot go on: {} holds it up {} before it is home. {}", what, blocked.blocked_by,
                       length_words(blocked.left_mm, lengths),
                       what_to_do(blocked, lengths, "Give the pockets more room or less depth."));
  }
  return fmt::format(
      "{} cannot go in: the best way is {}, and there {} holds it up {} before it is home. {}", what,
      name_of(blocked.way), blocked.blocked_by, length_words(blocked.left_mm, lengths),
      what_to_do(blocked, lengths,
                 "Give shallower pockets, more room between them, or other faces of the prism."));
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
    case FitWay::from_sea_then_round:
      return "from the sea side, then round the lens axis into the rib";
    case FitWay::from_lamp_then_round:
      return "from the lamp side, then round the lens axis into the rib";
    case FitWay::round_the_axis:
      return "round the lens axis";
  }
  return "";
}

void put_in_words(PanelFit& fit, LengthWords lengths) {
  for (FitStep& step : fit.steps) step.words = words_of(step, fit, lengths);
  for (FitBlocked& blocked : fit.cannot) blocked.words = words_of(blocked, fit, lengths);
}

}  // namespace prismwright
