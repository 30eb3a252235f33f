#include "core/lens/trimmed_volume.h"

#include <cmath>

#include <gtest/gtest.h>
#include <BRepPrimAPI_MakeRevol.hxx>

#include "core/base/angle.h"
#include "geometry/convert.h"
#include "geometry/profile_wire.h"
#include "geometry/trimmer.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

PlannedPrism block(TurningAxis turning, double r0, double r1, double z0, double z1) {
  PlannedPrism prism;
  prism.mark = "P01-X";
  prism.turning = turning;
  const SectionPoint a{r0, z0}, b{r1, z0}, c{r1, z1}, d{r0, z1};
  prism.profile.faces = {straight_face(FaceRole::joint_lower, a, b), straight_face(FaceRole::outer, b, c),
                         straight_face(FaceRole::joint_upper, c, d), straight_face(FaceRole::inner, d, a)};
  return prism;
}

/// Area of the part of a disc beyond a chord at the distance h from its centre.
double segment_mm2(double radius, double h) {
  return radius * radius * std::acos(h / radius) - h * std::sqrt(radius * radius - h * h);
}

TEST(TrimmedVolume, OfABeltWithoutSetBackIsAShareOfItsTube) {
  PlannedPrism prism = block(TurningAxis::lens, 200, 220, -5, 30);
  prism.trim = {-50, 30, 0, Half::whole, 0};
  const double tube = kPi * (220 * 220 - 200 * 200) * 35;
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (tube * 80 / 360), 1, 1e-12);
}

TEST(TrimmedVolume, OfAHalfBeltSetBackIsADifferenceOfDiscSegments) {
  PlannedPrism prism = block(TurningAxis::lens, 60, 80, 10, 30);
  prism.trim = {-70, 110, 7, Half::whole, 0};
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (20 * (segment_mm2(80, 7) - segment_mm2(60, 7))), 1, 1e-12);
}

TEST(TrimmedVolume, OfARingThatClearsTheSidesIsItsTube) {
  PlannedPrism prism = block(TurningAxis::panel, 200, 212, 40, 67);
  prism.trim = {-45, 45, 3, Half::whole, 0};
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (kPi * (67 * 67 - 40 * 40) * 12), 1, 1e-12);
}

TEST(TrimmedVolume, OfAnUpperHalfSetBackFromTheLevelPlaneIsADifferenceOfDiscSegments) {
  PlannedPrism prism = block(TurningAxis::panel, 200, 212, 40, 67);
  prism.trim = {-90, 90, 3, Half::upper, 2};
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (12 * (segment_mm2(67, 2) - segment_mm2(40, 2))), 1, 1e-9);
  prism.profile = mirrored(prism.profile);
  prism.trim.half = Half::lower;
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (12 * (segment_mm2(67, 2) - segment_mm2(40, 2))), 1, 1e-9);
}

TEST(TrimmedVolume, OfABeltBehindAFlatFaceIsADiscSegment) {
  PlannedPrism prism = block(TurningAxis::lens, 200, 220, -5, 30);
  prism.trim = {-80, 80, 3, Half::whole, 0, 200};  // the face reaches the outer side before the panel's sides
  EXPECT_NEAR(trimmed_volume_mm3(prism) / (35 * segment_mm2(220, 200)), 1, 1e-9);
}

TEST(TrimmedVolume, OfABeltBehindAFlatFaceIsWhatStripsAcrossThePanelHold) {
  for (const auto& [clockwise, anticlockwise] : {std::pair{-18.0, 18.0}, {-20.0, 7.0}, {0.0, 19.0}}) {
    PlannedPrism prism = block(TurningAxis::lens, 200, 220, -5, 30);
    prism.trim = {clockwise, anticlockwise, 2.5, Half::whole, 0, 200};
    const double a = radians(clockwise);
    const double b = radians(anticlockwise);
    const double low = a < 0 ? -90 : 2.5;
    double strips = 0;
    constexpr int kStrips = 400000;
    for (int i = 0; i < kStrips; ++i) {
      const double y = low + (90 - low) * (i + 0.5) / kStrips;
      // Along x from the face or the nearer side plane to the outer cylinder.
      double from = std::max(200.0, (2.5 + y * std::cos(b)) / std::sin(b));
      if (a < 0) from = std::max(from, (2.5 - y * std::cos(a)) / -std::sin(a));
      strips += std::max(0.0, std::sqrt(220.0 * 220 - y * y) - from) * (90 - low) / kStrips;
    }
    EXPECT_NEAR(trimmed_volume_mm3(prism) / (35 * strips), 1, 1e-6) << clockwise;
  }
}

