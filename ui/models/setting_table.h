#pragma once

#include "core/frame/setting_check.h"
#include "ui/models/cell_table.h"

namespace prismwright {

/// Whether and how much a check falls short: clear, or tight where the drawn gap is under the needed one.
Verdict verdict_of(const SettingCheck& check);

/// Every prism in each of its ribs: drawn against needed gap at its end and its sides, what falls short first.
/// Row i speaks of the `order[i]`-th check.
struct SettingSheet {
  CellSheet sheet;
  std::vector<std::size_t> order;
};
SettingSheet setting_sheet(const std::vector<SettingCheck>& checks, bool inches);

/// What makes up the needed gaps of one check, and what to do where they are not drawn.
QString setting_words(const SettingCheck& check, bool inches);

}  // namespace prismwright
