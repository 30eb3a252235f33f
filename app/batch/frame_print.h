#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "app/batch/json_print.h"
#include "app/batch/made_lens.h"
#include "core/frame/nest.h"
#include "core/frame/parts_list.h"
#include "core/frame/setting_check.h"
#include "geometry/fit_up.h"

namespace prismwright {

/// The frame of one lens as it is answered.
struct FrameAnswer {
  MadeFrame frame;
  std::vector<PartsLine> parts;
  Nest nest;
  std::vector<SettingCheck> settings;
  std::vector<PanelFit> fit_up;

  /// Thin brass, a plate that no sheet takes, too little room for a prism, a prism that cannot go in.
  [[nodiscard]] bool well() const;
};

void print_frame(const FrameAnswer& answer, std::ostream& out);
Json frame_json(const FrameAnswer& answer);

/// Panels whose steps are the same but for the panel's own marks, the first of each leading.
std::vector<std::vector<const PanelFit*>> alike_panels(const std::vector<PanelFit>& fits);

}  // namespace prismwright
