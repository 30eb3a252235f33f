#include "core/drawing/turned_bar_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/base/angle.h"
#include "core/drawing/column_notes.h"
#include "core/drawing/lengths.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/part_tables.h"
#include "core/drawing/plate_view.h"
#include "core/drawing/section_picture.h"
#include "core/drawing/turned_bar_edges.h"
#include "core/drawing/view_rooms.h"
#include "core/frame/cut_words.h"

namespace prismwright {

namespace {

using Kind = TableLine::Kind;

constexpr double kSectionRoom_mm = 62;  ///< height for the section, its dimensions aside
constexpr double kBetween_mm = 24;      ///< between the views, for dimensions and names
constexpr double kNameBelow_mm = 17;    ///< the view from the sea: its name, under the dimension
constexpr double kWords_mm = 2.4;

PlateMap centred(const PlateExtent& extent, double scale, const PaperBox& room) {
  const double u = (extent.low.u + extent.high.u) / 2;
  const double v = (extent.low.v + extent.high.v) / 2;
  return {{(room.low.x + room.high.x) / 2 - scale * u, (room.low.y + room.high.y) / 2 - scale * v}, scale};
}

FlatPart plate_with_bores(const TurnedBar& bar) {
  FlatPart part;
  part.bores = bar.bores;
  return part;
}

/// The bar from the sea.
class SeaView {
 public:
  SeaView(SheetMaker& maker, const TurnedBar& bar, const PlateMap& map, const LengthWords& lengths)
      : maker_(maker), bar_(bar), map_(map), lengths_(lengths), edges_(edges_of(bar)) {
    for (const BarEdge& edge : edges_) foremost_ = std::max(foremost_, edge.corner.r);
  }

  void draw() {
    for (const BarEdge& edge : edges_) draw_edge(edge);
    draw_ends();
    draw_bores();
    name_radii();
  }

 private:
  static constexpr double kSame_mm = 1e-6;

  [[nodiscard]] bool seen(const BarEdge& edge) const { return edge.corner.r > foremost_ - kSame_mm; }
  [[nodiscard]] PaperPoint at(SpacePoint p) const { return map_.at({p.y, p.z}); }
  [[nodiscard]] PaperPoint axis() const { return map_.at({0, bar_.shape.axis_z_mm}); }
  [[nodiscard]] static LineClass class_of(bool seen) { return seen ? LineClass::outline : LineClass::ray; }

  void draw_edge(const BarEdge& edge) {
    const double radius = map_.paper_per_mm * edge.radius_mm;
    if (edge.whole_turn) return maker_.draw(circle_stroke(axis(), radius, class_of(seen(edge))));
    Stroke stroke;
    stroke.line = class_of(seen(edge));
    stroke.start = at(edge.first);
    stroke.steps.push_back({at(edge.last), edge.turn, axis(), radius});
    maker_.draw(std::move(stroke));
    constexpr int kParts = 24;
    for (int i = 0; i < kParts; ++i) maker_.keep_clear(along(edge, i / 24.0), along(edge, (i + 1) / 24.0));
  }

  [[nodiscard]] PaperPoint along(const BarEdge& edge, double share) const {
    const double start = std::atan2(edge.first.z - bar_.shape.axis_z_mm, edge.first.y);
    const double angle = start + share * edge.turn;
    return map_.at({edge.radius_mm * std::cos(angle), bar_.shape.axis_z_mm + edge.radius_mm * std::sin(angle)});
  }

  void draw_ends() {
    for (std::size_t i = 0; i < edges_.size(); ++i) {
      const BarEdge& one = edges_[i];
      const BarEdge& next = edges_[(i + 1) % edges_.size()];
      if (one.whole_turn || next.whole_turn) continue;
      const LineClass line = class_of(seen(one) && seen(next));
      maker_.line(at(one.first), at(next.first), line);
      maker_.line(at(one.last), at(next.last), line);
    }
  }

  void draw_bores() {
    const std::vector<std::string> names = bore_names(plate_with_bores(bar_));
    for (std::size_t i = 0; i < bar_.bores.size(); ++i) {
      const PlateBore& bore = bar_.bores[i];
      const PaperPoint from = at(bore.from);
      const PaperPoint to = at(bore.from + bore.depth_mm * bore.along);
      const double half = map_.paper_per_mm * bore.diameter_mm / 2;
      const auto dashed = [&](PaperPoint start, PaperPoint end) {
        maker_.line(start, end, LineClass::ray);
        maker_.keep_clear(start, end);
      };
      for (const double aside : {-half, half}) dashed({from.x, from.y + aside}, {to.x, to.y + aside});
      dashed({to.x, to.y - half}, {to.x, to.y + half});
      maker_.write_at_free(
          {names[i], {}, kWords_mm, Anchor::middle},
          places_round({(from.x + to.x) / 2, (from.y + to.y) / 2}, half + 2, kWords_mm, kPi / 2));
    }
  }

