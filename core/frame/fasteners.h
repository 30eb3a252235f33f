#pragma once

#include <string>
#include <vector>

#include "core/frame/frame_desk.h"

namespace prismwright {

/// Sizes of screws and their holes, all from the nominal diameter (common practice; threads are not modelled,
/// so a tapped hole is as wide as its screw).
double clear_hole_mm(double screw_mm);  ///< 1.1 times the nominal diameter, rounded up to 0.1 mm
double screw_head_mm(double screw_mm);  ///< widest part of a sunk head: twice the nominal diameter
/// Depth of a sunk head, a cone of 90 deg.
double head_depth_mm(double screw_mm);
/// Whether a plate keeps half a millimetre under a sunk head.
bool can_sink(double plate_mm, double screw_mm);
/// Brass that a hole for a screw through a plate asks for, from its centre to the next edge.
double room_round_screw_mm(double screw_mm, double least_brass_mm, bool sunk);

/// A screw that is to be: its head in the outer face of the first plate, along `axis.along`.
struct ScrewTask {
  SpaceRay axis;  ///< from the middle of the head, lens frame
  double screw_mm = 3;
  double grip_mm = 0;  ///< length that passes freely
  double hold_mm = 0;  ///< length in the tapped hole
  bool sunk = true;
  int panel = 0;
};
/// Adds the screw itself and gives its mark. Holes are made by the functions below.
std::string add_screw(FrameDesk& desk, const ScrewTask& task);

/// A clear hole through the plate, square to it, on the screw's axis; its sink (if any) in the face that the
/// screw comes in by.
void add_clear_hole(FlatPart& plate, const ScrewTask& task, bool with_sink);
/// A tapped hole right through the plate, square to it.
void add_tapped_hole(FlatPart& plate, const ScrewTask& task);
/// A plain hole right through the plate, square to it.
void add_plain_hole(FlatPart& plate, SpacePoint on_axis, double diameter_mm, std::string use);
/// A tapped blind hole in any direction from `from` on the surface of the plate.
void add_tapped_bore(FlatPart& plate, SpacePoint from, const ScrewTask& task, double depth_mm);

/// "M3", "M2.5".
std::string screw_name(double screw_mm);

}  // namespace prismwright
