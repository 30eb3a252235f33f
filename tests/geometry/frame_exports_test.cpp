#include "geometry/frame_exports.h"

#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <STEPControl_Reader.hxx>

#include "core/frame/part_keys.h"
#include "tests/support/cut_file_checks.h"
#include "tests/support/empty_folder.h"
#include "tests/support/flat_parts.h"
#include "tests/support/other_program.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/small_pack.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsSupersetOf;

SpaceFrame some_place(int i) {
  const double way = 0.7 * i;
  return {
      {100.0 * i, 50, -20}, {std::cos(way), std::sin(way), 0}, {0, 0, 1}, {std::sin(way), -std::cos(way), 0}};
}

FramePlan small_frame() {
  FramePlan plan;
  for (int i = 0; i < 3; ++i) {
    FlatPart rib = flat_part("P0" + std::to_string(i + 1) + "-rib-left", PartKind::side_rib, 5,
                             annular_sector(250, 300, -55, 60), "");
    rib.pockets = {{annular_sector(262, 285, -40, -10), 3, {"P01-C"}},
                   {annular_sector(262, 285, 0, 20), 2, {"P01-U01"}}};
    rib.holes = {{{275, -35}, 3.4, 6.3, true, "clears M3"},
                 {{200, 200}, 3.4, 0, true, "clears M3"},
                 {{270, 40}, 2, 0, true, "vent"}};
    rib.place = some_place(i);
    rib.shape_key = part_key(rib);
    plan.flats.push_back(rib);
  }
  FlatPart rail = flat_part("P01-rail-top", PartKind::rail, 8, rectangle_chain(200, 20), "");
  rail.bores = {{{0, 10, 4}, {1, 0, 0}, 12, 2.5, "taps M3"}, {{200, 10, 4}, {-1, 0, 0}, 12, 2.5, "taps M3"}};
  rail.place = some_place(5);
  rail.shape_key = part_key(rail);
  plan.flats.push_back(rail);
  FlatPart leaf = flat_part("P01-hinge-leaf", PartKind::hinge_leaf, 6, rectangle_chain(40, 30), "");
  leaf.making = PartMaking::machined;
  leaf.holes = {{{20, 15}, 5, 0, true, "pin 5 mm"}};
  leaf.place = some_place(6);
  leaf.shape_key = part_key(leaf);
  plan.flats.push_back(leaf);
  for (int i = 0; i < 4; ++i) {
    RoundPart spacer;
    spacer.mark = "spacer-" + std::to_string(i + 1);
    spacer.kind = PartKind::spacer;
    spacer.making = PartMaking::machined;
    spacer.metal = PartMetal::brass;
    spacer.from = {10.0 * i, 400, 0};
    spacer.length_mm = 20;
    spacer.diameter_mm = 10;
    spacer.bore_mm = 3.4;
    spacer.shape_key = part_key(spacer);
    plan.rounds.push_back(spacer);
  }
  return plan;
}

struct MadeFrame {
  FramePlan plan;
  std::vector<FrameBody> bodies;
  Nest nest;
};

MadeFrame made(FramePlan plan, const FrameSettings& settings) {
  MadeFrame frame{std::move(plan), {}, {}};
  auto bodies = make_frame(frame.plan);
  EXPECT_TRUE(bodies.ok()) << (bodies.ok() ? "" : bodies.problem().text);
  if (bodies.ok()) frame.bodies = std::move(bodies).value();
  auto nest = nest_flats(frame.plan.flats, settings);
  EXPECT_TRUE(nest.ok());
  if (nest.ok()) frame.nest = std::move(nest).value();
  return frame;
}

