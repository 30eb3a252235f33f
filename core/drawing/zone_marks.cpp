#include <algorithm>
#include <cmath>

#include "core/drawing/section_view.h"
#include "core/drawing/spread_heights.h"

namespace prismwright {

namespace {

constexpr double kLargest_mm = 2.4;
constexpr double kSmallest_mm = 1.8;
constexpr double kPitch = 1.42;  ///< of the size: texts with accents and tails stay apart
constexpr double kElbow_mm = 4;  ///< leaders run level this far beyond the glass
constexpr double kDot_mm = 0.3;
constexpr double kFirstLimit = 9.9;  ///< of the size: right edge of the first limit
constexpr double kLimitWide = 4.6;   ///< of the size: from there to the edge of the second

struct ZoneMark {
  const SectionImage* image;
  PaperPoint glass;   ///< where its leader begins
  double height = 0;  ///< where its words stand
};

/// The outermost place of a piece at half its height (the centre: a quarter, clear of the focal plane).
SectionPoint outermost(const SectionImage& image) {
  const auto polygon = polygon_of(image.profile, 0.05);
  const auto [low, high] = std::ranges::minmax(polygon, {}, &SectionPoint::z);
  const double z =
      image.zone->kind == ZoneKind::centre ? low.z + 0.75 * (high.z - low.z) : (low.z + high.z) / 2;
  double r = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const SectionPoint a = polygon[i];
    const SectionPoint b = polygon[(i + 1) % polygon.size()];
    if ((a.z <= z) != (b.z <= z)) r = std::max(r, a.r + (b.r - a.r) * (z - a.z) / (b.z - a.z));
  }
  return {r, z};
}

/// Sets the heights of the marks, which stand from the top down.
void spread(std::vector<ZoneMark>& marks, double pitch, double low, double high) {
  std::vector<double> wished;
  for (const ZoneMark& mark : marks) wished.push_back(mark.glass.y);
  const std::vector<double> heights = spread_heights(wished, pitch, low, high);
  for (std::size_t i = 0; i < marks.size(); ++i) marks[i].height = heights[i];
}

void draw_leader(SheetMaker& maker, const ZoneMark& mark, double elbow_x, double words_x, double size) {
  Stroke dot = circle_stroke(mark.glass, kDot_mm, LineClass::hatch);
  dot.filled = true;
  maker.draw(std::move(dot));
  Stroke leader = straight_stroke(mark.glass, {elbow_x, mark.glass.y}, LineClass::hatch);
  leader.steps.push_back({{words_x - 1, mark.height + 0.36 * size}, 0, {}, 0});
  maker.draw(std::move(leader));
}

void write_mark(SheetMaker& maker, const ZoneMark& mark, double x, double size) {
  maker.write({mark.image->mark, {x, mark.height}, size, Anchor::left, false, true});
  const double first = x + size * kFirstLimit;
  maker.write({degrees_words(mark.image->from_deg), {first, mark.height}, size, Anchor::right, false, false});
  maker.write({degrees_words(mark.image->to_deg),
               {first + kLimitWide * size, mark.height},
               size,
               Anchor::right,
               false,
               false});
}

}  // namespace

void draw_zone_marks(SheetMaker& maker, const SheetView& view) {
  const PaperBox frame = maker.frame();
  const double low = frame.low.y + SheetRooms::title_block + SheetRooms::scale_bar + 3;
  const double high = frame.high.y - 8;
  std::vector<ZoneMark> marks;
  for (const SectionImage& image : view.images)
    marks.push_back({&image, view.layout.map.at(outermost(image)), 0});
  std::ranges::sort(marks, [](const ZoneMark& a, const ZoneMark& b) { return a.glass.y > b.glass.y; });

  const auto most = static_cast<std::size_t>((high - low) / (kPitch * kSmallest_mm));
  const std::size_t every = (marks.size() + most - 1) / most;
  std::vector<ZoneMark> named;
  for (std::size_t i = 0; i < marks.size(); i += every) named.push_back(marks[i]);
  const double size =
      std::clamp((high - low) / (kPitch * static_cast<double>(named.size())), kSmallest_mm, kLargest_mm);
  spread(named, kPitch * size, low, high);

  const double elbow = view.layout.map.at(SectionPoint{view.reach.outer_r, 0}).x + kElbow_mm;
  const double x = elbow - kElbow_mm + SheetRooms::leaders;
  for (const ZoneMark& mark : named) {
    draw_leader(maker, mark, elbow, x, size);
    write_mark(maker, mark, x, size);
  }
  const std::string head =
      every == 1 ? "zone, limits in degrees" : "one zone in " + std::to_string(every) + ", limits in degrees";
  maker.write({head, {x, named.front().height + kPitch * size + 1}, 2.2, Anchor::left, false, false});
}

}  // namespace prismwright
