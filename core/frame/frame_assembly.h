#pragma once

#include "core/frame/frame_plan.h"

namespace prismwright {

struct FrameHeights;

/// Adds every part beside the ribs' own shapes: rings, rails, cross ribs, base table, finial plate, spacers,
/// the door's hinges and latch, screws and dowels; cuts the holes for them into the ribs too. Notes in
/// FramePlan::joints what is meant to touch, gives every part its shape key.
///
/// `frame` must hold its ribs (as RibPlan and, with the same mark, as FlatPart) and rings. What finds no room
/// is left out with a warning. Call it once.
void add_frame_parts(FramePlan& frame, const LensPlan& plan, const FrameHeights& heights);

}  // namespace prismwright
