#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/angle.h"
#include "core/frame/corner_relief.h"
#include "core/frame/door_places.h"
#include "core/frame/frame_heights.h"
#include "core/frame/landings.h"
#include "core/frame/needed_gap.h"
#include "core/frame/plate_step.h"
#include "core/frame/pockets.h"
#include "core/frame/rib_part.h"
#include "core/frame/rib_shape.h"
#include "core/frame/thin_brass.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

LensPlan planned(
    Work work, void (*change)(LensValues&) = [](LensValues&) {}) {
  LensValues values = starting_values("4", work, 8);
  change(values);
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok());
  return plan.value();
}

RibShape shape_of(const LensPlan& plan, int panel, Side side) {
  RibTask task{plan.panels[static_cast<std::size_t>(panel - 1)], side, {}};
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel == panel) task.prisms.push_back(&prism);
  }
  const auto heights = frame_heights(plan);
  RibShape shape = shaped_rib(task, plan, heights.value());
  shape.rib.side = side;
  shape.rib.panel = panel;
  shape.rib.azimuth_deg = side == Side::clockwise ? task.place.from_deg : task.place.to_deg;
  return shape;
}

// Where the circle that a profile point turns in meets the plane `depth` inside the side plane: places (u, v),
// written out from the circle itself, C + |z| (cos t Y + sin t Z), not from the code's own map.
std::vector<PlatePoint> ends_of(const PlannedPrism& prism, Side side, SectionPoint p, double depth) {
  if (prism.turning == TurningAxis::lens) return {{std::sqrt(p.r * p.r - depth * depth), p.z}};
  const double s =
      radians(side == Side::clockwise ? prism.trim.clockwise_side_deg : prism.trim.anticlockwise_side_deg);
  const double inward = side == Side::clockwise ? 1 : -1;
  const double normal_x = -inward * std::sin(s);
  const double normal_y = inward * std::cos(s);
  const double reach = (depth - p.r * normal_x) / (normal_y * std::abs(p.z));
  if (std::abs(reach) >= 1) return {};
  const double t = std::acos(reach);
  const double y = std::abs(p.z) * std::cos(t);
  const double up = std::abs(p.z) * std::sin(t) * (prism.trim.half == Half::lower ? -1 : 1);
  if (std::abs(up) < prism.trim.half_gap_mm) return {};
  const double u = p.r * std::cos(s) + y * std::sin(s);
  std::vector<PlatePoint> places{{u, up}};
  if (prism.trim.half == Half::whole) places.push_back({u, -up});
  return places;
}

// Least distance of one face of a prism from the wall of its pocket, within the rib and before it.
double least_gap(const PlannedPrism& prism, const Face& face, const RibPlan& rib, const Pocket& pocket,
                 double gap) {
  double least = std::numeric_limits<double>::max();
  const auto points = points_along(face, 0.001);
  for (int k = 0; k <= 12; ++k) {
    const double over = k < 6 ? 0 : gap * (k - 6) / 6;
    const double from = prism.trim.set_back_mm;
    const double depth = k < 6 ? from + (rib.thickness_mm - from) * k / 5 : rib.thickness_mm + over;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const int parts = std::max(1, static_cast<int>(std::ceil(distance(points[i], points[i + 1]) / 0.4)));
      for (int part = 0; part <= parts; ++part) {
        const SectionPoint p = between(points[i], points[i + 1], static_cast<double>(part) / parts);
        for (const PlatePoint place : ends_of(prism, rib.side, p, depth)) {
          for (const PlateStep& step : pocket.edge) {
            least = std::min(least, std::hypot(distance_to(step, place), over));
          }
        }
      }
    }
  }
  return least;
}

class PocketGap : public ::testing::TestWithParam<Work> {};

TEST_P(PocketGap, IsTheSettingGapOnEverySideOfAPrismInAPocketOfItsOwn) {
  const LensPlan plan = planned(GetParam());
  const RibPlan rib = shape_of(plan, 1, Side::anticlockwise).rib;
  int sides = 0;
  for (const Pocket& pocket : rib.pockets) {
    if (pocket.marks.size() != 1) continue;
    const PlannedPrism& prism = *plan.find(pocket.marks.front());
    for (const Face& face : prism.profile.faces) {
      if (++sides % 3 != 0) continue;
      EXPECT_NEAR(least_gap(prism, face, rib, pocket, 0.5), 0.5, 0.02)
          << prism.mark << " " << name_of(face.role);
    }
  }
  EXPECT_GT(sides, 20);
}

