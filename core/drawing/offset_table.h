#pragma once

#include <string>
#include <vector>

#include "core/drawing/lengths.h"
#include "core/drawing/table_pages.h"
#include "core/optics/profile.h"

namespace prismwright {

/// A place of a curved face, seen from its chord.
struct FaceOffset {
  double along_mm = 0;   ///< along the chord, from where the table begins
  double offset_mm = 0;  ///< square to the chord, positive out of the glass
};

/// A face as a maker of templates lays it out: even steps along the chord, and how far the face stands off it.
struct FaceOffsets {
  double chord_mm = 0;
  double step_mm = 0;
  /// From the face's start to its end at 0, step, 2 step ...; the last one is the end, whatever is left. With
  /// `from_middle` from the middle of the chord to one end: the other half is alike.
  std::vector<FaceOffset> places;
  bool from_middle = false;
  FaceOffset greatest;  ///< the place farthest off the chord
};

/// The largest of 1, 2, 5 times a power of ten, in mm or inches, that goes at least twenty times into the
/// chord.
double round_step_mm(double chord_mm, bool inches);

/// Offsets of a face that nowhere turns back along its chord. The places lie on the face within 1e-9 mm.
FaceOffsets offsets_of(const Face& face, double step_mm);
/// The same from the middle, for a face that is its own mirror image across the middle of its chord.
FaceOffsets offsets_from_middle(const Face& face, double step_mm);

/// The table, its numbers to 0.001 mm or 0.00001 in. `from_words`: what the table begins at, "corner A1";
/// `heading`: which face.
TableBlock offset_block(const FaceOffsets& offsets, const std::string& heading, const std::string& from_words,
                        LengthWords lengths);

}  // namespace prismwright
