#include "core/drawing/traveller.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/drawing/label_sheets.h"
#include "core/drawing/qr_code.h"
#include "core/drawing/sheet_layout.h"
#include "core/drawing/title_block.h"
#include "core/drawing/traveller_parts.h"

namespace prismwright {

namespace {

constexpr double kPad_mm = 2;
constexpr double kCode_mm = 26;
constexpr double kHead_mm = 28;
constexpr double kMark_mm = 8;
constexpr double kWords_mm = 2.4;
constexpr double kTrayRow_mm = 6.4;
constexpr double kOwnPieceShare = 0.28;  ///< the same on a prism's own sheet, which has its record below
constexpr double kPieceShare = 0.33;     ///< of the sheet's height, for the sections
constexpr double kLeastPiece_mm = 60;    ///< width that a section takes at least

struct Page {
  SheetMaker maker;
  PaperBox room;  ///< inside the border, over the title block
};

Page new_page(Paper paper) {
  Page page{SheetMaker({paper, false}), {}};
  const PaperBox frame = page.maker.frame();
  page.room = {{frame.low.x + kPad_mm, frame.low.y + SheetRooms::title_block + kPad_mm},
               {frame.high.x - kPad_mm, frame.high.y - kPad_mm}};
  return page;
}

/// Mark or tray in large letters, words below, the code on the right where it can be read. Takes its height off
/// the room.
void draw_head(Page& page, const std::string& mark, const std::vector<std::string>& lines,
               const std::string& code_text) {
  double right = page.room.high.x;
  const auto code = qr_code(code_text);
  if (code && code->module_mm(kCode_mm) >= kLeastModule_mm) {
    const PaperBox ground = {{right - kCode_mm, page.room.high.y - kCode_mm}, page.room.high};
    for (Stroke& bar : qr_strokes(*code, ground)) page.maker.draw(std::move(bar));
    right -= kCode_mm + kPad_mm;
  }
  const double wide = right - page.room.low.x;
  const double size = std::min(kMark_mm, kMark_mm * wide / std::max(1e-9, text_width_mm(mark, kMark_mm, true)));
  DrawnText text{mark, {page.room.low.x, page.room.high.y - kMark_mm}, size};
  text.bold = true;
  page.maker.write(std::move(text));
  write_lines(page.maker, lines,
              {{page.room.low.x, page.room.high.y - kHead_mm + 1}, {right, page.room.high.y - kMark_mm - 3}});
  page.room.high.y -= kHead_mm;
}

void finish(Page& page, const Traveller& traveller, const std::string& subject, const std::string& scale,
            const std::string& sheet) {
  const TravellerCasting& first = traveller.castings.front();
  const bool one = traveller.castings.size() == 1;
  draw_title_block(page.maker, {clean_words(traveller.title),
                                subject,
                                {{{"prisms", std::to_string(traveller.castings.size())},
                                  {"casting", one && first.serial != 0 ? std::to_string(first.serial) : ""},
                                  {"piece", one ? traveller.pieces[first.piece].name : ""},
                                  {"scale", scale},
                                  {"lengths", "millimetres"},
                                  {"date", traveller.date},
                                  {"tray", ""},
                                  {"sheet", sheet}}}});
}

Sheet own_sheet(const Traveller& traveller, Paper paper) {
  Page page = new_page(paper);
  const TravellerCasting& casting = traveller.castings.front();
  const TravellerPiece& piece = traveller.pieces[casting.piece];
  draw_head(page, casting.mark,
            {casting.serial == 0 ? "not cast yet" : fmt::format("casting no. {}", casting.serial), piece.words},
            code_words(traveller.title, casting.mark, casting.serial));
  PaperBox& room = page.room;
  const double middle = room.low.x + 0.5 * (room.high.x - room.low.x);
  const double low = room.high.y - kOwnPieceShare * (room.high.y - room.low.y + kHead_mm);
  const std::string scale = draw_piece(page.maker, piece, {{room.low.x, low}, {middle - kPad_mm, room.high.y}});
  draw_measures(page.maker, piece.features, {{middle, low}, room.high});
  room.high.y = low - kPad_mm;
  room.high.y -= draw_stage_rows(page.maker, casting, room) + kPad_mm;

  const std::vector<std::string> cautions = short_cautions();
  const double caution_top = room.low.y + height_of_lines(cautions, room.high.x - room.low.x);
  write_lines(page.maker, cautions, {room.low, {room.high.x, caution_top + 0.01}});
  if (!casting.record.empty())
    write_lines(page.maker, casting.record, {{room.low.x, caution_top + kPad_mm}, room.high});
  finish(page, traveller, casting.mark + " on its way", scale, "1 of 1");
  return page.maker.take();
}

/// The sections of a tray side by side; further pieces are named only.
std::string draw_pieces(Page& page, const Traveller& traveller) {
  PaperBox& room = page.room;
  const double wide = room.high.x - room.low.x;
  const auto most = static_cast<std::size_t>(wide / kLeastPiece_mm);
  const std::size_t shown = std::min(most, traveller.pieces.size());
  const double low = room.high.y - kPieceShare * (room.high.y - room.low.y);
  if (traveller.pieces.size() == 1) {
    const double middle = room.low.x + wide / 2;
    draw_measures(page.maker, traveller.pieces.front().features, {{middle, low}, room.high});
    const PaperBox place = {{room.low.x, low}, {middle - kPad_mm, room.high.y}};
    const std::string scale = draw_piece(page.maker, traveller.pieces.front(), place);
    room.high.y = low - kPad_mm;
    return scale;
  }
  const double each = wide / static_cast<double>(shown);
  for (std::size_t i = 0; i < shown; ++i) {
    const double left = room.low.x + static_cast<double>(i) * each;
    draw_piece(page.maker, traveller.pieces[i], {{left, low}, {left + each, room.high.y}});
  }
  room.high.y = low - kPad_mm;
  if (shown == traveller.pieces.size()) return "as drawn";
  std::string further = "Not drawn: ";
  for (std::size_t i = shown; i < traveller.pieces.size(); ++i)
    further += (i == shown ? "" : ", ") + traveller.pieces[i].name;
  room.high.y = write_lines(page.maker, {further}, {{room.low.x, room.high.y - 7}, room.high}) - kPad_mm;
  return "as drawn";
}

std::vector<double> tray_widths(double wide_mm) {
  constexpr double kMarkShare = 0.15;
  constexpr double kNumberShare = 0.09;
  const std::size_t stages = traveller_stages().size();
  std::vector<double> widths = {kMarkShare * wide_mm, kNumberShare * wide_mm};
  widths.resize(2 + stages, (1 - kMarkShare - kNumberShare) * wide_mm / static_cast<double>(stages));
  return widths;
}

/// Rows of the tray from `first` on, as many as the page takes; answers the first that it does not.
std::size_t draw_tray_rows(Page& page, const Traveller& traveller, std::size_t first) {
  PaperBox& room = page.room;
  const std::vector<double> widths = tray_widths(room.high.x - room.low.x);
  std::vector<std::string> head = {"prism", "no."};
  for (const Stage stage : traveller_stages()) head.emplace_back(name_of(stage));
  double top = room.high.y;
  draw_ruled_row(page.maker, {room.low.x, top}, kTrayRow_mm, widths, head, true);
  top -= kTrayRow_mm;
  while (first < traveller.castings.size() && top - kTrayRow_mm >= room.low.y) {
    const TravellerCasting& casting = traveller.castings[first++];
    std::vector<std::string> cells = {casting.mark, casting.serial == 0 ? "" : std::to_string(casting.serial)};
    for (const Stage stage : traveller_stages()) {
      const auto found = casting.reached.find(stage);
      cells.push_back(found == casting.reached.end() ? "" : found->second.day);
    }
    draw_ruled_row(page.maker, {room.low.x, top}, kTrayRow_mm, widths, cells);
    top -= kTrayRow_mm;
  }
  room.high.y = top;
  return first;
}

std::string tray_code(const Traveller& traveller) {
  std::string words = code_words(traveller.title, "tray", 0);
  for (const TravellerCasting& casting : traveller.castings) {
    words += " " + casting.mark;
    if (casting.serial != 0) words += fmt::format(" {}", casting.serial);
  }
  return words;
}

std::vector<Sheet> tray_sheets(const Traveller& traveller, Paper paper) {
  std::vector<Page> pages;
  pages.push_back(new_page(paper));
  std::vector<std::string> lines;
  for (const TravellerPiece& piece : traveller.pieces) lines.push_back(piece.name + ": " + piece.words);
  const std::string name = fmt::format("Tray of {}", traveller.castings.size());
  draw_head(pages.back(), name, lines, tray_code(traveller));
  const std::string scale = draw_pieces(pages.back(), traveller);
  const std::vector<std::string> cautions = short_cautions();
  const double foot = height_of_lines(cautions, pages.back().room.high.x - pages.back().room.low.x) + kPad_mm;
  for (std::size_t next = 0;;) {
    PaperBox& room = pages.back().room;
    const double low = room.low.y;
    room.low.y += foot;  // every sheet of a tray may lie by itself
    next = draw_tray_rows(pages.back(), traveller, next);
    write_lines(pages.back().maker, cautions, {{room.low.x, low}, {room.high.x, low + foot - kPad_mm + 0.01}});
    if (next >= traveller.castings.size()) break;
    pages.push_back(new_page(paper));
  }
  std::vector<Sheet> sheets;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    finish(pages[i], traveller, name + " on its way", i == 0 ? scale : "",
           fmt::format("{} of {}", i + 1, pages.size()));
    sheets.push_back(pages[i].maker.take());
  }
  return sheets;
}

}  // namespace

std::vector<Stage> traveller_stages() {
  std::vector<Stage> stages;
  for (const Stage stage : kStages) {
    if (stage != Stage::drawn && stage != Stage::scrapped) stages.push_back(stage);
  }
  return stages;
}

Outcome<Drawing> traveller_sheets(const Traveller& traveller, Paper paper) {
  if (traveller.castings.empty())
    return request_problem("traveller", "",
                           "No prism is named, so there is nothing to print. Name one by its mark.");
  for (const TravellerCasting& casting : traveller.castings) {
    if (casting.piece >= traveller.pieces.size())
      return request_problem("traveller", casting.mark,
                             fmt::format("{} has no drawing here. Leave it out.", casting.mark));
  }
  Drawing drawing;
  drawing.title = traveller.title;
  drawing.date = traveller.date;
  drawing.sheets =
      traveller.castings.size() == 1 ? std::vector{own_sheet(traveller, paper)} : tray_sheets(traveller, paper);
  return drawing;
}

}  // namespace prismwright
