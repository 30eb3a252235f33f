#include <cmath>

#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "geometry/bodies.h"
#include "geometry/solid_check.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

/// A lens whose every prism must pass the same tests.
struct LensCase {
  const char* name;
  LensValues values;
};

LensValues without_set_back(LensValues values) {
  values.frame.pocket_mm = values.frame.rib_mm;
  values.frame.end_gap_mm = 0;
  return values;
}

std::vector<LensCase> lens_cases() {
  return {{"true_belt", sixth_order_belt(Faces::true_curve)},
          {"arc_belt", sixth_order_belt(Faces::arc)},
          {"belt_without_set_back", without_set_back(sixth_order_belt(Faces::true_curve))},
          {"belt_of_two_panels", two_panels(Work::belt, Faces::true_curve)},
          {"lopsided_belt", lopsided_belt()},
          {"true_bullseye", fourth_order_bullseye(Faces::true_curve)},
          {"arc_bullseye", fourth_order_bullseye(Faces::arc)},
          {"bullseye_without_set_back", without_set_back(fourth_order_bullseye(Faces::true_curve))},
          {"bullseye_of_two_panels", two_panels(Work::bullseye, Faces::true_curve)},
          {"lopsided_bullseye", lopsided_bullseye()}};
}

class EveryPrism : public ::testing::TestWithParam<LensCase> {};

/// The share by which the kernel's volume and the independent one may differ; contract 1e-4, measured 2e-7.
constexpr double kVolumeShare = 2e-6;

