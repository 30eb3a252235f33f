#include <gtest/gtest.h>

#include "core/frame/frame_verdict.h"

namespace prismwright {
namespace {

TEST(FrameVerdict, IsNotWellWhereBrassIsThinOrAPartHasNoRoom) {
  using Kind = FrameWarning::Kind;
  FramePlan frame;
  EXPECT_EQ(warning_of_not_well(frame), nullptr);
  for (const Kind kind : {Kind::small_landing, Kind::sharp_inside, Kind::pocket_cut_short, Kind::other})
    frame.warnings.push_back({kind, "", 0, 0, "Look at it."});
  EXPECT_EQ(warning_of_not_well(frame), nullptr);
  for (const Kind kind : {Kind::thin_brass, Kind::no_room}) {
    FramePlan bad = frame;
    bad.warnings.push_back({kind, "P01", 0, 0, "Mend it."});
    ASSERT_NE(warning_of_not_well(bad), nullptr);
    EXPECT_EQ(warning_of_not_well(bad)->sentence, "Mend it.");
  }
}

}  // namespace
}  // namespace prismwright
