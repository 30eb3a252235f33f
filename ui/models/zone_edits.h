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
};

/// Blank where no quantity decides this cell alone: it follows from the others.
std::optional<ZoneEdit> edit_behind(const Section& section, const Zone& zone, ZoneCell cell);

/// A typed text as an edit of the book. A text that is no number goes on as it is, to be refused with the
/// sentence that every other field gives.
struct ZoneAssignment {
  Assignment assignment;
  QString words;  ///< for undo; empty: the words of the quantity do
};
ZoneAssignment assignment_of(const Section& section, const Zone& zone, const ZoneEdit& edit,
                             const QString& typed, bool inches);

/// The margin of a refracting zone: height of its outer edge at the edge depth, mm.
double margin_mm(const Section& section, const Zone& zone);
/// Length of the entry side (reflecting), breadth between the margins (refracting; a disc's whole height), mm.
double breadth_mm(const Section& section, const Zone& zone);

}  // namespace prismwright
