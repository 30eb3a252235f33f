#pragma once

#include <array>
#include <optional>

#include "core/frame/fit_course.h"

namespace prismwright {

/// One step, or two that touch each other.
struct Fit {
  std::array<PlateStep, 2> steps;
  int count = 0;
};

/// Fits steps to stretches of a course: within the allowance everywhere, along the course's headings where a
/// stretch ends at no corner.
class StretchFitter {
 public:
  StretchFitter(const FitCourse& course, const FitRules& rules);

  /// One line or arc from point i to point j > i, if one holds.
  [[nodiscard]] std::optional<Fit> single(std::size_t i, std::size_t j) const;
  /// Two steps that touch each other and the course's headings at both ends, if such hold.
  [[nodiscard]] std::optional<Fit> pair(std::size_t i, std::size_t j) const;
  /// The edge from i as it is.
  [[nodiscard]] Fit edge(std::size_t i) const;

 private:
  [[nodiscard]] Fit pair_with(std::size_t i, std::size_t j, double d0, double d1) const;
  [[nodiscard]] double allowed_turn(double turn, double chord_mm) const;
  [[nodiscard]] double best_turn(std::size_t i, std::size_t j) const;
  [[nodiscard]] bool holds(const Fit& fit, std::size_t i, std::size_t j) const;
  [[nodiscard]] bool may_turn(const PlateStep& step) const;

  const FitCourse& course_;
  const FitRules& rules_;
  double within_mm_;
};

}  // namespace prismwright
