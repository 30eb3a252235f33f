#pragma once

#include <string>
#include <vector>

#include "app/batch/verb.h"
#include "core/book/lensbook.h"
#include "geometry/bodies.h"
#include "geometry/frame_bodies.h"

namespace prismwright {

/// A lens with the solids of all its prisms.
struct MadePrisms {
  LensPlan plan;
  LensBodies bodies;
};

/// Section, plan and the solid of every prism of the book's values.
Outcome<MadePrisms> make_prisms(const Lensbook& book, Voice& voice);
/// The same of a plan that stands already, or of a part of one.
Outcome<MadePrisms> make_prisms(LensPlan plan, Voice& voice);

/// The brass parts that hold the prisms, outlines and solids.
struct MadeFrame {
  FramePlan plan;
  std::vector<FrameBody> bodies;
};
Outcome<MadeFrame> make_metal(const LensPlan& plan, Voice& voice);

}  // namespace prismwright
