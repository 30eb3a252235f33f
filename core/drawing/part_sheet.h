#pragma once

#include <string>
#include <vector>

#include "core/drawing/house_words.h"
#include "core/frame/frame_parts.h"
#include "core/frame/landings.h"
#include "core/frame/plate_polygons.h"

namespace prismwright {

struct PlateMap;
class SheetMaker;

/// A flat part. First sheet: the part seen from the front, drawn to scale: outline, openings, holes with
/// letters, bores into its edges dashed, pockets hatched, the engraved mark, width and height over all, the
/// place 0 that others are measured from; and a column that says what it is, its thickness, mass, radii, pocket
/// depths, holes with their places, and every mark. Further sheets hold the tables that the column has no room
/// for, places and radii of outline and pockets. Texts never cover each other, nor the border.
///
/// `marks`: of all alike parts, the part's own first; empty: its own alone. The scale is the largest of the
/// drawing scales at which it fits the paper; without a paper asked for A4 down to 1:5, else A3. `landings`:
/// how prisms bear in the part's pockets, where that is known; those of other ribs are passed over.
Drawing part_sheet(const FlatPart& part, const std::vector<std::string>& marks, const HouseWords& words,
                   const std::vector<Landing>& landings = {});

/// Width and height over all, left of and below a picture.
void draw_overall(SheetMaker& maker, const PlateExtent& extent, const PlateMap& map, bool inches);

/// The rule beside the column and the scale bar.
void begin_picture(SheetMaker& maker, double column_x, double paper_per_mm, bool inches);

/// "P01-rib-left: side rib, 8 off".
std::string subject_of(const std::string& mark, PartKind kind, std::size_t count);
/// "8 pieces, 132.4 g each", "1 piece, 1.324 kg each"; in pounds too where lengths are inches.
std::string pieces_words(std::size_t count, double mass_g, bool inches);

}  // namespace prismwright
