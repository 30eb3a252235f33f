#pragma once

#include <string>
#include <vector>

#include "core/drawing/lengths.h"
#include "core/drawing/prism_sheet.h"
#include "core/drawing/table_pages.h"

namespace prismwright {

/// Words for every face: "upper joint", "exit"; none for the axis of a centre.
std::vector<std::string> face_names(const Profile& profile);

/// What the prism is: which axis it is turned about, level length, volume, mass, how its sides are cut, of
/// which other kind it is the mirror image.
TableBlock prism_facts_block(const LensPlan& plan, const Master& kind, const PrismSolidFacts& facts,
                             LengthWords lengths);

/// Every corner: letter, the faces that meet there, r and z, angle of the glass, and the angles about the axis
/// between which the glass stands there.
TableBlock corner_block(const PlannedPrism& prism, LengthWords lengths);

/// Every face of glass: corners, name, shape, straight length, radius and centre; of a true curve those of the
/// one best arc and how far it departs.
TableBlock face_block(const PlannedPrism& prism, LengthWords lengths);

/// A table of offsets for each true curve.
std::vector<TableBlock> offset_blocks(const PlannedPrism& prism, LengthWords lengths);

/// Every feature that is inspected with its tolerance.
TableBlock tolerance_block(const PlannedPrism& prism, const WorksSettings& works, LengthWords lengths);

/// The marks that are cast from it, each once.
TableBlock marks_block(const Master& kind);

}  // namespace prismwright