TEST(FrameExports, WriteOneFileForEveryShapeSheetAndMachinedPart) {
  const MadeFrame frame = made(small_frame(), {});
  const EmptyFolder folder;
  FrameExportChoice choice;
  choice.drawings = true;
  choice.words.title = "Gull Rock";
  const auto paths = export_frame(frame.plan, frame.bodies, frame.nest, folder.path(), choice);
  ASSERT_TRUE(paths.ok()) << paths.problem().text;
  EXPECT_THAT(folder.names(),
              testing::UnorderedElementsAre(
                  "P01-rib-left_5mm_x3.dxf", "P01-rail-top_8mm_x1.dxf", "nest_brass_5mm_1of1.dxf",
                  "nest_brass_8mm_1of1.dxf", "P01-rail-top_x1.step", "P01-hinge-leaf_x1.step",
                  "spacer-1_x4.step", "frame.step", "parts.csv", "sheets.csv", "drawings.pdf"));
  EXPECT_EQ(paths->size(), 11u);
  expect_files_match_solids(frame.plan, frame.bodies, folder.path());

  STEPControl_Reader reader;
  ASSERT_EQ(reader.ReadFile(folder.file("P01-rail-top_x1.step").c_str()), IFSelect_RetDone);
  reader.TransferRoots();
  EXPECT_NEAR(kernel_volume_mm3(reader.OneShape()), 200 * 20 * 8 - 2 * kPi * 1.25 * 1.25 * 12, 1e-3);
  const std::string all = text_of(folder.file("frame.step"));
  for (const FrameBody& body : frame.bodies) EXPECT_THAT(all, HasSubstr("'" + body.mark + "'"));
}

TEST(FrameExports, ListPartsWithMassesAndSheets) {
  const MadeFrame frame = made(small_frame(), {});
  const EmptyFolder folder;
  FrameExportChoice choice;
  choice.plates = choice.nests = choice.step = false;
  ASSERT_TRUE(export_frame(frame.plan, frame.bodies, frame.nest, folder.path(), choice).ok());
  const std::string parts = text_of(folder.file("parts.csv"));
  const double spacer_g = kPi / 4 * (100 - 3.4 * 3.4) * 20 / 1000 * density_g_cm3(PartMetal::brass);
  EXPECT_THAT(parts,
              HasSubstr(fmt::format("spacer,machined,brass,,\"10 x 20 mm, bore 3.4 mm\",4,{:.3f},{:.3f},,"
                                    "spacer-1 spacer-2 spacer-3 spacer-4\n",
                                    spacer_g, 4 * spacer_g)));
  EXPECT_THAT(parts, HasSubstr("side rib,cut flat,brass,5,"));
  EXPECT_THAT(parts, HasSubstr(",1,P01-rib-left P02-rib-left P03-rib-left\n"));
  const std::string sheets = text_of(folder.file("sheets.csv"));
  EXPECT_THAT(sheets, HasSubstr("1,nest_brass_5mm_1of1.dxf,brass,5,1000,600,3,"));
}

TEST(FrameExports, NameSheetsByMetalThicknessAndNumber) {
  FrameSettings settings;
  settings.sheet_width_mm = 540;
  settings.sheet_height_mm = 300;
  const MadeFrame frame = made(small_frame(), settings);
  ASSERT_EQ(frame.nest.sheets.size(), 3u);
  EXPECT_EQ(nest_file_name(frame.nest, 0), "nest_brass_5mm_1of2.dxf");
  EXPECT_EQ(nest_file_name(frame.nest, 1), "nest_brass_5mm_2of2.dxf");
  EXPECT_EQ(nest_file_name(frame.nest, 2), "nest_brass_8mm_1of1.dxf");
  Nest steel = frame.nest;
  steel.sheets[2].metal = PartMetal::steel;
  steel.sheets[2].thickness_mm = 2.5;
  EXPECT_EQ(nest_file_name(steel, 2), "nest_stainless-steel_2.5mm_1of1.dxf");
}

