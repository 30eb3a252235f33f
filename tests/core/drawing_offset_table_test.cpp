#include "core/drawing/offset_table.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/works/whole_face.h"
#include "tests/support/off_chord.h"
#include "tests/support/planned_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

TEST(RoundSteps, GoAtLeastTwentyTimesIntoTheChordAndAreRoundInTheirOwnUnit) {
  EXPECT_DOUBLE_EQ(round_step_mm(48.6, false), 2);
  EXPECT_DOUBLE_EQ(round_step_mm(20, false), 1);
  EXPECT_DOUBLE_EQ(round_step_mm(19.9, false), 0.5);
  EXPECT_DOUBLE_EQ(round_step_mm(48.6, true), 0.05 * 25.4);
  for (double chord = 0.7; chord < 900; chord *= 1.37) {
    const double step = round_step_mm(chord, false);
    EXPECT_GE(chord / step, 20);
    EXPECT_LE(chord / step, 50.001);
  }
}

/// A cap of a circle: radius 50, chord 60, so 10 high at the middle (50 - sqrt(50^2 - 30^2)).
Face cap() { return arc_face(FaceRole::outer, {0, -30}, {0, 30}, {-40, 0}, 50); }

TEST(OffsetsOfAnArc, AreThoseOfTheCircle) {
  const FaceOffsets offsets = offsets_of(cap(), 5);
  EXPECT_DOUBLE_EQ(offsets.chord_mm, 60);
  ASSERT_EQ(offsets.places.size(), 13u);
  for (const FaceOffset& place : offsets.places) {
    const double aside = place.along_mm - 30;
    EXPECT_NEAR(place.offset_mm, std::sqrt(2500 - aside * aside) - 40, 1e-9);
  }
  EXPECT_NEAR(offsets.greatest.along_mm, 30, 1e-4);
  EXPECT_NEAR(offsets.greatest.offset_mm, 10, 1e-9);
}

TEST(OffsetsFromTheMiddle, RunToTheRimAndSayTheHeightThere) {
  const FaceOffsets offsets = offsets_from_middle(cap(), 7);
  ASSERT_EQ(offsets.places.size(), 6u);
  EXPECT_DOUBLE_EQ(offsets.places.front().along_mm, 0);
  EXPECT_NEAR(offsets.places.front().offset_mm, 10, 1e-9);
  EXPECT_DOUBLE_EQ(offsets.places.back().along_mm, 30);
  EXPECT_DOUBLE_EQ(offsets.places.back().offset_mm, 0);
  EXPECT_NEAR(offsets.places[2].offset_mm, std::sqrt(2500.0 - 14 * 14) - 40, 1e-9);
}

TEST(OffsetsOfAHollowFace, AreNegative) {
  const Face hollow = arc_face(FaceRole::inner, {0, -30}, {0, 30}, {40, 0}, 50);
  for (const FaceOffset& place : offsets_of(hollow, 20).places) EXPECT_LE(place.offset_mm, 0);
  EXPECT_NEAR(offsets_of(hollow, 20).greatest.offset_mm, -10, 1e-9);
}

TEST(OffsetsOfTrueCurves, LieOnTheFacesOfEveryKindOfPrism) {
  int faces = 0;
  for (const LensValues& values : {fourth_order_bullseye(Faces::true_curve),
                                   sixth_order_belt(Faces::true_curve), every_band_its_own_way()}) {
    const LensPlan plan = plan_of(values);
    for (const PlannedPrism* prism : distinct_prisms(plan)) {
      for (std::size_t i = 0; i < prism->profile.faces.size(); ++i) {
        const Face face = whole_face(prism->profile, i);
        if (face.kind != FaceKind::true_curve) continue;
        ++faces;
        const FaceOffsets offsets = offsets_of(face, distance(face.start(), face.end()) / 7.3);
        ASSERT_EQ(offsets.places.size(), 9u);
        for (const FaceOffset& place : offsets.places)
          EXPECT_NEAR(place.offset_mm, off_chord(face, place.along_mm), 2e-6) << prism->mark;
      }
    }
  }
  EXPECT_GT(faces, 60);
}

TEST(OffsetBlocks, SayEveryPlaceOnceDownOnePairOfColumnsAfterTheOther) {
  const FaceOffsets offsets = offsets_of(cap(), 5);
  const TableBlock block = offset_block(offsets, "Offsets", "corner A", {false});
  std::vector<std::vector<std::string>> rows;
  for (const TableLine& line : block.lines) {
    if (line.kind == TableLine::Kind::row) rows.push_back(line.cells);
  }
  ASSERT_EQ(rows.size(), 4u);  // thirteen places in four pairs of columns
  EXPECT_EQ(rows[0], (std::vector<std::string>{"0.000", "0.000", "20.000", "8.990", "40.000", "8.990", "60.000",
                                               "0.000"}));
  EXPECT_EQ(rows[3], (std::vector<std::string>{"15.000", "7.697", "35.000", "9.749", "55.000", "3.301"}));
  const TableBlock inches = offset_block(offsets, "Offsets", "corner A", {true});
  EXPECT_EQ(inches.lines.back().cells[1], "0.30303");  // 7.697 mm
}

}  // namespace
}  // namespace prismwright
