#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/light/rhythm.h"

namespace prismwright {

/// The classes of rhythm of the lists of lights (IHO S-12, INT 1 section P).
enum class LightClass { fixed, occulting, isophase, flashing, long_flashing, quick, very_quick, ultra_quick };

/// The character of a light as lists of lights write it: "F", "Fl 5s", "Fl(2+1)R 15s", "Al.WR 10s".
struct Character {
  LightClass light = LightClass::fixed;
  std::vector<int> groups;      ///< flashes of each group of a period; empty or {1}: single
  std::vector<Screen> colours;  ///< in the order of the flashes; one: all alike. Screen::none is white
  double period_s = 0;          ///< 0: none is given
};

/// The character of a rhythm. Flashes and eclipses are taken at half of each peak; flashes stand in a group
/// where the time between them is clearly shorter than the longest of the period.
Character character_of(const Rhythm& rhythm);

/// As lists of lights print it; the period to a tenth of a second.
std::string character_text(const Character& character);

/// Reads such a text, as written by hand ("Fl (2) 10 s", "fl.R.5s"); refuses what it does not know, with the
/// classes that it does.
Outcome<Character> read_character(std::string_view text);

/// Whether the lens gives what was wished, and if not a sentence on what differs. Empty: as wished.
std::string difference(const Character& wished, const Character& given);

/// Sentences on what the published rules and common practice find at fault, each with the value, the limit and
/// what to do.
std::vector<std::string> rhythm_warnings(const Rhythm& rhythm);

}  // namespace prismwright
