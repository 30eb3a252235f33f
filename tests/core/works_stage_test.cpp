#include <gtest/gtest.h>

#include "core/works/stage.h"

namespace prismwright {
namespace {

TEST(Stages, EveryNameReadsBackToItsStage) {
  for (const Stage stage : kStages) EXPECT_EQ(find_stage(name_of(stage)), stage) << name_of(stage);
}

TEST(Stages, AStrangeNameIsNoStage) {
  EXPECT_FALSE(find_stage("gilded"));
  EXPECT_FALSE(find_stage("Cast"));
  EXPECT_FALSE(find_stage(""));
}

TEST(Stages, TheOrderOfTheWorkRunsFromDrawnToGlazed) {
  std::string walk;
  for (std::optional<Stage> stage = Stage::drawn; stage; stage = next_stage(*stage))
    walk += std::string(name_of(*stage)) + " ";
  EXPECT_EQ(walk, "drawn mastered moulded cast annealed polished proved glazed ");
}

TEST(Stages, NothingFollowsScrapped) { EXPECT_FALSE(next_stage(Stage::scrapped)); }

}  // namespace
}  // namespace prismwright
