#include "core/drawing/plate_view.h"

#include <algorithm>
#include <cmath>

#include "core/drawing/pocket_view.h"
#include "core/drawing/view_rooms.h"
#include "core/frame/cut_shapes.h"

namespace prismwright {

namespace {

/// Texts keep off the chain.
void keep_clear_of(SheetMaker& maker, const PlateChain& chain, const PlateMap& map) {
  constexpr double kPaperChord_mm = 0.1;
  const PlateOutline corners = flattened(chain, kPaperChord_mm / map.paper_per_mm);
  for (std::size_t i = 0; i < corners.size(); ++i)
    maker.keep_clear(map.at(corners[i]), map.at(corners[(i + 1) % corners.size()]));
}

void draw_hole(SheetMaker& maker, const PlateHole& hole, const PlateMap& map) {
  const PaperPoint middle = map.at(hole.centre);
  const double radius = map.paper_per_mm * hole.diameter_mm / 2;
  const double widest = std::max(radius, map.paper_per_mm * hole.sink_diameter_mm / 2);
  maker.draw(circle_stroke(middle, radius, LineClass::outline));
  if (widest > radius) maker.draw(circle_stroke(middle, widest, LineClass::thin));
  maker.keep_clear({middle.x - widest, middle.y}, {middle.x + widest, middle.y});
}

}  // namespace

PlateLayout lay_out_plate(const PlateExtent& extent, std::optional<Paper> paper) {
  const double wide = extent.high.u - extent.low.u;
  const double high = extent.high.v - extent.low.v;
  const ViewLayout layout = lay_out_views(wide, high, {}, paper);
  const PaperBox room = layout.rooms.pictures;
  const double scale = layout.paper_per_mm;
  const PaperPoint origin = {room.low.x + (room.high.x - room.low.x - scale * wide) / 2 - scale * extent.low.u,
                             room.low.y + (room.high.y - room.low.y - scale * high) / 2 - scale * extent.low.v};
  return {layout.size, layout.scale, {origin, scale}, layout.rooms.column};
}

std::vector<PaperPoint> places_round(PaperPoint p, double off, double size_mm, double way) {
  const double eighth = std::acos(-1.0) / 4;
  std::vector<PaperPoint> places;
  for (const double away : {off, off + 2, off + 5, off + 9}) {
    for (const int turn : {0, 1, -1, 2, -2, 3, -3, 4}) {
      const double at = way + turn * eighth;
      places.push_back({p.x + away * std::cos(at), p.y + away * std::sin(at) - 0.35 * size_mm});
    }
  }
  return places;
}

Stroke chain_stroke(const PlateChain& chain, const PlateMap& map, LineClass line, bool closed) {
  Stroke stroke;
  stroke.line = line;
  stroke.closed = closed;
  if (chain.empty()) return stroke;
  stroke.start = map.at(chain.front().from);
  for (const PlateStep& step : chain)
    stroke.steps.push_back(
        {map.at(step.to), step.turn, map.at(step.centre), map.paper_per_mm * step.radius_mm});
  return stroke;
}

void draw_plate(SheetMaker& maker, const FlatPart& part, const PlateMap& map, bool hatched) {
  int number = 0;
  std::vector<std::pair<std::string, std::vector<PaperPoint>>> unnamed;
  for (const PlatePocket& pocket : blind_pockets(part)) {
    maker.draw(chain_stroke(pocket.outline, map, LineClass::thin, true));
    keep_clear_of(maker, pocket.outline, map);
    const std::string name = pocket_name(number++);
    const std::vector<PaperPoint> polygon = paper_polygon(pocket, map);
    if (hatched && !hatch_pocket(maker, polygon, name)) unnamed.emplace_back(name, polygon);
  }
  std::vector<PlateChain> cuts = through_cuts(part);
  cuts.push_back(part.outline);
  for (const PlateChain& cut : cuts) {
    maker.draw(chain_stroke(cut, map, LineClass::outline, true));
    keep_clear_of(maker, cut, map);
  }
  for (const PlateHole& hole : part.holes) draw_hole(maker, hole, map);
  for (const auto& [name, polygon] : unnamed) name_beside(maker, polygon, name);
}

}  // namespace prismwright