  /// The greatest and the least radius of what is seen, with an arrow on its arc.
  void name_radii() {
    const auto by_radius = [](const BarEdge& a, const BarEdge& b) { return a.radius_mm < b.radius_mm; };
    std::vector<BarEdge> front;
    for (const BarEdge& edge : edges_)
      if (seen(edge)) front.push_back(edge);
    if (front.empty()) return;
    name_radius(*std::ranges::max_element(front, by_radius), 0.25, 1);
    name_radius(*std::ranges::min_element(front, by_radius), 0.5, -1);
  }

  void name_radius(const BarEdge& edge, double share, double outward) {
    constexpr double kLeader_mm = 7;
    const PaperPoint tip = along(edge, share);
    const double way = std::atan2(tip.y - axis().y, tip.x - axis().x) + (outward > 0 ? 0 : kPi);
    const PaperPoint tail = {tip.x + kLeader_mm * std::cos(way), tip.y + kLeader_mm * std::sin(way)};
    maker_.line(tip, tail);
    maker_.keep_clear(tip, tail);
    maker_.arrow(tip, way + kPi);
    maker_.write_at_free({"R " + lengths_.plain(edge.radius_mm), {}, 2.8, Anchor::middle},
                         places_round(tail, 2.4, 2.8, way));
  }

