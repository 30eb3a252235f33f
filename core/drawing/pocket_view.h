#pragma once

#include <string>
#include <vector>

#include "core/drawing/sheet_maker.h"
#include "core/frame/frame_parts.h"

namespace prismwright {

struct PlateMap;

/// Name of a blind pocket by its place in blind_pockets(part): "p1", "p2".
std::string pocket_name(int index);

/// The pocket on paper, within 0.02 mm of paper.
std::vector<PaperPoint> paper_polygon(const PlatePocket& pocket, const PlateMap& map);

/// Hatches a pocket and names it inside; answers whether the name found room there.
bool hatch_pocket(SheetMaker& maker, const std::vector<PaperPoint>& polygon, const std::string& name);

/// The name beside a pocket that is too small for it.
void name_beside(SheetMaker& maker, const std::vector<PaperPoint>& polygon, const std::string& name);

}  // namespace prismwright