/// Height of a ring's upper half above the level plane at a distance y from its axis, above the level gap.
double height_mm(double y, double z0, double z1, double gap) {
  const double top = std::abs(y) < z1 ? std::sqrt(z1 * z1 - y * y) : 0;
  const double low = std::abs(y) < z0 ? std::sqrt(z0 * z0 - y * y) : 0;
  return std::max(0.0, top - std::max(low, gap));
}

/// The same volume by columns: over the plan, the height of the ring above each spot. A way of its own.
double volume_by_columns_mm3(const Trim& trim, double r0, double r1, double z0, double z1) {
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  constexpr int kAlong = 60;
  constexpr int kAcross = 40000;
  double sum = 0;
  for (int i = 0; i < kAlong; ++i) {
    const double x = r0 + (r1 - r0) * (i + 0.5) / kAlong;
    for (int k = 0; k < kAcross; ++k) {
      const double y = -z1 + 2 * z1 * (k + 0.5) / kAcross;
      const bool in = -x * std::sin(a) + y * std::cos(a) >= trim.set_back_mm &&
                      x * std::sin(b) - y * std::cos(b) >= trim.set_back_mm;
      if (in) sum += height_mm(y, z0, z1, trim.half_gap_mm);
    }
  }
  return sum * (r1 - r0) / kAlong * 2 * z1 / kAcross;
}

struct SideCase {
  const char* name;
  double clockwise_deg;
  double anticlockwise_deg;
};

class TrimmedUpperHalf : public ::testing::TestWithParam<SideCase> {};

TEST_P(TrimmedUpperHalf, HoldsWhatItsColumnsHold) {
  PlannedPrism prism = block(TurningAxis::panel, 100, 112, 40, 67);
  prism.trim = {GetParam().clockwise_deg, GetParam().anticlockwise_deg, 2.5, Half::upper, 0.5};
  const double columns = volume_by_columns_mm3(prism.trim, 100, 112, 40, 67);
  EXPECT_NEAR(trimmed_volume_mm3(prism) / columns, 1, 2e-4);  // the columns' own width
}

INSTANTIATE_TEST_SUITE_P(BetweenSides, TrimmedUpperHalf,
                         ::testing::Values(SideCase{"even", -22.5, 22.5}, SideCase{"narrow", -9, 9},
                                           SideCase{"axis_off_the_middle", -8, 40},
                                           SideCase{"one_side_behind_the_axis", -120, 20},
                                           SideCase{"one_side_square_to_it", -90, 25},
                                           SideCase{"half_turn_askew", -100, 80},
                                           SideCase{"a_side_along_the_axis", 0, 30}),
                         [](const auto& named) { return std::string(named.param.name); });

TEST(Trimmer, BothWaysOfCuttingGiveTheSameSolid) {
  const PlannedPrism prism = block(TurningAxis::panel, 100, 112, 40, 67);
  const TopoDS_Face face = profile_face(prism.profile, ProfilePlane(TurningAxis::panel, 0.3));
  const TopoDS_Shape ring = BRepPrimAPI_MakeRevol(face, turning_line(TurningAxis::panel), 2.6).Shape();
  for (const Half half : {Half::upper, Half::whole}) {
    const Trim trim = {-15, 18, 2.5, half, 30};
    const double by_wedge = kernel_volume_mm3(trimmed(ring, trim, 0, CuttingWay::wedge));
    const double by_planes = kernel_volume_mm3(trimmed(ring, trim, 0, CuttingWay::plane_by_plane));
    EXPECT_GT(by_wedge, 1000);
    EXPECT_NEAR(by_wedge / by_planes, 1, 1e-8);
  }
}

}  // namespace
}  // namespace prismwright
