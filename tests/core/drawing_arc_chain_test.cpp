#include "core/drawing/arc_chain.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"
#include "core/optics/face_curve.h"

namespace prismwright {
namespace {

/// A parabola r = k x^2 / 2, z = x: place, tangent and curvature are known in closed form, and it is no circle.
struct Parabola {
  double k = 0.01;
  [[nodiscard]] SectionPoint place(double x) const { return {100 - k * x * x / 2, x}; }
  [[nodiscard]] Face face(double from, double to, int points) const {
    std::vector<SectionPoint> places;
    std::vector<SectionDirection> tangents;
    for (int i = 0; i < points; ++i) {
      const double x = from + (to - from) * i / (points - 1);
      places.push_back(place(x));
      tangents.push_back(SectionDirection::along(SectionOffset{-k * x, 1}));
    }
    return true_face(FaceRole::outer, places, tangents);
  }
};

double distance_to(const std::vector<ChainPiece>& chain, SectionPoint place) {
  double least = 1e9;
  for (const ChainPiece& piece : chain) least = std::min(least, piece.distance_to(place));
  return least;
}

/// Greatest angle between pieces that meet, degrees.
double worst_kink_deg(const std::vector<ChainPiece>& chain) {
  double worst = 0;
  for (std::size_t i = 1; i < chain.size(); ++i) {
    worst =
        std::max(worst, std::abs(std::asin(cross(chain[i - 1].tangent_at_end(), chain[i].tangent_at_start()))));
  }
  return degrees(worst);
}

double worst_gap_mm(const std::vector<ChainPiece>& chain) {
  double worst = 0;
  for (std::size_t i = 1; i < chain.size(); ++i)
    worst = std::max(worst, distance(chain[i - 1].to, chain[i].from));
  return worst;
}

class ArcsOfAParabola : public ::testing::TestWithParam<double> {};

TEST_P(ArcsOfAParabola, KeepWithinTheToleranceOfTheExactCurveAndTouchEachOther) {
  const Parabola parabola;
  const auto chain = arcs_of(parabola.face(-20, 35, 33), GetParam());
  double worst = 0;
  for (int i = 0; i <= 20000; ++i)
    worst = std::max(worst, distance_to(chain, parabola.place(-20 + 55 * i / 20000.0)));
  EXPECT_LE(worst, GetParam());
  EXPECT_LT(worst_kink_deg(chain), 1e-7);
  EXPECT_EQ(worst_gap_mm(chain), 0);
  EXPECT_LT(distance(chain.front().from, parabola.place(-20)), 1e-12);
  EXPECT_LT(distance(chain.back().to, parabola.place(35)), 1e-12);
}

TEST_P(ArcsOfAParabola, AreNoMoreThanTheThirdPowerOfTheirLengthAsksFor) {
  const Parabola parabola;
  const auto count = static_cast<double>(arcs_of(parabola.face(-20, 35, 33), GetParam()).size());
  const auto coarse = static_cast<double>(arcs_of(parabola.face(-20, 35, 33), 8 * GetParam()).size());
  // Eight times the departure, half the arcs; whole pairs round up.
  EXPECT_LE(count, 2 * coarse + 4);
  EXPECT_GE(count, coarse);
}

INSTANTIATE_TEST_SUITE_P(Within, ArcsOfAParabola, ::testing::Values(0.0001, 0.002, 0.05));

TEST(ArcsOfAFace, GiveBackACircleAsOneCircle) {
  const SectionPoint centre{30, -5};
  std::vector<SectionPoint> places;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i < 9; ++i) {
    const double angle = radians(10 + 5.0 * i);
    places.push_back(centre + 80 * SectionDirection::at(angle));
    tangents.push_back(SectionDirection::at(angle).quarter_turn());
  }
  const Face face = true_face(FaceRole::outer, places, tangents);
  for (const ChainPiece& piece : arcs_of(face, 0.0001)) {
    EXPECT_NEAR(piece.radius_mm, 80, 1e-6);
    EXPECT_NEAR(piece.centre.r, 30, 1e-6);
    EXPECT_NEAR(piece.centre.z, -5, 1e-6);
    EXPECT_GT(piece.turn, 0);
  }
  const SingleArc single = best_arc(face);
  EXPECT_NEAR(single.piece.radius_mm, 80, 1e-3);
  EXPECT_LT(single.departs_mm, 1e-5);
}

TEST(ArcsOfAFace, LeaveStraightFacesAndArcsAsTheyAre) {
  const auto straight = arcs_of(straight_face(FaceRole::inner, {1, 2}, {1, 9}));
  ASSERT_EQ(straight.size(), 1u);
  EXPECT_TRUE(straight[0].straight());
  const Face clockwise = arc_face(FaceRole::outer, {0, 5}, {5, 0}, {0, 0}, 5);
  const auto arc = arcs_of(clockwise);
  ASSERT_EQ(arc.size(), 1u);
  EXPECT_NEAR(arc[0].turn, -kPi / 2, 1e-12);
  EXPECT_DOUBLE_EQ(arc[0].radius_mm, 5);
}

TEST(ArcsOfAFace, FollowACurveThatTurnsBothWays) {
  // z = x, r = sin(x / 10): the bend changes side at x = 0.
  std::vector<SectionPoint> places;
  std::vector<SectionDirection> tangents;
  for (int i = 0; i <= 32; ++i) {
    const double x = -12 + 24.0 * i / 32;
    places.push_back({std::sin(x / 10), x});
    tangents.push_back(SectionDirection::along(SectionOffset{std::cos(x / 10) / 10, 1}));
  }
  const auto chain = arcs_of(true_face(FaceRole::outer, places, tangents), 0.002);
  double worst = 0;
  for (int i = 0; i <= 5000; ++i) {
    const double x = -12 + 24.0 * i / 5000;
    worst = std::max(worst, distance_to(chain, {std::sin(x / 10), x}));
  }
  EXPECT_LE(worst, 0.002);
  EXPECT_LT(worst_kink_deg(chain), 1e-6);
}

TEST(BestArc, DepartsEquallyFarToBothSidesAndLessThanItsNeighbours) {
  const Parabola parabola;
  const Face face = parabola.face(5, 40, 33);
  const SingleArc best = best_arc(face);
  double out = 0, in = 0;
  for (int i = 0; i <= 4000; ++i) {
    const double off = distance(parabola.place(5 + 35.0 * i / 4000), best.piece.centre) - best.piece.radius_mm;
    out = std::max(out, off);
    in = std::max(in, -off);
  }
  EXPECT_NEAR(out, in, 0.02 * out);
  EXPECT_NEAR(best.departs_mm, std::max(out, in), 1e-4);
}

TEST(ArcsOfEveryTrueFace, KeepWithinTheToleranceOfTheCurveThatTheProofTraces) {
  for (const char* order : {"1", "4", "6"}) {
    LensValues values = starting_values(order, Work::bullseye, 8);
    values.section.faces = Faces::true_curve;
    const auto section = solve_section(values.section_input());
    ASSERT_TRUE(section.ok()) << section.problem().text;
    int faces = 0;
    for (const Zone& zone : section->zones) {
      for (const Face& face : zone.profile.faces) {
        if (face.kind != FaceKind::true_curve) continue;
        ++faces;
        const auto chain = arcs_of(face);
        double worst = 0;
        for (const SectionPoint place : points_along(face, 1e-7))
          worst = std::max(worst, distance_to(chain, place));
        EXPECT_LE(worst, kArcTolerance_mm) << order << ' ' << zone.mark;
        EXPECT_LT(worst_kink_deg(chain), 1e-6) << order << ' ' << zone.mark;
        EXPECT_LE(chain.size(), 20u) << order << ' ' << zone.mark;
      }
    }
    EXPECT_GT(faces, 20);
  }
}

}  // namespace
}  // namespace prismwright
