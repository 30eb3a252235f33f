#include <gtest/gtest.h>

#include "core/frame/needed_gap.h"

namespace prismwright {
namespace {

// Derived in the project's sources: 300 mm of acrylic in brass over 30 K grow 0.445 mm, half of it at each end.
TEST(NeededGap, IsHalfTheDifferentialGrowth) {
  EXPECT_NEAR(2 * needed_gap_mm(300, "acrylic", 30), 0.4455, 1e-9);
  EXPECT_DOUBLE_EQ(needed_gap_mm(300, "acrylic", 0), 0);
}

// Glass grows less than brass: the room that opens between them on heating closes on cooling.
TEST(NeededGap, CountsForGlassThatGrowsLessThanBrassToo) {
  EXPECT_GT(needed_gap_mm(300, "crown", 30), 0);
  EXPECT_LT(needed_gap_mm(300, "crown", 30), needed_gap_mm(300, "acrylic", 30));
  EXPECT_GT(needed_gap_mm(300, "n-bk7", 30), needed_gap_mm(300, "crown", 30));
}

TEST(SectionExtent, IsTheLongestWayAcross) {
  const Profile profile{{straight_face(FaceRole::joint_lower, {0, 0}, {30, 0}),
                         straight_face(FaceRole::outer, {30, 0}, {30, 40}),
                         straight_face(FaceRole::inner, {30, 40}, {0, 0})}};
  EXPECT_NEAR(section_extent_mm(profile), 50, 1e-9);
}

}  // namespace
}  // namespace prismwright
