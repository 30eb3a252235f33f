#include "core/drawing/frame_drawings.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/drawing/bought_list.h"
#include "core/drawing/part_sheet.h"
#include "core/drawing/round_part_sheet.h"
#include "core/drawing/turned_bar_sheet.h"
#include "core/frame/cut_words.h"

namespace prismwright {

namespace {

template <class Part>
const Part* find_mark(const std::vector<Part>& parts, const std::string& mark) {
  const auto found = std::ranges::find(parts, mark, &Part::mark);
  return found == parts.end() ? nullptr : &*found;
}

}  // namespace

std::optional<NamedDrawing> drawing_of(const FramePlan& frame, const PartsLine& line, const HouseWords& words,
                                       const std::vector<Landing>& landings) {
  if (line.marks.empty() || is_bought(line)) return std::nullopt;
  const std::string& mark = line.marks.front();
  NamedDrawing named{safe_stem(mark), fmt::format("{}, {} off", name_of(line.kind), line.marks.size()), {}};
  if (const FlatPart* flat = find_mark(frame.flats, mark)) {
    named.drawing = part_sheet(*flat, line.marks, words, landings);
  } else if (const TurnedBar* bar = find_mark(frame.bars, mark)) {
    named.drawing = turned_bar_sheet(*bar, line.marks, line.mass_g, words);
  } else if (const RoundPart* round = find_mark(frame.rounds, mark)) {
    named.drawing = round_part_sheet(*round, line.marks, words);
  } else {
    return std::nullopt;
  }
  return named;
}

std::vector<NamedDrawing> frame_drawings(const FramePlan& frame, const KnownVolumes& known,
                                         const HouseWords& words, const std::vector<Landing>& landings) {
  const std::vector<PartsLine> lines = parts_list(frame, known);
  std::vector<NamedDrawing> drawings;
  for (const PartsLine& line : lines) {
    if (auto one = drawing_of(frame, line, words, landings)) drawings.push_back(std::move(*one));
  }
  Drawing bought = bought_list(lines, words);
  if (!bought.sheets.empty())
    drawings.push_back({"bought-parts", "screws and dowels to be bought", std::move(bought)});
  return drawings;
}

}  // namespace prismwright
