#include "core/drawing/frame_drawings.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>

#include "core/base/angle.h"
#include "core/drawing/bought_list.h"
#include "core/drawing/lengths.h"
#include "core/frame/assembly_order.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

constexpr double kTitleBlockTop_mm = 36;

/// A bull's-eye with turned bars between its bands, and a door in its third panel.
LensValues with_bars_and_door() {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.section.upper_rib_mm = values.section.lower_rib_mm = 10;
  values.frame.door_panel = 3;
  return values;
}

const FramedLens& door_lens() { return framed_once("bars and door", with_bars_and_door()); }
const FramedLens& belt_lens() { return framed_once("sixth belt", sixth_order_belt(Faces::arc)); }
const FramedLens& first_order() { return framed_once("first unequal", first_order_unequal(Faces::arc)); }

HouseWords words_for(const FramedLens& lens, std::optional<Paper> paper = {}, bool inches = false) {
  HouseWords words = house_words(lens.plan.values, "2026-03-01", "A");
  words.paper = paper;
  words.inches = inches;
  return words;
}

/// Words of a text, parted at blanks, without commas and full stops at their ends.
void count_words(const std::string& text, std::map<std::string, int>& counts) {
  std::istringstream rest(text);
  std::string word;
  while (rest >> word) {
    while (!word.empty() && (word.back() == ',' || word.back() == ';')) word.pop_back();
    ++counts[word];
  }
}

std::map<std::string, int> words_above_title_block(const Drawing& drawing) {
  std::map<std::string, int> counts;
  for (const Sheet& sheet : drawing.sheets) {
    for (const DrawnText& text : sheet.texts)
      if (text.place.y > kTitleBlockTop_mm) count_words(text.words, counts);
  }
  return counts;
}

bool says(const Drawing& drawing, const std::string& words) {
  return std::ranges::any_of(drawing.sheets, [&](const Sheet& sheet) {
    return std::ranges::any_of(sheet.texts, [&](const DrawnText& text) { return text.words == words; });
  });
}

std::vector<std::string> marks_of(const FramePlan& frame) {
  std::vector<std::string> marks;
  for (const FlatPart& part : frame.flats) marks.push_back(part.mark);
  for (const TurnedBar& part : frame.bars) marks.push_back(part.mark);
  for (const RoundPart& part : frame.rounds) marks.push_back(part.mark);
  return marks;
}

const NamedDrawing& drawing_named(const std::vector<NamedDrawing>& drawings, const std::string& name) {
  const auto found = std::ranges::find(drawings, name, &NamedDrawing::name);
  EXPECT_NE(found, drawings.end()) << name;
  return *found;
}

void expect_every_sheet_clear(const FramedLens& lens, std::optional<Paper> paper, bool inches) {
  const HouseWords words = words_for(lens, paper, inches);
  for (const NamedDrawing& one : frame_drawings(lens.frame, {}, words, {})) {
    SCOPED_TRACE(fmt::format("{} on {} in {}", one.name, paper ? name_of(*paper) : "any paper",
                             inches ? "inches" : "mm"));
    ASSERT_FALSE(one.drawing.sheets.empty());
    const int bars = expect_texts_off_scale_bars(one.drawing.sheets.front());
    EXPECT_EQ(bars > 0, one.name != "bought-parts");
    for (const Sheet& sheet : one.drawing.sheets) {
      expect_texts_apart(sheet);
      EXPECT_EQ(sheet.size.paper, paper.value_or(sheet.size.paper));
    }
  }
}

TEST(FrameDrawings, KeepEveryTextOffEveryOther) {
  expect_every_sheet_clear(door_lens(), Paper::a4, false);
  expect_every_sheet_clear(door_lens(), Paper::letter, true);
  expect_every_sheet_clear(belt_lens(), {}, true);
  expect_every_sheet_clear(first_order(), Paper::a3, false);
}

TEST(FrameDrawings, NameEveryMarkOnce) {
  for (const FramedLens* lens : {&door_lens(), &belt_lens(), &first_order()}) {
    std::map<std::string, int> counts;
    for (const NamedDrawing& one : frame_drawings(lens->frame, {}, words_for(*lens), {})) {
      for (const auto& [word, count] : words_above_title_block(one.drawing)) counts[word] += count;
    }
    const std::vector<std::string> marks = marks_of(lens->frame);
    ASSERT_GT(marks.size(), 50u);
    for (const std::string& mark : marks) EXPECT_EQ(counts[mark], 1) << mark;
  }
}

TEST(FrameDrawings, AreNamedAfterTheFirstMarkAndNoTwoAlike) {
  const auto drawings = frame_drawings(door_lens().frame, {}, words_for(door_lens()), {});
  std::set<std::string> names;
  for (const NamedDrawing& one : drawings) {
    EXPECT_TRUE(names.insert(one.name).second) << one.name;
    EXPECT_FALSE(one.words.empty());
    EXPECT_EQ(one.drawing.date, "2026-03-01");
  }
  for (const char* name : {"P01-rib-left", "P01-rib-upper", "ring-top", "door-hinge-low-pin", "bought-parts"})
    EXPECT_TRUE(names.contains(name)) << name;
  EXPECT_EQ(drawing_named(drawings, "P01-rib-upper").words.substr(0, 9), "cross rib");
}

