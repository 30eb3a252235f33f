#include "core/frame/nest.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "core/frame/cut_shapes.h"
#include "core/frame/plate_polygons.h"
#include "tests/support/flat_parts.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

constexpr double kChord_mm = 0.005;

/// The plate as it lies on its sheet, with its holes, as polygons within 0.005 mm.
PlateRegion lying(const FlatPart& part, const NestedPart& nested) {
  const FlatPart laid = laid_out(part, nested);
  std::vector<PlateOutline> cuts;
  for (const PlateChain& cut : through_cuts(laid)) cuts.push_back(flattened(cut, kChord_mm));
  for (const PlateHole& hole : laid.holes)
    cuts.push_back(flattened(circle_chain(hole.centre, hole.diameter_mm / 2), kChord_mm / 10));
  return first_less_second({flattened(laid.outline, kChord_mm)}, united(cuts));
}

/// Every plate is grown by half the spacing: none then shares ground with another, or leaves the sheet less
/// half the spacing all round.
void expect_spacing_kept(const std::vector<FlatPart>& flats, const NestSheet& sheet, double spacing_mm) {
  const double half = spacing_mm / 2;
  const PlateRegion room = {plate_rectangle({half, half}, {sheet.width_mm - half, sheet.height_mm - half})};
  // Chords and round corners as polygons: 0.015 mm for each plate.
  constexpr double kPolygons_mm = 0.015;
  std::vector<PlateRegion> grown_parts;
  for (const NestedPart& nested : sheet.parts) {
    const PlateRegion plate = lying(flats[nested.flat], nested);
    const PlateRegion wide = grown(plate, std::max(half - kPolygons_mm, 0.0), Corner::round);
    EXPECT_NEAR(area_mm2(first_less_second(wide, room)), 0, 1e-3) << nested.mark << " leaves the sheet";
    for (std::size_t k = 0; k < grown_parts.size(); ++k) {
      EXPECT_NEAR(area_mm2(common_part(wide, grown_parts[k])), 0, 1e-3)
          << nested.mark << " is too near " << sheet.parts[k].mark;
    }
    grown_parts.push_back(wide);
  }
}

void expect_sound(const std::vector<FlatPart>& flats, const Nest& nest, const FrameSettings& settings) {
  std::map<std::size_t, int> times;
  for (const NestSheet& sheet : nest.sheets) {
    ASSERT_FALSE(sheet.parts.empty());
    expect_spacing_kept(flats, sheet, settings.sheet_spacing_mm);
    double area = 0;
    for (const NestedPart& nested : sheet.parts) {
      const FlatPart& flat = flats[nested.flat];
      ++times[nested.flat];
      EXPECT_EQ(nested.mark, flat.mark);
      EXPECT_EQ(flat.thickness_mm, sheet.thickness_mm);
      EXPECT_EQ(flat.metal, sheet.metal);
      area += area_mm2(lying(flat, nested));
    }
    EXPECT_NEAR(sheet.used_share, area / (sheet.width_mm * sheet.height_mm), 1e-4);
  }
  for (std::size_t i = 0; i < flats.size(); ++i) {
    const bool left_over = std::ranges::count(nest.left_over, flats[i].mark) > 0;
    const int expected = flats[i].making == PartMaking::cut_flat && !left_over ? 1 : 0;
    EXPECT_EQ(times[i], expected) << flats[i].mark;
  }
}

Nest nest_of(const std::vector<FlatPart>& flats, const FrameSettings& settings) {
  const auto nest = nest_flats(flats, settings);
  EXPECT_TRUE(nest.ok()) << (nest.ok() ? "" : nest.problem().text);
  return nest.ok() ? *nest : Nest{};
}

TEST(NestOfAFrame, LaysEveryPlateOnceAndKeepsTheSpacing) {
  const auto flats = plates_of_a_lens(8, 1, false);
  const FrameSettings settings;
  const Nest nest = nest_of(flats, settings);
  EXPECT_TRUE(nest.too_large.empty());
  expect_sound(flats, nest, settings);
}

TEST(NestOfAFrame, TakesUnequalPanelsOfAFirstOrderLens) {
  const auto flats = plates_of_a_lens(4, 3.7, true);
  FrameSettings settings;
  settings.sheet_width_mm = 3000;
  settings.sheet_height_mm = 2000;
  settings.sheet_spacing_mm = 10;
  const Nest nest = nest_of(flats, settings);
  EXPECT_TRUE(nest.too_large.empty());
  expect_sound(flats, nest, settings);
}

TEST(NestOfAFrame, LaysCurvedRibsIntoEachOther) {
  std::vector<FlatPart> flats;
  for (int i = 0; i < 8; ++i) {
    flats.push_back(
        flat_part("rib-" + std::to_string(i), PartKind::side_rib, 5, annular_sector(250, 300, -55, 60), "rib"));
  }
  const FrameSettings settings;
  const Nest nest = nest_of(flats, settings);
  expect_sound(flats, nest, settings);
  // Eight boxes of 157 mm by 506 mm, side by side, would be 1256 mm wide.
  EXPECT_EQ(nest.sheets.size(), 1u);
}

