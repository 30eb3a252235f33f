#include "core/drawing/arrangement_sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

#include "core/drawing/arrangement_layout.h"
#include "core/drawing/cut_metal.h"
#include "core/drawing/lengths.h"
#include "core/drawing/over_all.h"
#include "tests/support/bare_views.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_books.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/sheet_checks.h"

namespace prismwright {
namespace {

HouseWords words_for(const LensValues& values, std::optional<Paper> paper, bool inches = false) {
  HouseWords words = house_words(values, "2027-03-01", "B");
  words.paper = paper;
  words.inches = inches;
  return words;
}

int times(const Drawing& drawing, const std::string& words) {
  int count = 0;
  for (const Sheet& sheet : drawing.sheets)
    for (const DrawnText& text : sheet.texts) count += text.words == words ? 1 : 0;
  return count;
}

std::string panel_label(const LensValues& values, std::size_t i) {
  std::string label = "P" + std::string(i < 9 ? "0" : "") + std::to_string(i + 1) + " " +
                      shortest(values.panels[i].width_deg) + "\u00B0";
  if (values.panels[i].blind) label += " blind";
  if (values.frame.door_panel == static_cast<int>(i) + 1) label += " door";
  return label;
}

void expect_sound(const LensPlan& plan, const Drawing& drawing) {
  for (const Sheet& sheet : drawing.sheets) expect_texts_apart(sheet);
  for (const char* words : {"focal plane", "focus", "seaward", "Plan from above"})
    EXPECT_EQ(times(drawing, words), 1) << words;
  for (std::size_t i = 0; i < plan.panels.size(); ++i) {
    const std::string label = panel_label(plan.values, i);
    EXPECT_EQ(times(drawing, label), 1) << label;
  }
}

/// Farthest place of the lines of a kind from the lens axis, and their heights.
OverAll reach_of_lines(const ArrangementViews& views, bool glass) {
  OverAll all;
  for (const ViewLine& line : views.plan.lines)
    for (const PaperPoint p : line.points)
      if (line.glass == glass) all.radius_mm = std::max(all.radius_mm, std::hypot(p.x, p.y));
  for (const ViewLine& line : views.elevation.lines) {
    for (const PaperPoint p : line.points) {
      if (line.glass != glass) continue;
      all.low_z = std::min(all.low_z, p.y);
      all.high_z = std::max(all.high_z, p.y);
    }
  }
  return all;
}

class SampleArrangements : public testing::TestWithParam<std::tuple<const char*, Paper, bool>> {};

TEST_P(SampleArrangements, KeepTheirTextsApartAndNameEveryPanel) {
  const auto [name, paper, inches] = GetParam();
  const SampleBook book = sample_book(name);
  const FramedLens& lens = framed_once(name, book.values);
  const ArrangementViews views = bare_views(lens.plan, lens.frame);
  const auto drawing = arrangement_sheet(lens.plan, lens.frame, views, words_for(book.values, paper, inches));
  ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
  expect_sound(lens.plan, *drawing);
  EXPECT_EQ(drawing->sheets.front().size.paper, paper);
}

INSTANTIATE_TEST_SUITE_P(OnEveryPaper, SampleArrangements,
                         testing::Combine(testing::ValuesIn(kSampleBooks),
                                          testing::Values(Paper::a4, Paper::a3, Paper::letter),
                                          testing::Bool()));

TEST(ArrangementSheet, StatesTheDimensionsOfTheLinesThatItIsGiven) {
  const SampleBook book = sample_book("sixth-order-belt");
  const FramedLens& lens = framed_once("sixth-order-belt", book.values);
  const ArrangementViews views = bare_views(lens.plan, lens.frame);
  // A belt prism reaches as far from the axis as its profile does; plates are where their corners are.
  double glass_radius = 0;
  double glass_low = 0;
  double glass_high = 0;
  for (const PlannedPrism& prism : lens.plan.prisms) {
    for (const SectionPoint p : polygon_of(prism.profile, 0.0005)) {
      glass_radius = std::max(glass_radius, p.r);
      glass_low = std::min(glass_low, p.z);
      glass_high = std::max(glass_high, p.z);
    }
  }
  const OverAll glass = glass_over_all(lens.plan);
  EXPECT_NEAR(glass.radius_mm, glass_radius, 0.01);
  EXPECT_NEAR(glass.low_z, glass_low, 0.01);
  EXPECT_NEAR(glass.high_z, glass_high, 0.01);
  const OverAll brass = reach_of_lines(views, false);
  const OverAll frame = frame_over_all(lens.frame);
  EXPECT_NEAR(frame.radius_mm, brass.radius_mm, 0.05);

  for (const bool inches : {false, true}) {
    const auto drawing =
        arrangement_sheet(lens.plan, lens.frame, views, words_for(book.values, Paper::a3, inches));
    ASSERT_TRUE(drawing.ok());
    const LengthWords lengths{inches};
    for (const std::string& words :
         {"glass \u00D8 " + lengths.plain(2 * glass.radius_mm),
          "frame \u00D8 " + lengths.plain(2 * frame.radius_mm), lengths.plain(-frame.low_z),
          lengths.plain(frame.high_z - frame.low_z), lengths.plain(lens.plan.values.brief.focal_mm),
          lengths.plain(-glass.low_z), lengths.plain(glass.high_z), lengths.plain(glass.high_z - glass.low_z)})
      EXPECT_GE(times(*drawing, words), 1) << words;
  }
}

TEST(OverAll, GlassOfBullseyePanelsReachesItsCornersAtTheSidePlanes) {
  for (const LensValues& values : {fourth_order_bullseye(Faces::arc), lopsided_bullseye()}) {
    const LensPlan plan = plan_of(values);
    double radius = 0;
    for (const PlannedPrism& prism : plan.prisms) {
      for (const SectionPoint p : polygon_of(prism.profile, 0.002)) {
        for (const double side : {prism.trim.clockwise_side_deg, prism.trim.anticlockwise_side_deg}) {
          // The side plane, moved in by the set-back, meets the ring's height y; else the ring ends at its top.
          const double s = radians(std::abs(side));
          const double y =
              std::cos(s) < 1e-6
                  ? std::abs(p.z)
                  : std::min(std::abs(p.z), (p.r * std::sin(s) - prism.trim.set_back_mm) / std::cos(s));
          radius = std::max(radius, std::hypot(p.r, y));
        }
      }
    }
    EXPECT_NEAR(glass_over_all(plan).radius_mm, radius, 0.02);
  }
}

TEST(OverAll, FrameReachesItsRingsAndPlates) {
  const SampleBook book = sample_book("fourth-order-bullseye");
  const FramePlan& frame = framed_once("fourth-order-bullseye", book.values).frame;
  const OverAll all = frame_over_all(frame);
  for (const RingPlan& ring : frame.rings) {
    EXPECT_GE(all.radius_mm, ring.outer_radius_mm - 0.02);
    EXPECT_LE(all.low_z, ring.z_low_mm);
    EXPECT_GE(all.high_z, ring.z_low_mm + ring.thickness_mm);
  }
  for (const RibPlan& rib : frame.ribs)
    for (const PlatePoint p : rib.outline) EXPECT_GE(all.radius_mm, p.u - 0.02) << rib.mark;
  EXPECT_EQ(frame_over_all({}).radius_mm, 0);
}

TEST(CutMetal, CutsRingsAtTheirRadii) {
  const SampleBook book = sample_book("fourth-order-bullseye");
  const FramePlan& frame = framed_once("fourth-order-bullseye", book.values).frame;
  int rings = 0;
  for (const CutPlate& plate : cut_plates(frame, 0)) {
    for (const RingPlan& ring : frame.rings) {
      if (ring.mark != plate.mark) continue;
      ++rings;
      EXPECT_NEAR(plate.low.r, ring.inner_radius_mm, 0.02);
      EXPECT_NEAR(plate.high.r, ring.outer_radius_mm, 0.02);
      EXPECT_NEAR(plate.low.z, ring.z_low_mm, 1e-9);
      EXPECT_NEAR(plate.high.z, ring.z_low_mm + ring.thickness_mm, 1e-9);
    }
  }
  EXPECT_EQ(rings, static_cast<int>(frame.rings.size()));
}

TEST(CutMetal, CutsAPlateThatCoversTheAxisFromTheRimOfItsVent) {
  const SampleBook book = sample_book("fourth-order-bullseye");
  FramePlan frame = framed_once("fourth-order-bullseye", book.values).frame;
  const auto finial = std::ranges::find(frame.flats, PartKind::finial_plate, &FlatPart::kind);
  ASSERT_NE(finial, frame.flats.end());
  const auto cut = [&] {
    const auto plates = cut_plates(frame, 10);
    const auto found = std::ranges::find(plates, finial->mark, &CutPlate::mark);
    return found == plates.end() ? CutPlate{} : *found;
  };
  const auto vent = std::ranges::find_if(finial->holes, [&](const PlateHole& hole) {
    const SpacePoint at = finial->place.out_of(SpacePoint{hole.centre.u, hole.centre.v, 0});
    return std::hypot(at.x, at.y) < 1e-6;
  });
  ASSERT_NE(vent, finial->holes.end());
  EXPECT_NEAR(cut().low.r, vent->diameter_mm / 2, 0.02);
  finial->holes.clear();
  EXPECT_EQ(cut().low.r, 0);
  EXPECT_GT(cut().high.r, 50);
}

TEST(ArrangementSheet, NamesTheDoorAndItsHinge) {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.frame.door_panel = 3;
  values.frame.door_hinge = DoorHinge::right;
  const FramedLens& lens = framed_once("fourth order with a door", values);
  const ArrangementViews views = bare_views(lens.plan, lens.frame);
  const auto drawing = arrangement_sheet(lens.plan, lens.frame, views, words_for(values, {}));
  ASSERT_TRUE(drawing.ok());
  expect_sound(lens.plan, *drawing);
  EXPECT_EQ(times(*drawing, "hinge"), 1);
  EXPECT_EQ(times(*drawing, "P03 45\u00B0 door"), 1);
}

TEST(ArrangementSheet, KeepsTextsApartForPanelsOfEveryKind) {
  for (const LensValues& values : {lopsided_belt(), lopsided_bullseye(), two_panels(Work::bullseye, Faces::arc),
                                   first_order_unequal(Faces::arc), every_band_its_own_way()}) {
    const LensPlan plan = plan_of(values);
    const FramePlan frame;  // without brass
    const ArrangementViews views = bare_views(plan, frame);
    for (const Paper paper : {Paper::a4, Paper::a3}) {
      const auto drawing = arrangement_sheet(plan, frame, views, words_for(values, paper));
      ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
      expect_sound(plan, *drawing);
    }
  }
}

TEST(ArrangementSheet, KeepsTextsApartOfRandomLenses) {
  Lot lot(20270302);
  for (int made = 0; made < 5;) {
    const LensValues values = random_lens(lot);
    if (!check_values(values)) continue;
    const auto plan = plan_lens(values);
    if (!plan || plan->prisms.empty()) continue;
    ++made;
    const FramePlan frame;
    const ArrangementViews views = bare_views(*plan, frame);
    const auto drawing =
        arrangement_sheet(*plan, frame, views, words_for(values, made % 2 ? Paper::a4 : Paper::a3, made > 2));
    ASSERT_TRUE(drawing.ok()) << drawing.problem().text;
    expect_sound(*plan, *drawing);
  }
}

TEST(ArrangementLayout, ViewsStandApartAtTheLargestScaleThatFits) {
  ArrangementReach reach;
  reach.elevation = {{-300, -330}, {300, 360}};
  reach.plan = {{-300, -300}, {300, 300}};
  reach.section_r = 280;
  const auto on_a3 = lay_out_arrangement(reach, 70, Paper::a3);
  const auto on_a4 = lay_out_arrangement(reach, 70, Paper::a4);
  ASSERT_TRUE(on_a3 && on_a4);
  EXPECT_FALSE(on_a3->two_sheets);
  EXPECT_STREQ(on_a3->scale.words, "1:5");
  EXPECT_STREQ(on_a4->scale.words, "1:10");
  EXPECT_NEAR(on_a3->elevation.focus.y, on_a3->section.focus.y, 1e-9);
  // On paper that is too small for one sheet the views part.
  reach.elevation = {{-1000, -1100}, {1000, 1700}};
  reach.plan = {{-1000, -1000}, {1000, 1000}};
  reach.section_r = 990;
  const auto large = lay_out_arrangement(reach, 70, Paper::a4);
  ASSERT_TRUE(large);
  EXPECT_GE(large->scale.paper_per_mm * 2800, 55);
}

TEST(ArrangementSheet, RefusesWhatNoScaleHoldsAndALensWithoutPrisms) {
  const LensValues values = sixth_order_belt(Faces::arc);
  LensPlan plan = plan_of(values);
  ArrangementViews views = bare_views(plan, {});
  const ArrangementViews bare = views;
  views.elevation.high.y = 1e5;
  const auto too_high = arrangement_sheet(plan, {}, views, words_for(values, Paper::a4));
  ASSERT_FALSE(too_high.ok());
  EXPECT_EQ(too_high.problem().code, "scale");
  plan.prisms.clear();
  const auto empty = arrangement_sheet(plan, {}, bare, words_for(values, Paper::a4));
  ASSERT_FALSE(empty.ok());
  EXPECT_EQ(empty.problem().code, "prisms");
}

}  // namespace
}  // namespace prismwright
