#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_parts.h"
#include "core/frame/frame_settings.h"

namespace prismwright {

/// A plate on a sheet: a point of its own frame is turned about the origin by `turn_deg` (anticlockwise), then
/// moved by `shift`; front face up. The sheet's lower left corner is the origin.
struct NestedPart {
  std::string mark;
  std::size_t flat = 0;  ///< its place in the list of flat parts
  double turn_deg = 0;
  PlatePoint shift;
};

/// One sheet to be cut.
struct NestSheet {
  PartMetal metal = PartMetal::brass;
  double thickness_mm = 0;
  double width_mm = 0;
  double height_mm = 0;
  std::vector<NestedPart> parts;
  double used_share = 0;  ///< area of its parts, less what is cut out of them, as a share of the sheet's
};

/// All sheets for the flat parts of a frame.
struct Nest {
  std::vector<NestSheet> sheets;            ///< by metal and thickness, in the order of the parts
  std::vector<std::string> too_large;       ///< a sentence for each kind of plate that no sheet takes
  std::vector<std::string> left_over;       ///< marks of all those plates
  [[nodiscard]] double used_share() const;  ///< of all sheets together; 0 without any
};

/// Lays the plates that are cut flat on sheets of the settings' size: true outlines, not their boxes, the
/// largest first, with at least the settings' spacing between them and to the sheet's edge; small ones may lie
/// in the openings of large ones. Plates are turned by quarter turns, and by 15 deg steps where they fit no
/// other way or where that saves a sheet. Equal plates give equal sheets. Refused: sizes that are not above 0,
/// a spacing below 0 (code "sheet"); stopped by `progress` (code "stopped").
Outcome<Nest> nest_flats(const std::vector<FlatPart>& flats, const FrameSettings& settings,
                         const Progress& progress = {});

/// The plate where it lies on its sheet: outline, through cuts, pockets and holes; bores and `place` stay.
FlatPart laid_out(const FlatPart& part, const NestedPart& nested);

}  // namespace prismwright
