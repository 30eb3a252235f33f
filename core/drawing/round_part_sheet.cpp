#include "core/drawing/round_part_sheet.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/column_notes.h"
#include "core/drawing/dimension_line.h"
#include "core/drawing/lengths.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/plate_view.h"
#include "core/drawing/view_rooms.h"
#include "core/frame/parts_list.h"

namespace prismwright {

namespace {

constexpr double kBetweenViews_mm = 24;
constexpr double kAway_mm = 10;
constexpr double kNextRow_mm = 9;
constexpr double kOff_mm = 1;
constexpr double kOver_mm = 1.5;
constexpr double kPastEdge_mm = 4;  ///< of axes

double widest_mm(const RoundPart& part) { return std::max(part.diameter_mm, part.head_mm); }

/// Both views and their dimensions on one sheet.
class RoundViews {
 public:
  RoundViews(SheetMaker& maker, const RoundPart& part, const ViewLayout& layout, const LengthWords& lengths)
      : maker_(maker), part_(part), scale_(layout.paper_per_mm), lengths_(lengths) {
    const PaperBox room = layout.rooms.pictures;
    const double wide = scale_ * (part.length_mm + widest_mm(part)) + kBetweenViews_mm;
    left_ = room.low.x + (room.high.x - room.low.x - wide) / 2;
    right_ = left_ + scale_ * part.length_mm;
    middle_ = (room.low.y + room.high.y) / 2;
    end_ = {right_ + kBetweenViews_mm + scale_ * widest_mm(part) / 2, middle_};
  }

  void draw() {
    draw_side();
    draw_end();
    draw_dimensions();
  }

 private:
  [[nodiscard]] double half(double diameter_mm) const { return scale_ * diameter_mm / 2; }
  [[nodiscard]] bool has_head() const { return part_.head_mm > part_.diameter_mm; }

  void draw_side() {
    const double shank = half(part_.diameter_mm);
    const double head = has_head() ? half(part_.head_mm) : shank;
    const double neck = left_ + head - shank;  // the head's cone has 90 degrees
    Stroke outline;
    outline.line = LineClass::outline;
    outline.closed = true;
    outline.start = {left_, middle_ - head};
    for (const PaperPoint p : {PaperPoint{neck, middle_ - shank}, PaperPoint{right_, middle_ - shank},
                               PaperPoint{right_, middle_ + shank}, PaperPoint{neck, middle_ + shank},
                               PaperPoint{left_, middle_ + head}})
      outline.steps.push_back({p, 0, {}, 0});
    maker_.draw(std::move(outline));
    if (has_head()) maker_.line({neck, middle_ - shank}, {neck, middle_ + shank}, LineClass::outline);
    if (part_.bore_mm > 0) {
      for (const double way : {-1.0, 1.0}) {
        const double y = middle_ + way * half(part_.bore_mm);
        maker_.line({left_, y}, {right_, y}, LineClass::ray);
      }
    }
    maker_.line({left_ - kPastEdge_mm, middle_}, {right_ + kPastEdge_mm, middle_}, LineClass::centre);
  }

  void draw_end() {
    for (const double diameter : {part_.head_mm, part_.diameter_mm, part_.bore_mm})
      if (diameter > 0) maker_.draw(circle_stroke(end_, half(diameter), LineClass::outline));
    const double arm = half(widest_mm(part_)) + kPastEdge_mm;
    maker_.line({end_.x - arm, end_.y}, {end_.x + arm, end_.y}, LineClass::centre);
    maker_.line({end_.x, end_.y - arm}, {end_.x, end_.y + arm}, LineClass::centre);
  }

  void draw_dimensions() {
    const double low = middle_ - half(widest_mm(part_));
    level(left_, right_, low, low - kAway_mm, lengths_.plain(part_.length_mm));
    // Diameters one below another at the view of the end, the least nearest to it.
    double y = low - kAway_mm;
    for (const double diameter : {part_.bore_mm, part_.diameter_mm, has_head() ? part_.head_mm : 0}) {
      if (diameter <= 0) continue;
      level(end_.x - half(diameter), end_.x + half(diameter), middle_, y, "\u00D8 " + lengths_.plain(diameter));
      y -= kNextRow_mm;
    }
    if (has_head()) {
      const double neck = left_ + half(part_.head_mm - part_.diameter_mm);
      const double high = middle_ + half(part_.head_mm);
      level(left_, neck, high + kAway_mm + kOver_mm, high + kAway_mm,
            lengths_.plain((part_.head_mm - part_.diameter_mm) / 2));
    }
  }

  void level(double from, double to, double edge_y, double y, const std::string& words) {
    for (const double x : {from, to}) {
      maker_.line({x, edge_y - kOff_mm}, {x, y - kOver_mm});
      maker_.keep_clear({x, edge_y - kOff_mm}, {x, y - kOver_mm});
    }
    level_dimension(maker_, from, to, y, words);
  }

  SheetMaker& maker_;
  const RoundPart& part_;
  double scale_;
  LengthWords lengths_;
  double left_ = 0;
  double right_ = 0;
  double middle_ = 0;
  PaperPoint end_;
};

std::vector<std::string> round_lines(const RoundPart& part, std::size_t count, const LengthWords& lengths) {
  const auto with_unit = [&](double mm) { return lengths.plain(mm) + " " + lengths.unit(); };
  std::vector<std::string> lines = {
      fmt::format("#{}, {}", name_of(part.kind),
                  part.making == PartMaking::bought ? "bought as rod, cut to length" : name_of(part.making)),
      name_of(part.metal),
      pieces_words(count, volume_mm3(part) / 1000 * density_g_cm3(part.metal), lengths.inches),
      "",
      "#sizes",
      "length " + with_unit(part.length_mm),
      "diameter " + with_unit(part.diameter_mm)};
  if (part.bore_mm > 0) lines.push_back("bore right through " + with_unit(part.bore_mm));
  if (part.head_mm > part.diameter_mm)
    lines.push_back("sunk head, 90\u00B0, " + with_unit(part.head_mm) + " across");
  lines.emplace_back("ends square to the axis; break sharp edges");
  return lines;
}

}  // namespace

Drawing round_part_sheet(const RoundPart& part, const std::vector<std::string>& marks,
                         const HouseWords& words) {
  const LengthWords lengths{words.inches};
  const std::vector<std::string> all = marks.empty() ? std::vector{part.mark} : marks;
  const ViewLayout layout = lay_out_views(part.length_mm + widest_mm(part), widest_mm(part),
                                          {kBetweenViews_mm, 3 * kNextRow_mm}, words.paper);
  SheetMaker maker(layout.size);
  begin_picture(maker, layout.rooms.column.low.x, layout.paper_per_mm, words.inches);
  RoundViews(maker, part, layout, lengths).draw();
  const std::vector<TableBlock> further =
      fill_column(maker, layout.rooms.column, round_lines(part, all.size(), lengths), {marks_note(all)});
  return picture_and_tables(
      {std::move(maker), subject_of(all.front(), part.kind, all.size()), layout.scale, name_of(part.metal)},
      further, words);
}

}  // namespace prismwright
