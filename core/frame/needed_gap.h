#pragma once

#include <string_view>

#include "core/frame/frame_settings.h"
#include "core/lens/plan.h"

namespace prismwright {

/// Growth of brass in length, 1/K. Source: works handbook value noted with the project's sources, 2.05e-5.
inline constexpr double kBrassExpansion_per_k = 2.05e-5;

/// Growth in length of a lens material, 1/K, by its key word: acrylic 7e-5 (handbooks 6.7e-5 to 8e-5); crown
/// 9e-6 (soda glass, from memory); n-bk7 7.1e-6 (from memory). An unknown material counts as acrylic, which
/// grows most.
double expansion_per_k(std::string_view material);

/// How much farther than the brass round it one end of a prism moves from its middle, mm, when the frame's
/// temperature changes by its whole range: half the extent times the difference of the two growths.
///
/// A prism is held by its middle, so half of its length goes to each end, and half of its greatest section
/// extent to each side. Between two prisms the needed gap is the sum of both. Own derivation; check: 300 mm
/// of acrylic in brass over 30 K grow 0.445 mm in all.
double needed_gap_mm(double extent_mm, std::string_view material, double heat_range_k);

/// Whether the material swells with the air's moisture: acrylic does, glass does not. An unknown material
/// counts as acrylic.
bool swells(std::string_view material);

/// How much farther than the brass one end of a prism moves from its middle, mm, in parts.
struct PrismGrowth {
  double heat_mm = 0;
  double moisture_mm = 0;
  [[nodiscard]] double both_mm() const { return heat_mm + moisture_mm; }
};

/// Growth of half the extent over the whole range of temperature, and from the driest to the wettest state in
/// service where the material swells. Acrylic grows by about 0.4 % in all from 60 % to 100 % relative humidity
/// (makers' handbooks); brass does not. Both together are the worst case: warm and wet.
PrismGrowth growth_of(double extent_mm, std::string_view material, const FrameSettings& frame);

/// Room that a prism end needs to the floor of its pocket: the growth of half its length.
double needed_at_end_mm(double length_mm, std::string_view material, const FrameSettings& frame);
/// Room that a side needs to the brass beside it: shim or glazing, whichever is thicker, and growth.
double needed_at_side_mm(double extent_mm, std::string_view material, const FrameSettings& frame);
/// Room that two prisms need between them: the growths of both. There is no glazing between prisms.
double needed_between_mm(double first_extent_mm, double second_extent_mm, std::string_view material,
                         const FrameSettings& frame);

/// Greatest distance between two points of a prism's section, mm (chords within 0.1 mm).
double section_extent_mm(const Profile& profile);

}  // namespace prismwright