TEST_P(PocketGap, IsNowhereLessInAPocketOfManyPrisms) {
  const LensPlan plan = planned(GetParam());
  const RibPlan rib = shape_of(plan, 1, Side::clockwise).rib;
  int faces = 0;
  for (const Pocket& pocket : rib.pockets) {
    if (pocket.marks.size() < 2) continue;
    for (const std::string& mark : pocket.marks) {
      const PlannedPrism& prism = *plan.find(mark);
      for (const FaceRole role : {FaceRole::outer, FaceRole::exit}) {
        const Face* face = prism.profile.find(role);
        if (!face || ++faces % 4 != 0) continue;
        EXPECT_GT(least_gap(prism, *face, rib, pocket, 0.5), 0.48) << mark;
      }
    }
  }
  EXPECT_GT(faces, 5);
}

TEST_P(PocketGap, LeavesNoInsideCornerKeenerThanTheCutter) {
  for (const double radius : {0.5, 0.8}) {
    LensValues values = starting_values("4", GetParam(), 8);
    values.frame.inside_radius_mm = radius;
    const LensPlan plan = plan_lens(values).value();
    const RibShape shape = shape_of(plan, 1, Side::anticlockwise);
    for (const Pocket& pocket : shape.rib.pockets) {
      const double least = least_inside_radius_mm(pocket.edge, CutSide::inside_of_chain);
      if (radius <= values.frame.setting_gap_mm) {
        EXPECT_GE(least, radius - 1e-4) << pocket.marks.front();
      }
      EXPECT_TRUE(reaches_all(pocket.outline, radius)) << pocket.marks.front();
      EXPECT_EQ(reaches_all(pocket.outline, 3 * radius), false) << "corners are round by no more than needed";
    }
    EXPECT_TRUE(std::none_of(shape.warnings.begin(), shape.warnings.end(),
                             [](const FrameWarning& w) { return w.kind == FrameWarning::Kind::sharp_inside; }));
  }
}

INSTANTIATE_TEST_SUITE_P(BeltAndBullseye, PocketGap, ::testing::Values(Work::belt, Work::bullseye));

// A square of 10 mm and a disc of 1 mm: at each corner the disc is led on by (sqrt 2 - 1) mm.
TEST(CornerRelief, ReachesEveryCornerAndLeavesTheWalls) {
  const PlateOutline square = plate_rectangle({0, 0}, {10, 10});
  const Relieved cut = relieved(square, 1);
  EXPECT_FALSE(cut.too_narrow);
  EXPECT_LT(area_mm2(first_less_second({square}, {cut.outline})), 0.01) << "all of the square is reached";
  const PlateRegion beyond = first_less_second({cut.outline}, {square});
  for (const PlateOutline& part : beyond) {
    for (const PlatePoint p : part) {
      const double u = std::min(std::abs(p.u), std::abs(p.u - 10));
      const double v = std::min(std::abs(p.v), std::abs(p.v - 10));
      EXPECT_LT(std::max(u, v), 2) << "reliefs stay at the corners";
    }
  }
  // What a disc of 0.99 mm can reach of it is all of it.
  const PlateRegion open = grown(grown({cut.outline}, -0.99, Corner::round, 0.001), 0.99, Corner::round, 0.001);
  EXPECT_LT(area_mm2(first_less_second({cut.outline}, open)), 0.02);
}

TEST(CornerRelief, KnowsWhatADiscReaches) {
  EXPECT_FALSE(reaches_all(plate_rectangle({0, 0}, {10, 10}), 0.5));
  EXPECT_TRUE(reaches_all(flattened(circle_chain({0, 0}, 2), 0.001), 1.9));
  EXPECT_FALSE(reaches_all(flattened(circle_chain({0, 0}, 2), 0.001), 2.1));
}

TEST(CornerRelief, SaysWhereTheCutterIsTooWide) {
  EXPECT_TRUE(relieved(plate_rectangle({0, 0}, {10, 1}), 1).too_narrow);
  EXPECT_FALSE(relieved(plate_rectangle({0, 0}, {10, 3}), 1).too_narrow);
}

TEST(ThinStrips, GoWhereTwoPocketsNearlyMeet) {
  const PlateOutline left = plate_rectangle({0, 0}, {10, 10});
  EXPECT_EQ(filled(without_thin_brass({left, plate_rectangle({10.2, 0}, {20, 10})}, 0.3)).size(), 1u);
  EXPECT_EQ(filled(without_thin_brass({left, plate_rectangle({10.4, 0}, {20, 10})}, 0.3)).size(), 2u);
}

