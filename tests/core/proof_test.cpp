#include "core/optics/proof.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/base/angle.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

SectionInput bare_section(const char* order, Faces faces) {
  LensValues values = starting_values(order, Work::bullseye, 8);
  values.section.faces = faces;
  values.section.gap_mm = values.section.land_mm = 0;
  return values.section_input();
}

Section solved(const SectionInput& input) {
  auto section = solve_section(input);
  EXPECT_TRUE(section.ok()) << (section ? "" : section.problem().text);
  return *section;
}

double sum_of_shares(const Proof& proof) { return std::accumulate(proof.share, proof.share + kFates, 0.0); }

struct Case {
  const char* order;
  Faces faces;
};
class GaplessSection : public testing::TestWithParam<Case> {};

/// The figure that the section must reach: no ray escapes over 100 000 elevations.
TEST_P(GaplessSection, LetsNoRayEscape) {
  const Proof proof = prove(solved(bare_section(GetParam().order, GetParam().faces)), 100000);
  EXPECT_EQ(proof.of(Fate::escaped), 0);
  EXPECT_EQ(proof.of(Fate::stray), 0);
  EXPECT_EQ(proof.lost(), 0);
  EXPECT_NEAR(proof.of(Fate::level), 1, 1e-9);
  EXPECT_NEAR(sum_of_shares(proof), 1, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Orders, GaplessSection,
                         testing::Values(Case{"1", Faces::true_curve}, Case{"1", Faces::arc},
                                         Case{"4", Faces::true_curve}, Case{"4", Faces::arc},
                                         Case{"6", Faces::true_curve}, Case{"6", Faces::arc},
                                         Case{"hyper-radial", Faces::true_curve}));

TEST(TrueCurves, SendEveryRayLevel) {
  for (const char* order : {"1", "4", "6"}) {
    const Proof proof = prove(solved(bare_section(order, Faces::true_curve)), 20000);
    EXPECT_LT(proof.worst_departure_deg, 1e-4) << order;
  }
}

TEST(Arcs, DepartButStayWithinTheLevelTolerance) {
  const Proof proof = prove(solved(bare_section("4", Faces::arc)), 20000);
  EXPECT_GT(proof.worst_departure_deg, 0.02);
  EXPECT_LT(proof.worst_departure_deg, 0.3);
}

TEST(Lands, LoseLightButLetNoneEscape) {
  SectionInput input = bare_section("4", Faces::true_curve);
  input.settings.land_mm = 0.8;
  const Proof proof = prove(solved(input), 100000);
  EXPECT_GT(proof.of(Fate::lost_land), 0.005);
  EXPECT_LT(proof.of(Fate::lost_land), 0.1);
  EXPECT_EQ(proof.of(Fate::escaped), 0);
  EXPECT_NEAR(sum_of_shares(proof), 1, 1e-9);
}

TEST(SettingGaps, CostDarkStripsAndStopLightBetweenRings) {
  SectionInput input = bare_section("4", Faces::true_curve);
  const Proof before = prove(solved(input));
  input.settings.gap_mm = 1;
  const Section section = solved(input);
  const Proof after = prove(section);
  const auto dark = [](const Proof& proof) {
    double sum = 0;
    for (const BeamStrip& strip : proof.dark_strips) sum += strip.to_mm - strip.from_mm;
    return sum;
  };
  EXPECT_GT(dark(after), dark(before) + 5);
  EXPECT_GT(after.of(Fate::stopped), 0.01);
  EXPECT_EQ(after.of(Fate::escaped), 0);
  // Between two upper prisms the strip is the gap times the sine of the limiting ray's elevation.
  const Zone* lower = section.find("U03");
  const Zone* upper = section.find("U04");
  EXPECT_NEAR(upper->corners->a.z - lower->corners->c.z, 1 * std::sin(radians(lower->to_deg)), 1e-9);
}

TEST(LevelJoints, LoseLightThatJointsAlongTheRayKeep) {
  SectionInput input = bare_section("4", Faces::true_curve);
  input.settings.joint = Joint::level;
  const Proof proof = prove(solved(input));
  EXPECT_GT(proof.of(Fate::lost_land), 0.01);
  EXPECT_EQ(proof.of(Fate::escaped), 0);
  EXPECT_LT(proof.worst_departure_deg, 1e-4);
}

/// A first upper prism set away from the last ring leaves a hole: its share of cos t dt is known in closed
/// form.
TEST(HoleInTheSection, LetsItsShareEscape) {
  SectionInput input = bare_section("4", Faces::true_curve);
  const double start_deg = 32;
  input.settings.upper_start_r_mm = 250;
  input.settings.upper_start_z_mm = 250 * std::tan(radians(start_deg));
  const Section section = solved(input);
  const Proof proof = prove(section, 50000);
  const double flux = std::sin(radians(section.highest_deg)) - std::sin(radians(section.lowest_deg));
  const double hole = std::sin(radians(start_deg)) - std::sin(radians(28.5));
  EXPECT_NEAR(proof.of(Fate::escaped), hole / flux, 1e-9);
  EXPECT_EQ(proof.dark_strips.empty(), false);
}

TEST(Rays, AreReversible) {
  // The level ray sent back along the same path must return to the focus: Snell's law run backwards by hand.
  const SectionInput input = bare_section("4", Faces::true_curve);
  const SectionTracer tracer(solved(input));
  for (const double elevation : {3.0, 17.0, 35.0, 60.0, -20.0, -40.0}) {
    const RayPath path = tracer.trace(elevation);
    ASSERT_EQ(path.fate, Fate::level) << elevation;
    ASSERT_GE(path.points.size(), 3u);
    const SectionPoint first = path.points[1];
    EXPECT_NEAR(degrees(std::atan2(first.z, first.r)), elevation, 1e-9);
    for (const RayMeeting& meeting : path.meetings) {
      if (!meeting.refraction_deg) continue;
      const bool entering = meeting.face == FaceRole::inner || meeting.face == FaceRole::entry;
      const double outside = entering ? meeting.incidence_deg : *meeting.refraction_deg;
      const double inside = entering ? *meeting.refraction_deg : meeting.incidence_deg;
      EXPECT_NEAR(std::sin(radians(outside)), input.index * std::sin(radians(inside)), 1e-12);
    }
  }
}

TEST(Rays, BeyondTheSectionEscape) {
  const SectionTracer tracer(solved(bare_section("4", Faces::true_curve)));
  const RayPath path = tracer.trace(88);
  EXPECT_EQ(path.fate, Fate::escaped);
  EXPECT_TRUE(path.zone.empty());
  EXPECT_TRUE(path.meetings.empty());
}

TEST(Shares, HardlyChangeWithTenTimesMoreElevations) {
  SectionInput input = bare_section("4", Faces::true_curve);
  input.settings.land_mm = 0.5;
  const Section section = solved(input);
  const Proof coarse = prove(section, 1000);
  const Proof fine = prove(section, 10000);
  for (int fate = 0; fate < kFates; ++fate) EXPECT_NEAR(coarse.share[fate], fine.share[fate], 1e-5);
}

/// Light that misses total reflection is split by Fresnel's equations, not dropped.
TEST(LowIndex, LosesLightAtTheReflectingFace) {
  SectionInput input = bare_section("4", Faces::true_curve);
  input.index = 1.40;
  input.settings.upper_to_deg = 60;
  const auto section = solve_section(input);
  if (!section) {
    EXPECT_NE(section.problem().text.find("reflect"), std::string::npos);
    return;
  }
  const Proof proof = prove(*section, 20000);
  EXPECT_NEAR(sum_of_shares(proof), 1, 1e-9);
}

}  // namespace
}  // namespace prismwright
