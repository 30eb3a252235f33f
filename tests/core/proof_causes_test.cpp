#include <gtest/gtest.h>

#include <cmath>

#include "core/optics/laser_bench.h"
#include "tests/support/proved_sections.h"

// Losses by cause: each place in the way of the light is put where its share is known in closed form.

namespace prismwright {
namespace {

double flux_of(const Section& section) {
  return std::sin(radians(section.highest_deg)) - std::sin(radians(section.lowest_deg));
}

TEST(RibBeforeTheGlass, StopsTheLightThatItsCornersShadow) {
  Section section = solved(tight_section("4"));
  section.ribs.push_back({"upper rib", {200, 10}, {240, 14}});
  const Proof proof = prove(section);
  const double wanted = (std::sin(std::atan2(14, 200)) - std::sin(std::atan2(10, 240))) / flux_of(section);
  EXPECT_NEAR(proof.of(Fate::stopped), wanted, 1e-9);
  EXPECT_NEAR(share_of(proof, LossCause::rib, "upper rib"), wanted, 1e-9);
  EXPECT_NEAR(sum_of_shares(proof.share), 1, 1e-9);
}

TEST(RibInTheBeam, StopsTheLightThatLeavesAtItsHeight) {
  Section section = solved(tight_section("4"));
  const Zone ring = *section.find("R2");
  const double middle = true_ring_exit(section, ring, radians(middle_deg(ring))).z;
  section.ribs.push_back({"upper rib", {400, middle - 3}, {420, middle + 2}});
  const Proof proof = prove(section);
  const double low = true_ring_elevation(section, ring, middle - 3);
  const double high = true_ring_elevation(section, ring, middle + 2);
  EXPECT_NEAR(share_of(proof, LossCause::rib), (std::sin(high) - std::sin(low)) / flux_of(section), 1e-7);
  const RayPath path = SectionTracer(section).trace(middle_deg(ring));
  EXPECT_EQ(path.fate, Fate::stopped);
  EXPECT_EQ(path.rib, "upper rib");
  EXPECT_NEAR(path.points.back().r, 400, 1e-9) << "drawn to the metal";
}

TEST(RibBetweenTheBands, LetsNoLightEscapeAndStandsInNoBeam) {
  SectionInput input = tight_section("4");
  const double with_none = prove(solved(input)).of(Fate::level);
  input.settings.upper_rib_mm = 8;
  const Section section = solved(input);
  ASSERT_EQ(section.ribs.size(), 1u);
  const Proof proof = prove(section);
  EXPECT_EQ(proof.of(Fate::escaped), 0);
  EXPECT_GT(share_of(proof, LossCause::rib), 0.005);
  EXPECT_NEAR(share_of(proof, LossCause::rib) + proof.of(Fate::level), 1, 1e-9);
  EXPECT_LT(proof.of(Fate::level), with_none);
  // Its shadow runs from the edge of the band to its upper corner nearest to the focus, or the outer one.
  const SectionRib& rib = section.ribs[0];
  const double top = std::max(std::atan2(rib.high.z, rib.low.r), std::atan2(rib.high.z, rib.high.r));
  EXPECT_NEAR(share_of(proof, LossCause::rib), (std::sin(top) - std::sin(radians(28.5))) / flux_of(section),
              1e-7);
}

TEST(GlassInTheBeam, MakesLevelLightStrayAndLeavesADarkStripOfItsHeight) {
  Section section = solved(tight_section("4"));
  const Zone ring = *section.find("R3");
  const double middle = true_ring_exit(section, ring, radians(middle_deg(ring))).z;
  // A pane far seaward, hidden from the focus by the ring itself.
  Zone pane = ring;
  pane.mark = "R9";
  const SectionPoint p{600, middle - 2}, q{610, middle - 2}, s{610, middle + 1}, u{600, middle + 1};
  pane.profile = {{straight_face(FaceRole::joint_lower, p, q), straight_face(FaceRole::outer, q, s),
                   straight_face(FaceRole::joint_upper, s, u), straight_face(FaceRole::inner, u, p)}};
  section.zones.push_back(pane);
  const Proof proof = prove(section);
  const double low = true_ring_elevation(section, ring, middle - 2);
  const double high = true_ring_elevation(section, ring, middle + 1);
  // Its image below stands in the image's beam.
  EXPECT_NEAR(share_of(proof, LossCause::other_glass, "R3"),
              2 * (std::sin(high) - std::sin(low)) / flux_of(section), 2e-7);
  int found = 0;
  for (const BeamStrip& strip : proof.dark_strips)
    found += std::abs(strip.from_mm - (middle - 2)) < 1e-4 && std::abs(strip.to_mm - (middle + 1)) < 1e-4;
  EXPECT_EQ(found, 1);
  EXPECT_FALSE(spot_on_board(SectionTracer(section).trace(middle_deg(ring)), 2000));
}

TEST(FilledGaps, AreNamedByTheRingBeforeThem) {
  SectionInput input = tight_section("4");
  input.settings.gap_mm = 1;
  const Section section = solved(input);
  const Proof proof = prove(section);
  const double in_gaps = share_of(proof, LossCause::filled_gap);
  EXPECT_NEAR(in_gaps, proof.of(Fate::stopped), 1e-12) << "no rib: all that is stopped is stopped in gaps";
  // What the inner face of neither neighbour takes, above and below.
  const Zone* before = section.find("R2");
  const Zone* after = section.find("R3");
  const double lost = 2 * (std::sin(radians(after->from_deg)) - std::sin(radians(before->to_deg)));
  EXPECT_NEAR(share_of(proof, LossCause::filled_gap, "R2"), lost / flux_of(section), 1e-7);
}

TEST(RoundedCorners, LoseLightFromTheFirstRayThatTouchesThem) {
  SectionInput input = tight_section("4");
  for (CornerLand* land : {&input.settings.land_a, &input.settings.land_b, &input.settings.land_c})
    *land = {1.5, LandShape::radius};
  const Section section = solved(input);
  const SectionTracer tracer(section);
  for (const char* mark : {"U02", "U05", "L03"}) {
    const Zone& zone = *section.find(mark);
    const double outer = zone.kind == ZoneKind::upper ? zone.from_deg : zone.to_deg;
    const double inward = zone.kind == ZoneKind::upper ? 1 : -1;
    const RayPath touch = tracer.trace(outer + inward * 1e-6);
    EXPECT_EQ(touch.fate, Fate::lost_land) << mark;
    EXPECT_EQ(touch.zone, mark);
    EXPECT_NE(tracer.trace(outer - inward * 1e-6).zone, mark);
  }
  const Proof proof = prove(section);
  EXPECT_EQ(proof.of(Fate::escaped), 0);
  EXPECT_NEAR(share_of(proof, LossCause::land), proof.of(Fate::lost_land), 1e-12);
}

TEST(LevelJoints, AreNamedAsTheCause) {
  SectionInput input = tight_section("4");
  input.settings.joint = Joint::level;
  const Proof proof = prove(solved(input));
  EXPECT_GT(share_of(proof, LossCause::joint), 0.01);
  EXPECT_EQ(share_of(proof, LossCause::land), 0);
}

TEST(OneFocalPoint, IsOneSweepOverTheWholeSection) {
  const Section section = solved(tight_section("1"));
  const auto sweeps = SectionTracer(section).sweeps();
  ASSERT_EQ(sweeps.size(), 1u);
  EXPECT_NEAR(sweeps[0].from_deg, section.lowest_deg, 1e-12);
  EXPECT_NEAR(sweeps[0].to_deg, section.highest_deg, 1e-12);
}

TEST(RaisedFocalPoint, IsSweptByItselfFromTheEdgeOfTheBand) {
  SectionInput input = tight_section("4");
  input.settings.upper.focus_z_mm = 12;
  const Section section = solved(input);
  const SectionTracer tracer(section);
  ASSERT_EQ(tracer.sweeps().size(), 2u);
  const double edge = std::atan2(250 * std::tan(radians(28.5)) - 12, 250);
  const double upper = std::sin(radians(section.highest_deg)) - std::sin(edge);
  const double rest = std::sin(radians(28.5)) - std::sin(radians(section.lowest_deg));
  const Proof proof = prove(section);
  EXPECT_NEAR(proof.share_of_source, (upper + rest) / 2, 1e-9);
  EXPECT_NEAR(proof.of(Fate::level), 1, 1e-9);
  EXPECT_LT(proof.worst_departure_deg, 1e-4);
  for (const LaserStop& stop : laser_stops(section)) {
    const RayPath path = tracer.trace(stop.elevation_deg, stop.band);
    EXPECT_EQ(path.zone, stop.zone);
    EXPECT_EQ(path.fate, Fate::level) << stop.zone;
    EXPECT_EQ(path.points.front().z, stop.band == Band::upper ? 12 : 0);
  }
}

TEST(AimedBeam, DepartsFromItsAimNotFromLevel) {
  SectionInput input = tight_section("4");
  input.settings.upper.aim_deg = 2;
  input.settings.lower.aim_deg = -1;
  input.settings.refracting.aim_deg = 0.5;
  const Section section = solved(input);
  const Proof proof = prove(section);
  EXPECT_LT(proof.worst_departure_deg, 1e-4);
  EXPECT_NEAR(sum_of_shares(proof.share), 1, 1e-9);
  const SectionTracer tracer(section);
  for (const auto& [mark, down] : {std::pair{"U03", 2.0}, {"L02", -1.0}, {"R2", 0.5}}) {
    const RayPath path = tracer.trace(middle_deg(*section.find(mark)));
    EXPECT_EQ(path.zone, mark);
    EXPECT_NEAR(last_direction_deg(path), -down, 1e-4);
    const auto spot = spot_on_board(path, 5000);
    ASSERT_TRUE(spot);
    EXPECT_NEAR(spot->over_aim_mm, 0, 0.01) << "the mark of a well-aimed ray";
  }
}

TEST(Strips, ShareOutTheLampsLightWithoutGapOrOverlap) {
  SectionInput input = tight_section("4");
  input.settings.gap_mm = 0.8;
  input.settings.land_mm = 0.6;
  const Section section = solved(input);
  const Proof proof = prove(section);
  double sums[kFates] = {};
  double last = section.lowest_deg;
  for (const LampStrip& strip : proof.lamp) {
    EXPECT_NEAR(strip.from_deg, last, 1e-9);
    sums[static_cast<int>(strip.fate)] +=
        (std::sin(radians(strip.to_deg)) - std::sin(radians(strip.from_deg))) / flux_of(section);
    last = strip.to_deg;
  }
  EXPECT_NEAR(last, section.highest_deg, 1e-9);
  for (int fate = 0; fate < kFates; ++fate) EXPECT_NEAR(sums[fate], proof.share[fate], 1e-9);
}

TEST(Strips, OfTheBeamBeginAndEndWhereTheEndRaysOfARingLeave) {
  const Section section = solved(tight_section("4"));
  const Proof proof = prove(section);
  for (const char* mark : {"R1", "R3", "R5"}) {
    const Zone& ring = *section.find(mark);
    const double low = true_ring_exit(section, ring, radians(ring.from_deg)).z;
    const double high = true_ring_exit(section, ring, radians(ring.to_deg)).z;
    int above = 0;
    for (const LightStrip& strip : proof.beam) {
      if (strip.zone != mark || strip.from_mm < 0) continue;
      ++above;
      EXPECT_NEAR(strip.from_mm, low, 1e-5);
      EXPECT_NEAR(strip.to_mm, high, 1e-5);
    }
    EXPECT_EQ(above, 1) << mark;
  }
  for (std::size_t i = 1; i < proof.beam.size(); ++i)
    EXPECT_LE(proof.beam[i - 1].from_mm, proof.beam[i].from_mm);
}

}  // namespace
}  // namespace prismwright
