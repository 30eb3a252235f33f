#pragma once

#include <string>
#include <vector>

#include "core/drawing/column_notes.h"
#include "core/drawing/lengths.h"
#include "core/frame/frame_parts.h"
#include "core/frame/landings.h"

namespace prismwright {

/// From where the places of a plate are measured: the middle of a round one, else the lower left corner of the
/// smallest upright rectangle round it, seen from the front.
struct PlateDatum {
  PlatePoint origin;
  bool middle = false;
  std::string words;  ///< "x and y from 0: ..."
};
PlateDatum datum_of(const FlatPart& part);

/// A chain that is one circle.
bool is_round(const PlateChain& chain);

/// "A" for all of a kind of hole that is there once, else "A1", "A2"; in the order of part.holes.
std::vector<std::string> hole_names(const FlatPart& part);
/// The same of the holes drilled into its edges, in small letters.
std::vector<std::string> bore_names(const FlatPart& part);
std::string row_letter(std::size_t row, bool small);  ///< "A" ... "Z", "A1"; "a"

/// Places of holes through the plate, of bores into its edges, of its pockets with depth and least corner
/// radius, and its outline and openings step by step with radii and centres where they are neither a circle nor
/// an upright rectangle; and how every prism bears in its pocket, where `landings` tell of it. What a plate
/// does not have is left out.
std::vector<ColumnNote> part_notes(const FlatPart& part, const std::vector<Landing>& landings,
                                   const LengthWords& lengths);

}  // namespace prismwright
