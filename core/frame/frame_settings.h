#pragma once

namespace prismwright {

/// The brass frame, first form. Lengths in mm; ranges and meanings stand in the quantity table.
struct FrameSettings {
  double rib_mm = 5;            ///< thickness of one side rib; each panel has its own two
  double pocket_mm = 3;         ///< depth of the blind pockets, from the rib's inner face
  double setting_gap_mm = 0.5;  ///< room round a prism end in its pocket
  double end_gap_mm = 0.5;      ///< room between a prism's end and the floor of its pocket
  double rib_margin_mm = 8;     ///< brass round the pockets in the rib's outline
  double ring_mm = 8;           ///< thickness of the top and bottom rings
  double heat_range_k = 30;     ///< temperature range for which a needed gap is worked out

  /// How far a prism's end stands back from the side plane of its panel.
  [[nodiscard]] double prism_set_back_mm() const { return rib_mm - pocket_mm + end_gap_mm; }
};

}  // namespace prismwright
