#pragma once

#include <string>
#include <vector>

#include <gp_Pnt.hxx>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_plan.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

enum class Verdict { clear, tight, clash };
std::string_view name_of(Verdict verdict);

/// The room between two parts.
struct Clearance {
  std::string first;       ///< mark of a prism
  std::string second;      ///< mark of a neighbouring prism, a rib or a ring
  double gap_mm = 0;       ///< least distance between the two solids; 0 when they touch or overlap
  double needed_mm = 0;    ///< heat growth over the temperature range (see needed_gap_mm)
  double overlap_mm3 = 0;  ///< common volume where they overlap
  Verdict verdict = Verdict::clear;
  gp_Pnt first_point;  ///< nearest points, lens frame
  gp_Pnt second_point;
};

/// Every neighbouring pair of prisms and every prism with the ribs of its panel and the rings near it.
///
/// Gaps are exact solid-to-solid distances. Congruent panels (same shape keys) are worked out once. Verdict:
/// clash where the solids overlap by more than 1e-3 mm3; tight where the gap is under the needed one; else
/// clear.
Outcome<std::vector<Clearance>> find_clearances(const LensPlan& plan, const LensBodies& bodies,
                                                const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                const Progress& progress = {});

}  // namespace prismwright