TEST(ThinBrass, FindsAPlantedWallAndNoOther) {
  RibPlan rib;
  rib.outline = plate_rectangle({0, 0}, {60, 100});
  for (const auto& [low, high] :
       {std::pair{PlatePoint{10, 10}, PlatePoint{30, 20}}, std::pair{PlatePoint{10, 21.2}, PlatePoint{30, 40}},
        std::pair{PlatePoint{40, 50}, PlatePoint{59.1, 60}}}) {
    rib.pockets.push_back({plate_rectangle(low, high), {"P01-X"}, {}});
  }
  const auto walls = thin_brass(rib, 1.5);
  ASSERT_EQ(walls.size(), 2u);
  EXPECT_NEAR(walls[0].wall_mm, 1.2, 1e-9);
  EXPECT_EQ(walls[0].other_pocket, std::optional<std::size_t>(1));
  EXPECT_NEAR(walls[0].at.v, 20.6, 1e-9);
  EXPECT_NEAR(walls[1].wall_mm, 0.9, 1e-9);
  EXPECT_FALSE(walls[1].other_pocket.has_value());
  EXPECT_TRUE(thin_brass(rib, 0.8).empty());
}

TEST(Landings, ReachAsDeepAsThePocketLessTheEndGap) {
  const LensPlan plan = planned(Work::belt);
  RibPlan rib = shape_of(plan, 1, Side::clockwise).rib;
  const auto all = landings_of(rib, plan);
  ASSERT_FALSE(all.empty());
  for (const Landing& landing : all) EXPECT_NEAR(landing.reach_mm, 3 - 0.5, 1e-9) << landing.prism;
  // The lowest prism rests on its exit face and land alone: a bearing, but no wider than its section.
  const auto lowest =
      std::find_if(all.begin(), all.end(), [](const Landing& l) { return l.prism == "P01-U02"; });
  ASSERT_NE(lowest, all.end());
  EXPECT_GT(lowest->width_mm, 5);
  EXPECT_LT(lowest->width_mm, section_extent_mm(plan.find("P01-U02")->profile));
  EXPECT_TRUE(landing_warnings(rib, plan, 1).empty());
  EXPECT_GE(landing_warnings(rib, plan, 2.6).size(), all.size());
}

TEST(DoorRib, StandsBackEndsShortAndHasUprightPads) {
  const LensPlan plan = planned(Work::bullseye, [](LensValues& values) {
    values.frame.door_panel = 3;
    values.frame.door_gap_mm = 0.8;
    values.frame.pocket_mm = 2.5;
  });
  const FrameHeights heights = frame_heights(plan).value();
  const RibPlan door = shape_of(plan, 3, Side::anticlockwise).rib;
  const RibPlan next = shape_of(plan, 4, Side::clockwise).rib;
  EXPECT_EQ(door.set_back_mm, 0.8);
  EXPECT_EQ(next.set_back_mm, 0);
  EXPECT_NEAR(extent_of({door.outline}).high.v, heights.high_v - 0.8, 1e-9);
  EXPECT_NEAR(extent_of({next.outline}).low.v, heights.low_v, 1e-9);
  for (const RibPlan* rib : {&door, &next}) {
    const auto pads = pad_heights(plan, rib == &door ? 3 : 4, rib->side, heights.low_v, heights.high_v);
    ASSERT_EQ(pads.size(), 2u);
    for (const HeightRange pad : pads) {
      const bool upright = std::any_of(rib->edge.begin(), rib->edge.end(), [&](const PlateStep& step) {
        return step.straight() && step.from.u == step.to.u && step.from.v <= pad.low && step.to.v >= pad.high;
      });
      EXPECT_TRUE(upright) << pad.low;
    }
  }
}

TEST(RibPart, IsDrawnFromTheSideOnWhichItsPocketsOpen) {
  const LensPlan plan = planned(Work::bullseye);
  for (const Side side : {Side::clockwise, Side::anticlockwise}) {
    const RibPlan rib = shape_of(plan, 2, side).rib;
    const FlatPart part = rib_part(rib);
    EXPECT_EQ(part.pockets.size(), rib.pockets.size());
    EXPECT_NEAR(signed_area_mm2(part.outline), signed_area_mm2(rib.edge), 1e-6);
    const SpaceFrame& place = part.place;
    EXPECT_NEAR(length(cross(place.first, place.second) - place.third), 0, 1e-12) << "right-handed";
    // A corner of the outline stands in the side plane, u out from the lens axis.
    const PlatePoint drawn = part.outline.front().from;
    const SpacePoint there = place.out_of(SpacePoint{drawn.u, drawn.v, 0});
    const double azimuth = radians(rib.azimuth_deg);
    EXPECT_NEAR(there.x * std::sin(azimuth) - there.y * std::cos(azimuth), 0, 1e-9);
    EXPECT_GT(there.x * std::cos(azimuth) + there.y * std::sin(azimuth), 0);
    // Depth runs into the panel.
    const double middle = radians(plan.panels[1].axis_deg);
    EXPECT_GT(dot(place.third, {std::cos(middle), std::sin(middle), 0}), 0);
  }
}

}  // namespace
}  // namespace prismwright
