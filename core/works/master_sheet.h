#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/drawing.h"
#include "core/lens/plan.h"
#include "core/works/works_settings.h"

namespace prismwright {

/// One thing to measure on a prism, in three states: the master as printed, the casting as it leaves the
/// mould, the prism when finished.
struct MasterMeasure {
  enum class Kind { width, angle, radius, length };
  Kind kind = Kind::width;
  std::string name;  ///< "A to C", "angle at B", "radius of outer", "length at A"
  std::string unit;  ///< "mm" or "deg"
  double master = 0;
  double casting = 0;
  double prism = 0;
};

/// What to expect to measure: the widths of the section from corner to corner (every side of the profile, and
/// the lands), the angles between neighbouring faces at their corner, radii of arcs, and the lengths along the
/// corners from end to end (straight, by calliper). Sections are those at the middle of the prism; the master's
/// is stretched along depth and height there.
std::vector<MasterMeasure> master_measures(const PlannedPrism& prism, const PlannedPrism& stocked,
                                           const WorksSettings& settings);

/// kind, name, unit, master, casting, prism.
std::string master_csv(const std::vector<MasterMeasure>& measures);

/// What the caller says on the sheet.
struct MasterSheetWords {
  std::string title;               ///< of the lens
  std::string name;                ///< of the master
  std::string date;                ///< YYYY-MM-DD
  std::vector<std::string> marks;  ///< of the prisms that share it
  std::vector<std::string> notes;  ///< how it lies in the printer, parts
  Paper paper = Paper::a4;
  bool inches = false;
};

/// A sheet: the section to scale with its corners lettered, the casting's outline over the prism's, and the
/// table of measures.
Sheet master_sheet(const PlannedPrism& prism, const PlannedPrism& stocked, const WorksSettings& settings,
                   const MasterSheetWords& words);

}  // namespace prismwright
