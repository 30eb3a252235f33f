#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/outcome.h"
#include "core/lens/quantities.h"
#include "core/optics/section.h"

namespace prismwright {

/// An edit of single zones or of a whole band, told as assignments: window, batch program and undo go the same
/// way as for every other quantity. `what` is a short sentence for undo ("split U05").
struct SectionEdit {
  std::vector<Assignment> assignments;
  std::string what;
};

/// Every function takes the values and the section that was solved from them, and refuses, with the value and
/// the reason, what the zone or band does not allow. A band that was divided by a rule becomes a band by hand:
/// its other zones stay as they were drawn, each by its own size.

/// Gives a zone another size: refracting by to_deg or margin_mm (its outer end), reflecting by side_mm, to_deg
/// (depressions are given as positive degrees) or thickness_mm.
Outcome<SectionEdit> resize_zone(const LensValues& values, const Section& section, std::string_view mark,
                                 SizeBy by, double size);
/// Locks a zone where it stands, or frees it. A band divided by a rule stays so.
Outcome<SectionEdit> lock_zone(const LensValues& values, const Section& section, std::string_view mark,
                               bool locked);
/// Takes a zone out: refracting zones beyond it close up to their limits as they are, the one beyond it begins
/// where the removed one began; reflecting prisms beyond it move in.
Outcome<SectionEdit> remove_zone(const LensValues& values, const Section& section, std::string_view mark);
/// Makes two zones of one that end where it ended: of equal angles (refracting), the first of half the entry
/// side (reflecting).
Outcome<SectionEdit> split_zone(const LensValues& values, const Section& section, std::string_view mark);
/// Adds a zone like the last one at the outer end of a band.
Outcome<SectionEdit> add_zone(const LensValues& values, const Section& section, Band band);

/// The margin of a refracting zone: height at which its last ray crosses the depth of the thin edge, mm.
double zone_margin_mm(const Section& section, const Zone& zone);

/// Divides a band anew. `number` is the count (count, area, height), the greatest thickness in mm (thickness:
/// glass along r for the refracting band, section thickness for prisms) or the entry side in mm (side). Locked
/// zones stay.
Outcome<SectionEdit> divide_band(const LensValues& values, const Section& section, Band band, Division division,
                                 double number);

}  // namespace prismwright
