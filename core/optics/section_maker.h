#pragma once

#include "core/optics/band_frame.h"
#include "core/optics/band_solver.h"
#include "core/optics/section.h"
#include "core/optics/stack_solver.h"

namespace prismwright {

/// Puts the bands of a section together: the refracting band first, ribs on it, then the stacks that start
/// where the light passes over them.
class SectionMaker {
 public:
  explicit SectionMaker(const SectionInput& input) { section_.input = input; }

  Outcome<Section> make();

 private:
  [[nodiscard]] const SectionInput& input() const { return section_.input; }
  [[nodiscard]] const SectionSettings& settings() const { return section_.input.settings; }

  [[nodiscard]] const Zone& last_ring() const;
  Done add_band();
  void add_rib(Band band);
  Done add_stack(Band band);
  [[nodiscard]] BandFrame stack_frame(Band band) const;
  [[nodiscard]] StackTask task_of(Band band) const;
  /// Sets where the stack starts: past the glass and metal that lie before it.
  void set_start(StackTask& task, const BandFrame& frame, const Zone& last_ring) const;
  /// The frame of the refracting band as a stack on that side sees it (turned up, for the lower one).
  [[nodiscard]] BandFrame band_own_frame(Band side) const;
  [[nodiscard]] Zone zone_of(const StackedPrism& stacked, std::size_t number, Band band,
                             const BandFrame& frame) const;
  void find_limits();

  Section section_;
};

}  // namespace prismwright
