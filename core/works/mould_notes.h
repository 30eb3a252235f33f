#pragma once

#include <string>
#include <vector>

#include "core/works/mould_facts.h"

namespace prismwright {

/// What a mould maker is told about a mould, a sentence or two for each matter.
std::string draw_note(const DrawFacts& draw);        ///< direction in words, height, least draft
std::string parting_note(const MouldFacts& facts);   ///< plane or surface, its rise
std::string standing_note(const MouldFacts& facts);  ///< which way is up, height
std::string opening_note(const MouldFacts& facts);   ///< gate and vents, the marks they leave
std::string pin_note(const MouldFacts& facts);
std::string undercut_note(const Undercut& undercut);  ///< face, area, depth
/// All of the above in the order of the work.
std::vector<std::string> mould_notes(const MouldFacts& facts);

/// A direction of the master's frame in words: "seaward", "upward", "seaward and 12 deg upward", ...
std::string direction_words(SpaceVector unit);

}  // namespace prismwright
