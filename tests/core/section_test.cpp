#include "core/optics/section.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/optics/face_curve.h"

namespace prismwright {
namespace {

SectionInput starting(const char* order = "4") {
  return starting_values(order, Work::bullseye, 8).section_input();
}

void expect_closed(const Zone& zone) {
  const auto& faces = zone.profile.faces;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const SectionPoint end = faces[i].end();
    const SectionPoint next = faces[(i + 1) % faces.size()].start();
    EXPECT_NEAR(distance(end, next), 0, 1e-9) << zone.mark << " after face " << name_of(faces[i].role);
  }
  EXPECT_GT(area_mm2(zone.profile), 0) << zone.mark << " is not walked anticlockwise";
}

TEST(EveryZone, IsAClosedOutlineWalkedAnticlockwise) {
  for (const Faces kind : {Faces::true_curve, Faces::arc}) {
    for (const Joint joint : {Joint::along_ray, Joint::level}) {
      for (const double land : {0.0, 0.6}) {
        SectionInput input = starting();
        input.settings.faces = kind;
        input.settings.joint = joint;
        input.settings.land_mm = land;
        const auto section = solve_section(input);
        ASSERT_TRUE(section.ok()) << section.problem().text;
        for (const Zone& zone : section->zones) expect_closed(zone);
      }
    }
  }
}

TEST(Stack, EachPrismStandsOnTheLimitingRayOfTheOneBefore) {
  SectionInput input = starting();
  input.settings.gap_mm = input.settings.land_mm = 0;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok());
  const Zone* before = nullptr;
  for (const Zone& zone : section->zones) {
    if (zone.kind != ZoneKind::upper) continue;
    if (before) {
      const SectionPoint b = before->corners->b;
      const SectionPoint a = zone.corners->a;
      EXPECT_NEAR(std::atan2(a.z, a.r), std::atan2(b.z, b.r), 1e-12) << zone.mark;
      EXPECT_NEAR(a.z, before->corners->c.z, 1e-9) << zone.mark;
    }
    before = &zone;
  }
  ASSERT_NE(before, nullptr);
  EXPECT_NEAR(before->to_deg, 76.5, 1e-9);
}

TEST(Stack, KeepsItsEntrySidesAndCutsOnlyTheLast) {
  const auto section = solve_section(starting());
  ASSERT_TRUE(section.ok());
  int short_ones = 0;
  for (const Zone& zone : section->zones) {
    if (zone.kind != ZoneKind::upper) continue;
    const double chord = distance(zone.corners->a, zone.corners->b);
    if (std::abs(chord - 30) > 1e-9) ++short_ones;
  }
  EXPECT_LE(short_ones, 1);
}

TEST(Stack, EndsAtTheLimitWithLandsToo) {
  SectionInput input = starting();
  input.settings.land_mm = 0.8;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok());
  EXPECT_NEAR(section->highest_deg, 76.5, 1e-9);
}

TEST(LowerPrisms, MirrorTheUpperOnes) {
  SectionInput input = starting();
  input.settings.lower_to_deg = input.settings.upper_to_deg = 60;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok());
  const Zone* upper = section->find("U02");
  const Zone* lower = section->find("L02");
  ASSERT_TRUE(upper && lower);
  EXPECT_DOUBLE_EQ(lower->from_deg, -upper->to_deg);
  EXPECT_DOUBLE_EQ(lower->corners->b.z, -upper->corners->b.z);
  EXPECT_NEAR(area_mm2(lower->profile), area_mm2(upper->profile), 1e-9);
  EXPECT_NEAR(centroid(lower->profile).z, -centroid(upper->profile).z, 1e-9);
}

TEST(Band, IsDividedIntoZonesOfOneThickness) {
  const auto section = solve_section(starting());
  ASSERT_TRUE(section.ok());
  for (const Zone& zone : section->zones) {
    if (!is_refracting(zone.kind)) continue;
    EXPECT_NEAR(zone.thickness_mm, section->zones[0].thickness_mm, 1e-3) << zone.mark;
    EXPECT_LE(zone.thickness_mm, 4 + 6.5 + 1e-9) << zone.mark;
  }
}

TEST(Lands, HaveTheWidthAskedFor) {
  for (const Faces faces : {Faces::true_curve, Faces::arc}) {
    SectionInput input = starting();
    input.settings.faces = faces;
    input.settings.land_mm = 0.7;
    const auto section = solve_section(input);
    ASSERT_TRUE(section.ok());
    for (const Zone& zone : section->zones) {
      int lands = 0;
      for (const Face& face : zone.profile.faces) {
        if (face.role != FaceRole::land) continue;
        ++lands;
        EXPECT_NEAR(distance(face.start(), face.end()), 0.7, 1e-6) << zone.mark;
      }
      EXPECT_EQ(lands, is_refracting(zone.kind) ? 0 : 3) << zone.mark;
    }
  }
}

void expect_refused(const SectionInput& input, const std::string& code, const std::string& words) {
  const auto section = solve_section(input);
  ASSERT_FALSE(section.ok()) << "should be refused: " << code;
  EXPECT_EQ(section.problem().code, code);
  EXPECT_NE(section.problem().text.find(words), std::string::npos) << section.problem().text;
}

