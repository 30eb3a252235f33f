#include <gtest/gtest.h>

#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopLoc_Location.hxx>
#include <TopoDS.hxx>
#include <cmath>
#include <iostream>
#include <limits>
#include <optional>

#include "core/frame/setting_check.h"
#include "geometry/solid_gap.h"
#include "tests/support/random_frame.h"

// The bench prismwright_random_frame_figures looks at many more; they take about a second each.
#ifndef RANDOM_FRAMES
#define RANDOM_FRAMES 5
#endif

namespace prismwright {
namespace {

constexpr double kClash_mm = 0.05;
constexpr double kShort_mm = 0.02;
constexpr double kHair_mm = 1e-3;

bool is_near(double a_mm, double b_mm) { return std::abs(a_mm - b_mm) < 1e-3; }

const Clearance* between(const std::vector<Clearance>& all, const Clearance& wanted) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Clearance& c) {
    return c.first == wanted.first && c.second == wanted.second;
  });
  return found == all.end() ? nullptr : &*found;
}

bool is_inside(const TopoDS_Shape& shape, const gp_Pnt& place) {
  for (TopExp_Explorer solids(shape, TopAbs_SOLID); solids.More(); solids.Next()) {
    BRepClass3d_SolidClassifier classifier(solids.Current());
    classifier.Perform(place, 1e-7);
    if (classifier.State() == TopAbs_IN) return true;
  }
  return false;
}

// How deep a place lies below the surface of a solid that holds it.
double depth_in(const TopoDS_Shape& shape, const gp_Pnt& place) {
  const TopoDS_Shape vertex = BRepBuilderAPI_MakeVertex(place);
  double least = std::numeric_limits<double>::max();
  for (TopExp_Explorer faces(shape, TopAbs_FACE); faces.More(); faces.Next())
    least = std::min(least, BRepExtrema_DistShapeShape(vertex, faces.Current()).Value());
  return least;
}

double away_from(const TopoDS_Shape& shape, const gp_Pnt& place) {
  return BRepExtrema_DistShapeShape(BRepBuilderAPI_MakeVertex(place), shape).Value();
}

// The frame without all else than the two parts of one clearance, so that it is soon looked at again.
RandomFrame of_two(const RandomFrame& whole, const Clearance& pair) {
  RandomFrame two = whole;
  const auto is_other = [&](const auto& body) { return body.mark != pair.first && body.mark != pair.second; };
  std::erase_if(two.bodies.prisms, is_other);
  std::erase_if(two.metal, is_other);
  return two;
}

// Pushes the first part of the pair towards the second, along the line of their nearest places.
gp_Vec push(RandomFrame& frame, const Clearance& pair, double by_mm) {
  const gp_Vec along = gp_Vec(pair.first_point, pair.second_point) / pair.gap_mm;
  gp_Trsf move;
  move.SetTranslation(along * by_mm);
  TopoDS_Shape& shape = frame.shape(pair.first);
  shape = shape.Moved(TopLoc_Location(move));
  return along;
}

std::optional<Clearance> drawn_pair(const std::vector<Clearance>& all, Lot& lot, double needed_over_mm) {
  std::vector<Clearance> fit;
  for (const Clearance& c : all) {
    const bool apart = c.gap_mm > 0.02 && c.gap_mm < 8 && c.kind != ClearanceKind::surroundings;
    if (apart && c.gap_mm > c.needed_mm && c.needed_mm > needed_over_mm) fit.push_back(c);
  }
  if (fit.empty()) return std::nullopt;
  return fit[static_cast<std::size_t>(lot.whole(0, static_cast<int>(fit.size()) - 1))];
}

class RandomFrames : public ::testing::TestWithParam<int> {
 protected:
  static constexpr int kFrames = RANDOM_FRAMES;
  static constexpr int kLooks = 3;

  // What is told of the frame as it was planned. Places of both solids that lie so near prove a tight gap; the
  // kernel's common volume proves a clash.
  static void expect_nothing_invented(RandomFrame& frame, const std::vector<Clearance>& all) {
    int looked_at = 0;
    for (const Clearance& c : all) {
      if (c.verdict == Verdict::clear || c.kind == ClearanceKind::surroundings || ++looked_at > kLooks)
        continue;
      const std::string who = c.first + " " + c.second;
      if (c.verdict == Verdict::clash) {
        EXPECT_GT(common_volume_mm3(frame.shape(c.first), frame.shape(c.second)), 0) << who;
        continue;
      }
      EXPECT_LT(c.first_point.Distance(c.second_point), c.needed_mm) << who;
      EXPECT_LT(away_from(frame.shape(c.first), c.first_point), 1e-3) << who;
      EXPECT_LT(away_from(frame.shape(c.second), c.second_point), 1e-3) << who;
    }
  }

