#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "geometry/mould.h"

namespace prismwright {

struct MouldExportChoice {
  bool step = true;
  bool stl = false;            ///< the halves for a printer too
  double stl_chord_mm = 0.05;  ///< greatest distance of a facet from its face
};

/// Writes MARK-mould.step (products MARK-lower, MARK-upper and MARK-master in one assembly), MARK-mould-lower
/// .stl and MARK-mould-upper.stl for every mould. Every file is written beside its place and renamed when
/// whole; answers the paths. Answers without a mould are passed over. Problems as export_bodies.
Outcome<std::vector<std::string>> export_moulds(const std::vector<MouldAnswer>& answers,
                                                const std::string& folder, const MouldExportChoice& choice,
                                                const Progress& progress = {});

}  // namespace prismwright
