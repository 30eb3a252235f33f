#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"
#include "core/works/load_plan.h"

namespace prismwright {

/// What a plan of shelves is drawn from. `names` has a word for every piece of the list that was planned, and
/// `numbers` a shorter one for boxes that it does not fit into.
struct VesselShelves {
  const PlannedLoad& load;
  double diameter_mm = 0;
  std::vector<std::string> names;
  std::vector<std::string> numbers;
};

/// How many shelves stand side by side, and how large each is drawn, mm.
struct VesselGrid {
  int columns = 1;
  int rows = 1;
  double across_mm = 0;
  [[nodiscard]] double height_mm() const;
};
VesselGrid vessel_grid(int shelves, double wide_mm);

/// Shelves `from` to before `to`, seen from above, in rows from the upper left corner on: the vessel's inside
/// as a circle, every mould as a box with its name, words below. Names stay inside their boxes.
void draw_shelves(SheetMaker& maker, const VesselShelves& shelves, int from, int to, PaperPoint upper_left,
                  const VesselGrid& grid);

}  // namespace prismwright
