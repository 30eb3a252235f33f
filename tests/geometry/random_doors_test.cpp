#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <optional>

#include "tests/support/random_door.h"
#include "tests/support/swung_door.h"

// The bench prismwright_random_frame_figures looks at many more.
#ifndef RANDOM_DOORS
#define RANDOM_DOORS 1
#endif

namespace prismwright {
namespace {

constexpr double kClash_mm = 0.05;
constexpr double kTouch_mm = 5e-3;  // of a door that is said to be stopped
constexpr double kSame_mm = 1e-3;
constexpr double kEarlier_deg = 0.1;

bool is_inside(const TopoDS_Shape& shape, const gp_Pnt& place) {
  BRepClass3d_SolidClassifier classifier(shape);
  classifier.Perform(place, 1e-7);
  return classifier.State() == TopAbs_IN;
}

// Sunk cones and bores count as brass on the door's way.
bool has_cuts_filled(const FramePlan& frame, const std::string& mark) {
  return std::any_of(frame.flats.begin(), frame.flats.end(), [&](const FlatPart& part) {
    const bool sunk = std::any_of(part.holes.begin(), part.holes.end(), [](const PlateHole& hole) {
      return hole.sink_diameter_mm > hole.diameter_mm;
    });
    return part.mark == mark && (sunk || !part.bores.empty());
  });
}

struct Tally {
  int doors = 0;
  int stopped = 0;
  int narrow = 0;  // the plan warned that they cannot swing out
  int shut_tight = 0;
  int filled = 0;
  int shallow = 0;
  int deep = 0;
  double worst_mm = 0;  // between the program's gap and the kernel's
};

class RandomDoors : public ::testing::TestWithParam<int> {
 protected:
  static constexpr int kDoors = RANDOM_DOORS;
  static constexpr int kLooks = 3;
  static constexpr int kSamples = 4;

  static DoorSweep sweep_of(const RandomFrame& frame) {
    auto sweep = sweep_door(frame.plan, frame.bodies, frame.frame, frame.metal);
    EXPECT_TRUE(sweep.ok()) << (sweep.ok() ? "" : sweep.problem().text);
    if (!sweep || !*sweep) return {};
    return **sweep;
  }

  // Both places told lie on the parts named, with the door at that angle, and are as far apart as was told: the
  // parts are no farther apart, by the kernel.
  void expect_true(const RandomFrame& frame, const SwungDoor& swung, const DoorStep& step) {
    const SwungDoor::Part* first = SwungDoor::find(swung.moving(), step.first);
    const SwungDoor::Part* second = SwungDoor::find(swung.fixed(), step.second);
    ASSERT_TRUE(first && second) << step.first << " " << step.second;
    const std::string who = step.first + " " + step.second + " at " + std::to_string(step.angle_deg);
    EXPECT_NEAR(step.first_point.Distance(step.second_point), step.gap_mm, kTouch_mm) << who;
    const double off_first = SwungDoor::away_mm(step.first_point, swung.at(*first, step.angle_deg));
    const double off_second = SwungDoor::away_mm(step.second_point, second->shape);
    const bool cut = (has_cuts_filled(frame.frame, step.first) && off_first > kSame_mm) ||
                     (has_cuts_filled(frame.frame, step.second) && off_second > kSame_mm);
    tally.filled += cut ? 1 : 0;
    if (cut) return;
    EXPECT_LT(off_first, kSame_mm) << who;
    EXPECT_LT(off_second, kSame_mm) << who;
    tally.worst_mm = std::max({tally.worst_mm, off_first, off_second});
  }

  // Nothing is nearer on the free way than was told: places of the door swung in small steps lie within
  // nothing, and at angles drawn by lot none is nearer than the least.
  static void expect_nothing_missed(const SwungDoor& swung, const DoorSweep& sweep, Lot& lot) {
    const double free = sweep.free_deg - (sweep.free_deg < 180 ? kEarlier_deg : 0);
    if (free < 0) return;
    const auto hit = swung.first_hit(free);
    EXPECT_FALSE(hit) << hit->first << " within " << hit->second << " at " << hit->angle_deg << " before "
                      << sweep.free_deg;
    for (int i = 0; i < kLooks; ++i) {
      const double angle = i == 0 ? 0 : free * std::pow(lot.between(0, 1), 2);
      for (const SwungDoor::Sample& sample : swung.samples_at(angle, kSamples, sweep.least.gap_mm, lot)) {
        EXPECT_GT(sample.away_mm, sweep.least.gap_mm - kDoorGap_mm)
            << sample.first << " " << sample.second << " at " << angle;
      }
    }
  }

  void look_at(const RandomFrame& frame, const DoorSweep& sweep, Lot& lot) {
    const SwungDoor swung(frame);
    ASSERT_FALSE(sweep.steps.empty());
    expect_true(frame, swung, sweep.least);
    expect_true(frame, swung,
                sweep.steps[static_cast<std::size_t>(lot.whole(0, static_cast<int>(sweep.steps.size()) - 1))]);
    expect_nothing_missed(swung, sweep, lot);
    EXPECT_EQ(sweep.shut_enough, sweep.steps.front().gap_mm >= kMetalApart_mm);
    EXPECT_EQ(sweep.opens_enough, sweep.free_deg >= frame.plan.values.frame.door_open_deg - kDoorFree_deg / 2);
  }

  static RandomFrame of_two(RandomFrame frame, const std::string& first, const std::string& second) {
    const auto is_other = [&](const auto& body) { return body.mark != first && body.mark != second; };
    std::erase_if(frame.bodies.prisms, is_other);
    std::erase_if(frame.metal, is_other);
    frame.plan.values.frame.lantern_radius_mm = 0;
    frame.plan.values.frame.changer_radius_mm = 0;
    return frame;
  }