TEST(NestOfAFrame, PutsSmallPlatesIntoTheOpeningsOfLargeOnes) {
  std::vector<FlatPart> flats = {ring_part("ring", 270, 290)};
  for (int i = 0; i < 8; ++i) {
    flats.push_back(
        flat_part("rail-" + std::to_string(i), PartKind::rail, 8, rectangle_chain(200, 40), "rail"));
  }
  FrameSettings settings;
  settings.sheet_width_mm = settings.sheet_height_mm = 600;
  settings.sheet_spacing_mm = 5;
  const Nest nest = nest_of(flats, settings);
  EXPECT_EQ(nest.sheets.size(), 1u) << "the ring leaves no room beside it";
  expect_sound(flats, nest, settings);
}

TEST(NestOfAFrame, TakesAPlateThatJustFitsAndOneThatFitsOnlyAslant) {
  FrameSettings settings;
  settings.sheet_width_mm = 500;
  settings.sheet_height_mm = 500;
  settings.sheet_spacing_mm = 5;
  const std::vector<FlatPart> flats = {
      flat_part("full", PartKind::base_table, 8, rectangle_chain(490, 490), "full"),
      flat_part("aslant", PartKind::rail, 8, rectangle_chain(600, 30), "aslant")};
  const Nest nest = nest_of(flats, settings);
  EXPECT_EQ(nest.sheets.size(), 2u);
  expect_sound(flats, nest, settings);
}

TEST(NestOfAFrame, NamesPlatesThatNoSheetTakes) {
  std::vector<FlatPart> flats = plates_of_a_lens(2, 1, false);
  flats.push_back(ring_part("ring-wide", 310, 330));
  flats.push_back(ring_part("ring-wider", 310, 330));
  flats[flats.size() - 1].shape_key = flats[flats.size() - 2].shape_key = "wide";
  const FrameSettings settings;
  const Nest nest = nest_of(flats, settings);
  ASSERT_EQ(nest.too_large.size(), 1u);
  EXPECT_THAT(nest.too_large[0], HasSubstr("ring-wide and 1 like it, 660 mm by 660 mm"));
  EXPECT_THAT(nest.too_large[0], HasSubstr("1000 mm by 600 mm"));
  EXPECT_EQ(nest.left_over, (std::vector<std::string>{"ring-wide", "ring-wider"}));
  expect_sound(flats, nest, settings);
}

TEST(NestOfAFrame, KeepsMetalsThicknessesAndMachinedPlatesApart) {
  std::vector<FlatPart> flats = {
      flat_part("a", PartKind::rail, 5, rectangle_chain(50, 20), "a"),
      flat_part("b", PartKind::rail, 8, rectangle_chain(50, 20), "b"),
      flat_part("c", PartKind::latch, 5, rectangle_chain(50, 20), "c"),
      flat_part("d", PartKind::hinge_leaf, 5, rectangle_chain(50, 20), "d"),
  };
  flats[2].metal = PartMetal::steel;
  flats[3].making = PartMaking::machined;
  const FrameSettings settings;
  const Nest nest = nest_of(flats, settings);
  EXPECT_EQ(nest.sheets.size(), 3u);
  expect_sound(flats, nest, settings);
  EXPECT_NEAR(nest.used_share(), 3 * 1000.0 / (3 * 600000.0), 1e-9);
}

TEST(NestOfAFrame, IsTheSameEveryTime) {
  const auto flats = plates_of_a_lens(3, 1, true);
  const Nest first = nest_of(flats, {});
  const Nest second = nest_of(flats, {});
  ASSERT_EQ(first.sheets.size(), second.sheets.size());
  for (std::size_t i = 0; i < first.sheets.size(); ++i) {
    ASSERT_EQ(first.sheets[i].parts.size(), second.sheets[i].parts.size());
    for (std::size_t k = 0; k < first.sheets[i].parts.size(); ++k) {
      const NestedPart& a = first.sheets[i].parts[k];
      const NestedPart& b = second.sheets[i].parts[k];
      EXPECT_EQ(a.mark, b.mark);
      EXPECT_EQ(a.turn_deg, b.turn_deg);
      EXPECT_EQ(a.shift.u, b.shift.u);
      EXPECT_EQ(a.shift.v, b.shift.v);
    }
  }
}

TEST(NestOfAFrame, WorksWithoutSpacingAndWithoutPlates) {
  FrameSettings settings;
  settings.sheet_spacing_mm = 0;
  const auto flats = plates_of_a_lens(2, 1, false);
  expect_sound(flats, nest_of(flats, settings), settings);
  EXPECT_TRUE(nest_of({}, settings).sheets.empty());
  EXPECT_EQ(nest_of({}, settings).used_share(), 0);
}

TEST(NestOfAFrame, RefusesSheetsWithoutSizeAndStopsWhenAsked) {
  FrameSettings settings;
  settings.sheet_height_mm = 0;
  const auto flats = plates_of_a_lens(2, 1, false);
  const auto refused = nest_flats(flats, settings);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, "sheet");
  int asked = 0;
  double last = 0;
  const auto stopped = nest_flats(flats, {}, [&](double share, std::string_view) {
    EXPECT_GE(share, last);
    last = share;
    return ++asked < 4;
  });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
  EXPECT_EQ(asked, 4);
}

}  // namespace
}  // namespace prismwright
