#include "core/works/mould_picture.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/angle.h"
#include "core/base/inches.h"
#include "core/drawing/column_words.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/hatch.h"
#include "core/drawing/lengths.h"
#include "core/drawing/line_view_drawing.h"
#include "core/drawing/plate_view.h"
#include "core/drawing/title_block.h"
#include "core/drawing/view_rooms.h"
#include "core/works/mould_notes.h"

namespace prismwright {

namespace {

constexpr double kHatch_mm = 1.8;
constexpr double kLetter_mm = 3;
constexpr double kRing_mm = 2.6;  ///< round a letter
constexpr double kRow_mm = 4;     ///< of the words under a view
constexpr double kWords_mm = 2.5;
constexpr double kSmallWords_mm = 2.2;
constexpr const char* kHatchWords =
    "rising hatch: hidden from the draw; falling hatch: steeper than the draft asked for";
constexpr double kArrow_mm = 13;
constexpr double kBetween_mm = 16;
constexpr PaperColour kHiddenTone{242, 200, 190};
constexpr PaperColour kSteepTone{240, 224, 178};
constexpr PaperColour kWhite{255, 255, 255};

double wide_of(const MouldView& view) { return view.lines.high.x - view.lines.low.x; }
double high_of(const MouldView& view) { return view.lines.high.y - view.lines.low.y; }

/// Words under a view: caption, then a row for each undercut seen, as many as are listed there.
constexpr std::size_t kMostRows = 8;
double foot_mm(const MouldView& view) {
  const std::size_t rows = std::min(view.patches.size(), kMostRows + 1);
  return 4 + kRow_mm * (1 + static_cast<double>(rows));
}

/// Where the views stand: beside each other or one over the other, whichever shows them larger.
struct Layout {
  ViewLayout sheet;
  std::vector<PaperBox> rooms;  ///< with the foot of each
};

/// Room for the arrows at the left of a view; on paper a margin for dimensions lies beside it too.
double arrows_mm(bool bare) { return bare ? 26 : 12; }

/// What the views take together.
struct ViewsExtent {
  double widest = 1;
  double highest = 1;
  double foot = 0;  ///< paper under each
  double count = 0;
  double gaps = 0;  ///< paper between them
};

ViewsExtent extent_of(const std::vector<MouldView>& views) {
  ViewsExtent extent;
  for (const MouldView& view : views) {
    extent.widest = std::max(extent.widest, wide_of(view));
    extent.highest = std::max(extent.highest, high_of(view));
    extent.foot = std::max(extent.foot, foot_mm(view));
  }
  extent.count = static_cast<double>(views.size());
  extent.gaps = (extent.count - 1) * kBetween_mm;
  return extent;
}

/// The sheet whose whole frame is for views `wide` by `high`, with `taken` mm of paper between them.
ViewLayout bare_layout(double wide, double high, PaperPoint taken) {
  constexpr double kOff_mm = 6;
  ViewLayout layout;
  layout.size = {Paper::a5, true};
  const PaperBox frame = SheetMaker(layout.size).frame();
  layout.rooms.pictures = {{frame.low.x + kOff_mm, frame.low.y + kOff_mm},
                           {frame.high.x - kOff_mm, frame.high.y - kOff_mm}};
  const PaperBox& room = layout.rooms.pictures;
  layout.paper_per_mm =
      std::min((room.high.x - room.low.x - taken.x) / wide, (room.high.y - room.low.y - taken.y) / high);
  return layout;
}

Layout laid_out(const std::vector<MouldView>& views, const MouldSheetWords& words) {
  const ViewsExtent extent = extent_of(views);
  const auto fitted = [&](double wide, double high, PaperPoint taken) {
    return words.bare ? bare_layout(wide, high, taken) : lay_out_views(wide, high, taken, words.paper);
  };
  // Under a view there is always room for its words.
  const double n = extent.count;
  const double arrows = arrows_mm(words.bare);
  const auto beside = fitted(n * extent.widest, extent.highest, {extent.gaps + n * arrows, extent.foot});
  const auto stacked = fitted(extent.widest, n * extent.highest, {arrows, extent.gaps + n * extent.foot});
  const bool side_by_side = beside.paper_per_mm > stacked.paper_per_mm;
  Layout layout{side_by_side ? beside : stacked, {}};
  const PaperBox& room = layout.sheet.rooms.pictures;
  const double step =
      ((side_by_side ? room.high.x - room.low.x : room.high.y - room.low.y) + kBetween_mm) / extent.count;
  for (std::size_t i = 0; i < views.size(); ++i) {
    const double at = static_cast<double>(i) * step;
    layout.rooms.push_back(
        side_by_side
            ? PaperBox{{room.low.x + at, room.low.y}, {room.low.x + at + step - kBetween_mm, room.high.y}}
            : PaperBox{{room.low.x, room.high.y - at - step + kBetween_mm}, {room.high.x, room.high.y - at}});
  }
  return layout;
}

Stroke loop_stroke(const std::vector<PaperPoint>& loop, const ViewMap& map, PaperColour tone) {
  Stroke stroke;
  stroke.line = LineClass::outline;
  stroke.closed = true;
  stroke.tone = tone;
  stroke.start = map.at(loop.front());
  for (std::size_t i = 1; i < loop.size(); ++i) stroke.steps.push_back({map.at(loop[i]), 0, {}, 0});
  return stroke;
}

double ground_of(const std::vector<PaperPoint>& loop) {
  double sum = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const PaperPoint& a = loop[i];
    const PaperPoint& b = loop[(i + 1) % loop.size()];
    sum += a.x * b.y - b.x * a.y;
  }
  return sum / 2;
}

/// All loops as one walk: to each from the start of the first and back, so that every bridge is walked twice
/// and counts for nothing.
std::vector<PaperPoint> one_walk(const UndercutPatch& patch, const ViewMap& map) {
  std::vector<PaperPoint> walk;
  for (const auto& loop : patch.loops) {
    for (const PaperPoint& p : loop) walk.push_back(map.at(p));
    walk.push_back(map.at(loop.front()));
    walk.push_back(map.at(patch.loops.front().front()));
  }
  return walk;
}

class MouldSheetMaker {
 public:
  MouldSheetMaker(const DrawFacts& draw, const MouldPicture& picture, const MouldSheetWords& words)
      : draw_(draw),
        picture_(picture),
        words_(words),
        layout_(laid_out(picture.views, words)),
        maker_(layout_.sheet.size) {}

