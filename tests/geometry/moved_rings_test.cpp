#include <gtest/gtest.h>

#include <TopLoc_Location.hxx>

#include "core/lens/quantities.h"
#include "geometry/clearances.h"
#include "geometry/solid_gap.h"

namespace prismwright {
namespace {

// Whole rings with flat inner faces: moved a hair from the axis that they share, their flat faces' round rims
// are what the gap hangs on. Chords of those rims would tell some hundredths of a mm too little.
TEST(MovedRings, KeepTheGapThatTheKernelTells) {
  LensPlan plan = plan_lens(starting_values("4", Work::bullseye, 4)).value();
  std::erase_if(plan.prisms, [](const PlannedPrism& prism) {
    return prism.mark != "P01-C" && prism.mark != "P01-R1" && prism.mark != "P01-R2";
  });
  ASSERT_EQ(plan.prisms.size(), 3u);
  LensBodies bodies = BodyShop().make(plan).value();
  gp_Trsf move;
  move.SetTranslation(gp_Vec(0.02, 0.01, 0.03));
  PrismBody& moved = bodies.prisms[1];
  moved.shape = moved.shape.Moved(TopLoc_Location(move));
  const auto found = find_clearances(plan, bodies, {}, {});
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->size(), 2u);
  for (const Clearance& pair : *found) {
    const double gap = gap_between(bodies.find(pair.first)->shape, bodies.find(pair.second)->shape).gap_mm;
    EXPECT_NEAR(pair.gap_mm, gap, 5e-4) << pair.first << " " << pair.second;
    EXPECT_GT(gap, 0.1) << "not worth comparing";
  }
}

}  // namespace
}  // namespace prismwright
