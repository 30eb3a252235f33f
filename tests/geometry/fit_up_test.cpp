#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "core/frame/pockets.h"
#include "geometry/fit_up.h"

namespace prismwright {
namespace {

using ::testing::HasSubstr;

PlateOutline rectangle(double left, double low, double right, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}};
}

Profile polygon(const std::vector<SectionPoint>& corners) {
  Profile profile;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    profile.faces.push_back(straight_face(FaceRole::land, corners[i], corners[(i + 1) % corners.size()]));
  }
  return profile;
}

// One panel of 60 deg whose prisms are turned about the lens axis; ribs 5 mm thick with pockets 3 mm deep.
class HandMadePanel : public ::testing::Test {
 protected:
  HandMadePanel() {
    plan.panels = {{1, 0, -30, 30}};
    plan.section.input.settings.gap_mm = 0.5;
    for (const Side side : {Side::anticlockwise, Side::clockwise}) {
      RibPlan rib;
      rib.mark = side == Side::anticlockwise ? "P01-rib-left" : "P01-rib-right";
      rib.side = side;
      rib.azimuth_deg = side == Side::anticlockwise ? 30 : -30;
      rib.outline = rectangle(80, -20, 140, 80);
      rib.edge = straight_chain(rib.outline);
      frame.ribs.push_back(rib);
    }
  }

  void add_prism(const char* mark, const std::vector<SectionPoint>& corners) {
    PlannedPrism prism;
    prism.mark = mark;
    prism.kind = ZoneKind::upper;
    prism.turning = TurningAxis::lens;
    prism.trim = {-30, 30, 2.5, Half::whole, 0, std::nullopt};
    prism.profile = polygon(corners);
    prism.shape_key = mark;
    plan.prisms.push_back(prism);
  }

  void add_pocket(int rib, const PlateOutline& outline) {
    frame.ribs[rib].pockets.push_back({outline, {}, straight_chain(outline)});
  }
  void add_pockets(const PlateOutline& outline) {
    add_pocket(0, outline);
    add_pocket(1, outline);
  }

  [[nodiscard]] PanelFit fit() const { return fit_up(plan, frame)->front(); }

  LensPlan plan;
  FramePlan frame;
};

TEST_F(HandMadePanel, OfBlocksOverEachOtherCanBeAssembled) {
  add_prism("P01-U02", {{100, 20}, {120, 20}, {120, 30}, {100, 30}});
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  add_pockets(rectangle(99, 8, 121, 31));
  const PanelFit fit = this->fit();
  EXPECT_TRUE(fit.cannot.empty());
  ASSERT_EQ(fit.steps.size(), 4u);
  EXPECT_EQ(fit.first_rib, "P01-rib-left");
  EXPECT_EQ(fit.steps.front().words, "Lay P01-rib-left down with its pockets upward.");
  EXPECT_EQ(fit.steps[1].way, FitWay::from_sea_then_in);
  // The end stands 0.5 mm over the floor of a pocket 3 mm deep.
  EXPECT_NEAR(fit.steps[1].into_pocket_mm, 2.5, 1e-6);
  EXPECT_EQ(fit.steps.back().marks, std::vector<std::string>{"P01-rib-right"});
  EXPECT_TRUE(fit.open_seats.empty()) << "both ribs hold the ends";
}

