#pragma once

#include "core/frame/frame_desk.h"

namespace prismwright {

/// Screws and dowels through the ribs that stand back to back at every joint of two panels but the door's:
/// three screws, one to a third of the height, and two dowels near the ends, where the brass that both ribs
/// share is roomiest, rather outward. Screws go in from the panel clockwise of the joint and are tapped into
/// the other rib.
///
/// If one pattern finds room in all ribs of the lens it serves every joint, so that congruent plates stay
/// congruent; else each pair of ribs has its own. What finds no room is left out with a warning. To be called
/// when everything else that meets the ribs stands.
void add_panel_joints(FrameDesk& desk);

}  // namespace prismwright
