#pragma once

#include <QString>
#include <optional>

#include "core/lens/quantities.h"
#include "core/optics/section.h"

namespace prismwright {

/// A quantity behind a cell of the zone table.
enum class ZoneCell { from, to, margin, breadth };

/// What stands behind one cell: the quantity it edits and the number it holds now, in the quantity's unit.
struct ZoneEdit {
  std::string key;
  std::string unit;
  double value = 0;
  QString words;  ///< what undo names: "ring R3 outer margin"
};

/// Blank where no quantity decides this cell alone: it follows from the others.
std::optional<ZoneEdit> edit_behind(const Section& section, const Zone& zone, ZoneCell cell);

/// The typed text as an assignment; blank when it is no number. A text without a unit is in `typed_unit`.
std::optional<Assignment> assignment_of(const Section& section, const Zone& zone, const ZoneEdit& edit,
                                        const QString& text, const QString& typed_unit);

/// The margin of a refracting zone: height of its outer edge at the edge depth, mm.
double margin_mm(const Section& section, const Zone& zone);
/// Length of the entry side (reflecting), breadth between the margins (refracting; a disc's whole height), mm.
double breadth_mm(const Section& section, const Zone& zone);

}  // namespace prismwright
