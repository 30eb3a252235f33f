#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/works/works_settings.h"

namespace prismwright {

/// What is done in a step of curing and annealing.
enum class CureAct { fill, cure, vent, heat, hold, cool, take_out };

/// One step of a load's way from filling to taking out. Hours count from the filling; hands take none here.
/// Blank temperature or pressure: the program gives none (why: CurePlan::notes).
struct CureStep {
  CureAct act = CureAct::cure;
  std::string what;  ///< one sentence
  double from_h = 0;
  double to_h = 0;
  std::optional<double> from_c;
  std::optional<double> to_c;
  std::optional<double> bar;  ///< over the air's
  std::string source;         ///< "resin maker's sheet", "handbooks of cast sheet", ...
};

struct CurePlan {
  double thickest_mm = 0;
  std::vector<CureStep> steps;
  double total_h = 0;
  double vessel_h = 0;             ///< of it in the vessel
  std::vector<std::string> notes;  ///< sentences: what is left out and why, what lies beyond the tables
  [[nodiscard]] const CureStep* find(CureAct act) const;
};

/// Rate of cooling by thickness from makers' tables of cast sheet, C per hour (sources: trade handbooks): 30 to
/// 9 mm, 14 from 12 to 18, 10 at 24, 6.7 from 38 to 44, 5.6 at 51; straight between them. Beyond 51 mm the
/// table ends: the rate then falls with the square of the thickness, as the stress in a plate that cools at a
/// given rate grows (derived).
double table_cooling_c_per_h(double thickest_mm);
inline constexpr double kCoolingTableEnds_mm = 51;

/// Cure and annealing of a load by its thickest section.
///
/// Holding: works.anneal_h_per_mm by the thickness, works.anneal_least_h at least. Cooling from works.anneal_c
/// to works.take_out_c: at works.cooling_c_per_h where it is given; else at the table's rate, and above 8 mm in
/// no less than thickness / 4 hours.
///
/// Nothing that it answers names a pressure or temperature beyond what was entered for the vessel. Without
/// both works.vessel_max_bar and works.vessel_max_c it names none at all. A cure or annealing that lies beyond
/// them is left out in whole, never cut down to them: notes say so, without naming it. Times stay.
CurePlan plan_cure(const WorksSettings& works, double thickest_mm);

}  // namespace prismwright
