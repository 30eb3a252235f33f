#include "core/drawing/part_sheet.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/drawing/plate_view.h"
#include "core/drawing/text_box.h"
#include "core/frame/cut_shapes.h"
#include "tests/support/flat_parts.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

/// Texts apart from each other, and fit for any file.
void expect_clean_texts_apart(const Sheet& sheet) {
  expect_texts_apart(sheet);
  for (const DrawnText& text : sheet.texts) EXPECT_EQ(text.words, clean_words(text.words));
}

std::size_t times(const Sheet& sheet, const std::string& words) {
  return static_cast<std::size_t>(
      std::ranges::count_if(sheet.texts, [&](const DrawnText& text) { return text.words == words; }));
}

PartSheetWords said(std::optional<Paper> paper = {}, bool inches = false) {
  PartSheetWords words;
  words.title = "Gull Rock, a title that is long enough to be cut where it meets the cells beside it";
  words.date = "2026-03-01";
  words.paper = paper;
  words.inches = inches;
  return words;
}

FlatPart rib_of(double scale, int pockets) {
  FlatPart rib = flat_part("P03-rib-left", PartKind::side_rib, 5,
                           annular_sector(250 * scale, 300 * scale, -55, 60), "rib");
  for (int i = 0; i < pockets; ++i) {
    const double step = 100.0 / pockets;
    rib.pockets.push_back(
        {annular_sector(258 * scale, 288 * scale, -50 + step * i, -50 + step * (i + 0.8)), 3, {"P03-C"}});
    const double way = radians(-50 + step * (i + 0.9));
    rib.holes.push_back({{275 * scale * std::cos(way), 275 * scale * std::sin(way)},
                         3.4,
                         i % 2 * 6.3,
                         true,
                         i % 3 == 0 ? "clears M3" : "dowel 3 mm"});
  }
  rib.bores = {{{300, 0, 2.5}, {-1, 0, 0}, 8, 2.5, "taps M3"}};
  return rib;
}

TEST(PartSheet, KeepsEveryTextOffEveryOtherWhateverThePartAndPaper) {
  std::vector<FlatPart> parts = {rib_of(1, 12),
                                 rib_of(4, 30),
                                 rib_of(0.3, 6),
                                 ring_part("ring-top", 220, 250),
                                 ring_part("base-table", 100, 1900),
                                 flat_part("latch", PartKind::latch, 3, rectangle_chain(8, 30), "l"),
                                 flat_part("rail", PartKind::rail, 8, rectangle_chain(400, 15), "r")};
  for (const FlatPart& part : parts) {
    for (const auto& paper : {std::optional<Paper>{}, std::optional{Paper::a4}, std::optional{Paper::letter}}) {
      for (const bool inches : {false, true}) {
        SCOPED_TRACE(part.mark + (paper ? name_of(*paper) : " any") + (inches ? " in" : " mm"));
        expect_clean_texts_apart(part_sheet(part, said(paper, inches)));
      }
    }
  }
}

TEST(PartSheet, DrawsAtTheScaleItStatesWithTheSizesOverAll) {
  const FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(170.5, 20), "r");
  const Sheet sheet = part_sheet(rail, said(Paper::a4));
  EXPECT_EQ(times(sheet, "1:1"), 1u);
  EXPECT_EQ(times(sheet, "170.5"), 1u);
  EXPECT_EQ(times(sheet, "20"), 1u);
  const auto outline = std::ranges::find(sheet.strokes, LineClass::outline, &Stroke::line);
  ASSERT_NE(outline, sheet.strokes.end());
  EXPECT_NEAR(outline->steps[0].to.x - outline->start.x, 170.5, 1e-9);
}

TEST(PartSheet, TellsHolesPocketsMassAndLeastRadius) {
  FlatPart rib = rib_of(1, 12);
  PartSheetWords words = said(Paper::a4);
  words.marks = {rib.mark, "P04-rib-left", "P05-rib-left"};
  const Sheet sheet = part_sheet(rib, words);
  EXPECT_EQ(times(sheet, "P03-rib-left and 2 alike"), 1u);
  EXPECT_EQ(times(sheet, "12 blind, 3 mm deep from the front"), 1u);
  EXPECT_EQ(times(sheet, "A: 2 x 3.4 mm, clears M3"), 1u);
  // Corners of the pockets without radius are inside corners; so told.
  EXPECT_EQ(times(sheet, "least inside radius 0 mm"), 1u);
  EXPECT_EQ(times(sheet, fmt::format("3 pieces, {:.1f} g each", mass_g(rib))), 1u);
  for (const char* letter : {"A", "B", "C", "D"}) EXPECT_GE(times(sheet, letter), 1u) << letter;
  std::size_t letters = 0;
  for (const char* letter : {"A", "B", "C", "D"}) letters += times(sheet, letter);
  EXPECT_EQ(letters, rib.holes.size()) << "every hole has its letter";
}

TEST(PartSheet, SaysHowManyLinesAreLeftOut) {
  FlatPart plate = flat_part("base-table", PartKind::base_table, 8, rectangle_chain(400, 400), "b");
  for (int i = 0; i < 120; ++i)
    plate.holes.push_back({{20.0 + 3 * i, 200}, 2, 0, true, "use " + std::to_string(i)});
  const Sheet sheet = part_sheet(plate, said(Paper::a4));
  expect_clean_texts_apart(sheet);
  EXPECT_TRUE(std::ranges::any_of(sheet.texts, [](const DrawnText& text) {
    return text.words.starts_with("... and ") && text.words.ends_with(" lines more");
  }));
}

TEST(NestSheetDrawing, NumbersEveryPlateAndNamesIt) {
  const auto flats = plates_of_a_lens(4, 1, false);
  const auto nest = nest_flats(flats, {});
  ASSERT_TRUE(nest.ok());
  for (std::size_t i = 0; i < nest->sheets.size(); ++i) {
    const Sheet sheet = nest_sheet(*nest, i, flats, said());
    expect_clean_texts_apart(sheet);
    for (std::size_t k = 0; k < nest->sheets[i].parts.size(); ++k) {
      EXPECT_GE(times(sheet, std::to_string(k + 1)), 1u);
      EXPECT_EQ(times(sheet, std::to_string(k + 1) + ": " + nest->sheets[i].parts[k].mark), 1u);
    }
  }
}

}  // namespace
}  // namespace prismwright
