#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/base/angle.h"
#include "core/frame/frame_plan.h"
#include "core/frame/nearest_outline.h"
#include "core/frame/prism_end.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"

namespace prismwright {
namespace {

constexpr double kWithin_mm = 0.02;

// Distances from slices of the prism, within the pocket and in front of the rib, to the edge of its pocket.
class RoomInPocket {
 public:
  RoomInPocket(const Pocket& pocket, const PlannedPrism& prism, Side side)
      : pocket_(pocket), walls_({pocket.outline}), prism_(prism), side_(side) {}

  [[nodiscard]] double least_mm(const FrameSettings& frame) const {
    double least = 1e9;
    for (int i = 0; i <= 4; ++i) {
      const double depth = std::lerp(frame.prism_set_back_mm(), frame.rib_mm, i / 4.0);
      least = std::min(least, least_at(depth, 0));
    }
    for (const double angle : {5.0, 17.0, 31.0, 47.0}) {
      const double front = frame.setting_gap_mm * std::sin(radians(angle));
      least = std::min(least, least_at(frame.rib_mm + front, front));
    }
    return least;
  }

 private:
  // What stands `front_mm` before the rib may lean over the edge.
  [[nodiscard]] double least_at(double depth_mm, double front_mm) const {
    double least = 1e9;
    for (const PlateOutline& slice : end_slice(prism_, side_, depth_mm, 0.003)) {
      for (const PlatePoint place : slice) {
        double level = walls_.to(place).away_mm;
        if (!holds(pocket_.outline, place)) level = front_mm > 0 ? 0 : -level;
        least = std::min(least, front_mm > 0 ? std::hypot(level, front_mm) : level);
      }
    }
    return least;
  }

  const Pocket& pocket_;
  NearestOutline walls_;
  const PlannedPrism& prism_;
  Side side_;
};

// In both ribs of the first panel; the others are made alike.
int expect_room(const LensPlan& plan, const std::string& lens) {
  const FramePlan frame = plan_frame(plan);
  const FrameSettings& settings = plan.values.frame;
  int looked_at = 0;
  for (const RibPlan& rib : frame.ribs) {
    if (rib.panel != plan.prisms.front().panel || !frame.notes.empty()) continue;
    for (const Pocket& pocket : rib.pockets) {
      for (const std::string& mark : pocket.marks) {
        EXPECT_GT(RoomInPocket(pocket, *plan.find(mark), rib.side).least_mm(settings),
                  settings.setting_gap_mm - kWithin_mm)
            << lens << " " << mark << " " << rib.mark;
        ++looked_at;
      }
    }
  }
  return looked_at;
}

class StandardLens : public ::testing::TestWithParam<const char*> {};

TEST_P(StandardLens, LeavesEveryPrismItsSettingGap) {
  const LensPlan plan = plan_of(starting_values(GetParam(), Work::bullseye, 8));
  EXPECT_GT(expect_room(plan, GetParam()), 40);
}

// Orders at which outlines cross so keenly that cutters' rounding once left a thorn of brass in a pocket.
INSTANTIATE_TEST_SUITE_P(WhereRoundingLeftThorns, StandardLens, ::testing::Values("1", "2", "6"));

// Rings that meet the level plane with a strong lean end between two slices.
TEST(PocketRoom, IsTheSettingGapAtLeastInRandomLenses) {
  Lot lot(5);
  int looked_at = 0;
  for (int lens = 0; lens < 12;) {
    LensValues values = random_lens(lot);
    values.frame.setting_gap_mm = lot.between(0.1, 1.5);
    const auto plan = plan_lens(values);
    if (!plan) continue;
    looked_at += expect_room(*plan, "lens " + std::to_string(lens++));
  }
  EXPECT_GT(looked_at, 200);
}

}  // namespace
}  // namespace prismwright
