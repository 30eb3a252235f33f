#pragma once

#include <string_view>
#include <vector>

#include "core/lens/brief.h"

namespace prismwright {

/// A kind of lamp and the values a lens starts from when it is chosen. Sizes, flux and temperature are typical
/// figures from memory of the trade: measured values of the lamp in hand win over them.
struct GenericLamp {
  std::string_view key;    ///< "halogen-100"
  std::string_view words;  ///< "Tungsten halogen 100 W"
  Lamp lamp;               ///< in the focus, without place error
};

/// In the order in which they are offered: flames first.
const std::vector<GenericLamp>& generic_lamps();
/// The lamp with this key or these words, or null.
const GenericLamp* find_generic_lamp(std::string_view text);

/// The generic lamp put into a lens: its shape, set, light and flux; how far it stands off the focus and the
/// way it faces stay as they were.
Lamp with_generic(const Lamp& present, const GenericLamp& chosen);

}  // namespace prismwright
