#include <gmock/gmock.h>

#include <cmath>

#include "tests/support/batch_desk.h"

namespace prismwright {
namespace {

using testing::HasSubstr;

/// A small belt lens whose second panel is a door, in a lantern that the door strikes before it is wide open.
class ClearancesDoor : public BatchDesk {
 protected:
  void SetUp() override {
    BatchDesk::SetUp();
    book_ = make_small_belt({"section.upper_to_deg=15", "frame.door_panel=2", "frame.lantern_radius_mm=200",
                             "frame.room_round_mm=1"});
  }
  std::string book_;
};

TEST_F(ClearancesDoor, TellsWhereTheDoorStrikesAndThatItDoesNotOpenEnough) {
  const Answer answer = ask({"clearances", book_, "--door", "--json", "--kind", "prism-prism"});
  EXPECT_EQ(answer.code, 1);
  const auto door = answer.json().at("door");
  EXPECT_EQ(door.at("opens_enough"), false);
  EXPECT_EQ(door.at("shut_enough"), true);
  EXPECT_EQ(door.at("least_mm"), 0);
  EXPECT_EQ(door.at("second"), "lantern-glazing");
  EXPECT_THAT(door.at("first").get<std::string>(), testing::StartsWith("P02-"));
  const double free = door.at("free_deg");
  EXPECT_GT(free, 1);
  EXPECT_LT(free, 90);
  EXPECT_EQ(door.at("least_at_deg"), free);
  const auto& last = door.at("steps").back();
  EXPECT_EQ(last.at("angle_deg"), free);
  const auto& place = last.at("first_point_mm");
  EXPECT_NEAR(std::hypot(place[0].get<double>(), place[1].get<double>()), 200, 0.01) << "on the glazing";
  double before = -1;
  for (const auto& step : door.at("steps")) {
    EXPECT_GT(step.at("angle_deg").get<double>(), before);
    before = step.at("angle_deg");
  }
}

TEST_F(ClearancesDoor, IsWellWhereNoMoreIsAskedForThanTheDoorOpens) {
  ASSERT_EQ(ask({"set", book_, "frame.door_open_deg=5"}).code, 0);
  const Answer answer = ask({"clearances", book_, "--door", "--tightest", "1"});
  EXPECT_EQ(answer.code, 0) << answer.err;
  EXPECT_THAT(answer.out, HasSubstr("door deg"));
  EXPECT_THAT(answer.out, HasSubstr("The door opens freely to "));
  EXPECT_THAT(answer.out, HasSubstr(" deg; 5 deg are asked for.\n"));
  EXPECT_THAT(answer.out, HasSubstr("Least room on its way: 0.000 mm at "));
  EXPECT_THAT(answer.out, HasSubstr(" to lantern-glazing.\n"));
}

}  // namespace
}  // namespace prismwright
