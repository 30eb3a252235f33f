#pragma once

#include <QString>
#include <optional>

#include "core/lens/section_edits.h"

namespace prismwright {

/// A cell of the zone table that can give a zone its size.
enum class ZoneCell { from, to, margin, breadth, thickness };

/// What stands behind one cell: how it gives the zone its size, and the number that it holds now.
struct ZoneSize {
  SizeBy by = SizeBy::to_deg;
  double value = 0;         ///< as the cell shows it: a lower prism's limit is below level
  const char* unit = "mm";  ///< "deg" or "mm"
};

/// Blank where the cell gives this zone no size, and for every cell of a locked zone.
std::optional<ZoneSize> size_behind(const Section& section, const Zone& zone, ZoneCell cell);

/// The number as it is edited: to a micrometre or a ten-thousandth of a degree; what is finer is no maker's
/// wish.
QString edit_text(const ZoneSize& size, bool inches);

/// A typed text as an edit of the zone; refused when it is no number, or when the zone does not allow it.
Outcome<SectionEdit> edit_from_text(const LensValues& values, const Section& section, const Zone& zone,
                                    const ZoneSize& size, const QString& typed, bool inches);

/// Length of the entry side (reflecting), breadth between the margins (refracting; a disc's whole height), mm.
double breadth_mm(const Section& section, const Zone& zone);

}  // namespace prismwright
