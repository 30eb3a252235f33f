#pragma once

#include "app/batch/works_desk.h"
#include "core/works/works_reckoning.h"

namespace prismwright {

/// Make list, loads, cure, time and money as the book stands today. Only time and money ask for the mass of the
/// frame. `moulds` of the lens that were worked out count as they are; the others are guessed from the prisms'
/// sizes.
WorksReckoning reckon(const WorksDesk& desk, double brass_kg = 0, std::vector<MouldFacts> moulds = {});

/// Asks whether the moulds are to be worked out before anything is reckoned: --moulds.
void add_moulds_option(CLI::App& command, bool& wanted);
/// The moulds of the lens where they are `wanted`, which takes a second or so for each; else none. A mould that
/// cannot be made is told and left out.
Outcome<std::vector<MouldFacts>> moulds_of(const WorksDesk& desk, bool wanted, Voice& voice);

/// The brass of the frame, weighed by its outlines. Plans the frame, which takes a while.
double frame_brass_kg(const LensPlan& plan);

}  // namespace prismwright
