#include "core/drawing/traveller_parts.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/drawing/lengths.h"
#include "core/drawing/section_picture.h"
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

/// Chords of all faces of glass that can be measured.
std::vector<std::string> widths_of(const Profile& profile) {
  std::vector<std::string> words;
  for (const Face& face : profile.faces) {
    words.push_back(face.role == FaceRole::axis ? ""
                                                : fmt::format("{:.2f}", distance(face.start(), face.end())));
  }
  return words;
}

/// The first sentence says what the danger is, the last what to do; what lies between stands on the load card.
std::string short_text(std::string_view text) {
  const std::size_t first = text.find(". ");
  if (first == std::string_view::npos) return std::string(text);
  return std::string(text.substr(0, first + 2)) + std::string(text.substr(text.rfind(". ") + 2));
}

}  // namespace

std::string draw_piece(SheetMaker& maker, const TravellerPiece& piece, const PaperBox& room) {
  return draw_section_picture(maker, {piece.name, piece.profile, piece.corners, widths_of(piece.profile)}, room)
      .words;
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
