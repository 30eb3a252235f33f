#pragma once

#include <functional>

#include "core/optics/stack_solver.h"

namespace prismwright {

/// Where a stack has come to: what the next prism starts from.
struct StackPlace {
  double limiting = 0;   ///< elevation of the limiting ray, radians
  double height_mm = 0;  ///< at which corner A is to stand
  double inner_mm = 0;   ///< distance of the last corner B from the focus; 0 before the first prism
  std::optional<SectionPoint> corner_a;  ///< given by the designer instead
};

/// Makes the prisms of a stack one by one.
class StackBuilder {
 public:
  explicit StackBuilder(const StackTask& task) : task_(task) {}

  /// Length of the entry side of the prism that begins at a corner.
  using Size = std::function<double(SectionPoint corner_a)>;

  /// Corner A whose blunted prism just meets the limiting ray, moved out by the gap.
  [[nodiscard]] SectionPoint corner_above(const StackPlace& place, double side_mm) const;
  /// The prism with that corner and side, or nothing.
  [[nodiscard]] std::optional<StackedPrism> prism(SectionPoint a, double side_mm) const;
  /// The prism above a place whose glass ends at `limit`.
  [[nodiscard]] std::optional<StackedPrism> prism_to(const StackPlace& place, double limit) const;
  /// The prism above a place of a given size.
  [[nodiscard]] std::optional<StackedPrism> prism_of(const StackPlace& place, const Size& size) const;
  [[nodiscard]] static StackPlace above(const StackedPrism& prism);
  /// The prism with corner A given, cut short so that its glass ends at `limit`.
  [[nodiscard]] std::optional<StackedPrism> cut_short(SectionPoint a, double limit) const;

  /// Length of the entry side for which a prism at a corner has the wanted section area (mm2), height from A to
  /// C or section thickness (mm). 0 where none has.
  [[nodiscard]] double side_for(SectionPoint a, Division measure, double wanted) const;
  /// That measure of a prism.
  [[nodiscard]] static double measure(const ReflectingPrism& prism, Division division);

  [[nodiscard]] const StackTask& task() const { return task_; }

 private:
  const StackTask& task_;
};

}  // namespace prismwright
