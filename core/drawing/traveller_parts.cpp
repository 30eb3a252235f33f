#include "core/drawing/traveller_parts.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/hatch.h"
#include "core/drawing/lengths.h"
#include "core/drawing/section_images.h"
#include "core/drawing/sheet_layout.h"
#include "core/drawing/table_pages.h"
#include "core/works/works_cautions.h"

namespace prismwright {

namespace {

constexpr double kWords_mm = 2.1;
constexpr double kPitch_mm = 3.3;
constexpr double kRow_mm = 4.4;
constexpr double kLeastRow_mm = 2.9;  ///< of measures, where there are many
constexpr double kStageRow_mm = 5.6;
constexpr double kInset_mm = 0.9;
constexpr double kHatch_mm = 1.6;
constexpr double kRim_mm = 9;  ///< round a section, for letters and widths
constexpr double kNameRoom_mm = 5;
constexpr double kTolerance_mm = 0.02;

struct ProfileReach {
  SectionPoint low{1e300, 1e300};
  SectionPoint high{-1e300, -1e300};
};

ProfileReach reach_of(const std::vector<SectionPoint>& polygon) {
  ProfileReach reach;
  for (const SectionPoint p : polygon) {
    reach.low = {std::min(reach.low.r, p.r), std::min(reach.low.z, p.z)};
    reach.high = {std::max(reach.high.r, p.r), std::max(reach.high.z, p.z)};
  }
  return reach;
}

const DrawingScale& scale_for(double wide_mm, double high_mm, const PaperBox& room) {
  const std::vector<DrawingScale>& scales = drawing_scales();
  const auto fits = [&](const DrawingScale& scale) {
    return scale.paper_per_mm * wide_mm <= room.high.x - room.low.x &&
           scale.paper_per_mm * high_mm <= room.high.y - room.low.y;
  };
  const auto found = std::ranges::find_if(scales, fits);
  return found == scales.end() ? scales.back() : *found;
}

/// Places around a point, first those that lie the farthest along the way, then all others.
std::vector<PaperPoint> places_round(PaperPoint at, double way, double first_mm) {
  std::vector<PaperPoint> places;
  for (const double away : {first_mm, first_mm + 1.5, first_mm + 3.5, first_mm + 6}) {
    for (const double turn : {0.0, 0.5, -0.5, 1.0, -1.0, 1.6, -1.6})
      places.push_back(
          {at.x + away * std::cos(way + turn), at.y + away * std::sin(way + turn) - 0.35 * kWords_mm});
  }
  return places;
}

double way_out(PaperPoint from, PaperPoint at) { return std::atan2(at.y - from.y, at.x - from.x); }

void letter_corners(SheetMaker& maker, const TravellerPiece& piece, const PaperMap& map, PaperPoint middle) {
  for (const SectionCorner& corner : piece.corners) {
    const PaperPoint at = map.at(corner.place);
    DrawnText text{corner.letter, {}, kWords_mm, Anchor::middle};
    text.bold = true;
    maker.write_at_free(std::move(text), places_round(at, way_out(middle, at), 2));
  }
}

/// Chords of all faces of glass that can be measured, written outside beside their middles. The longest first:
/// where room is short, lands go without.
void write_widths(SheetMaker& maker, const TravellerPiece& piece, const PaperMap& map) {
  std::vector<const Face*> faces;
  for (const Face& face : piece.profile.faces) {
    if (face.role != FaceRole::axis) faces.push_back(&face);
  }
  std::ranges::sort(faces, std::greater<>(),
                    [](const Face* face) { return distance(face->start(), face->end()); });
  for (const Face* face : faces) {
    const PaperPoint from = map.at(face->start());
    const PaperPoint to = map.at(face->end());
    const double chord = distance(face->start(), face->end());
    const std::string words = fmt::format("{:.2f}", chord);
    // Walked anticlockwise, the outside lies on the right.
    const double way = std::atan2(to.y - from.y, to.x - from.x) - std::acos(0.0);
    const PaperPoint middle = {(from.x + to.x) / 2, (from.y + to.y) / 2};
    const double half = text_width_mm(words, kWords_mm) / 2;
    const double off = 1.4 + half * std::abs(std::cos(way)) + kWords_mm / 2 * std::abs(std::sin(way));
    maker.write_at_free({words, {}, kWords_mm, Anchor::middle}, places_round(middle, way, off));
  }
}

/// The first sentence says what the danger is, the last what to do; what lies between stands on the load card.
std::string short_text(std::string_view text) {
  const std::size_t first = text.find(". ");
  if (first == std::string_view::npos) return std::string(text);
  return std::string(text.substr(0, first + 2)) + std::string(text.substr(text.rfind(". ") + 2));
}

}  // namespace

std::string draw_piece(SheetMaker& maker, const TravellerPiece& piece, const PaperBox& room) {
  const std::vector<SectionPoint> polygon = polygon_of(piece.profile, kTolerance_mm);
  const ProfileReach reach = reach_of(polygon);
  const PaperBox inside = {{room.low.x + kRim_mm, room.low.y + kNameRoom_mm + kRim_mm},
                           {room.high.x - kRim_mm, room.high.y - kRim_mm}};
  const DrawingScale& scale = scale_for(reach.high.r - reach.low.r, reach.high.z - reach.low.z, inside);
  const PaperPoint middle = {(inside.low.x + inside.high.x) / 2, (inside.low.y + inside.high.y) / 2};
  const PaperMap map = {{middle.x - scale.paper_per_mm * (reach.low.r + reach.high.r) / 2,
                         middle.y - scale.paper_per_mm * (reach.low.z + reach.high.z) / 2},
                        scale.paper_per_mm};
  const std::vector<PaperPoint> outline = map.at(polygon);
  for (Stroke& line : hatch_lines(outline, kHatch_mm, false)) maker.draw(std::move(line));
  maker.draw(outline_stroke(piece.profile, map, kTolerance_mm));
  for (std::size_t i = 0; i < outline.size(); ++i)
    maker.keep_clear(outline[i], outline[(i + 1) % outline.size()]);
  const std::string name = fmt::format("{}, {}", piece.name, scale.words);
  maker.write({shortened(clean_words(name), kWords_mm, room.high.x - room.low.x),
               {(room.low.x + room.high.x) / 2, room.low.y + 1.2},
               kWords_mm,
               Anchor::middle});
  letter_corners(maker, piece, map, middle);
  write_widths(maker, piece, map);
  return scale.words;
}

void draw_ruled_row(SheetMaker& maker, PaperPoint top_left, double height_mm, const std::vector<double>& widths,
                    const std::vector<std::string>& cells, bool head) {
  double x = top_left.x;
  const double low = top_left.y - height_mm;
  const double base = low + (height_mm - 0.75 * kWords_mm) / 2;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    maker.draw(rectangle_stroke({x, low}, {x + widths[i], top_left.y}, LineClass::thin));
    if (i < cells.size()) {
      DrawnText text{shortened(clean_words(cells[i]), kWords_mm, widths[i] - 2 * kInset_mm, head),
                     {x + kInset_mm, base},
                     kWords_mm};
      text.bold = head;
      maker.write(std::move(text));
    }
    x += widths[i];
  }
}

