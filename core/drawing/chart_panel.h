#pragma once

#include <optional>
#include <vector>

#include "core/drawing/plate_view.h"
#include "core/drawing/unrolled_lens.h"
#include "core/works/ledger.h"

namespace prismwright {

inline constexpr double kLeastMark_mm = 1.6;  ///< marks are written no smaller

/// The words of one prism inside its outline: mark and sign, or the sign alone.
struct InsideWords {
  PlatePoint middle;  ///< of the words, on the chart
  double size_mm = 0;
};

/// A panel of the chart at a scale: which marks stand inside their prisms, and which in a column beside it.
struct PanelMarks {
  std::vector<std::optional<InsideWords>> inside;  ///< one for each prism; blank: in the column
  std::vector<std::size_t> beside;                 ///< prisms of the column from the top down
};
PanelMarks place_marks(const UnrolledPanel& panel, double paper_per_mm);

/// So much of the column of a panel that is written at one drawing of it; what stands inside is written at the
/// first.
struct MarksPart {
  std::size_t from = 0;
  std::size_t count = 0;
};
/// What a panel takes on paper with that part of its column, without its head, mm.
struct PanelRoom {
  double wide = 0;
  double high = 0;
};
PanelRoom room_of(const UnrolledPanel& panel, const MarksPart& part, double paper_per_mm);
/// How many marks a column of that height holds.
std::size_t column_holds(double high_mm);
double column_high_mm(std::size_t marks);
inline constexpr double kPanelHead_mm = 7;  ///< above a panel, for its number

/// Draws a panel in the tones of its prisms' stages, its number and width in degrees above. `map.origin`: where
/// its axis meets the focal plane.
void paint_panel(SheetMaker& maker, const UnrolledPanel& panel, double width_deg, const PlateMap& map,
                 const StageByMark& stages);

/// Signs of the stages inside the prisms that are large enough.
void write_signs(SheetMaker& maker, const UnrolledPanel& panel, const PlateMap& map, const StageByMark& stages);

/// Marks with their signs: inside, or right of the panel at the end of a leader.
void write_marks(SheetMaker& maker, const UnrolledPanel& panel, const PanelMarks& marks, const MarksPart& part,
                 const PlateMap& map, const StageByMark& stages);

}  // namespace prismwright
