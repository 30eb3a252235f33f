#pragma once

#include <QString>
#include <string_view>

#include "core/lens/lens_values.h"

namespace prismwright {

/// Why a quantity of the section has no say as the others stand ("Only for division by thickness"); empty where
/// it has.
QString idle_reason(const LensValues& values, std::string_view key);

}  // namespace prismwright
