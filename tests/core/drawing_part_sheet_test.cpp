#include "core/drawing/part_sheet.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/angle.h"
#include "core/drawing/frame_drawings.h"
#include "core/drawing/lengths.h"
#include "core/drawing/text_box.h"
#include "core/frame/cut_shapes.h"
#include "tests/support/flat_parts.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

/// Texts apart from each other, and fit for any file.
void expect_clean_texts_apart(const Drawing& drawing) {
  ASSERT_FALSE(drawing.sheets.empty());
  for (const Sheet& sheet : drawing.sheets) {
    expect_texts_apart(sheet);
    for (const DrawnText& text : sheet.texts) EXPECT_EQ(text.words, clean_words(text.words));
  }
}

std::size_t times(const Drawing& drawing, const std::string& words) {
  std::size_t count = 0;
  for (const Sheet& sheet : drawing.sheets)
    count += static_cast<std::size_t>(
        std::ranges::count_if(sheet.texts, [&](const DrawnText& text) { return text.words == words; }));
  return count;
}

HouseWords said(std::optional<Paper> paper = {}, bool inches = false) {
  HouseWords words;
  words.title = "Gull Rock, a title that is long enough to be cut where it meets the cells beside it";
  words.order = "fourth order";
  words.focal_mm = 250;
  words.material = "acrylic, 1.49180";
  words.date = "2026-03-01";
  words.revision = "B";
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
        expect_clean_texts_apart(part_sheet(part, {}, said(paper, inches)));
      }
    }
  }
}

TEST(PartSheet, DrawsAtTheScaleItStatesWithTheSizesOverAll) {
  const FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(170.5, 20), "r");
  const Drawing drawing = part_sheet(rail, {}, said(Paper::a4));
  EXPECT_EQ(times(drawing, "1:1"), 1u);
  EXPECT_EQ(times(drawing, "170.5"), 1u);
  EXPECT_EQ(times(drawing, "20"), 1u);
  ASSERT_EQ(drawing.sheets.size(), 1u) << "a rectangle without holes needs no tables";
  const Sheet& sheet = drawing.sheets.front();
  const auto outline = std::ranges::find(sheet.strokes, LineClass::outline, &Stroke::line);
  ASSERT_NE(outline, sheet.strokes.end());
  EXPECT_NEAR(outline->steps[0].to.x - outline->start.x, 170.5, 1e-9);
}

TEST(PartSheet, IsTitledAsEveryPaperOfTheLens) {
  const FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(170.5, 20), "r");
  const Drawing drawing = part_sheet(rail, {"P01-rail-top", "P02-rail-top"}, said(Paper::a4, true));
  for (const char* words : {"fourth order", "9.843 in", "brass", "inches", "2026-03-01", "B", "1 of 1",
                            "P01-rail-top: rail, 2 off"})
    EXPECT_EQ(times(drawing, words), 1u) << words;
  EXPECT_EQ(times(drawing, "acrylic, 1.49180"), 0u) << "a rail is not of the lens's glass";
}

TEST(PartSheet, NamesItsMetalAtTheFootOfItsTablesToo) {
  const Drawing drawing = part_sheet(rib_of(1, 30), {}, said(Paper::a4));
  ASSERT_GT(drawing.sheets.size(), 1u);
  EXPECT_EQ(times(drawing, "brass"), drawing.sheets.size());
}