TEST(Refusals, NameTheZoneAndTheReason) {
  SectionInput input = starting();
  input.settings.land_mm = 14;
  expect_refused(input, "stack.lands", "U01");

  input = starting();
  input.settings.land_a.size_mm = 14;
  expect_refused(input, "stack.lands", "or the corner's own");

  input = starting();
  input.index = 1.3;
  expect_refused(input, "reflecting.not_total", "reflects totally only from");

  input = starting();
  input.settings.reflecting_chord_mm = 2;
  input.settings.land_mm = 0;
  expect_refused(input, "stack.too_many", "reflecting_chord_mm longer");

  input = starting();
  input.settings.ring_growth_mm = 0.5;
  expect_refused(input, "band.too_many", "ring_growth_mm larger");

  input = starting();
  input.settings.refracting_margins_mm = {50, 600};
  expect_refused(input, "band.too_steep", "R1");
}

// A gap wider than a zone: at the growth asked for, the band's end lies in the gap after the second zone, and
// only zones less than half as thick reach it. It is no case of too many zones.
TEST(WideGaps, AreServedByThinnerZonesNotRefusedAsTooMany) {
  SectionInput input = starting("6");
  input.settings.gap_mm = 20;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok()) << section.problem().text;
  for (const Zone& zone : section->zones) {
    if (!is_refracting(zone.kind)) continue;
    expect_closed(zone);
    EXPECT_LE(zone.thickness_mm, input.settings.edge_mm + input.settings.ring_growth_mm + 1e-9) << zone.mark;
    if (zone.to_deg > input.settings.refracting_to_deg - 1e-9) return;
  }
  FAIL() << "no zone ends where the band does";
}

// Seven gaps of 6.7 mm are more than a band that reaches 26 mm up holds: zones between them would have no
// breadth.
TEST(WideGaps, ThatLeaveNoRoomForACountOfZonesAreRefused) {
  SectionInput input = starting("5");
  input.settings.gap_mm = 6.7;
  input.settings.refracting_to_deg = 7.9;
  input.settings.refracting.division = Division::count;
  input.settings.refracting.count = 8;
  expect_refused(input, "band.count", "leave no room for glass");
  input.settings.refracting.count = 2;
  EXPECT_TRUE(solve_section(input).ok());
}

TEST(Notes, NameTheBandWithSingleBlanks) {
  SectionInput input = starting("5");
  input.index = 1.51;
  const auto section = solve_section(input);
  ASSERT_TRUE(section.ok()) << section.problem().text;
  ASSERT_FALSE(section->notes.empty());
  for (const std::string& note : section->notes) EXPECT_EQ(note.find("  "), std::string::npos) << note;
}

/// A true curve held as cubic pieces: between its points it must still lie on the exact curve's neighbours.
TEST(FaceCurves, MeetRaysOnACircleWhereGeometrySaysSo) {
  // Tangents and points of a circle of radius 500 given as a "true curve": exact answers are known.
  std::vector<SectionPoint> points;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i <= 32; ++i) {
    const double angle = 0.2 + 0.3 * i / 32;
    points.push_back({500 * std::cos(angle), 500 * std::sin(angle)});
    tangents.push_back(SectionDirection::at(angle + kPi / 2));
  }
  const FaceCurve curve(true_face(FaceRole::outer, points, tangents));
  const FaceCurve arc(arc_face(FaceRole::outer, points.front(), points.back(), {0, 0}, 500));
  for (double angle = 0.205; angle < 0.495; angle += 0.01) {
    std::vector<FaceHit> on_curve;
    std::vector<FaceHit> on_arc;
    curve.meet({0, 0}, SectionDirection::at(angle), on_curve);
    arc.meet({0, 0}, SectionDirection::at(angle), on_arc);
    ASSERT_EQ(on_curve.size(), 1u);
    ASSERT_EQ(on_arc.size(), 1u);
    EXPECT_NEAR(on_curve[0].along_mm, 500, 1e-9);
    EXPECT_NEAR(on_arc[0].along_mm, 500, 1e-9);
    EXPECT_NEAR(cross(on_curve[0].outward, on_arc[0].outward), 0, 1e-9);
  }
}

TEST(Profiles, HaveTheAreaAndCentroidOfTheirShape) {
  // A half disc of radius 10 about (100, 0): area pi r^2 / 2, centroid 4 r / (3 pi) from the diameter.
  const Profile half{{straight_face(FaceRole::inner, {100, 10}, {100, -10}),
                      arc_face(FaceRole::outer, {100, -10}, {100 + 10 * std::cos(0.0), 0}, {100, 0}, 10),
                      arc_face(FaceRole::outer, {110, 0}, {100, 10}, {100, 0}, 10)}};
  EXPECT_NEAR(area_mm2(half), kPi * 50, 1e-3);
  EXPECT_NEAR(centroid(half).r, 100 + 40 / (3 * kPi), 1e-4);
  EXPECT_NEAR(centroid(half).z, 0, 1e-9);
  EXPECT_NEAR(area_mm2(mirrored(half)), area_mm2(half), 1e-9);
}

}  // namespace
}  // namespace prismwright
