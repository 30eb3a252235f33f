#pragma once

#include <span>
#include <string_view>

namespace prismwright {

// Said on every card, sheet and answer that has to do with casting; written once. Figures: 29 CFR 1910.1000 and
// ACGIH for the limits of methyl methacrylate, flash point and lower explosive limit published with them;
// EU 2014/68 and the UK's PSSR 2000 for pressure equipment.

struct Caution {
  std::string_view head;  ///< one word
  std::string_view text;
};

/// Monomer, exotherm, pressure, in that order. Limits of law and matter, never advice on what to run.
std::span<const Caution> casting_cautions();

}  // namespace prismwright
