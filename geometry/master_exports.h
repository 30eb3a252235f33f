#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/print_plan.h"

namespace prismwright {

struct MasterExportChoice {
  bool step = true;
  bool stl = true;
  bool three_mf = true;
  double volume_within = 1e-4;  ///< share by which the volume of a mesh may differ from its solid's
};

/// Writes NAME.step (the whole master, in the frame of its prism) and, for every part as it lies in the
/// printer, PART.stl and PART.3mf. Files are written beside their place and renamed when whole; answers the
/// paths written. Problems: a folder or file that cannot be written, a skin that does not close.
Outcome<std::vector<std::string>> export_master(const MasterBody& master, const PrintPlan& plan,
                                                const std::string& folder, const MasterExportChoice& choice);

}  // namespace prismwright