TEST(FrameDrawings, HaveATitleBlockOnEverySheet) {
  for (const NamedDrawing& one : frame_drawings(belt_lens().frame, {}, words_for(belt_lens()), {})) {
    for (std::size_t i = 0; i < one.drawing.sheets.size(); ++i) {
      const Drawing sheet{"", "", {one.drawing.sheets[i]}};
      EXPECT_TRUE(says(sheet, fmt::format("{} of {}", i + 1, one.drawing.sheets.size()))) << one.name;
      EXPECT_TRUE(says(sheet, "sixth order")) << one.name;
      EXPECT_TRUE(says(sheet, "millimetres")) << one.name;
    }
  }
}

/// Extent of an outline from points along it, apart from the closed form that the sheet takes.
TEST(FrameDrawings, GiveEveryPlateItsSizeOverAll) {
  const FramedLens& lens = first_order();
  for (const bool inches : {false, true}) {
    const LengthWords lengths{inches};
    std::size_t seen = 0;
    for (const NamedDrawing& one : frame_drawings(lens.frame, {}, words_for(lens, {}, inches), {})) {
      const auto part = std::ranges::find(lens.frame.flats, one.name, &FlatPart::mark);
      if (part == lens.frame.flats.end()) continue;
      ++seen;
      PlatePoint low{1e9, 1e9};
      PlatePoint high{-1e9, -1e9};
      for (const PlatePoint p : flattened(part->outline, 1e-5)) {
        low = {std::min(low.u, p.u), std::min(low.v, p.v)};
        high = {std::max(high.u, p.u), std::max(high.v, p.v)};
      }
      EXPECT_TRUE(says(one.drawing, lengths.plain(high.u - low.u))) << one.name;
      EXPECT_TRUE(says(one.drawing, lengths.plain(high.v - low.v))) << one.name;
    }
    EXPECT_GT(seen, 10u);
  }
}

/// Greatest and least y of a corner's circle about the axis that both side planes keep, from places along it.
struct Reach {
  double low = 1e9;
  double high = -1e9;
};
Reach kept_of(const PlannedPrism& bar) {
  const double out = radians(bar.trim.anticlockwise_side_deg);
  const double in = radians(bar.trim.clockwise_side_deg);
  Reach reach;
  for (const Face& face : bar.profile.faces) {
    const SectionPoint p = face.start();
    constexpr double kStep = 1e-5;
    for (double angle = 0; angle <= kPi; angle += kStep) {
      const double y = std::abs(p.z) * std::cos(angle);
      const bool kept = std::sin(out) * p.r - std::cos(out) * y >= bar.trim.set_back_mm &&
                        -std::sin(in) * p.r + std::cos(in) * y >= bar.trim.set_back_mm;
      if (kept) reach = {std::min(reach.low, y), std::max(reach.high, y)};
    }
  }
  return reach;
}

TEST(FrameDrawings, GiveTurnedBarsTheirLengthRadiiAndSection) {
  const FramedLens& lens = door_lens();
  ASSERT_FALSE(lens.frame.bars.empty());
  KnownVolumes known;
  for (const TurnedBar& bar : lens.frame.bars) known[bar.mark] = 10000;
  const auto drawings = frame_drawings(lens.frame, known, words_for(lens), {});
  const LengthWords mm;
  std::size_t seen = 0;
  for (const TurnedBar& bar : lens.frame.bars) {
    const auto one = std::ranges::find(drawings, bar.mark, &NamedDrawing::name);
    if (one == drawings.end()) continue;
    ++seen;
    const Reach reach = kept_of(bar.shape);
    // A step of 1e-5 on a radius of about 100 mm: 0.001 mm either end; printed to 0.01.
    const double length = reach.high - reach.low;
    EXPECT_TRUE(says(one->drawing, mm.plain(length)) || says(one->drawing, mm.plain(length + 0.004)))
        << bar.mark << " " << length;
    for (const Face& face : bar.shape.profile.faces) {
      EXPECT_TRUE(says(one->drawing, mm.plain(std::abs(face.start().z))));
      EXPECT_TRUE(says(one->drawing, mm.plain(face.start().r)));
    }
    double greatest = 0;
    for (const Face& face : bar.shape.profile.faces) greatest = std::max(greatest, std::abs(face.start().z));
    EXPECT_TRUE(says(one->drawing, "R " + mm.plain(greatest)));
    // 10 cm3 of brass of 8.49 g/cm3.
    EXPECT_TRUE(std::ranges::any_of(one->drawing.sheets.front().texts,
                                    [](const DrawnText& text) { return text.words.ends_with("84.9 g each"); }));
  }
  EXPECT_GE(seen, 2u) << "an upper and a lower bar";
}

