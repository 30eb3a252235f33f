#pragma once

#include "app/batch/works_desk.h"
#include "core/works/works_reckoning.h"

namespace prismwright {

/// Make list, loads, cure, time and money as the book stands today; masters and moulds are guessed from the
/// prisms' sizes. Only time and money ask for the mass of the frame.
WorksReckoning reckon(const WorksDesk& desk, double brass_kg = 0);

/// The brass of the frame, weighed by its outlines. Plans the frame, which takes a while.
double frame_brass_kg(const LensPlan& plan);

}  // namespace prismwright