TEST(PartSheet, TellsHolesPocketsMassAndLeastRadius) {
  const FlatPart rib = rib_of(1, 12);
  const Drawing drawing = part_sheet(rib, {rib.mark, "P04-rib-left", "P05-rib-left"}, said(Paper::a4));
  EXPECT_EQ(times(drawing, "12 blind, 3 mm deep from the front"), 1u);
  EXPECT_EQ(times(drawing, "A: 2 x 3.4 mm, clears M3"), 1u);
  // Corners of the pockets without radius are inside corners, which no cutter reaches; so told.
  EXPECT_EQ(times(drawing, "cutter radius up to 0 mm"), 1u);
  EXPECT_GE(times(drawing, "cutter radius up to mm"), 1u) << "heads the column of the pockets, uncut";
  const Drawing inches = part_sheet(rib, {}, said(Paper::a4, true));
  EXPECT_EQ(times(inches, "cutter radius up to 0 in"), 1u);
  EXPECT_GE(times(inches, "cutter radius up to in"), 1u);
  EXPECT_EQ(times(drawing, fmt::format("3 pieces, {:.1f} g each", mass_g(rib))), 1u);
  for (const char* name : {"A1", "A2", "B1", "B4", "C1", "C4", "D1", "D2"})
    EXPECT_EQ(times(drawing, name), 2u) << name << ": beside its hole, and in the list of places";
}

// One thin tooth stands up to the middle of the pocket: a name there would have its four corners in the pocket
// and the tooth between them.
TEST(PartSheet, KeepsNamesOfPocketsOffTheTeethOfTheirOutline) {
  const PlateOutline toothed = {{20, 3}, {24.9, 3}, {25, 7}, {25.1, 3}, {30, 3}, {30, 11}, {20, 11}};
  FlatPart rib = flat_part("P01-rib-left", PartKind::side_rib, 5, rectangle_chain(85, 15), "rib");
  rib.pockets = {{straight_chain(toothed), 3, {"P01-C"}}};
  for (const Paper paper : {Paper::a4, Paper::a3}) {
    const Drawing drawing = part_sheet(rib, {}, said(paper));
    const Sheet& sheet = drawing.sheets.front();
    const auto name = std::ranges::find(sheet.texts, std::string("p1"), &DrawnText::words);
    ASSERT_NE(name, sheet.texts.end());
    const auto pocket = std::ranges::find_if(
        sheet.strokes, [&](const Stroke& stroke) { return stroke.steps.size() == toothed.size(); });
    ASSERT_NE(pocket, sheet.strokes.end());
    PaperPoint at = pocket->start;
    for (const PaperStep& step : pocket->steps) {
      EXPECT_FALSE(crosses(box_of(*name), at, step.to)) << name_of(paper);
      at = step.to;
    }
  }
}

// A sector of an annulus, 250 to 300 mm, -55 to 60 degrees: its leftmost place is the inner corner at 60
// degrees, its lowest the outer one at -55, its highest the outer one at 60.
TEST(PartSheet, MeasuresHolesFromTheCornerOfLeftmostAndLowestEdge) {
  FlatPart rib = flat_part("P03-rib-left", PartKind::side_rib, 5, annular_sector(250, 300, -55, 60), "rib");
  rib.holes.push_back({{275, 10}, 3.4, 0, true, "clears M3"});
  rib.bores.push_back({{300, 0, 2.5}, {-1, 0, 0}, 8, 2.5, "taps M3"});
  const Drawing drawing = part_sheet(rib, {}, said(Paper::a3));
  const double left = 250 * std::cos(radians(60));
  const double low = -300 * std::sin(radians(55));
  const LengthWords mm;
  EXPECT_GE(times(drawing, mm.plain(275 - left)), 1u);
  EXPECT_GE(times(drawing, mm.plain(10 - low)), 1u);
  EXPECT_GE(times(drawing, mm.plain(300 - left)), 1u) << "the bore";
  EXPECT_GE(times(drawing, mm.plain(300 * std::sin(radians(60)) - low)), 1u) << "over all, upright";
  // Its four steps stand in the column: the outer arc full, the inner one hollow.
  EXPECT_EQ(times(drawing, "300.000"), 1u);
  EXPECT_EQ(times(drawing, "-250.000"), 1u);
  EXPECT_EQ(times(drawing, "line"), 2u);
  EXPECT_EQ(drawing.sheets.size(), 1u);
}

