#include "geometry/frame_exports.h"

#include <fstream>
#include <iterator>
#include <map>

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepGProp.hxx>
#include <GCPnts_AbscissaPoint.hxx>
#include <GProp_GProps.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>

#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/part_keys.h"
#include "tests/support/dxf_reader.h"
#include "tests/support/empty_folder.h"
#include "tests/support/flat_parts.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsSupersetOf;

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps props;
  BRepGProp::VolumeProperties(shape, props);
  return props.Mass();
}

/// A level face of a plate's solid, as the kernel measures it.
struct MeasuredFace {
  double area = 0;
  double length = 0;  ///< of all its edges
};

MeasuredFace face_at(const TopoDS_Shape& solid, const FlatPart& flat, double depth_mm) {
  constexpr double kOn_mm = 1e-6;
  MeasuredFace measured;
  for (TopExp_Explorer faces(solid, TopAbs_FACE); faces.More(); faces.Next()) {
    const TopoDS_Face face = TopoDS::Face(faces.Current());
    const BRepAdaptor_Surface surface(face);
    if (surface.GetType() != GeomAbs_Plane) continue;
    const gp_Pln plane = surface.Plane();
    const gp_Pnt p = plane.Location();
    const gp_Dir n = plane.Axis().Direction();
    const SpaceVector normal = flat.place.into(SpaceVector{n.X(), n.Y(), n.Z()});
    const double depth = flat.place.into(SpacePoint{p.X(), p.Y(), p.Z()}).z;
    if (std::abs(std::abs(normal.z) - 1) > 1e-9 || std::abs(depth - depth_mm) > kOn_mm) continue;
    GProp_GProps props;
    BRepGProp::SurfaceProperties(face, props);
    measured.area += props.Mass();
    for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
      const TopoDS_Edge edge = TopoDS::Edge(edges.Current());
      const BRepAdaptor_Curve curve(edge);
      measured.length += GCPnts_AbscissaPoint::Length(curve);
    }
  }
  return measured;
}

/// What a DXF file says of the same face, found by an independent reader.
struct ReadFace {
  double area = 0;
  double length = 0;
};

/// A level ray from the circle's middle crosses the polygon's sides an odd number of times.
bool within(const ReadCircle& circle, const std::vector<ReadPolyline>& pockets) {
  return std::ranges::any_of(pockets, [&](const ReadPolyline& pocket) {
    const PlateOutline outline = pocket.places(8);
    bool inside = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlatePoint p = outline[i], q = outline[(i + 1) % outline.size()];
      if ((p.v > circle.y) == (q.v > circle.y)) continue;
      if (p.u + (circle.y - p.v) / (q.v - p.v) * (q.u - p.u) > circle.x) inside = !inside;
    }
    return inside;
  });
}

/// `flat` says which holes are sunk, as the file tells in words only.
ReadFace face_of(DxfReader& file, const FlatPart& flat, bool front) {
  ReadFace face;
  for (const ReadPolyline& line : file.polylines["CUT"]) {
    face.area += line.area();
    face.length += line.length();
  }
  const auto& pockets = file.polylines["POCKET"];
  for (const ReadPolyline& line : pockets) {
    if (!front) continue;
    face.area += line.area();
    face.length += line.length();
  }
  const auto& circles = file.circles["HOLE"];
  EXPECT_EQ(circles.size(), flat.holes.size());
  for (std::size_t i = 0; i < circles.size() && i < flat.holes.size(); ++i) {
    if (front && within(circles[i], pockets)) continue;
    const bool sunk_here = flat.holes[i].sunk_in_back != front;
    const double radius = std::max(circles[i].radius, sunk_here ? flat.holes[i].sink_diameter_mm / 2 : 0);
    face.area -= kPi * radius * radius;
    face.length += 2 * kPi * radius;
  }
  return face;
}

/// Brass of the plate seen through: what is left of its outline by cuts and drilled holes.
double level_area(DxfReader& file) {
  double area = 0;
  for (const ReadPolyline& line : file.polylines["CUT"]) area += line.area();
  for (const ReadCircle& circle : file.circles["HOLE"]) area -= kPi * circle.radius * circle.radius;
  return area;
}