  SheetMaker& maker_;
  const TurnedBar& bar_;
  PlateMap map_;
  LengthWords lengths_;
  std::vector<BarEdge> edges_;
  double foremost_ = -1e300;
};

/// The section with its corners lettered and the width of every face beside it.
const DrawingScale& draw_section(SheetMaker& maker, const TurnedBar& bar, const PaperBox& room,
                                 const LengthWords& lengths) {
  const Profile& profile = bar.shape.profile;
  SectionPicture picture{"section, seaward to the right", profile, lettered_corners(profile), {}};
  for (const Face& face : profile.faces)
    picture.face_words.push_back(lengths.plain(distance(face.start(), face.end())));
  return draw_section_picture(maker, picture, room);
}

std::vector<std::string> bar_lines(const TurnedBar& bar, std::size_t count, std::optional<double> mass_g,
                                   const LengthWords& lengths) {
  const Trim& trim = bar.shape.trim;
  const auto with_unit = [&](double mm) { return lengths.plain(mm) + " " + lengths.unit(); };
  std::vector<std::string> lines = {fmt::format("#{}, {}", name_of(bar.kind), name_of(bar.making)),
                                    name_of(bar.metal),
                                    mass_g ? pieces_words(count, *mass_g, lengths.inches)
                                           : fmt::format("{} {}", count, count == 1 ? "piece" : "pieces"),
                                    "", "#turned about the panel's axis"};
  lines.push_back(fmt::format("section {} along the axis by {} away from it",
                              with_unit(section_extent(bar).high.u - section_extent(bar).low.u),
                              with_unit(section_extent(bar).high.v - section_extent(bar).low.v)));
  if (bar.shape.axis_z_mm != 0)
    lines.push_back(fmt::format("axis {} {} the focus", with_unit(std::abs(bar.shape.axis_z_mm)),
                                bar.shape.axis_z_mm > 0 ? "above" : "below"));
  if (bar.shape.axis_dip_deg != 0)
    lines.push_back(fmt::format("axis {} seaward by {}\u00B0; drawn level",
                                bar.shape.axis_dip_deg > 0 ? "falls" : "rises",
                                degrees_words(std::abs(bar.shape.axis_dip_deg))));
  lines.push_back(fmt::format(
      "ends: upright planes through the lens axis, {}\u00B0 and {}\u00B0 from the panel's axis, moved in by {}",
      shortest(-trim.clockwise_side_deg), shortest(trim.anticlockwise_side_deg), with_unit(trim.set_back_mm)));
  if (trim.half != Half::whole)
    lines.push_back(fmt::format("{} half of the ring", trim.half == Half::upper ? "upper" : "lower"));
  const std::vector<HoleRow> bores = bore_rows(plate_with_bores(bar));
  if (!bores.empty()) lines.insert(lines.end(), {"", "#drilled square into the ends"});
  for (std::size_t i = 0; i < bores.size(); ++i)
    lines.push_back(fmt::format("{}: {} x {} by {} deep{}{}", row_letter(i, true), bores[i].count,
                                with_unit(bores[i].diameter_mm), lengths.plain(bores[i].depth_mm),
                                bores[i].use.empty() ? "" : ", ", bores[i].use));
  return lines;
}

std::string tabbed(const std::vector<std::string>& cells) { return fmt::format("{}", fmt::join(cells, "\t")); }

/// The same rows for column and further sheet, `words` above them.
ColumnNote note_of(const std::string& heading, const std::string& words, const std::vector<std::string>& head,
                   const std::vector<std::vector<std::string>>& rows) {
  ColumnNote note{heading, {words, tabbed(head)}, {}};
  note.wide.columns.assign(head.size(), {TablePages::kWidth_mm / static_cast<double>(head.size()), true});
  note.wide.columns.front().right = false;
  note.wide.lines = {{Kind::heading, {heading}}};
  add_words(note.wide, words);
  note.wide.lines.push_back({Kind::head, head});
  for (const std::vector<std::string>& cells : rows) {
    note.lines.push_back(tabbed(cells));
    note.wide.lines.push_back({Kind::row, cells});
  }
  return note;
}

std::vector<ColumnNote> bar_notes(const TurnedBar& bar, const std::vector<std::string>& marks,
                                  const LengthWords& lengths) {
  std::vector<ColumnNote> notes = {marks_note(marks)};
  std::vector<std::vector<std::string>> rows;
  for (const BarEdge& edge : edges_of(bar))
    rows.push_back({edge.letter, lengths.plain(edge.corner.r), lengths.plain(edge.radius_mm),
                    lengths.plain(edge.straight_mm()), lengths.plain(edge.round_mm())});
  std::ranges::sort(rows);
  notes.push_back(note_of("corners",
                          "along the panel's axis from the lens axis, radius about the panel's axis, and the "
                          "corner's edge from end to end, straight and round",
                          {"", "along", "radius", "straight", "round"}, rows));
  const std::vector<std::string> names = bore_names(plate_with_bores(bar));
  rows.clear();
  for (std::size_t i = 0; i < bar.bores.size(); ++i) {
    const SpacePoint p = bar.bores[i].from;
    rows.push_back({names[i], lengths.plain(p.x), lengths.plain(p.y), lengths.plain(p.z)});
  }
  if (!rows.empty())
    notes.push_back(note_of("bores",
                            "along the panel's axis from the lens axis, to the right of it seen from the sea, "
                            "and above it",
                            {"", "along", "right", "up"}, rows));
  return notes;
}

void name_view(SheetMaker& maker, const std::string& words, PaperPoint middle, double room) {
  maker.write({shortened(words, kWords_mm, room), middle, kWords_mm, Anchor::middle});
}

}  // namespace

Drawing turned_bar_sheet(const TurnedBar& bar, const std::vector<std::string>& marks,
                         std::optional<double> mass_g, const HouseWords& words) {
  const LengthWords lengths{words.inches};
  const std::vector<std::string> all = marks.empty() ? std::vector{bar.mark} : marks;
  const PlateExtent sea = extent_from_sea(bar);
  const ViewLayout layout = lay_out_views(sea.high.u - sea.low.u, sea.high.v - sea.low.v,
                                          {0, kSectionRoom_mm + kBetween_mm}, words.paper);
  const PaperBox room = layout.rooms.pictures;
  SheetMaker maker(layout.size);
  begin_picture(maker, layout.rooms.column.low.x, layout.paper_per_mm, words.inches);
  const PaperBox upper = {{room.low.x, room.low.y + kSectionRoom_mm + kBetween_mm}, room.high};
  const PlateMap sea_map = centred(sea, layout.paper_per_mm, upper);
  draw_overall(maker, sea, sea_map, words.inches);
  SeaView(maker, bar, sea_map, lengths).draw();
  const DrawingScale& scale =
      draw_section(maker, bar, {room.low, {room.high.x, room.low.y + kSectionRoom_mm}}, lengths);
  name_view(maker, fmt::format("from the sea, {}", layout.scale),
            {(room.low.x + room.high.x) / 2, sea_map.at(sea.low).y - kNameBelow_mm}, room.high.x - room.low.x);
  const std::vector<TableBlock> further = fill_column(
      maker, layout.rooms.column, bar_lines(bar, all.size(), mass_g, lengths), bar_notes(bar, all, lengths));
  const std::string scales =
      layout.scale == scale.words ? layout.scale : fmt::format("{} and {}", layout.scale, scale.words);
  return picture_and_tables(
      {std::move(maker), subject_of(all.front(), bar.kind, all.size()), scales, name_of(bar.metal)}, further,
      words);
}

}  // namespace prismwright
