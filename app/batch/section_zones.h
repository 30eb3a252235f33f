#pragma once

#include <ostream>

#include "app/batch/json_print.h"
#include "core/optics/section.h"

namespace prismwright {

/// zones[] of the section: mark, kind, band, from_deg, to_deg, size_by, size_mm, thickness_mm,
/// section_thickness_mm, locked.
Json zones_json(const Section& section);
/// The same as a table.
void print_zones(const Section& section, std::ostream& out);

/// "margin" or "side": what a zone's size_mm is.
std::string_view size_word(SizeBy by);

}  // namespace prismwright