void draw_measures(SheetMaker& maker, const std::vector<Feature>& features, const PaperBox& room) {
  const double wide = room.high.x - room.low.x;
  const std::vector<double> widths = {0.34 * wide, 0.24 * wide, 0.18 * wide, 0.24 * wide};
  const double high = room.high.y - room.low.y;
  const double row = std::clamp(high / static_cast<double>(features.size() + 1), kLeastRow_mm, kRow_mm);
  double top = room.high.y;
  draw_ruled_row(maker, {room.low.x, top}, row, widths, {"measure", "drawn", "within", "measured"}, true);
  top -= row;
  // A hair more than the room, or rounding would cost the last row.
  const auto fit = static_cast<std::size_t>(std::max(0.0, std::floor((top - room.low.y) / row + 1e-6)));
  const std::size_t shown = features.size() <= fit ? features.size() : fit - std::min<std::size_t>(fit, 1);
  for (std::size_t i = 0; i < shown; ++i) {
    const Feature& feature = features[i];
    const int digits = feature.unit == "deg" ? 3 : 2;
    draw_ruled_row(maker, {room.low.x, top}, row, widths,
                   {feature.key, decimals(feature.drawn, digits) + (feature.unit == "deg" ? "\u00B0" : ""),
                    shortest(feature.within)});
    top -= row;
  }
  if (shown < features.size() && fit > 0)
    draw_ruled_row(maker, {room.low.x, top}, row, {wide},
                   {fmt::format("{} more: see the list of measures", features.size() - shown)});
}

double draw_stage_rows(SheetMaker& maker, const TravellerCasting& casting, const PaperBox& room) {
  const double wide = room.high.x - room.low.x;
  const std::vector<double> widths = {0.19 * wide, 0.19 * wide, 0.17 * wide, 0.45 * wide};
  double top = room.high.y;
  draw_ruled_row(maker, {room.low.x, top}, kRow_mm, widths, {"stage", "date", "initials", "remarks"}, true);
  top -= kRow_mm;
  for (const Stage stage : traveller_stages()) {
    std::vector<std::string> cells = {std::string(name_of(stage))};
    if (const auto found = casting.reached.find(stage); found != casting.reached.end())
      cells.insert(cells.end(), {found->second.day, found->second.by, found->second.note});
    draw_ruled_row(maker, {room.low.x, top}, kStageRow_mm, widths, cells);
    top -= kStageRow_mm;
  }
  return room.high.y - top;
}

double write_lines(SheetMaker& maker, const std::vector<std::string>& lines, const PaperBox& room) {
  const double wide = room.high.x - room.low.x;
  std::vector<std::string> broken;
  for (const std::string& line : lines) {
    for (const std::string& part : broken_words(line, kWords_mm, wide)) broken.push_back(part);
  }
  const auto fit = static_cast<std::size_t>(std::max(0.0, std::floor((room.high.y - room.low.y) / kPitch_mm)));
  if (broken.size() > fit && fit > 0) {
    const std::size_t left_out = broken.size() - fit + 1;
    broken.resize(fit);
    broken.back() = fmt::format("... and {} lines more", left_out);
  }
  double top = room.high.y;
  for (std::size_t i = 0; i < broken.size() && i < fit; ++i) {
    maker.write({shortened(broken[i], kWords_mm, wide), {room.low.x, top - kWords_mm}, kWords_mm});
    top -= kPitch_mm;
  }
  return top;
}

std::vector<std::string> short_cautions() {
  std::vector<std::string> lines;
  for (const Caution& caution : casting_cautions())
    lines.push_back(std::string(caution.head) + ": " + short_text(caution.text));
  return lines;
}

double height_of_lines(const std::vector<std::string>& lines, double width_mm) {
  std::size_t count = 0;
  for (const std::string& line : lines) count += broken_words(line, kWords_mm, width_mm).size();
  return static_cast<double>(count) * kPitch_mm;
}

}  // namespace prismwright
