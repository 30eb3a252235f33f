#pragma once

#include <memory>

#include "app/batch/works_act.h"

namespace prismwright {

/// `inspect decide`: accept, shim or scrap a prism, with the reason.
std::unique_ptr<WorksAct> inspect_decide();

}  // namespace prismwright
