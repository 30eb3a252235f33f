#pragma once

#include <string>

#include "core/drawing/house_words.h"
#include "core/drawing/lengths.h"
#include "core/lens/plan.h"
#include "core/papers/document_pages.h"

namespace prismwright {

/// The lens in words for the middle of a sentence, "a lighthouse lens of the fourth order ...": order, kind of
/// work, focal distance, panels, prisms, material.
std::string what_it_is(const LensPlan& plan, const HouseWords& words);
/// What its panels do with the light, in one sentence.
std::string what_it_does(const LensPlan& plan);

/// Order, focal distance, panels, prisms, kinds (0: left out), height, inside diameter, material, character
/// asked for.
std::vector<DocumentPages::Fact> lens_facts(const LensPlan& plan, int kinds, const LengthWords& lengths);

/// Panels that hold prisms.
int lit_panels(const LensPlan& plan);
std::string counted_words(std::size_t count, const std::string& one, const std::string& many);

}  // namespace prismwright
