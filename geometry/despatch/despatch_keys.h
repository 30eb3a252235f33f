#pragma once

#include <vector>

#include "core/drawing/drawing.h"
#include "core/frame/frame_plan.h"
#include "core/lens/plan.h"
#include "geometry/despatch/piece_key.h"

namespace prismwright {

// What things that pieces come from add to a key: every member that a file can show.

/// The glass as it is made, in its panel's own frame; mark, panel and place aside.
void add_solid(PieceKey& key, const PlannedPrism& prism);
/// The same where it stands, with its mark.
void add_placed(PieceKey& key, const PlannedPrism& prism);

/// Metal as it is made, in its own frame; mark, panel and place aside.
void add_solid(PieceKey& key, const FlatPart& part);
void add_solid(PieceKey& key, const RoundPart& part);
void add_solid(PieceKey& key, const TurnedBar& part);
/// The same where it stands, with its mark, panel and kind.
void add_placed(PieceKey& key, const FlatPart& part);
void add_placed(PieceKey& key, const RoundPart& part);
void add_placed(PieceKey& key, const TurnedBar& part);

/// All prisms where they stand.
void add_glass(PieceKey& key, const LensPlan& plan);
/// All metal where it stands; `panel` 0: of the whole lens, else that panel's parts alone.
void add_metal(PieceKey& key, const FramePlan& frame, int panel = 0);

/// Sheets as they are drawn: every line, word and picture.
void add_drawing(PieceKey& key, const Drawing& drawing);

/// Which quantities a thing comes from: all those of these groups ("section", "lamp"; a whole key names one).
void add_values(PieceKey& key, const LensValues& values, const std::vector<std::string>& groups);

/// The settings that plates are laid on sheets by.
void add_sheets(PieceKey& key, const FrameSettings& settings);

}  // namespace prismwright
