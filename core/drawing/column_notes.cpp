#include "core/drawing/column_notes.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/drawing/plate_view.h"

namespace prismwright {

namespace {

constexpr std::size_t kRowsToNameOne = 2;

void append(std::vector<std::string>& lines, const std::vector<std::string>& more) {
  lines.insert(lines.end(), more.begin(), more.end());
}

std::vector<std::string> with_note(std::vector<std::string> lines, const ColumnNote& note) {
  append(lines, {"", "#" + note.heading});
  append(lines, note.lines);
  return lines;
}

}  // namespace

std::vector<TableBlock> fill_column(SheetMaker& maker, const PaperBox& column, std::vector<std::string> facts,
                                    const std::vector<ColumnNote>& notes) {
  std::vector<TableBlock> left;
  std::vector<std::string> elsewhere;
  const std::size_t room = column_room(column);
  for (std::size_t i = 0; i < notes.size(); ++i) {
    const std::size_t kept = kRowsToNameOne + elsewhere.size() + (notes.size() - i);
    std::vector<std::string> longer = with_note(facts, notes[i]);
    if (!notes[i].lines.empty() && column_rows(column, longer) + kept <= room) {
      facts = std::move(longer);
    } else {
      elsewhere.push_back(notes[i].heading);
      left.push_back(notes[i].wide);
    }
  }
  if (!elsewhere.empty()) {
    append(facts, {"", "#on further sheets"});
    append(facts, elsewhere);
  }
  write_column(maker, column, facts);
  return left;
}

ColumnNote marks_note(const std::vector<std::string>& marks) {
  const std::string all = fmt::format("{}", fmt::join(marks, ", "));
  return {"marks", {all}, words_block("Marks", {all})};
}

TableBlock words_block(const std::string& heading, const std::vector<std::string>& words) {
  TableBlock block;
  block.columns = {{TablePages::kWidth_mm}};
  block.lines.push_back({TableLine::Kind::heading, {heading}});
  for (const std::string& one : words) add_words(block, one);
  return block;
}

Drawing picture_and_tables(UntitledSheet picture, const std::vector<TableBlock>& tables,
                           const HouseWords& words) {
  const Paper paper = picture.maker.size().paper;
  const std::string subject = picture.subject;
  const std::string metal = picture.metal;
  std::vector<UntitledSheet> sheets;
  sheets.push_back(std::move(picture));
  TablePages pages(paper);
  for (const TableBlock& table : tables) pages.add(table);
  for (SheetMaker& page : pages.take())
    sheets.push_back({std::move(page), subject + ": tables", "none", metal});
  return titled(std::move(sheets), words);
}

}  // namespace prismwright
