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
  std::string name;  ///< "A to B, entry", "entry to exit", "outer", "from end to end at A"
  std::string unit;  ///< "mm" or "deg"
  double master = 0;
  double casting = 0;
  double prism = 0;
};

const char* name_of(MasterMeasure::Kind kind);  ///< "width", "angle", "radius", "length"

/// What to expect to measure: straight widths of every face of the section from corner to corner (and
/// the thickness of a centre on its axis), angles inside
/// the glass between neighbouring faces (past the land between them, along the faces' own ends), radii of arcs
/// by template (the circle through an arc's ends and middle), and the straight length along every corner from
/// end to end, or across a whole ring. Corners have the letters that inspection and travellers call them by
/// (core/works/section_corners.h). Sections are those at the middle of the prism, where a master is
/// stretched along depth and height alone. `stocked` is with_stock(prism, settings).
std::vector<MasterMeasure> master_measures(const PlannedPrism& prism, const PlannedPrism& stocked,
                                           const WorksSettings& settings);

/// Columns: kind, measure, unit, as_printed, as_cast, as_finished.
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
