#pragma once

#include "app/batch/works_desk.h"
#include "core/works/works_reckoning.h"

namespace prismwright {

/// Make list, loads, cure, time and money as the book stands today. The brass is weighed by its outlines;
/// masters and moulds are guessed from the prisms' sizes.
WorksReckoning reckon(const WorksDesk& desk);

}  // namespace prismwright
