#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/drawing/section_sheet.h"

namespace prismwright {

/// The section's outlines as DXF, true to size, in mm whatever the sheets are lettered in: GLASS (each outline
/// a closed chain of lines and arcs, piece after piece), METAL (ribs), AXES, FOCUS, MARKS (each zone's mark)
/// and NOTES (what it is, and that its unit is the millimetre).
Outcome<std::string> section_dxf(const Section& section, const SectionSheetSettings& settings);

/// Writes the section as the ending of `path` says: .pdf with all sheets, .svg with the first sheet and the
/// others beside it as NAME-2.svg, NAME-3.svg, ..., or .dxf. Answers the paths written. Every file is written
/// beside its place and renamed when whole. Refused: another ending (code "ending"), and what section_sheet and
/// write_whole refuse.
Outcome<std::vector<std::string>> write_section_drawing(const Section& section,
                                                        const SectionSheetSettings& settings,
                                                        const std::string& path);

}  // namespace prismwright
