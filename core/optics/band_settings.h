#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/optics/section_plane.h"

namespace prismwright {

/// The three bands of a section, each divided, aimed and turned by itself.
enum class Band { refracting, upper, lower };
inline constexpr int kBands = 3;
std::string_view name_of(Band band);  ///< "refracting", "upper", "lower"

/// How a band is divided into zones.
enum class Division {
  thickness,  ///< no zone thicker than asked: edge + growth (refracting), section thickness (reflecting)
  side,       ///< reflecting: every prism has the given entry side, the last is cut short
  count,      ///< so many zones: equally thick (refracting), of equal entry sides (reflecting)
  area,       ///< so many zones of equal section area; the centre counts with its upper half
  height,     ///< so many zones of equal height; the centre counts with its upper half
  by_hand,    ///< the band's rows, one by one
};

/// Which face of a reflecting prism carries the power, the others being straight; or the historic pair of
/// refracting sides, one hollow and one full, of one radius, with a reflecting arc.
enum class Power { reflecting, entry, exit, hollow_entry, hollow_exit };
inline bool is_pair(Power power) { return power == Power::hollow_entry || power == Power::hollow_exit; }
/// Whether the direction of a prism's sides depends a little on their length.
inline bool turns_with_size(Power power) { return power == Power::exit || is_pair(power); }

/// Curves of a reflecting band: as the section's, or its own.
enum class BandFaces { as_section, true_curve, arc };

/// What line the zones of a band are turned about.
enum class BandTurning { as_work, panel, lens };

/// Where the beams go that have no aim of their own.
enum class AimAt { level, horizon };

/// What gives a zone its size.
enum class SizeBy {
  to_deg,        ///< the elevation (depression, for a lower prism) where it ends, degrees
  margin_mm,     ///< refracting: its margin at the edge depth
  side_mm,       ///< reflecting: length of the entry side AB
  thickness_mm,  ///< reflecting: section thickness
};

/// One zone chosen by hand, or one that is locked while its neighbours are divided anew.
struct ZoneRow {
  SizeBy by = SizeBy::to_deg;
  double size = 0;
  bool locked = false;
  double from_deg = 0;    ///< locked refracting zone: where it begins
  SectionPoint corner_a;  ///< locked reflecting prism: where its corner A stands (mirrored up, for a lower one)

  bool operator==(const ZoneRow& other) const {
    return by == other.by && size == other.size && locked == other.locked && from_deg == other.from_deg &&
           corner_a.r == other.corner_a.r && corner_a.z == other.corner_a.z;
  }
};

/// What the designer chooses for one band.
struct BandSettings {
  Division division = Division::side;
  int count = 6;                     ///< zones, for division by count, area or height; locked ones included
  std::optional<double> side_mm;     ///< reflecting: entry side for division by side; blank: the section's
  double section_thickness_mm = 20;  ///< reflecting: for division by thickness
  std::vector<ZoneRow> rows;         ///< by hand: every zone; else the locked ones only. From the axis outward
  Power power = Power::reflecting;   ///< reflecting bands
  BandFaces faces = BandFaces::as_section;
  BandTurning turning = BandTurning::as_work;
  double focus_z_mm = 0;          ///< height of the band's own focal point over the principal one
  std::optional<double> aim_deg;  ///< depression of the band's beam; blank: as the whole section's
};
inline BandSettings divided(Division division, int count) {
  BandSettings band;
  band.division = division;
  band.count = count;
  return band;
}

/// How a corner of a reflecting prism is blunted.
enum class LandShape { flat, radius };
struct CornerLand {
  std::optional<double> size_mm;  ///< width of the flat, or the radius; blank: the section's
  LandShape shape = LandShape::flat;
};

/// Focal point and aim of a band.
struct BandAim {
  double focus_z_mm = 0;
  double aim_deg = 0;  ///< depression of the beam below level
};

}  // namespace prismwright
