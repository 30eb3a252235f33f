#pragma once

#include <ostream>

#include "app/batch/json_print.h"
#include "core/light/setting_errors.h"

namespace prismwright {

/// The answer of `light --errors` in JSON: every key names its unit.
Json errors_json(const SettingErrors& errors);
/// The same as tables: the trials, what a zone's errors turn, tolerances, losses.
void print_errors(const SettingErrors& errors, std::ostream& out);

}  // namespace prismwright