// The upper one has a lip that reaches down outside the lower: the lower cannot leave seaward before it.
TEST_F(HandMadePanel, IsToldInTheOrderThatALipAsksFor) {
  add_prism("P01-U02", {{100, 20}, {120, 20}, {120, 10}, {125, 10}, {125, 30}, {100, 30}});
  add_prism("P01-U01", {{90, 9}, {119, 9}, {119, 19}, {90, 19}});
  add_pockets(rectangle(89, 8, 126, 31));
  FlatPart wall;  // a rail at the lamp side, so that the lower one cannot go that way
  wall.mark = "P01-rail-bottom";
  wall.kind = PartKind::rail;
  wall.panel = 1;
  wall.thickness_mm = 40;
  wall.outline = straight_chain({{70, -20}, {86, -20}, {86, 20}, {70, 20}});
  wall.place = {{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  frame.flats = {wall};
  const PanelFit fit = this->fit();
  for (const FitBlocked& blocked : fit.cannot) ADD_FAILURE() << blocked.words;
  ASSERT_EQ(fit.steps.size(), 5u);
  EXPECT_EQ(fit.steps[1].way, FitWay::screwed);
  EXPECT_EQ(fit.steps[2].marks.front(), "P01-U01") << "the lower one must be in before the lip closes it";
  EXPECT_EQ(fit.steps[3].marks.front(), "P01-U02");
}

// A tongue in a channel with lips, curved about the lens axis: no straight way parts them, but one slides along
// the other from the open side.
TEST_F(HandMadePanel, TurnsATongueIntoItsChannelRoundTheLensAxis) {
  add_prism("P01-U02", {{100, 20},
                        {106, 20},
                        {106, 10},
                        {102, 10},
                        {102, 4},
                        {118, 4},
                        {118, 10},
                        {114, 10},
                        {114, 20},
                        {120, 20},
                        {120, 30},
                        {100, 30}});
  add_prism("P01-U01", {{99, -4},
                        {121, -4},
                        {121, 14},
                        {115, 14},
                        {115, 11},
                        {119, 11},
                        {119, 3},
                        {101, 3},
                        {101, 11},
                        {105, 11},
                        {105, 14},
                        {99, 14}});
  add_pockets(rectangle(98, -6, 122, 31));
  const PanelFit fit = this->fit();
  EXPECT_TRUE(fit.cannot.empty());
  ASSERT_EQ(fit.steps.size(), 4u);
  EXPECT_EQ(fit.steps[2].way, FitWay::round_the_axis);
  EXPECT_THAT(fit.steps[2].words, HasSubstr("round the lens axis, from where P01-rib-right is to stand"));
}

// The same about the panel's axis, in pockets that follow the ends closely: about that axis the ends would have
// to rise 2.8 mm in pockets with 0.5 mm of room (at z 53 of radius 80 they run 53 : 60 across and up).
TEST_F(HandMadePanel, FlagsAnUndercutThatNothingCanBeBroughtInto) {
  add_prism("P01-U02", {{100, 80},
                        {106, 80},
                        {106, 70},
                        {102, 70},
                        {102, 64},
                        {118, 64},
                        {118, 70},
                        {114, 70},
                        {114, 80},
                        {120, 80},
                        {120, 90},
                        {100, 90}});
  add_prism("P01-U01", {{99, 56},
                        {121, 56},
                        {121, 74},
                        {115, 74},
                        {115, 71},
                        {119, 71},
                        {119, 63},
                        {101, 63},
                        {101, 71},
                        {105, 71},
                        {105, 74},
                        {99, 74}});
  FrameSettings frame_settings;
  for (PlannedPrism& prism : plan.prisms) {
    prism.turning = TurningAxis::panel;
    prism.trim.half = Half::upper;
  }
  for (RibPlan& rib : frame.ribs) {
    rib.outline = rectangle(80, -20, 190, 120);
    rib.edge = straight_chain(rib.outline);
    std::vector<const PlannedPrism*> prisms;
    std::vector<PlateRegion> rooms;
    for (const PlannedPrism& prism : plan.prisms) {
      prisms.push_back(&prism);
      rooms.push_back(pocket_room(prism, rib.side, frame_settings));
    }
    rib.pockets = united_pockets(prisms, rooms, frame_settings);
    for (Pocket& pocket : rib.pockets) fit_edge(pocket, frame_settings);
  }
  add_prism("P01-U03", {{100, 100}, {120, 100}, {120, 110}, {100, 110}});
  add_pockets(rectangle(99, 99, 121, 111));
  const PanelFit fit = this->fit();
  ASSERT_EQ(fit.cannot.size(), 2u);
  std::map<std::string, std::string> by;
  for (const FitBlocked& blocked : fit.cannot) by[blocked.marks.front()] = blocked.blocked_by;
  EXPECT_EQ(by["P01-U01"], "P01-U02");
  EXPECT_EQ(by["P01-U02"], "P01-U01");
  for (const FitBlocked& blocked : fit.cannot) {
    EXPECT_THAT(blocked.words, HasSubstr("cannot go in"));
    EXPECT_NEAR(blocked.where.x, 110, 15);
    EXPECT_NEAR(std::hypot(blocked.where.y, blocked.where.z), 70, 20);
    EXPECT_EQ(blocked.deep_mm, 0);
  }
  EXPECT_EQ(fit.steps.size(), 3u) << "the third goes in all the same";
}

// The same undercut with straight rings of great radius goes together on the bench, end to end, and then in as
// one.
TEST_F(HandMadePanel, FlagsASecondRibThatCannotGoOn) {
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  add_pocket(0, rectangle(99, 8, 121, 20));
  add_pocket(1, rectangle(99, 8, 115, 20));
  const PanelFit fit = this->fit();
  ASSERT_EQ(fit.cannot.size(), 1u);
  EXPECT_EQ(fit.cannot.front().marks.front(), "P01-rib-right");
  EXPECT_EQ(fit.cannot.front().blocked_by, "P01-U01");
  EXPECT_THAT(fit.cannot.front().words, HasSubstr("cannot go on"));
}

// 25 mm inside the side plane the ring stands at sqrt(100^2 - 25^2) = 96.8: pockets cut to its end alone hold
// it.
TEST_F(HandMadePanel, FlagsAPrismInDeepPocketsThatFollowItsEndAlone) {
  for (RibPlan& rib : frame.ribs) {
    rib.thickness_mm = 25;
    rib.pocket_mm = 23;
  }
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  add_pockets(rectangle(99, 8, 121, 20));
  const PanelFit fit = this->fit();
  ASSERT_FALSE(fit.cannot.empty());
  EXPECT_EQ(fit.cannot.front().marks.front(), "P01-U01");
  EXPECT_EQ(fit.cannot.front().blocked_by, fit.first_rib);
}

// The prism must come 22.5 mm off the rib, and cross ribs stand before and behind it: one goes on after it.
TEST_F(HandMadePanel, PutsACrossRibOnAfterThePrismThatItWouldHoldUp) {
  for (RibPlan& rib : frame.ribs) {
    rib.thickness_mm = 25;
    rib.pocket_mm = 23;
  }
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  add_pockets(rectangle(96, 8, 121, 20));
  FlatPart before;
  before.mark = "P01-upper-rib";
  before.kind = PartKind::cross_rib;
  before.panel = 1;
  before.thickness_mm = 30;
  before.outline = straight_chain({{122, -30}, {135, -30}, {135, 30}, {122, 30}});
  FlatPart behind = before;
  behind.mark = "P01-lower-rib";
  behind.outline = straight_chain({{70, -20}, {90, -20}, {90, 20}, {70, 20}});
  frame.flats = {before, behind};
  const PanelFit fit = this->fit();
  for (const FitBlocked& blocked : fit.cannot) ADD_FAILURE() << blocked.words;
  ASSERT_EQ(fit.steps.size(), 5u);
  const auto prism = std::find_if(fit.steps.begin(), fit.steps.end(),
                                  [](const FitStep& step) { return step.marks.front() == "P01-U01"; });
  EXPECT_GE(std::count_if(prism, fit.steps.end(), [](const FitStep& s) { return s.way == FitWay::screwed; }),
            1);
}

TEST_F(HandMadePanel, TellsOfBrassThatStandsInAPrism) {
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  add_pockets(rectangle(99, 8, 121, 20));
  FlatPart plate;
  plate.mark = "P01-upper-rib";
  plate.kind = PartKind::cross_rib;
  plate.panel = 1;
  plate.thickness_mm = 5;
  plate.outline = straight_chain({{90, -20}, {130, -20}, {130, 20}, {90, 20}});
  // 0.05 mm into the prism; 0.01 mm would count as touching.
  plate.place.origin.z = 18.95;
  frame.flats = {plate};
  ASSERT_EQ(fit().cannot.size(), 1u);
  EXPECT_NEAR(fit().cannot.front().deep_mm, 0.05, 1e-6);
  EXPECT_EQ(
      fit().cannot.front().words,
      "P01-U01 cannot go in: P01-upper-rib stands at least 0.05 mm deep where it belongs. Make room there.");
  frame.flats[0].place.origin.z = 18.99;
  EXPECT_TRUE(fit().cannot.empty());
}

TEST_F(HandMadePanel, TellsOfASeatThatIsOpenToTheSea) {
  add_prism("P01-U01", {{100, 9}, {120, 9}, {120, 19}, {100, 19}});
  for (RibPlan& rib : frame.ribs) {
    // The brass ends where the pocket would: a notch open seaward.
    rib.outline = {{80, -20}, {140, -20}, {140, 8}, {99, 8}, {99, 20}, {140, 20}, {140, 80}, {80, 80}};
    rib.edge = straight_chain(rib.outline);
  }
  const PanelFit fit = this->fit();
  ASSERT_EQ(fit.open_seats.size(), 1u);
  EXPECT_EQ(fit.open_seats.front().mark, "P01-U01");
  EXPECT_TRUE(fit.open_seats.front().from_sea);
  EXPECT_FALSE(fit.open_seats.front().from_lamp);
}

}  // namespace
}  // namespace prismwright