  static void expect_same_as_setting(const RandomFrame& frame, const std::vector<Clearance>& all) {
    for (const SettingCheck& check : check_setting(frame.plan, frame.frame)) {
      for (const Clearance& c : all) {
        if (c.first != check.mark || c.second != check.rib) continue;
        const bool at_end = is_near(c.needed_mm, check.end.needed_mm());
        EXPECT_TRUE(at_end || is_near(c.needed_mm, check.sides.needed_mm())) << check.mark << " " << check.rib;
        // A seat right through the rib has no floor: what the end lacks there, it lacks to what stands beyond.
        if (frame.plan.values.frame.pocket_mm >= frame.plan.values.frame.rib_mm) continue;
        EXPECT_TRUE(check.end_enough || c.verdict != Verdict::clear) << check.mark << " " << check.rib;
      }
    }
  }

  // Whether they overlap is told by a place between the two nearest ones alone.
  static bool plant_clash(const RandomFrame& frame, const Clearance& pair) {
    RandomFrame two = of_two(frame, pair);
    const gp_Vec along = push(two, pair, pair.gap_mm + kClash_mm);
    const gp_Pnt between_them = pair.second_point.Translated(along * (kClash_mm / 2));
    if (!is_inside(two.shape(pair.first), between_them) || !is_inside(two.shape(pair.second), between_them))
      return false;
    const auto all = two.clearances();
    const Clearance* found = between(all, pair);
    EXPECT_TRUE(found) << pair.first << " " << pair.second;
    if (!found) return true;
    EXPECT_EQ(found->gap_mm, 0) << pair.first << " " << pair.second;
    // A keen corner that has sunk in has less in common than makes a clash.
    const Verdict expected = found->overlap_mm3 > 1e-3 ? Verdict::clash : Verdict::tight;
    EXPECT_EQ(found->verdict, expected) << pair.first << " " << pair.second << " " << found->overlap_mm3;
    // An edge may meet the edge of an opening that was cut to a prism like it: they share no more than a hair.
    const bool hair = depth_in(two.shape(pair.first), between_them) < kHair_mm &&
                      depth_in(two.shape(pair.second), between_them) < kHair_mm;
    EXPECT_TRUE(hair || found->overlap_mm3 > 0) << pair.first << " " << pair.second;
    return true;
  }

  // A push by d brings them nearer by d and no more: the gap is then known.
  static void plant_tight(const RandomFrame& frame, const Clearance& pair) {
    RandomFrame two = of_two(frame, pair);
    const double left_mm = pair.needed_mm - kShort_mm;
    push(two, pair, pair.gap_mm - left_mm);
    const auto all = two.clearances();
    const Clearance* found = between(all, pair);
    ASSERT_TRUE(found) << pair.first << " " << pair.second;
    EXPECT_EQ(found->verdict, Verdict::tight) << pair.first << " " << pair.second << " " << found->gap_mm;
    // Of a prism in its pocket the other of end and sides may be told: it then lacks more.
    const bool other = !is_near(found->needed_mm, pair.needed_mm);
    EXPECT_TRUE(other || is_near(found->gap_mm, left_mm)) << found->gap_mm << " not " << left_mm;
  }
};

TEST_P(RandomFrames, HaveEveryPlantedClashAndTightGapFoundAndNoneInvented) {
  Refusals refusals;
  int clashes = 0;
  int tight = 0;
  for (int i = 0; i < kFrames; ++i) {
    SCOPED_TRACE("frame " + std::to_string(i));
    Lot lot(lot_seed(GetParam(), i));
    RandomFrame frame = random_frame(lot, refusals);
    const auto all = frame.clearances();
    expect_nothing_invented(frame, all);
    expect_same_as_setting(frame, all);
    if (const auto pair = drawn_pair(all, lot, -1)) clashes += plant_clash(frame, *pair) ? 1 : 0;
    if (const auto pair = drawn_pair(all, lot, kShort_mm)) {
      plant_tight(frame, *pair);
      ++tight;
    }
    if (HasFailure()) break;
  }
  if (kFrames > 10)
    std::cout << kFrames << " frames; planted and found: " << clashes << " overlaps of " << kClash_mm << " mm, "
              << tight << " tight gaps\n";
  EXPECT_GT(clashes, 0);
  EXPECT_GT(tight, 0);
}

INSTANTIATE_TEST_SUITE_P(ByTheSeed, RandomFrames, ::testing::Values(1));

}  // namespace
}  // namespace prismwright
