#include "core/drawing/pocket_view.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/plate_view.h"

namespace prismwright {

namespace {

constexpr double kPocketName_mm = 2.2;

/// Where a straight line enters and leaves a box, as shares of its length; blank where it passes by.
std::optional<std::pair<double, double>> shares_inside(const PaperBox& box, PaperPoint from, PaperPoint to) {
  double enters = 0;
  double leaves = 1;
  const auto narrow = [&](double start, double way, double low, double high) {
    if (way == 0) {
      if (start < low || start > high) leaves = -1;
      return;
    }
    const double first = (low - start) / way;
    const double second = (high - start) / way;
    enters = std::max(enters, std::min(first, second));
    leaves = std::min(leaves, std::max(first, second));
  };
  narrow(from.x, to.x - from.x, box.low.x, box.high.x);
  narrow(from.y, to.y - from.y, box.low.y, box.high.y);
  if (enters >= leaves) return std::nullopt;
  return std::pair{enters, leaves};
}

/// The line without what of it lies in the box.
void draw_outside(SheetMaker& maker, const Stroke& line, const std::optional<PaperBox>& box) {
  const PaperPoint from = line.start;
  const PaperPoint to = line.steps.front().to;
  const auto inside = box ? shares_inside(*box, from, to) : std::nullopt;
  if (!inside) return maker.draw(line);
  const auto at = [&](double share) {
    return PaperPoint{from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
  };
  if (inside->first > 0) maker.line(from, at(inside->first), line.line);
  if (inside->second < 1) maker.line(at(inside->second), to, line.line);
}

PaperBox ground_of(const std::vector<PaperPoint>& polygon) {
  PaperBox ground = {{1e300, 1e300}, {-1e300, -1e300}};
  for (const PaperPoint p : polygon) {
    ground.low = {std::min(ground.low.x, p.x), std::min(ground.low.y, p.y)};
    ground.high = {std::max(ground.high.x, p.x), std::max(ground.high.y, p.y)};
  }
  return ground;
}

/// The name where it lies inside the pocket altogether, no tooth of its outline in it, level or else upright,
/// as near its middle as may be.
std::optional<DrawnText> name_inside(const std::vector<PaperPoint>& polygon, const std::string& name) {
  constexpr int kAcross = 12;
  PlateOutline outline;
  for (const PaperPoint p : polygon) outline.push_back({p.x, p.y});
  const PaperBox ground = ground_of(polygon);
  const auto inside = [&](const PaperBox& box) {
    if (!holds(outline, {box.low.x, box.low.y})) return false;
    for (std::size_t i = 0; i < polygon.size(); ++i)
      if (crosses(box, polygon[i], polygon[(i + 1) % polygon.size()])) return false;
    return true;
  };
  std::optional<DrawnText> best;
  double best_off = 1e300;
  for (const bool turned : {false, true}) {
    for (int i = 1; i < kAcross * kAcross; ++i) {
      const double across = static_cast<double>(i % kAcross) / kAcross;
      const double up = static_cast<double>(i / kAcross) / kAcross;
      DrawnText text{name, {}, kPocketName_mm, Anchor::middle, turned};
      text.place = {ground.low.x + across * (ground.high.x - ground.low.x),
                    ground.low.y + up * (ground.high.y - ground.low.y)};
      const double off = std::hypot(across - 0.5, up - 0.5);
      if (off >= best_off || !inside(box_of(text))) continue;
      best = text;
      best_off = off;
    }
    if (best) return best;
  }
  return std::nullopt;
}

}  // namespace

std::string pocket_name(int index) { return fmt::format("p{}", index + 1); }

std::vector<PaperPoint> paper_polygon(const PlatePocket& pocket, const PlateMap& map) {
  constexpr double kPaperChord_mm = 0.02;
  std::vector<PaperPoint> polygon;
  for (const PlatePoint p : flattened(pocket.outline, kPaperChord_mm / map.paper_per_mm))
    polygon.push_back(map.at(p));
  return polygon;
}

bool hatch_pocket(SheetMaker& maker, const std::vector<PaperPoint>& polygon, const std::string& name) {
  constexpr double kHatch_mm = 1.6;
  std::optional<PaperBox> gap;
  const auto text = name_inside(polygon, name);
  if (text) {
    gap = box_of(*text);
    maker.write(*text);
  }
  for (const Stroke& line : hatch_lines(polygon, kHatch_mm, false)) draw_outside(maker, line, gap);
  return text.has_value();
}

void name_beside(SheetMaker& maker, const std::vector<PaperPoint>& polygon, const std::string& name) {
  const PaperBox ground = ground_of(polygon);
  const PaperPoint middle = {(ground.low.x + ground.high.x) / 2, (ground.low.y + ground.high.y) / 2};
  const double half = text_width_mm(name, kPocketName_mm) / 2;
  const double base = -0.35 * kPocketName_mm;
  std::vector<PaperPoint> places;
  for (const double off : {1.0, 2.5, 4.0, 6.0, 9.0, 13.0, 18.0}) {
    places.push_back({ground.high.x + off + half, middle.y + base});
    places.push_back({ground.low.x - off - half, middle.y + base});
    places.push_back({middle.x, ground.high.y + off});
    places.push_back({middle.x, ground.low.y - off - kPocketName_mm});
  }
  maker.write_at_free({name, {}, kPocketName_mm, Anchor::middle}, places);
}

}  // namespace prismwright