TEST(FrameDrawings, DrawRoundPartsWithLengthDiameterAndBore) {
  const FramedLens& lens = door_lens();
  const auto drawings = frame_drawings(lens.frame, {}, words_for(lens), {});
  const LengthWords mm;
  const auto pin = std::ranges::find(lens.frame.rounds, PartKind::hinge_pin, &RoundPart::kind);
  ASSERT_NE(pin, lens.frame.rounds.end());
  const Drawing& pins = drawing_named(drawings, pin->mark).drawing;
  EXPECT_TRUE(says(pins, mm.plain(pin->length_mm)));
  EXPECT_TRUE(says(pins, "\u00D8 " + mm.plain(pin->diameter_mm)));
  const auto spacer = std::ranges::find(lens.frame.rounds, PartKind::spacer, &RoundPart::kind);
  ASSERT_NE(spacer, lens.frame.rounds.end());
  const Drawing& spacers = drawing_named(drawings, spacer->mark).drawing;
  EXPECT_TRUE(says(spacers, "\u00D8 " + mm.plain(spacer->bore_mm)));
  EXPECT_TRUE(says(spacers, mm.plain(spacer->length_mm)));
}

TEST(FrameDrawings, ListWhatIsBoughtWithQuantityAndSize) {
  const FramedLens& lens = door_lens();
  const std::vector<PartsLine> lines = parts_list(lens.frame);
  const Drawing list = bought_list(lines, words_for(lens));
  ASSERT_FALSE(list.sheets.empty());
  int bought = 0;
  for (const PartsLine& line : lines) {
    if (line.kind != PartKind::screw && line.kind != PartKind::dowel) {
      EXPECT_FALSE(is_bought(line)) << name_of(line.kind);
      continue;
    }
    bought += line.quantity;
    EXPECT_TRUE(says(list, fmt::format("{} {}", name_of(line.kind), line.size)));
    EXPECT_TRUE(says(list, std::to_string(line.quantity)));
    EXPECT_FALSE(says(list, fmt::format("{} {}: 1 pieces", name_of(line.kind), line.size)));
  }
  EXPECT_TRUE(says(list, fmt::format("{} pieces to be bought, for one lens without spares", bought)));
  EXPECT_TRUE(bought_list({}, words_for(lens)).sheets.empty());
}

std::vector<PanelAssembly> made_up_assembly() {
  PanelAssembly one;
  one.panels = {1, 2, 4, 5};
  one.first_rib = "P01-rib-left";
  one.second_rib = "P01-rib-right";
  for (int i = 1; i <= 40; ++i) one.steps.push_back(fmt::format("Bring in part number {}.", i));
  one.cannot = {"P01-U03 has no way in."};
  one.open_seats = {"P01-C: from the sea side"};
  PanelAssembly door = one;
  door.panels = {3};
  door.cannot.clear();
  return {one, door};
}

std::string all_words(const Drawing& drawing) {
  std::string all;
  for (const Sheet& sheet : drawing.sheets) {
    for (const DrawnText& text : sheet.texts) all += text.words + " ";
  }
  return all;
}

TEST(AssemblySheets, GoFromCautionsToTheWholeFrameToPanels) {
  const FramedLens& lens = door_lens();
  for (const auto& paper : {std::optional{Paper::a4}, std::optional{Paper::a3}, std::optional{Paper::letter}}) {
    const Drawing drawing = assembly_sheets(lens.frame, made_up_assembly(), words_for(lens, paper));
    for (const Sheet& sheet : drawing.sheets) expect_texts_apart(sheet);
    const std::string all = all_words(drawing);
    std::size_t last = 0;
    const auto follows = [&](const std::string& words) {
      const std::size_t at = all.find(words, last);
      EXPECT_NE(at, std::string::npos) << words;
      if (at != std::string::npos) last = at;
    };
    follows("never work alone on a ladder");
    const std::vector<std::string> whole = order_of_assembly(lens.frame);
    ASSERT_GT(whole.size(), 4u);
    for (std::size_t i = 0; i < whole.size(); ++i)
      follows(fmt::format("{}. {}", i + 1, whole[i].substr(0, 20)));
    follows("Panels 1, 2, 4 and 5");
    follows("40. Bring in part number 40.");
    follows("P01-U03 has no way in.");
    follows("P01-C: from the sea side");
    follows("Panel 3");
  }
}

TEST(AssemblySheets, SayPoundsOnSheetsInInches) {
  const FramedLens& lens = door_lens();
  EXPECT_EQ(all_words(assembly_sheets(lens.frame, {}, words_for(lens))).find(" lb)"), std::string::npos);
  EXPECT_NE(all_words(assembly_sheets(lens.frame, {}, words_for(lens, {}, true))).find(" lb)"),
            std::string::npos);
}

TEST(AssemblySheets, SayThatAFrameWithoutRibsHasNoOrder) {
  const Drawing drawing = assembly_sheets({}, {}, {});
  ASSERT_EQ(drawing.sheets.size(), 1u);
  EXPECT_NE(all_words(drawing).find("no side ribs"), std::string::npos);
}

}  // namespace
}  // namespace prismwright
