#pragma once

#include <ostream>

#include "app/batch/json_print.h"
#include "core/lens/section_compare.h"

namespace prismwright {

/// first, second, alike, settings[] (key, label, unit, first, second), figures[] (key, label, first, second),
/// zones[] (mark, kind, differs, first, second; null on a side that has no such zone).
Json comparison_json(const SectionComparison& comparison, const LensValues& first, const LensValues& second);
/// The same as tables; of the zones those that differ.
void print_comparison(const SectionComparison& comparison, std::ostream& out);

}  // namespace prismwright
