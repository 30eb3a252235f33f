#include "geometry/plate_dxf.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/engraved_letters.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/cut_words.h"
#include "core/frame/mark_place.h"
#include "tests/support/dxf_reader.h"
#include "tests/support/flat_parts.h"

namespace prismwright {
namespace {

/// A rib with everything that a plate may have.
FlatPart full_rib() {
  FlatPart rib = flat_part("P03-rib-left", PartKind::side_rib, 5, annular_sector(250, 300, -55, 60), "rib");
  const auto pocket = [](double from_deg, double to_deg, double depth_mm) {
    return PlatePocket{annular_sector(262, 285, from_deg, to_deg), depth_mm, {"P03-C"}};
  };
  rib.pockets = {pocket(-40, -10, 3), pocket(0, 20, 3), pocket(25, 40, 5)};
  rib.openings = {circle_chain({260, 100}, 3)};
  rib.holes = {{{275, -35}, 3.4, 0, true, "clears M3"},
               {{275, -40}, 3.4, 0, true, "clears M3"},
               {{200, 200}, 3.4, 6.3, true, "clears M3"},
               {{160, -220}, 3, 0, true, "dowel 3 mm"}};
  rib.bores = {{{300, 0, 2.5}, {-1, 0, 0}, 8, 2.5, "taps M3"}};
  return rib;
}

void expect_same(const ReadPolyline& read, const PlateChain& chain, double sign) {
  EXPECT_TRUE(read.closed);
  // Exact but for the twelve decimals of the file.
  const double area = std::abs(signed_area_mm2(chain));
  EXPECT_NEAR(read.area(), sign * area, 1e-9 * area);
  EXPECT_NEAR(read.length(), length_mm(chain), 1e-9 * length_mm(chain));
  for (const ReadPolyline::Corner& corner : read.corners) EXPECT_LE(std::abs(corner.bulge), 1 + 1e-12);
}

TEST(PlateDxf, HoldsOutlinesPocketsAndHolesExactly) {
  const FlatPart rib = full_rib();
  const DxfReader file(plate_dxf(rib, {"P03-rib-left"}));
  ASSERT_TRUE(file.read);
  EXPECT_EQ(file.version, "AC1009");
  EXPECT_THAT(file.layers, testing::IsSupersetOf({"CUT", "POCKET", "HOLE", "ENGRAVE", "NOTE"}));
  EXPECT_EQ(file.others, 0);
  const auto& cut = file.polylines.at("CUT");
  ASSERT_EQ(cut.size(), 3u) << "outline, opening, and the seat right through";
  expect_same(cut[0], rib.outline, 1);
  expect_same(cut[1], rib.openings[0], -1);
  expect_same(cut[2], rib.pockets[2].outline, -1);
  const auto& pockets = file.polylines.at("POCKET");
  ASSERT_EQ(pockets.size(), 2u);
  expect_same(pockets[0], rib.pockets[0].outline, -1);
  expect_same(pockets[1], rib.pockets[1].outline, -1);
  const auto& holes = file.circles.at("HOLE");
  ASSERT_EQ(holes.size(), rib.holes.size());
  for (std::size_t i = 0; i < holes.size(); ++i) {
    EXPECT_NEAR(holes[i].x, rib.holes[i].centre.u, 1e-9);
    EXPECT_NEAR(holes[i].y, rib.holes[i].centre.v, 1e-9);
    EXPECT_NEAR(2 * holes[i].radius, rib.holes[i].diameter_mm, 1e-9);
  }
}

TEST(PlateDxf, SaysWhatAShopMustKnow) {
  const DxfReader file(plate_dxf(full_rib(), {"P03-rib-left", "P04-rib-left"}));
  for (const char* words : {"side rib, brass, 5 mm thick, 2 pieces", "P04-rib-left", "all sizes in mm",
                            "1 unit = 1 mm", "true edges, kerf is the shop's", "deep 3 mm",
                            "2 x 3.4 mm clears M3", "1 x 3.4 mm clears M3, sunk 90 deg to 6.3 mm from the back",
                            "1 x 3 mm dowel 3 mm", "then drill ends: 1 x 2.5 mm by 8 mm deep taps M3"}) {
    EXPECT_TRUE(file.says(words)) << words;
  }
  EXPECT_FALSE(file.says("no room"));
}

TEST(PlateDxf, EngravesTheFirstMarkInsideTheBrass) {
  const FlatPart rib = full_rib();
  const DxfReader file(plate_dxf(rib, {"P03-rib-left"}));
  const auto& strokes = file.polylines.at("ENGRAVE");
  EXPECT_EQ(strokes.size(), engraved_strokes("P03-rib-left", 5).size());
  const PlateRegion face = clear_face(rib, kMarkClear_mm / 2);
  for (const ReadPolyline& stroke : strokes) {
    EXPECT_FALSE(stroke.closed);
    for (const PlatePoint p : stroke.places(8)) {
      const PlateRegion dot = {plate_rectangle({p.u - 0.01, p.v - 0.01}, {p.u + 0.01, p.v + 0.01})};
      EXPECT_NEAR(area_mm2(common_part(dot, face)), 4e-4, 1e-6);
    }
  }
}

TEST(PlateDxf, SaysWhereAMarkFindsNoRoom) {
  const FlatPart pin = flat_part("P01-latch", PartKind::latch, 5, rectangle_chain(10, 4), "latch");
  const DxfReader file(plate_dxf(pin, {"P01-latch"}));
  EXPECT_FALSE(file.polylines.contains("ENGRAVE"));
  EXPECT_TRUE(file.says("no room to engrave"));
}

TEST(PlateDxf, PartsArcsOfMoreThanHalfATurn) {
  // Three quarters of a circle of 10 mm and its two radii: area 3/4 pi r^2.
  PlateChain chain = {
      {{10, 0}, {0, -10}, 1.5 * kPi, {0, 0}, 10}, {{0, -10}, {0, 0}, 0, {}, 0}, {{0, 0}, {10, 0}, 0, {}, 0}};
  const DxfReader file(plate_dxf(flat_part("k", PartKind::latch, 5, chain, "k"), {"k"}));
  const ReadPolyline& read = file.polylines.at("CUT").at(0);
  EXPECT_EQ(read.corners.size(), 4u);
  expect_same(read, chain, 1);
  EXPECT_NEAR(read.area(), 75 * kPi, 1e-8);
}

TEST(NestDxf, LaysEveryPlateWithItsOwnMarkAndNoneOverAnother) {
  std::vector<FlatPart> flats = {full_rib(), full_rib(), ring_part("ring-top", 60, 90, 5)};
  flats[1].mark = "P04-rib-left";
  const auto nest = nest_flats(flats, {});
  ASSERT_TRUE(nest.ok());
  ASSERT_EQ(nest->sheets.size(), 1u);
  const DxfReader file(nest_dxf(nest->sheets[0], flats, "Gull Rock, sheet 1 of 1"));
  ASSERT_TRUE(file.read);
  EXPECT_TRUE(file.says("Gull Rock, sheet 1 of 1"));
  EXPECT_TRUE(file.says("3 pieces"));
  double cut = 0;
  double hulls = 0;
  std::vector<PlateOutline> outer;
  for (const ReadPolyline& polyline : file.polylines.at("CUT")) {
    EXPECT_TRUE(polyline.closed);
    cut += polyline.area();
    if (polyline.area() < 0) continue;
    outer.push_back(polyline.places(64));
    hulls += signed_area_mm2(outer.back());
  }
  EXPECT_EQ(outer.size(), 3u);
  EXPECT_NEAR(area_mm2(united(outer)), hulls, 1e-3) << "outlines overlap";
  double expected = 0;
  std::size_t strokes = 0;
  for (const FlatPart& flat : flats) {
    expected += face_area_mm2(flat);
    for (const PlateHole& hole : flat.holes) expected += kPi / 4 * hole.diameter_mm * hole.diameter_mm;
    strokes += engraved_strokes(flat.mark, 5).size();
  }
  EXPECT_NEAR(cut, expected, 1e-6 * expected);
  EXPECT_EQ(file.polylines.at("ENGRAVE").size(), strokes);
  EXPECT_EQ(file.circles.at("HOLE").size(), 2 * flats[0].holes.size());
}

TEST(CutWords, NameFilesSoThatEverySystemTakesThem) {
  FlatPart part = full_rib();
  EXPECT_EQ(cut_file_stem(part, 8), "P03-rib-left_5mm_x8");
  part.mark = "a/b \xC3\xA9";
  part.thickness_mm = 4.5;
  EXPECT_EQ(cut_file_stem(part, 1), "a-b---_4.5mm_x1");
}

TEST(CutShapes, VolumeIsThatOfPlainBodies) {
  FlatPart plate = flat_part("t", PartKind::base_table, 10, rectangle_chain(100, 50), "t");
  plate.pockets = {{moved(rectangle_chain(10, 10), 0, {5, 5}), 4, {}}};
  plate.holes = {{{50, 25}, 6, 12, true, ""}};
  plate.bores = {{{0, 25, 5}, {1, 0, 0}, 15, 4, ""}};
  plate.openings = {moved(rectangle_chain(20, 20), 0, {70, 5})};
  // The sunk head: a frustum of 3 mm height between 12 and 6 mm across, less the hole of 6 mm.
  const double frustum = kPi * 3 / 3 * (36 + 18 + 9) - kPi * 9 * 3;
  const double expected = 100 * 50 * 10.0 - 400 - kPi * 9 * 10 - frustum - kPi * 4 * 15 - 4000;
  EXPECT_NEAR(volume_mm3(plate), expected, 1e-9 * expected);
  EXPECT_NEAR(mass_g(plate), expected / 1000 * density_g_cm3(PartMetal::brass), 1e-6);
  const PlateExtent half =
      extent_of(PlateChain{{{5, 0}, {-5, 0}, kPi, {0, 0}, 5}, {{-5, 0}, {5, 0}, 0, {}, 0}});
  EXPECT_NEAR(half.high.v, 5, 1e-12);
  EXPECT_NEAR(half.low.v, 0, 1e-12);
}

}  // namespace
}  // namespace prismwright