  Sheet make() {
    for (std::size_t i = 0; i < picture_.views.size(); ++i) draw_view(picture_.views[i], layout_.rooms[i]);
    if (words_.bare) {
      const PaperPoint low = maker_.frame().low;
      if (!draw_.undercuts.empty()) maker_.write({kHatchWords, {low.x + 3, low.y + 2}, kSmallWords_mm});
      return maker_.take();
    }
    const PaperBox& column = layout_.sheet.rooms.column;
    write_column(maker_, column, column_lines());
    maker_.line(column.low, {column.low.x, column.high.y});
    const PaperBox frame = maker_.frame();
    scale_bar(maker_, {frame.low.x + 6, frame.low.y + SheetRooms::title_block + 3}, layout_.sheet.paper_per_mm,
              words_.inches);
    write_title();
    return maker_.take();
  }

 private:
  void draw_view(const MouldView& view, const PaperBox& room) {
    const double arrows = arrows_mm(words_.bare);
    const PaperBox above = {{room.low.x + arrows, room.low.y + foot_mm(view)}, room.high};
    const ViewMap map = view_in_middle(view.lines, layout_.sheet.paper_per_mm, above);
    for (const UndercutPatch& patch : view.patches) draw_patch(patch, map);
    draw_line_view(maker_, view.lines, map, ViewCrowd::few);
    std::vector<PaperPoint> taken;
    for (const UndercutPatch& patch : view.patches) letter(patch, map, taken);
    const double foot = map.at(view.lines.low).y;
    draw_arrows(view, {room.low.x + arrows - kArrow_mm, foot + kArrow_mm});
    write_foot(view, {room.low.x, foot - 4 - kRow_mm});
  }

