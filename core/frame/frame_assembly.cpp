#include "core/frame/frame_assembly.h"

#include "core/frame/cross_ribs.h"
#include "core/frame/door_parts.h"
#include "core/frame/panel_joints.h"
#include "core/frame/part_keys.h"
#include "core/frame/rails.h"
#include "core/frame/rings_and_tables.h"

namespace prismwright {
namespace {

void join_facing_ribs(FrameDesk& desk) {
  for (const FacingRibs& pair : desk.facing_ribs()) {
    if (!pair.at_door) desk.join(pair.left->mark, pair.right->mark);
  }
}

void give_keys(FramePlan& frame) {
  for (FlatPart& part : frame.flats) part.shape_key = part_key(part);
  for (RoundPart& part : frame.rounds) part.shape_key = part_key(part);
}

}  // namespace

void add_frame_parts(FramePlan& frame, const LensPlan& plan, const FrameHeights& heights) {
  if (frame.ribs.empty()) return;
  FrameDesk desk(frame, plan, heights);
  join_facing_ribs(desk);
  add_ring_plates(desk);
  add_rails(desk);
  add_cross_ribs(desk);
  add_base_and_finial(desk);
  add_door_parts(desk);
  add_panel_joints(desk);
  desk.finish_warnings();
  give_keys(frame);
}

}  // namespace prismwright
