#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/despatch/pack.h"

namespace prismwright {

/// The start page of a pack, as HTML that opens from the disk and needs nothing but itself and the pack's
/// pictures: pictures, main figures, what changed, what is withheld and why, every file by its group, cautions.
/// All words are escaped; it works without scripts and on narrow screens.
std::string start_page(const PackReport& report);

/// The words as HTML text.
std::string html_words(std::string_view words);
/// A path of the pack as a link's address.
std::string html_address(std::string_view path);

/// changes.txt: what changed since the last pack, line by line.
std::string changes_text(const PackReport& report);

}  // namespace prismwright
