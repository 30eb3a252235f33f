#pragma once

#include <algorithm>

#include "core/drawing/arrangement_layout.h"
#include "core/drawing/arrangement_sheet.h"
#include "core/drawing/lengths.h"
#include "core/drawing/over_all.h"
#include "core/drawing/sheet_maker.h"

namespace prismwright {

/// What the views of a general arrangement are drawn from.
struct ArrangementParts {
  const LensPlan& plan;
  const FramePlan& frame;
  const ArrangementViews& views;
  ArrangementLayout layout;
  OverAll glass;
  OverAll metal;  ///< of the whole frame
  LengthWords lengths;

  /// Lowest and highest place of glass and frame.
  [[nodiscard]] double low_z() const { return std::min(glass.low_z, metal.low_z); }
  [[nodiscard]] double high_z() const { return std::max(glass.high_z, metal.high_z); }
  [[nodiscard]] double radius_mm() const { return std::max(glass.radius_mm, metal.radius_mm); }
};

/// The lens from the sea with its breadths below, its heights on the left, axis and focal plane.
void draw_elevation(SheetMaker& maker, const ArrangementParts& parts);

/// The section on one side of the axis, glass and level plates hatched: focal distance, radius and heights of
/// the glass.
void draw_half_section(SheetMaker& maker, const ArrangementParts& parts);

/// The lens from above: sides and axes of the panels, their numbers and widths, hinge of the door, and an arrow
/// along the axis of panel 1.
void draw_arrangement_plan(SheetMaker& maker, const ArrangementParts& parts);

/// The panel in whose middle plane the half section is cut: the first that holds glass.
int section_panel(const LensPlan& plan);

}  // namespace prismwright