TEST(FrameExports, LeaveWhatStoodThereWhereTheyAreStoppedOrRefused) {
  const MadeFrame frame = made(small_frame(), {});
  const EmptyFolder folder;
  FrameExportChoice none;
  none.plates = none.nests = none.step = none.list = false;
  const auto nothing = export_frame(frame.plan, frame.bodies, frame.nest, folder.path(), none);
  ASSERT_FALSE(nothing.ok());
  EXPECT_EQ(nothing.problem().code, "nothing");

  std::ofstream(folder.file("frame.step")) << "kept";
  double last = 0;
  const auto stopped = export_frame(frame.plan, frame.bodies, frame.nest, folder.path(), {},
                                    [&](double share, std::string_view what) {
                                      EXPECT_GE(share, last);
                                      last = share;
                                      return what != "frame.step";
                                    });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
  EXPECT_EQ(text_of(folder.file("frame.step")), "kept");

  const auto no_folder = export_frame(frame.plan, frame.bodies, frame.nest, folder.file("frame.step"), {});
  ASSERT_FALSE(no_folder.ok());
  EXPECT_EQ(no_folder.problem().trouble, Trouble::file);
}

LensValues with_a_door(LensValues values) {
  values.frame.door_panel = 2;
  return values;
}

LensValues with_cross_ribs(LensValues values) {
  values.section.upper_rib_mm = 5;
  values.section.lower_rib_mm = 5;
  return values;
}

/// The table of landings in the words of a paper.
std::vector<std::string> landing_rows(const std::string& words) {
  std::vector<std::string> rows;
  std::istringstream lines(words.substr(std::min(words.size(), words.find("Landings:"))));
  for (std::string line; std::getline(lines, line) && line.find("A width of 0") == std::string::npos;) {
    std::istringstream parts(line);
    std::string row;
    for (std::string part; parts >> part;) row += part + " ";
    if (!row.empty()) rows.push_back(row);
  }
  return rows;
}

TEST(FrameExport, DrawsTheRibsAsAPackDoes) {
  const DespatchSource& source = few_prisms_made();
  const EmptyFolder folder;
  DespatchDesk desk(source, papers_on("2026-03-31"));
  const auto packed =
      desk.write({DespatchGroup::drawings, "frame-P01-rib-left", "", "", true, ""}, folder.path());
  ASSERT_TRUE(packed.ok()) << packed.problem().text;
  const auto nest = nest_flats(source.frame->flats, source.plan->values.frame);
  ASSERT_TRUE(nest.ok());
  FrameExportChoice choice = frame_export_choice(*source.plan, *source.frame, "2026-03-31", false);
  choice.plates = choice.nests = choice.step = choice.list = false;
  choice.drawings = true;
  ASSERT_TRUE(export_frame(*source.frame, *source.metal, *nest, folder.path(), choice).ok());
  const auto words_of = [&](const std::string& name) {
    return answer_of("pdftotext -layout '" + folder.file(name) + "' -");
  };
  const auto rows = landing_rows(words_of("drawings/frame-P01-rib-left.pdf"));
  EXPECT_GE(rows.size(), 4u);
  EXPECT_EQ(landing_rows(words_of("drawings.pdf")), rows);
}

/// Panels of their own widths, one lopsided, one blind.
LensValues unequal_bullseye() {
  LensValues values = starting_values("6", Work::bullseye, 4);
  values.panels = {{60, 0, false}, {60, 0, false}, {100, 8, false}, {140, 0, true}};
  return values;
}

class CutFilesOfALens : public ::testing::TestWithParam<LensValues> {};

TEST_P(CutFilesOfALens, AreClosedApartAndEqualToTheSolids) {
  const LensPlan lens = plan_of(GetParam());
  const MadeFrame frame = made(plan_frame(lens), lens.values.frame);
  ASSERT_FALSE(frame.plan.flats.empty());
  const EmptyFolder folder;
  FrameExportChoice choice;
  choice.step = choice.nests = choice.list = false;
  ASSERT_TRUE(export_frame(frame.plan, frame.bodies, frame.nest, folder.path(), choice).ok());
  expect_files_match_solids(frame.plan, frame.bodies, folder.path());
}

INSTANTIATE_TEST_SUITE_P(Samples, CutFilesOfALens,
                         ::testing::Values(fourth_order_bullseye(Faces::true_curve),
                                           with_a_door(with_cross_ribs(sixth_order_belt(Faces::true_curve))),
                                           unequal_bullseye()));

}  // namespace
}  // namespace prismwright
