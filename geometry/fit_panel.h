#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/fit_path.h"

namespace prismwright {

/// What moves as one in the fit-up of a panel.
struct FitUnit {
  std::vector<std::string> marks;
  std::vector<std::unique_ptr<FitBody>> bodies;
  bool about_lens = false;  ///< prisms that are turned about the lens axis, so that they slide along themselves
};

/// A rib as the fit-up knows it, in the panel's frame.
struct FitRib {
  SpaceVector inward;        ///< from its outer face to its inner one
  SpaceVector seaward;       ///< level along its face
  double inner_face_mm = 0;  ///< along `inward` from the lens axis
};

/// All parts of one panel, in the panel's frame: x along its axis, z up.
struct FitPanel {
  int number = 0;
  double axis_deg = 0;
  std::vector<FitUnit> prisms;  ///< from the top down
  std::vector<FitUnit> fixed;   ///< rails and cross ribs
  FitUnit ribs[2];              ///< left, right
  FitRib faces[2];
};

/// Whether the panel has prisms and both ribs.
bool can_be_fitted(const LensPlan& plan, const FramePlan& frame, int panel);
FitPanel fit_panel(const LensPlan& plan, const FramePlan& frame, const PanelPlace& place);

/// Equal words: congruent panels.
std::string fit_likeness(const LensPlan& plan, const FramePlan& frame, const PanelPlace& place);

}  // namespace prismwright
