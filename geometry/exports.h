#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

struct ExportChoice {
  bool step = true;
  bool stl = false;
  double stl_chord_mm = 0.05;          ///< greatest distance of a facet from its face
  std::vector<std::string> only = {};  ///< marks; empty: all prisms, and lens.step too
};

/// Writes MARK.step and MARK.stl for each prism, and lens.step (all prisms and the frame, product names =
/// marks, colours). Every file is written beside its place and renamed when whole; answers the paths written. A
/// folder that cannot be made or written, or a full disk, is a file Problem; files of the same names from
/// before stay whole.
Outcome<std::vector<std::string>> export_bodies(const LensBodies& bodies, const std::vector<FrameBody>& metal,
                                                const std::string& folder, const ExportChoice& choice,
                                                const Progress& progress = {});

}  // namespace prismwright
