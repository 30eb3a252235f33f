#include "geometry/hole_fit.h"

#include <gtest/gtest.h>

#include <TopLoc_Location.hxx>
#include <gp_Ax1.hxx>

#include "core/frame/plate_polygons.h"
#include "geometry/flat_solid.h"
#include "geometry/round_solid.h"

namespace prismwright {
namespace {

FlatPart plate_with(const PlateHole& hole) {
  FlatPart plate;
  plate.thickness_mm = 6;
  plate.outline = straight_chain(plate_rectangle({0, 0}, {40, 30}));
  plate.holes = {hole};
  return plate;
}

PlateHole tapped() {
  PlateHole hole;
  hole.centre = {12, 11};
  hole.diameter_mm = 3;
  return hole;
}

RoundPart screw(double head_mm) {
  RoundPart part;
  part.diameter_mm = 3;
  part.length_mm = 14;
  part.head_mm = head_mm;
  return part;
}

gp_Trsf lifted(double z) {
  gp_Trsf place;
  place.SetTranslation(gp_Vec(12, 11, z));
  return place;
}

TEST(TouchInHole, ScrewInATappedHoleTouchesWithoutCommonVolume) {
  const FlatPart plate = plate_with(tapped());
  const auto touch = touch_in_hole(screw(0), plate, lifted(-4));
  ASSERT_TRUE(touch);
  EXPECT_EQ(touch->gap_mm, 0);
  EXPECT_EQ(touch->overlap_mm3, 0);
  EXPECT_NEAR(touch->first_point.X(), 13.5, 1e-12);
  const SolidGap kernel =
      gap_between(round_solid(screw(0)).Moved(TopLoc_Location(lifted(-4))), flat_solid(plate));
  EXPECT_EQ(kernel.gap_mm, 0);
  EXPECT_NEAR(kernel.overlap_mm3, 0, 1e-6);
}

TEST(TouchInHole, SunkHeadRestsInItsCone) {
  PlateHole hole = tapped();
  hole.diameter_mm = 3.4;
  hole.sink_diameter_mm = 6;
  EXPECT_TRUE(touch_in_hole(screw(6), plate_with(hole), lifted(0)));
  // Raised out of its cone it stands clear of the hole; sunk deeper it would cut into the brass.
  EXPECT_FALSE(touch_in_hole(screw(6), plate_with(hole), lifted(-0.1)));
  EXPECT_FALSE(touch_in_hole(screw(6), plate_with(hole), lifted(0.1)));
}

TEST(TouchInHole, NothingIsSaidOfOtherHoles) {
  PlateHole hole = tapped();
  hole.diameter_mm = 3.2;
  EXPECT_FALSE(touch_in_hole(screw(0), plate_with(hole), lifted(-4))) << "stands clear";
  hole.diameter_mm = 2.9;
  EXPECT_FALSE(touch_in_hole(screw(0), plate_with(hole), lifted(-4))) << "cuts in";
  gp_Trsf aside;
  aside.SetTranslation(gp_Vec(12.001, 11, -4));
  EXPECT_FALSE(touch_in_hole(screw(0), plate_with(tapped()), aside)) << "another axis";
  gp_Trsf tilt;
  tilt.SetRotation(gp_Ax1(gp_Pnt(12, 11, 0), gp_Dir(1, 0, 0)), 0.001);
  EXPECT_FALSE(touch_in_hole(screw(0), plate_with(tapped()), tilt * lifted(-4))) << "leans";
  EXPECT_FALSE(touch_in_hole(screw(0), plate_with(tapped()), lifted(8))) << "above the plate";
}

}  // namespace
}  // namespace prismwright
