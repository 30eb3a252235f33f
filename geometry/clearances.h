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

/// Every neighbouring pair of prisms, every prism with the two ribs of its panel, and with a ring within 25 mm.
///
/// Gaps are taken between the solids' own faces and edges: against a rib's flat layers and a neighbour's turned
/// section in closed form where those stand as planned, else by the kernel's solid-to-solid distance; within
/// 5e-4 mm. Congruent pairs, mirror images too, are worked out once, on two threads. Verdict: clash where the
/// solids overlap by more than 1e-3 mm3; tight where the gap is under the needed one; else clear. A prism meets
/// a rib with its end and with its sides, which need different gaps: the worse verdict counts, and of two alike
/// the lesser gap. Refracting neighbours without a setting gap (section.gap_mm = 0) are cemented ring to ring
/// by historic practice: they need none. Problems: the modeller finds no answer (code "clearance"), or the work
/// was stopped.
Outcome<std::vector<Clearance>> find_clearances(const LensPlan& plan, const LensBodies& bodies,
                                                const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                const Progress& progress = {});

}  // namespace prismwright