  [[nodiscard]] bool is_hidden(std::size_t undercut) const {
    return draw_.undercuts[undercut].kind == UndercutKind::hidden;
  }

  void draw_patch(const UndercutPatch& patch, const ViewMap& map) {
    const bool hidden = is_hidden(patch.undercut);
    for (const auto& loop : patch.loops) {
      const bool hole = ground_of(loop) < 0;
      maker_.draw(loop_stroke(loop, map, hole ? kWhite : hidden ? kHiddenTone : kSteepTone));
    }
    for (Stroke& line : hatch_lines(one_walk(patch, map), kHatch_mm, !hidden)) maker_.draw(std::move(line));
  }

  /// In a ring on the face; where that would hide the face or touch another ring, beside it with a leader.
  void letter(const UndercutPatch& patch, const ViewMap& map, std::vector<PaperPoint>& taken) {
    const PaperPoint middle = map.at(patch.middle);
    constexpr double kRingsOnAFace = 3;
    const double ground = patch.area_mm2 * map.paper_per_mm * map.paper_per_mm;
    std::vector<PaperPoint> places;
    if (ground > kRingsOnAFace * kPi * kRing_mm * kRing_mm) places.push_back(middle);
    for (const PaperPoint& p : places_round(middle, 3 * kRing_mm, 0)) places.push_back(p);
    const auto is_free = [&](const PaperPoint& p) {
      return std::ranges::all_of(taken, [&](const PaperPoint& other) {
        return std::hypot(p.x - other.x, p.y - other.y) > 2 * kRing_mm + 1;
      });
    };
    const auto found = std::ranges::find_if(places, is_free);
    const PaperPoint at = found == places.end() ? middle : *found;
    taken.push_back(at);
    if (std::hypot(at.x - middle.x, at.y - middle.y) > kRing_mm) maker_.line(middle, at);
    Stroke ring = circle_stroke(at, kRing_mm, LineClass::thin);
    ring.tone = kWhite;
    maker_.draw(std::move(ring));
    maker_.write({undercut_letter(patch.undercut),
                  {at.x, at.y - 0.35 * kLetter_mm},
                  kLetter_mm,
                  Anchor::middle,
                  false,
                  true});
  }

  /// The two ways in which the halves go, as they look from there.
  void draw_arrows(const MouldView& view, PaperPoint from) {
    const PaperPoint way = {dot(draw_.along, view.right), dot(draw_.along, view.up)};
    const double size = std::hypot(way.x, way.y);
    if (size < 0.2) return;  // towards the eye: an arrow would mislead
    for (const double sign : {1.0, -1.0}) {
      const PaperPoint tip = {from.x + sign * kArrow_mm * way.x, from.y + sign * kArrow_mm * way.y};
      maker_.line(from, tip);
      maker_.keep_clear(from, tip);
      maker_.arrow(tip, std::atan2(sign * way.y, sign * way.x));
      maker_.write_at_free({sign > 0 ? "upper half" : "lower half", {}, kSmallWords_mm, Anchor::left},
                           places_round(tip, 2, kSmallWords_mm, 0));
    }
  }

  void write_foot(const MouldView& view, PaperPoint place) {
    maker_.write({"seen from " + eye_words(view.eye), place, kWords_mm, Anchor::left, false, true});
    for (std::size_t i = 0; i < std::min(view.patches.size(), kMostRows); ++i) {
      place.y -= kRow_mm;
      maker_.write({undercut_label(draw_, view.patches[i].undercut, words_.inches), place, kWords_mm});
    }
    if (view.patches.size() > kMostRows)
      maker_.write({fmt::format("and {} more", view.patches.size() - kMostRows),
                    {place.x, place.y - kRow_mm},
                    kWords_mm});
  }

