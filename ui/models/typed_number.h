#pragma once

#include <QString>
#include <optional>
#include <string>

namespace prismwright {

/// A number typed for a value of this unit: a bare length typed while inches are shown counts as inches, any
/// may carry a unit of its own. Blank when it is no number.
std::optional<double> typed_number(const QString& typed, const std::string& unit, bool inches);

}  // namespace prismwright
