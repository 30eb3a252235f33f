#pragma once

#include "core/base/outcome.h"

namespace prismwright {

/// What work answers that was stopped through its Progress and has nothing more to say of it.
inline Problem stopped_problem() { return {Trouble::stopped, "stopped", "", "Stopped."}; }

}  // namespace prismwright