  [[nodiscard]] std::vector<std::string> column_lines() const {
    std::vector<std::string> lines = {"#undercuts"};
    if (draw_.undercuts.empty()) lines.emplace_back("Nothing is undercut.");
    for (std::size_t i = 0; i < draw_.undercuts.size(); ++i) {
      const bool seen = std::ranges::any_of(picture_.views, [&](const MouldView& view) {
        return std::ranges::any_of(view.patches, [&](const UndercutPatch& p) { return p.undercut == i; });
      });
      lines.push_back(fmt::format("{}: face \"{}\", {}{}", undercut_letter(i), draw_.undercuts[i].face,
                                  undercut_label(draw_, i, words_.inches).substr(undercut_letter(i).size() + 2),
                                  seen ? "" : "; seen from neither side"));
    }
    if (!draw_.undercuts.empty()) {
      lines.emplace_back("");
      lines.emplace_back(kHatchWords);
    }
    lines.emplace_back("");
    lines.emplace_back("#mould");
    lines.insert(lines.end(), words_.notes.begin(), words_.notes.end());
    return lines;
  }

  void write_title() {
    const auto count = words_.marks.size();
    draw_title_block(
        maker_, {clean_words(words_.title),
                 fmt::format("mould of master {}: what is undercut when its halves are drawn", words_.name),
                 {{{"master", words_.name},
                   {"prisms", count == 0   ? ""
                              : count == 1 ? words_.marks.front()
                                           : fmt::format("{} and {} more", words_.marks.front(), count - 1)},
                   {"undercuts", std::to_string(draw_.undercuts.size())},
                   {"scale", layout_.sheet.scale},
                   {"lengths", words_.inches ? "inches" : "millimetres"},
                   {"date", words_.date},
                   {"least draft", fmt::format("{:.2f} deg", draw_.draft_deg)},
                   {"height along draw", LengthWords{words_.inches}.plain(draw_.height_mm)}}}});
  }

  const DrawFacts& draw_;
  const MouldPicture& picture_;
  const MouldSheetWords& words_;
  Layout layout_;
  SheetMaker maker_;
};

}  // namespace

std::string undercut_letter(std::size_t undercut) {
  constexpr std::size_t kLetters = 26;
  const std::string letter(1, static_cast<char>('a' + undercut % kLetters));
  return undercut < kLetters ? letter : letter + std::to_string(undercut / kLetters + 1);
}

std::string undercut_label(const DrawFacts& draw, std::size_t undercut, bool inches) {
  const Undercut& one = draw.undercuts.at(undercut);
  const std::string area = inches ? fmt::format("{:.3f} in2", one.area_mm2 / kSquareInch_mm2)
                                  : fmt::format("{:.1f} mm2", one.area_mm2);
  const std::string letter = undercut_letter(undercut);
  if (one.kind == UndercutKind::steep)
    return fmt::format("{}: {}, draft {} deg", letter, area, decimals(one.draft_deg, 2));
  return fmt::format(
      "{}: {}, {} deep", letter, area,
      inches ? fmt::format("{:.3f} in", one.depth_mm / kInch_mm) : fmt::format("{:.1f} mm", one.depth_mm));
}

std::string eye_words(SpaceVector eye) {
  constexpr double kCounts = 0.25;
  std::vector<std::string> parts;
  if (std::abs(eye.x) > kCounts) parts.emplace_back(eye.x > 0 ? "the sea" : "the lamp");
  if (std::abs(eye.y) > kCounts) parts.emplace_back(eye.y > 0 ? "the anticlockwise end" : "the clockwise end");
  if (std::abs(eye.z) > kCounts) parts.emplace_back(eye.z > 0 ? "above" : "below");
  std::string words;
  for (std::size_t i = 0; i < parts.size(); ++i)
    words += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
  return words;
}

Sheet mould_sheet(const DrawFacts& draw, const MouldPicture& picture, const MouldSheetWords& words) {
  return MouldSheetMaker(draw, picture, words).make();
}

}  // namespace prismwright