TEST_P(EveryPrism, IsOneValidSolidOfTheRightVolumeWithinItsTrim) {
  const auto plan = plan_lens(GetParam().values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  BodyShop shop;
  const auto bodies = shop.make(*plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  ASSERT_EQ(bodies->prisms.size(), plan->prisms.size());
  for (const PlannedPrism* prism : distinct_prisms(*plan)) {
    SCOPED_TRACE(prism->mark);
    const PrismBody& body = *bodies->find(prism->mark);
    EXPECT_THAT(body.shape, IsValidSolid());
    const double section = trimmed_volume_mm3(*prism);
    EXPECT_NEAR(body.volume_mm3 / section, 1, kVolumeShare);
    // Where it stands in the lens it measures the same.
    EXPECT_NEAR(measured(body.shape, section).volume_mm3, body.volume_mm3, 1e-6 * body.volume_mm3);
    EXPECT_NEAR(body.mass_g, body.volume_mm3 * plan->values.material.density_g_cm3 / 1000, 1e-9);
  }
}

INSTANTIATE_TEST_SUITE_P(OfALens, EveryPrism, ::testing::ValuesIn(lens_cases()),
                         [](const auto& named) { return std::string(named.param.name); });

/// Pappus: an untrimmed belt prism is its section's area times the way of its centroid.
class UntrimmedBelt : public ::testing::TestWithParam<Faces> {};

TEST_P(UntrimmedBelt, HoldsTheVolumeThatPappusGives) {
  const LensValues values = without_set_back(sixth_order_belt(GetParam()));
  const auto plan = plan_lens(values);
  ASSERT_TRUE(plan.ok()) << plan.problem().text;
  for (const PlannedPrism* prism : distinct_prisms(*plan)) {
    SCOPED_TRACE(prism->mark);
    const auto shape = prism_shape(*prism);
    ASSERT_TRUE(shape.ok()) << shape.problem().text;
    const double width = radians(prism->trim.anticlockwise_side_deg - prism->trim.clockwise_side_deg);
    const double pappus = area_mm2(prism->profile) * centroid(prism->profile).r * width;
    // Contract 1e-4; head-room for the kernel's quadrature of spline faces.
    EXPECT_NEAR(kernel_volume_mm3(*shape) / pappus, 1, 2e-6);
  }
}

INSTANTIATE_TEST_SUITE_P(OfBothFaces, UntrimmedBelt, ::testing::Values(Faces::true_curve, Faces::arc));

/// A bull's-eye ring of rectangular section, 200 to 212 mm along the axis, 40 to 67 mm away from it.
PlannedPrism plain_ring() {
  PlannedPrism prism;
  prism.mark = "P01-R1";
  const SectionPoint a{200, 40}, b{212, 40}, c{212, 67}, d{200, 67};
  prism.profile.faces = {straight_face(FaceRole::joint_lower, a, b), straight_face(FaceRole::outer, b, c),
                         straight_face(FaceRole::joint_upper, c, d), straight_face(FaceRole::inner, d, a)};
  prism.shape_key = "plain";
  return prism;
}

// The kernel goes wrong without a word where a side plane all but touches a round edge: on both sides of
// touching the solid must be right or refused, never wrong.
TEST(NearTouching, NeverGivesAWrongVolume) {
  int made = 0;
  for (const double room_mm :
       {-1e-2, -1e-4, -1e-6, -3e-7, -1e-7, -3e-8, 0.0, 3e-8, 1e-7, 3e-7, 1e-6, 1e-4, 1e-2}) {
    for (const Half half : {Half::whole, Half::upper, Half::lower}) {
      SCOPED_TRACE(::testing::Message() << "room " << room_mm << " mm, half " << static_cast<int>(half));
      PlannedPrism prism = plain_ring();
      prism.trim.half = half;
      prism.trim.half_gap_mm = 0.5;
      prism.trim.clockwise_side_deg = -40;
      prism.trim.anticlockwise_side_deg = 22;
      // The plane x sin b - y cos b = s touches the circle of 67 mm at x = 200 mm where s is this, less room.
      const double b = radians(prism.trim.anticlockwise_side_deg);
      prism.trim.set_back_mm = 200 * std::sin(b) - 67 * std::cos(b) - room_mm;
      const auto shape = prism_shape(prism);
      if (!shape) {
        EXPECT_EQ(shape.problem().where, prism.mark);
        continue;
      }
      ++made;
      EXPECT_THAT(*shape, IsValidSolid());
      EXPECT_NEAR(kernel_volume_mm3(*shape) / trimmed_volume_mm3(prism), 1, 1e-4);
    }
  }
  EXPECT_EQ(made, 39) << "all of them can be made";
}

TEST(PrismShape, IsRefusedWithItsMarkWhereThePanelLeavesNoRoom) {
  PlannedPrism prism = plain_ring();
  prism.trim.clockwise_side_deg = -1;
  prism.trim.anticlockwise_side_deg = 1;
  prism.trim.set_back_mm = 5;
  const auto shape = prism_shape(prism);
  ASSERT_FALSE(shape.ok());
  EXPECT_EQ(shape.problem().code, "solid");
  EXPECT_EQ(shape.problem().where, "P01-R1");
  EXPECT_NE(shape.problem().text.find("5 mm"), std::string::npos) << shape.problem().text;
}

TEST(PrismShape, IsRefusedWhereARingFallsIntoTwoPieces) {
  PlannedPrism prism = plain_ring();  // taken whole, though both sides cross it
  prism.trim.clockwise_side_deg = -10;
  prism.trim.anticlockwise_side_deg = 10;
  const auto shape = prism_shape(prism);
  ASSERT_FALSE(shape.ok());
  EXPECT_EQ(shape.problem().where, "P01-R1");
  EXPECT_NE(shape.problem().text.find("2 pieces"), std::string::npos) << shape.problem().text;
}

TEST(PrismShape, IsRefusedWhereTheSectionIsNotClosed) {
  PlannedPrism prism = plain_ring();
  prism.profile.faces[1] = straight_face(FaceRole::outer, {212, 40}, {212, 66});
  const auto shape = prism_shape(prism);
  ASSERT_FALSE(shape.ok());
  EXPECT_EQ(shape.problem().where, "P01-R1");
}

TEST(PrismShape, OfALowerHalfIsTheMirrorImageOfTheUpper) {
  PlannedPrism upper = plain_ring();
  upper.trim = {-15, 18, 2.5, Half::upper, 0.25};
  PlannedPrism lower = upper;
  lower.profile = mirrored(upper.profile);
  lower.trim.half = Half::lower;
  const auto above = prism_shape(upper);
  const auto below = prism_shape(lower);
  ASSERT_TRUE(above.ok() && below.ok());
  EXPECT_NEAR(kernel_volume_mm3(*above), kernel_volume_mm3(*below), 1e-6 * kernel_volume_mm3(*above));
}

}  // namespace
}  // namespace prismwright
