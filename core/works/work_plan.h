#pragma once

#include <array>
#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/works/make_list.h"
#include "core/works/works_log.h"

namespace prismwright {

/// The steps of the plan, in the order of the work. Their names are the words of Spending::step.
enum class WorkStep { master, mould, cast, anneal, polish, prove, glaze, frame };
inline constexpr std::array<WorkStep, 8> kWorkSteps = {WorkStep::master, WorkStep::mould,  WorkStep::cast,
                                                       WorkStep::anneal, WorkStep::polish, WorkStep::prove,
                                                       WorkStep::glaze,  WorkStep::frame};
std::string_view name_of(WorkStep step);
std::optional<WorkStep> find_work_step(std::string_view name);

/// Loads of the vessel and the oven that the castings to be poured make (core/works/load_plan.h gives them).
struct LoadCounts {
  int vessel_loads = 0;
  double cure_h_each = 0;       ///< vessel closed, one load after the other
  std::vector<double> oven_h;   ///< hours of each oven load, heating and cooling too
  std::optional<int> castings;  ///< that these loads hold; fewer than are to be poured: the plan says so
};

/// A guess of the loads where none were planned: castings of like thickness together (works.thickness_ratio),
/// each mould once in a load, as if the vessel had room for all of those.
LoadCounts guess_loads(const LensPlan& plan, const MakeList& list);

/// Volumes that only solids give; blank: guessed from core/works/prism_size.h.
struct PieceVolumes {
  std::string master;
  std::optional<double> print_cm3;    ///< of the printed master
  std::optional<double> tooling_cm3;  ///< of the mould
};

/// What the plan is worked out from beside the make list.
struct WorkInputs {
  std::optional<LoadCounts> loads;  ///< blank: guess_loads
  std::vector<PieceVolumes> volumes;
  double brass_kg = 0;                  ///< mass of the frame
  std::span<const Spending> spendings;  ///< hours spent on the frame are taken off what is left of it
  std::chrono::sys_days today;          ///< start where works.start_date is blank
};

/// One step: what it takes for the whole lens from its first master, and what is left of it by the ledger.
///
/// Castings are those of the make list's rule, scrap too; the lost ones are taken as lost at proving, so they
/// are polished and proved as well.
struct StepPlan {
  WorkStep step = WorkStep::master;
  double units =
      0;  ///< masters, moulds, loads of the vessel, of the oven, castings, castings, prisms; frame: 1
  double units_left = 0;
  double hands_h = 0;  ///< hours of hands for the whole lens
  double hands_left_h = 0;
  double machine_left_h = 0;  ///< printer, vessel or oven: runs day and night beside the hands
};

/// A bar of the plan, in days from the start (day 0 begins on start_date).
struct WorkBar {
  WorkStep step = WorkStep::master;
  double from_day = 0;
  double to_day = 0;
};

struct WorkPlan {
  std::chrono::sys_days start;
  std::vector<StepPlan> steps;   ///< one for each of kWorkSteps, in that order
  std::vector<WorkBar> bars;     ///< steps with something left, in order of the work
  double days = 0;               ///< to the last bar's end
  std::chrono::sys_days finish;  ///< the day on which that falls, in the year 9999 at the latest
  double hands_left_h = 0;
  /// Castings to be poured that fit no planned load of the vessel. The plan takes no time for filling and
  /// annealing them, so that where there are any the lens is not ready before `finish` and has no day.
  int unplaced = 0;
  std::vector<std::string> notes;  ///< sentences on what was guessed or holds the plan up

  [[nodiscard]] const StepPlan& of(WorkStep step) const { return steps[static_cast<std::size_t>(step)]; }
};

/// The plan of what is left.
///
/// Hands: works.hours_a_week, spread evenly over seven calendar days, one thing after the other; whatever is
/// ready and comes first in the order of the work is taken next. A unit of a step is ready when the step before
/// has done as large a share of what it must pass on. One printer, one vessel, one oven: each runs day and
/// night, one unit after the other. The frame fills the hands' idle time, and is done before glazing starts.
WorkPlan work_plan(const LensPlan& plan, const MakeList& list, const WorkInputs& inputs);

/// "2027-03-01".
std::string day_text(std::chrono::sys_days day);

/// Columns: step, units, units_left, hands_h, hands_left_h, machine_left_h, from_day, to_day, from, to.
std::string work_plan_csv(const WorkPlan& plan);

}  // namespace prismwright