// An outline of 20 steps is too long for the column.
TEST(PartSheet, GivesCentresOfALongOutlineOnASheetOfTables) {
  FlatPart rib = rib_of(1, 12);
  PlateOutline corners;
  for (int i = 0; i < 20; ++i)
    corners.push_back({100 * std::cos(radians(18 * i)), 100 * std::sin(radians(18 * i))});
  rib.outline = straight_chain(corners);
  rib.outline[0].turn = radians(18);
  rib.outline[0].radius_mm = 100;
  rib.pockets.resize(1);
  rib.holes.clear();
  rib.bores.clear();
  const Drawing drawing = part_sheet(rib, {}, said(Paper::a4));
  expect_clean_texts_apart(drawing);
  ASSERT_EQ(drawing.sheets.size(), 2u);
  const Drawing tables{"", "", {drawing.sheets[1]}};
  // Leftmost at 180 degrees, so the centre is 100 from it; lowest at 270, which is a corner.
  EXPECT_GE(times(tables, "100.000"), 3u) << "radius and both coordinates of the centre";
  EXPECT_EQ(times(tables, "arc, full"), 1u);
  EXPECT_EQ(times(tables, "line"), 19u);
  EXPECT_EQ(times(tables, "p1"), 1u);
}

TEST(PartSheet, TellsHowPrismsBearWhereThatIsKnown) {
  const FlatPart rib = rib_of(1, 2);
  const std::vector<Landing> landings = {{rib.mark, "P03-C", 2.5, 7.25}, {"P04-rib-left", "P04-C", 2.5, 9.75}};
  const Drawing drawing = part_sheet(rib, {}, said(Paper::a4), landings);
  EXPECT_EQ(times(drawing, "7.25"), 1u);
  EXPECT_EQ(times(drawing, "9.75"), 0u) << "another rib's";
  EXPECT_EQ(times(part_sheet(rib, {}, said(Paper::a4)), "7.25"), 0u);
}

TEST(PartSheet, MeasuresRoundPlatesFromTheirMiddle) {
  FlatPart ring = ring_part("ring-top", 220, 250);
  ring.holes = {{{0, 235}, 3, 0, true, "taps M3"}, {{-235, 0}, 3, 0, true, "taps M3"}};
  const Drawing drawing = part_sheet(ring, {}, said(Paper::a4));
  EXPECT_EQ(times(drawing, "x and y from 0, the middle"), 1u);
  EXPECT_EQ(times(drawing, "235"), 1u);
  EXPECT_EQ(times(drawing, "-235"), 1u);
  EXPECT_EQ(times(drawing, "outline: round, 500 mm across"), 1u);
  EXPECT_EQ(times(drawing, "opening: round, 440 mm across"), 1u);
}

TEST(PartSheet, PutsWhatTheColumnDoesNotHoldOnFurtherSheets) {
  FlatPart plate = flat_part("base-table", PartKind::base_table, 8, rectangle_chain(400, 400), "b");
  for (int i = 0; i < 120; ++i) plate.holes.push_back({{20.0 + 3 * i, 200}, 2, 0, true, "taps M2"});
  std::vector<std::string> marks = {"base-table"};
  for (int i = 0; i < 300; ++i) marks.push_back(fmt::format("base-table-{}", i));
  const Drawing drawing = part_sheet(plate, marks, said(Paper::a4));
  expect_clean_texts_apart(drawing);
  EXPECT_GT(drawing.sheets.size(), 2u);
  for (const char* name : {"A1", "A60", "A120"}) EXPECT_GE(times(drawing, name), 1u) << name;
  std::string all;
  for (const Sheet& sheet : drawing.sheets)
    for (const DrawnText& text : sheet.texts) all += text.words + " ";
  for (const std::string& mark : marks) EXPECT_NE(all.find(mark), std::string::npos) << mark;
}

TEST(PartSheet, SaysHowManyLinesAreLeftOut) {
  FlatPart plate = flat_part("base-table", PartKind::base_table, 8, rectangle_chain(400, 400), "b");
  for (int i = 0; i < 120; ++i)
    plate.holes.push_back({{20.0 + 3 * i, 200}, 2, 0, true, "use " + std::to_string(i)});
  const Drawing drawing = part_sheet(plate, {}, said(Paper::a4));
  expect_clean_texts_apart(drawing);
  EXPECT_TRUE(std::ranges::any_of(drawing.sheets.front().texts, [](const DrawnText& text) {
    return text.words.starts_with("... and ") && text.words.ends_with(" lines more");
  }));
}

