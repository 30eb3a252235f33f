#include "geometry/fit_words.h"

#include <cmath>

#include <fmt/format.h>

namespace prismwright {
namespace {

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

std::string words_of(const FitStep& step, const PanelFit& fit, LengthWords lengths) {
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
      return fmt::format("Bring {} in from the sea side{}.", what, into_pocket(step, fit.first_rib, lengths));
    case FitWay::from_lamp_then_in:
      return fmt::format("Bring {} in from the lamp side{}.", what, into_pocket(step, fit.first_rib, lengths));
    case FitWay::from_sea_then_round:
    case FitWay::from_lamp_then_round:
      return fmt::format("Bring {} in from the {} side, then slide it {} round the lens axis into {}.", what,
                         step.way == FitWay::from_sea_then_round ? "sea" : "lamp",
                         length_words(step.round_mm, lengths), fit.first_rib);
    case FitWay::round_the_axis:
      return fmt::format("Turn {} into its seat round the lens axis, from where {} is to stand.", what,
                         fit.second_rib);
    case FitWay::square_to_rib:
      break;
  }
  if (step.marks.front() == fit.second_rib) {
    return fmt::format("Lower {} square onto the ends of all prisms and screw it to rails and cross ribs.",
                       what);
  }
  return fmt::format("Lower {} square to {} into its pocket.", what, fit.first_rib);
}

std::string change_words(const FitChange& change, LengthWords lengths) {
  if (!change.to.empty())
    return fmt::format("{} ({}) to {}, from {}", change.label, change.key, change.to, change.now);
  return fmt::format("{} ({}) to about {}, from {}", change.label, change.key,
                     length_words(change.to_mm, lengths), length_words(change.now_mm, lengths));
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
