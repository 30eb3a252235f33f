#pragma once

#include <string>
#include <vector>

#include "core/base/outcome.h"
#include "core/base/progress.h"
#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"

namespace prismwright {

/// How a part comes to its place when a panel is put together on its first rib.
enum class FitWay {
  laid,                  ///< the first rib, pockets upward
  screwed,               ///< rails and cross ribs, to the first rib
  from_sea,              ///< straight, along the panel's axis
  from_lamp,             ///< straight, along the panel's axis
  from_sea_then_in,      ///< along the rib's face from the sea side, then square to the rib into its pocket
  from_lamp_then_in,     ///< along the rib's face from the lamp side, then square to the rib into its pocket
  square_to_rib,         ///< all the way square to the rib; the second rib goes on so
  from_sea_then_round,   ///< along the rib's face from the sea side, then round the lens axis into its pocket
  from_lamp_then_round,  ///< along the rib's face from the lamp side, then round the lens axis into its pocket
  round_the_axis,        ///< all the way round the lens axis, from where the second rib is to stand
};
const char* name_of(FitWay way);  ///< "from the sea side", ...

/// One step of putting a panel together.
struct FitStep {
  std::vector<std::string> marks;  ///< several: brought in as one
  FitWay way = FitWay::laid;
  bool put_together = false;  ///< the several are loose prisms that are put together beforehand
  double into_pocket_mm = 0;  ///< last part of the way, square to the rib
  std::string words;          ///< what to do, one sentence
  double round_mm = 0;        ///< last part of the way, round the lens axis, at the prism's greatest radius
};

/// A value of the lens to change: a length, or a choice or angle by its text.
struct FitChange {
  std::string key;    ///< of the quantity table
  std::string label;  ///< its name there
  double now_mm = 0;
  double to_mm = 0;
  std::string now;  ///< text; of a length empty
  std::string to;
};

/// A prism (or the second rib) that has no free way.
struct FitBlocked {
  std::vector<std::string> marks;
  std::string blocked_by;  ///< what stands in the way that goes farthest
  SpacePoint where;        ///< lens frame
  FitWay way = FitWay::from_sea;
  double left_mm = 0;              ///< how far out of its seat it comes on that way before it is held up
  std::string words;               ///< what stands in the way, by how much, and what to do
  double off_rib_mm = 0;           ///< how far it must come off the first rib on that way; 0: not at all
  double deep_mm = 0;              ///< over 0: it stands at least so deep in that part where it belongs
  std::vector<FitChange> changes;  ///< all together may mend it (fit_changes.h)
};

/// A prism that can be changed with both ribs and all other prisms standing.
struct OpenSeat {
  std::string mark;
  bool from_sea = false;
  bool from_lamp = false;
};

/// The order in which a panel is put together.
struct PanelFit {
  int panel = 0;
  std::string first_rib;
  std::string second_rib;
  std::vector<FitStep> steps;  ///< first to last
  std::vector<FitBlocked> cannot;
  std::vector<OpenSeat> open_seats;  ///< prisms with a free way alone
};

/// Whether, and in which order, the prisms of every panel can be brought into their seats.
///
/// First, what stands in each other where it belongs, by more than kFitTouch_mm, cannot go in; it holds up
/// neither each other nor, at last, the rest, which so gets an order all the same.
///
/// Worked out backwards: with the first rib lying, rails, cross ribs and all prisms in place and the second rib
/// off, any prism that has a free way is taken out, again and again. Ways: straight seaward or lampward; off
/// the rib by what the pocket holds, then along its face seaward or lampward; square off the rib all the way.
/// Where none of them frees any more: round the lens axis off the rib, then along its face, so that prisms
/// turned about that axis slide along their neighbours; or round it all the way. Turned round, that is the
/// order of assembly, and what stays cannot go in. Then the second rib goes on square. Either rib may be the
/// first: the one that leaves fewer prisms out, the left one of two alike. Tilting a prism in otherwise is not
/// tried.
///
/// Resolution: fit_body.h and fit_path.h (places 1.5 mm apart, touches deeper than 0.02 mm). Where the setting
/// gap is 0 the refracting prisms of a panel are cemented and move as one. Congruent panels are worked out
/// once. Screws, holes and other panels are left out of account. Problem: stopped by Progress.
Outcome<std::vector<PanelFit>> fit_up(const LensPlan& plan, const FramePlan& frame,
                                      const Progress& progress = {});

}  // namespace prismwright