TEST(NestDrawing, NumbersEveryPlateAndNamesIt) {
  FramePlan frame;
  frame.flats = plates_of_a_lens(4, 1, false);
  const auto nest = nest_flats(frame.flats, {});
  ASSERT_TRUE(nest.ok());
  for (const bool inches : {false, true}) {
    const Drawing drawing = nest_drawing(*nest, frame, said({}, inches));
    expect_clean_texts_apart(drawing);
    ASSERT_EQ(drawing.sheets.size(), nest->sheets.size());
    for (std::size_t i = 0; i < nest->sheets.size(); ++i) {
      const Drawing one{"", "", {drawing.sheets[i]}};
      for (std::size_t k = 0; k < nest->sheets[i].parts.size(); ++k) {
        EXPECT_GE(times(one, std::to_string(k + 1)), 1u);
        EXPECT_EQ(times(one, std::to_string(k + 1) + ": " + nest->sheets[i].parts[k].mark), 1u);
      }
    }
  }
}

bool crossed_by_outlines(const Sheet& sheet, const PaperBox& box) {
  for (const Stroke& stroke : sheet.strokes) {
    if (stroke.line != LineClass::outline || stroke.tone) continue;
    PaperPoint at = stroke.start;
    for (const PaperStep& step : stroke.steps) {
      if (step.turn == 0 && crosses(box, at, step.to)) return true;
      at = step.to;
    }
  }
  return false;
}

TEST(NestDrawing, NumbersPlatesTooSmallForTheirNumbersOnWhiteGround) {
  FramePlan frame;
  for (int i = 0; i < 12; ++i) {
    const std::string mark = fmt::format("P{:02}-rail-top", i + 1);
    frame.flats.push_back(flat_part(mark, PartKind::rail, 8, rectangle_chain(22, 14), mark));
  }
  const auto nest = nest_flats(frame.flats, {});
  ASSERT_TRUE(nest.ok());
  ASSERT_EQ(nest->sheets.size(), 1u);
  const Drawing drawing = nest_drawing(*nest, frame, said(Paper::a4));
  expect_clean_texts_apart(drawing);
  const Sheet& sheet = drawing.sheets.front();
  int boxed = 0;
  std::set<std::string> numbers;
  for (const DrawnText& text : sheet.texts) {
    const PaperBox box = box_of(text);
    const auto covers = [&](const Stroke& stroke) {
      return stroke.tone && stroke.start.x <= box.low.x && stroke.start.y <= box.low.y;
    };
    if (text.anchor == Anchor::middle && text.size_mm < 2.3) numbers.insert(text.words);
    if (!crossed_by_outlines(sheet, box)) continue;
    ++boxed;
    EXPECT_TRUE(std::ranges::any_of(sheet.strokes, covers)) << text.words;
  }
  EXPECT_GE(boxed, 6) << "at 1:10 no number has room within its plate";
  for (int i = 1; i <= 12; ++i) EXPECT_TRUE(numbers.contains(std::to_string(i))) << i;
}

TEST(NestDrawing, NamesThePlatesThatNoSheetTakes) {
  FramePlan frame;
  frame.flats = {flat_part("base-table", PartKind::base_table, 8, rectangle_chain(4000, 400), "b")};
  const auto nest = nest_flats(frame.flats, {});
  ASSERT_TRUE(nest.ok());
  ASSERT_EQ(nest->too_large.size(), 1u);
  const Drawing drawing = nest_drawing(*nest, frame, said());
  ASSERT_EQ(drawing.sheets.size(), 1u);
  EXPECT_EQ(times(drawing, "Plates that no sheet takes"), 2u) << "heading and title block";
}

}  // namespace
}  // namespace prismwright
