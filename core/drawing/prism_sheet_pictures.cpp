#include "core/drawing/prism_sheet_pictures.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/line_view_drawing.h"
#include "core/drawing/prism_sheet_tables.h"
#include "core/drawing/section_picture.h"
#include "core/lens/trimmed_ring.h"
#include "core/works/prism_reach.h"

namespace prismwright {

namespace {

constexpr double kBar_mm = 8;        ///< at the foot of a picture, for its scale bar
constexpr double kBarWords_mm = 16;  ///< the words at the end of a bar stand over it
constexpr double kName_mm = 12;      ///< the same with the name over it
constexpr double kDimension_mm = 9;  ///< left of and below a view
constexpr double kRim_mm = 3;        ///< above and right of it
constexpr double kWords_mm = 2.1;
constexpr double kLong = 2.2;           ///< a view from the sea that is wider for its height stands below
constexpr double kSectionShare = 0.42;  ///< of the width, beside both views
constexpr double kEndShare = 0.4;       ///< of the width, above a long view
constexpr double kLongShare = 0.45;     ///< of the height, at most, for a long view
constexpr double kSectionRimWide_mm = 21;
constexpr double kSectionRimHigh_mm = 9;

double wide(const PaperBox& box) { return box.high.x - box.low.x; }
double high(const PaperBox& box) { return box.high.y - box.low.y; }
double wide(const LineView& view) { return view.high.x - view.low.x; }
double high(const LineView& view) { return view.high.y - view.low.y; }
bool is_there(const LineView& view) { return !view.lines.empty() && wide(view) > 0 && high(view) > 0; }

/// What of a box is left for the lines of a view.
PaperBox inside(const PaperBox& box) {
  return {{box.low.x + kDimension_mm, box.low.y + kName_mm + kDimension_mm},
          {box.high.x - kRim_mm, box.high.y - kRim_mm}};
}

double height_at(const LineView& view, double paper_per_mm) {
  return is_there(view) ? paper_per_mm * high(view) + kName_mm + kDimension_mm + kRim_mm : 0;
}

const DrawingScale& scale_in(const LineView& view, const PaperBox& box) {
  const PaperBox room = inside(box);
  return largest_scale(wide(view), high(view), wide(room), high(room));
}

const DrawingScale* common_scale(const PrismSolidFacts& facts, const PrismPictures& pictures) {
  const DrawingScale* least = nullptr;
  const auto take = [&](const LineView& view, const PaperBox& box) {
    if (!is_there(view)) return;
    const DrawingScale& own = scale_in(view, box);
    if (!least || own.paper_per_mm < least->paper_per_mm) least = &own;
  };
  take(facts.from_end, pictures.end);
  take(facts.from_sea, pictures.sea);
  return least;
}

/// The view from the sea below section and end.
PrismPictures with_sea_below(const PrismSolidFacts& facts, const PaperBox& room) {
  PrismPictures pictures;
  const PaperBox most = {room.low, {room.high.x, room.low.y + kLongShare * high(room)}};
  const double split =
      room.low.y + std::min(high(most), height_at(facts.from_sea, scale_in(facts.from_sea, most).paper_per_mm));
  const double middle = room.high.x - (is_there(facts.from_end) ? kEndShare * wide(room) : 0);
  pictures.section = {{room.low.x, split}, {middle, room.high.y}};
  pictures.end = {{middle, split}, room.high};
  pictures.sea = {room.low, {room.high.x, split}};
  return pictures;
}

/// All beside each other, the views' widths as they need.
PrismPictures side_by_side(const PrismSolidFacts& facts, const PaperBox& room) {
  PrismPictures pictures;
  const bool end = is_there(facts.from_end);
  const bool sea = is_there(facts.from_sea);
  const double left = end || sea ? room.low.x + kSectionShare * wide(room) : room.high.x;
  const double fixed = kDimension_mm + kRim_mm;
  const double spare = room.high.x - left - (end ? fixed : 0) - (sea ? fixed : 0);
  const double ends = end ? wide(facts.from_end) : 0;
  const double seas = sea ? wide(facts.from_sea) : 0;
  const double share = end ? fixed + spare * ends / (ends + seas) : 0;
  pictures.section = {room.low, {left, room.high.y}};
  pictures.end = {{left, room.low.y}, {left + share, room.high.y}};
  pictures.sea = {{left + share, room.low.y}, room.high};
  return pictures;
}

SectionPicture section_picture(const PlannedPrism& prism) {
  SectionPicture section;
  section.name = "Section";
  section.profile = prism.profile;
  section.corners = lettered_corners(prism.profile);
  section.face_words = face_names(prism.profile);
  section.leaders = section.both_sides = true;
  section.rim_wide_mm = kSectionRimWide_mm;
  section.rim_high_mm = kSectionRimHigh_mm;
  return section;
}

PaperBox over_bar(PaperBox box) {
  box.low.y += kBar_mm;
  return box;
}

/// Takes away what height is not needed, from below.
void tighten(PrismPictures& pictures, const PlannedPrism& prism, const PrismSolidFacts& facts, bool below) {
  const double scale = pictures.view_scale ? pictures.view_scale->paper_per_mm : 0;
  const double sea = height_at(facts.from_sea, scale);
  const double top = pictures.section.high.y;
  const SectionPlace section = section_place(section_picture(prism), over_bar(pictures.section));
  pictures.section_scale = section.scale;
  const double row = std::max({section.height_mm + kBar_mm, height_at(facts.from_end, scale), below ? 0 : sea});
  pictures.section.low.y = pictures.end.low.y = top - row;
  pictures.sea.high.y = below ? top - row : top;
  pictures.sea.low.y = pictures.low_mm = below ? top - row - sea : top - row;
}

void draw_bar(SheetMaker& maker, const PaperBox& box, double paper_per_mm, LengthWords lengths) {
  const double bar = scale_bar_mm(paper_per_mm, lengths.inches);
  if (wide(box) < bar + kBarWords_mm) return;
  scale_bar(maker, {(box.low.x + box.high.x - bar) / 2, box.low.y + 1}, paper_per_mm, lengths.inches);
}

/// Words of both dimensions over all: of the prism itself, since a view is only as true as the facets that it
/// was made of.
struct OverAll {
  std::string wide;
  std::string high;
};
OverAll over_all(const PrismReach& reach, SpaceVector right, LengthWords lengths) {
  const auto wide = reach.along(right);
  const auto high = reach.along({0, 0, 1});
  if (!wide || !high) return {};
  return {lengths.plain(wide->length()), lengths.plain(high->length())};
}

/// Dimensions over all, with the lines that lead to them.
void draw_dimensions(SheetMaker& maker, const LineView& view, const ViewMap& map, const OverAll& words) {
  const PaperPoint low = map.at(view.low);
  const PaperPoint top = map.at(view.high);
  const double below = low.y - kDimension_mm + 2;
  const double left = low.x - kDimension_mm + 4;
  for (const double x : {low.x, top.x}) maker.line({x, low.y - 1}, {x, below - 1}, LineClass::hatch);
  for (const double y : {low.y, top.y}) maker.line({low.x - 1, y}, {left - 1, y}, LineClass::hatch);
  level_dimension(maker, low.x, top.x, below, words.wide);
  upright_dimension(maker, low.y, top.y, left, words.high);
}

void draw_view(SheetMaker& maker, const LineView& view, const std::string& name, const PaperBox& box,
               const DrawingScale& scale, const OverAll& words) {
  const ViewMap map = view_in_middle(view, scale.paper_per_mm, inside(box));
  draw_line_view(maker, view, map, ViewCrowd::few);
  maker.write({shortened(fmt::format("{}, {}", name, scale.words), kWords_mm, wide(box) - 1),
               {(box.low.x + box.high.x) / 2, box.low.y + kBar_mm + 1.2},
               kWords_mm,
               Anchor::middle});
  draw_dimensions(maker, view, map, words);
}

/// A whole ring has no end.
const char* end_words(const PlannedPrism& prism) {
  const bool whole = prism.turning == TurningAxis::panel && prism.trim.half == Half::whole;
  return whole && TrimmedRing(prism).clears_sides() ? "From its side" : "Anticlockwise end";
}

}  // namespace

PrismPictures lay_out_pictures(const PlannedPrism& prism, const PrismSolidFacts& facts, const PaperBox& room) {
  const bool below = is_there(facts.from_sea) && wide(facts.from_sea) > kLong * high(facts.from_sea);
  PrismPictures pictures = below ? with_sea_below(facts, room) : side_by_side(facts, room);
  pictures.view_scale = common_scale(facts, pictures);
  tighten(pictures, prism, facts, below);
  return pictures;
}

void draw_pictures(SheetMaker& maker, const PlannedPrism& prism, const PrismSolidFacts& facts,
                   const PrismPictures& pictures, LengthWords lengths) {
  const bool sea = is_there(facts.from_sea);
  // Bars come first: dimensions that find no room on their line look for it round about.
  if (pictures.view_scale)
    draw_bar(maker, sea ? pictures.sea : pictures.end, pictures.view_scale->paper_per_mm, lengths);
  draw_bar(maker, pictures.section, pictures.section_scale->paper_per_mm, lengths);
  draw_section_picture(maker, section_picture(prism), over_bar(pictures.section));
  const PrismReach reach(prism);
  if (is_there(facts.from_end)) {
    const double side = radians(prism.trim.anticlockwise_side_deg);
    draw_view(maker, facts.from_end, end_words(prism), pictures.end, *pictures.view_scale,
              over_all(reach, {std::cos(side), std::sin(side), 0}, lengths));
  }
  if (sea) {
    draw_view(maker, facts.from_sea, "From the sea", pictures.sea, *pictures.view_scale,
              over_all(reach, {0, 1, 0}, lengths));
  }
}

}  // namespace prismwright