  static void shift(RandomFrame& frame, const std::string& mark, const gp_Vec& by) {
    gp_Trsf move;
    move.SetTranslation(by);
    TopoDS_Shape& shape = frame.shape(mark);
    shape = shape.Moved(TopLoc_Location(move));
  }

  void expect_stopped_by(const RandomFrame& two, double by_deg, Lot& lot) {
    const DoorSweep sweep = sweep_of(two);
    EXPECT_LE(sweep.free_deg, by_deg + 1e-6);
    EXPECT_EQ(sweep.least.gap_mm, 0);
    look_at(two, sweep, lot);
  }

  // What stands still is pushed towards the door where the door comes nearest to it, until they overlap there.
  void plant_shallow(const RandomFrame& frame, const DoorStep& least, Lot& lot) {
    const SwungDoor swung(frame);
    const SwungDoor::Part* first = SwungDoor::find(swung.moving(), least.first);
    const SwungDoor::Part* second = SwungDoor::find(swung.fixed(), least.second);
    if (!first || !second || is_round(least.second) || least.gap_mm < 0.01) return;
    RandomFrame two = of_two(frame, least.first, least.second);
    const gp_Vec along = gp_Vec(least.second_point, least.first_point) / least.gap_mm;
    shift(two, least.second, along * (least.gap_mm + kClash_mm));
    const gp_Pnt between_them = least.first_point.Translated(along * (kClash_mm / 2));
    if (!is_inside(swung.at(*first, least.angle_deg), between_them)) return;
    if (!is_inside(two.shape(least.second), between_them)) return;
    SCOPED_TRACE("pushed " + least.second + " against " + least.first);
    expect_stopped_by(two, least.angle_deg, lot);
    ++tally.shallow;
  }

  // Something that stands still is put where a corner of the door passes.
  void plant_deep(const RandomFrame& frame, double free_deg, Lot& lot) {
    const SwungDoor swung(frame);
    const auto one_of = [&](const std::vector<SwungDoor::Part>& parts) {
      return parts[static_cast<std::size_t>(lot.whole(0, static_cast<int>(parts.size()) - 1))];
    };
    const SwungDoor::Part part = one_of(swung.moving());
    const SwungDoor::Part other = one_of(swung.fixed());
    const double angle = lot.between(0.1, 0.9) * std::min(free_deg, 120.0);
    const gp_Pnt corner =
        part.points[static_cast<std::size_t>(lot.whole(0, static_cast<int>(part.points.size()) - 1))]
            .Transformed(swung.turn(angle));
    const auto within = place_within(other.shape, lot);
    if (is_round(other.mark) || swung.may_touch(part.mark, other.mark) || !within) return;
    RandomFrame two = of_two(frame, part.mark, other.mark);
    shift(two, other.mark, gp_Vec(*within, corner));
    SCOPED_TRACE("put " + other.mark + " into the way of " + part.mark);
    expect_stopped_by(two, angle, lot);
    ++tally.deep;
  }

  static bool is_round(const std::string& mark) { return mark == "lantern-glazing" || mark == "lamp-changer"; }

  static std::optional<gp_Pnt> place_within(const TopoDS_Shape& shape, Lot& lot) {
    Bnd_Box box;
    BRepBndLib::Add(shape, box, false);
    const gp_Pnt low = box.CornerMin();
    const gp_Pnt high = box.CornerMax();
    for (int tries = 0; tries < 300; ++tries) {
      const gp_Pnt place(lot.between(low.X(), high.X()), lot.between(low.Y(), high.Y()),
                         lot.between(low.Z(), high.Z()));
      if (is_inside(shape, place)) return place;
    }
    return std::nullopt;
  }

  void look_at_door(const RandomFrame& frame, Lot& lot) {
    const DoorSweep sweep = sweep_of(frame);
    look_at(frame, sweep, lot);
    ++tally.doors;
    tally.stopped += sweep.free_deg < 180 ? 1 : 0;
    tally.shut_tight += sweep.shut_enough ? 0 : 1;
    if (!said_of(frame.frame, "cannot swing out").empty()) {
      ++tally.narrow;
      EXPECT_FALSE(sweep.opens_enough) << "the plan warned of it";
    }
    if (sweep.free_deg == 180) plant_shallow(frame, sweep.least, lot);
    if (sweep.free_deg > 1) plant_deep(frame, sweep.free_deg, lot);
  }

  void tell(const Refusals& refusals) const {
    std::cout << tally.doors << " doors; stopped as drawn " << tally.stopped << ", warned of as narrow "
              << tally.narrow << ", shut too tightly " << tally.shut_tight
              << "; planted and found: " << tally.shallow << " overlaps of " << kClash_mm << " mm, "
              << tally.deep << " in the way; at filled cuts " << tally.filled << "; places off their solids by "
              << tally.worst_mm << " mm at most\n";
    for (const auto& [code, count] : refusals.count)
      std::cout << "not made: " << count << " " << code << ", as: " << refusals.example.at(code) << "\n";
  }

  Tally tally;
};

TEST_P(RandomDoors, AreStoppedByWhatIsInTheirWayAndByNothingElse) {
  Refusals refusals;
  for (int i = 0; i < kDoors; ++i) {
    SCOPED_TRACE("door " + std::to_string(i));
    Lot lot(lot_seed(GetParam(), i));
    look_at_door(random_door(lot, refusals), lot);
    if (HasFailure()) break;
  }
  // Whatever opened at all had something planted in its way.
  EXPECT_GT(tally.stopped + tally.shallow + tally.deep, 0);
  if (kDoors > 10) tell(refusals);
}

INSTANTIATE_TEST_SUITE_P(ByTheSeed, RandomDoors, ::testing::Values(2, 5));

}  // namespace
}  // namespace prismwright