void expect_closed_and_apart(DxfReader& file) {
  std::vector<PlateOutline> cuts;
  PlateOutline outer;
  for (const char* layer : {"CUT", "POCKET"}) {
    for (const ReadPolyline& line : file.polylines[layer]) {
      EXPECT_TRUE(line.closed);
      PlateOutline places = line.places(32);
      if (line.area() > 0) {
        EXPECT_TRUE(outer.empty()) << "one outline";
        outer = places;
        continue;
      }
      std::ranges::reverse(places);
      cuts.push_back(places);
    }
  }
  double sum = 0;
  for (const PlateOutline& cut : cuts) sum += signed_area_mm2(cut);
  const double area = signed_area_mm2(outer);
  EXPECT_NEAR(area_mm2(united(cuts)), sum, 1e-6 * area) << "pockets and openings overlap";
  EXPECT_NEAR(area_mm2(common_part({outer}, united(cuts))), sum, 1e-6 * area) << "a cut leaves the outline";
  EXPECT_NEAR(area_mm2(united({outer})), area, 1e-6 * area) << "the outline crosses itself";
}

/// Depth of the sunk heads and of bores is not in the DXF: their volume by the closed form of the plan.
double sunk_and_bored_mm3(const FlatPart& flat) {
  FlatPart plain = flat;
  for (PlateHole& hole : plain.holes) hole.sink_diameter_mm = 0;
  plain.bores.clear();
  return volume_mm3(plain) - volume_mm3(flat);
}

double pocket_volume_mm3(DxfReader& file, const FlatPart& flat) {
  double volume = 0;
  const auto& read = file.polylines["POCKET"];
  const auto pockets = blind_pockets(flat);
  EXPECT_EQ(read.size(), pockets.size());
  for (std::size_t i = 0; i < read.size() && i < pockets.size(); ++i)
    volume -= read[i].area() * pockets[i].depth_mm;
  for (const ReadCircle& circle : file.circles["HOLE"]) {
    // A hole in a pocket takes only what is left of the plate.
    for (std::size_t i = 0; i < read.size(); ++i) {
      if (within(circle, {read[i]})) volume -= kPi * circle.radius * circle.radius * pockets[i].depth_mm;
    }
  }
  return volume;
}

/// A hundredth of a hundredth of what is asked for: the file carries twelve decimals.
constexpr double kWithin = 1e-6;

/// Areas, lengths and volumes of everything cut flat, from the files, against the solids.
void expect_files_match_solids(const FramePlan& plan, const std::vector<FrameBody>& bodies,
                               const std::string& folder) {
  std::map<std::string, const FrameBody*> body_of;
  for (const FrameBody& body : bodies) body_of[body.mark] = &body;
  int compared = 0;
  for (const AlikePlates& alike : alike_plates(plan.flats)) {
    const FlatPart& first = plan.flats[alike.front()];
    if (first.making != PartMaking::cut_flat) continue;
    SCOPED_TRACE(first.mark);
    DxfReader file(text_of(folder + "/" + cut_file_stem(first, alike.size()) + ".dxf"));
    ASSERT_TRUE(file.read);
    ASSERT_FALSE(file.polylines["CUT"].empty());
    expect_closed_and_apart(file);
    const ReadFace front = face_of(file, first, true);
    const ReadFace back = face_of(file, first, false);
    const double level = level_area(file);
    // Alike parts share one solid in many places: the last stands for all others.
    for (const std::size_t i : {alike.front(), alike.back()}) {
      const FlatPart& flat = plan.flats[i];
      ASSERT_TRUE(body_of.contains(flat.mark));
      const TopoDS_Shape& solid = body_of[flat.mark]->shape;
      const MeasuredFace in_front = face_at(solid, flat, flat.thickness_mm);
      EXPECT_NEAR(front.area, in_front.area, kWithin * in_front.area) << flat.mark;
      EXPECT_NEAR(front.length, in_front.length, kWithin * in_front.length) << flat.mark;
      const MeasuredFace at_back = face_at(solid, flat, 0);
      EXPECT_NEAR(back.area, at_back.area, kWithin * at_back.area) << flat.mark;
      EXPECT_NEAR(back.length, at_back.length, kWithin * at_back.length) << flat.mark;
      const double volume = volume_of(solid);
      EXPECT_NEAR(level * flat.thickness_mm - pocket_volume_mm3(file, flat) - sunk_and_bored_mm3(flat), volume,
                  kWithin * volume)
          << flat.mark;
      ++compared;
    }
  }
  EXPECT_GT(compared, 0);
}

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
  choice.title = "Gull Rock";
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
  EXPECT_NEAR(volume_of(reader.OneShape()), 200 * 20 * 8 - 2 * kPi * 1.25 * 1.25 * 12, 1e-3);
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
