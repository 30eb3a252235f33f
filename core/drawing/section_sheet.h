#pragma once

#include <optional>
#include <set>
#include <string>

#include "core/base/outcome.h"
#include "core/drawing/arc_chain.h"
#include "core/drawing/drawing.h"
#include "core/optics/section.h"

namespace prismwright {

/// What the caller says of the drawing; everything else comes from the section.
struct SectionSheetSettings {
  std::string title;
  std::string order;           ///< in words, "fourth order"
  std::string material;        ///< in words; the index comes from the section
  std::string date;            ///< YYYY-MM-DD
  std::string revision;        ///< any short text
  std::optional<Paper> paper;  ///< blank: A4 where the section then stands at 1:10 or larger, else A3
  bool inches = false;         ///< lengths are written in inches
  std::set<std::string> whole_rings = {};  ///< rings of one piece, by their zones (core/lens/whole_rings.h)
  double tolerance_mm = kArcTolerance_mm;  ///< of the arcs that stand for true curves
};

/// The section, drawn to scale, as sheets to be printed: first the whole section with focus, axes, limits,
/// zone marks, main dimensions and scale bar; then the list of zones and, for each, every corner of its outline
/// with radii and centres. Texts never cover each other, nor the border.
///
/// The scale is the largest of 10:1, 5:1, 2:1, 1:1, 1:2, 1:2.5, 1:5, 1:10, 1:20, 1:25, 1:50, 1:100 at which it
/// fits the paper upright or lying. Refused: a tolerance outside 0.0001 to 1 mm, a section without zones or
/// larger than the smallest scale takes.
Outcome<Drawing> section_sheet(const Section& section, const SectionSheetSettings& settings);

/// Refuses a tolerance that arcs cannot keep.
Done check_arc_tolerance(double tolerance_mm);

}  // namespace prismwright
