#pragma once

#include <vector>

#include "core/lens/plan.h"
#include "core/lens/turned_face.h"

namespace prismwright {

/// A prism as what it is in space, wherever it stands: an outline turned about a line, and the planes that do
/// cut the turned ring. Along the line its place is its own middle, so that shifted prisms are alike.
struct TurnedSolid {
  /// What a face is to a master: light goes through it, it may carry sanding stock, or neither.
  enum class FaceUse { optical, joint, land, axis };
  struct Side {
    FaceUse use = FaceUse::land;
    FaceKind kind = FaceKind::straight;
    std::vector<TurnPoint> points;
    std::vector<TurnPoint> tangents;  ///< true curves only
    TurnPoint centre;                 ///< arcs only
  };
  /// What lies at `distance_mm` or more along a unit normal is kept.
  struct Plane {
    double along = 0;   ///< part of the normal along the turning line
    double across = 0;  ///< its part square to it, never negative
    double angle = 0;   ///< that part's angle about the line, radians
    double distance_mm = 0;
  };
  std::vector<Side> outline;
  std::vector<Plane> planes;
  double up_along = 0;  ///< the upright seen from the line: its part along, and its part at angle 0
  double up_across = 1;
  double length_mm = 0;  ///< of the outline along the line
  double least_off_mm = 0;
  double most_off_mm = 0;
};

/// A plane whose cut goes no deeper than kCongruent_mm is left out.
TurnedSolid turned_solid(const PlannedPrism& prism);

/// How one solid comes of another.
enum class Alike {
  apart,     ///< by no motion and no mirror
  same,      ///< by a motion that keeps up up
  turned,    ///< by a motion that turns it end for end, and by none that keeps up up
  mirrored,  ///< as a mirror image only
};
/// Within kCongruent_mm (core/works/congruence.h) everywhere.
Alike how_alike(const TurnedSolid& one, const TurnedSolid& other);

}  // namespace prismwright
