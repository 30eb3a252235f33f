#pragma once

#include <string>
#include <vector>

#include "core/base/csv_cell.h"
#include "core/frame/nest.h"
#include "core/frame/parts_list.h"

namespace prismwright {

/// The parts list: kind, making, metal, thickness_mm, size, quantity, mass_each_g, mass_all_g, sheets (their
/// numbers in the nest, counted from 1, parted by blanks), marks (parted by blanks). Masses that are not known
/// are left empty.
std::string parts_csv(const std::vector<PartsLine>& lines, const Nest& nest);

/// The sheets: sheet, file, metal, thickness_mm, width_mm, height_mm, pieces, used_share, marks; then plates
/// that no sheet takes, without a number. `files` names the file of each sheet.
std::string sheets_csv(const Nest& nest, const std::vector<std::string>& files);

/// Numbers of the sheets, from 1, on which any of the marks lies, in order.
std::vector<std::size_t> sheets_of(const Nest& nest, const std::vector<std::string>& marks);

}  // namespace prismwright
