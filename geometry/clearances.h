#pragma once

#include <memory>
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

/// What the two parts of a clearance are.
enum class ClearanceKind { prism_prism, prism_metal, metal_metal, surroundings };
std::string_view name_of(ClearanceKind kind);  ///< "prism-prism", "prism-metal", "metal-metal", "surroundings"

/// The room between two parts.
struct Clearance {
  std::string first;       ///< mark of a prism or a metal part
  std::string second;      ///< mark of another, or of what stands round: see surroundings.h
  double gap_mm = 0;       ///< least distance between the two solids; 0 when they touch or overlap
  double needed_mm = 0;    ///< what the verdict asks for: see find_clearances
  double overlap_mm3 = 0;  ///< common volume where they overlap
  Verdict verdict = Verdict::clear;
  gp_Pnt first_point;  ///< nearest points, lens frame
  gp_Pnt second_point;
  ClearanceKind kind = ClearanceKind::prism_metal;
};

/// Cutting tolerance that metal parts need between them where they are not meant to touch, mm (common
/// practice).
inline constexpr double kMetalApart_mm = 0.1;

/// Every planned pair of neighbouring prisms and any others that come within 3 mm; every prism with the ribs of
/// its panel and with any metal part within 25 mm; metal parts within 1 mm of each other; every part within 25
/// mm of the lamp changer, the lantern's glazing and the pedestal, at least the nearest one of each.
///
/// Gaps are those of the solids' own faces and edges, never too small and too great by 2.5e-4 mm at most (see
/// pair_gap.h). Verdict: clash where the solids overlap by more than 1e-3 mm3, or reach into a surrounding;
/// tight where the gap is under the needed one; else clear. Needed (needed_gap.h), growth being that of heat
/// and moisture together:
///   prism to prism: the growth of both, of their sections in one panel, of their lengths across two; none
///     between refracting neighbours that are cemented ring to ring by historic practice (section.gap_mm = 0);
///   prism to the rib whose pocket holds it: at its end the growth of its length, at its sides shim or glazing,
///     whichever is thicker, and its growth; the worse verdict counts, and of two alike the lesser gap. The
///     same as check_setting says of the drawn gaps, from which measured ones differ by 0.02 mm at most;
///   prism to other metal: the growth of its section, where nothing is glazed in; of its length where the metal
///     is another panel's, which stands beyond its end;
///   metal to metal: none for the plan's joints, which may touch; else kMetalApart_mm;
///   surroundings: frame.room_round_mm.
/// Problems: the modeller finds no answer (code "clearance"), or the work was stopped.
Outcome<std::vector<Clearance>> find_clearances(const LensPlan& plan, const LensBodies& bodies,
                                                const FramePlan& frame, const std::vector<FrameBody>& metal,
                                                const Progress& progress = {});

/// Finds clearances again and again and remembers every gap by the two solids and their places to each other,
/// so that an edit measures what it moved and nothing else. Pairs that are congruent are measured once, on two
/// threads. Safe to use from one worker thread at a time. What was measured before a stop is kept.
class ClearanceShop {
 public:
  ClearanceShop();
  ~ClearanceShop();
  /// As the free function.
  Outcome<std::vector<Clearance>> find(const LensPlan& plan, const LensBodies& bodies, const FramePlan& frame,
                                       const std::vector<FrameBody>& metal, const Progress& progress = {});
  /// How many gaps the last call had to measure.
  [[nodiscard]] int measured_anew() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace prismwright
