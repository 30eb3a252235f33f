#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/angle.h"
#include "core/frame/cut_shapes.h"
#include "core/frame/frame_plan.h"
#include "tests/support/part_points.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"

namespace prismwright {
namespace {

LensValues with_ribs_between_bands(LensValues values, double thickness_mm, double width_mm) {
  values.section.upper_rib_mm = values.section.lower_rib_mm = thickness_mm;
  values.section.rib_outer_r_mm = values.brief.focal_mm + width_mm;
  return values;
}

LensValues with_door(LensValues values, int panel, DoorHinge hinge) {
  values.frame.door_panel = panel;
  values.frame.door_hinge = hinge;
  return values;
}

LensValues thick(LensValues values) {
  values.frame.rib_mm = 12;
  values.frame.pocket_mm = 12;
  values.frame.screw_mm = 5;
  values.frame.rib_margin_mm = 15;
  values.frame.rail_mm = 14;
  values.frame.spacer_mm = 0;
  return values;
}

LensValues bare(LensValues values) {
  values.frame.base_mm = values.frame.finial_mm = 0;
  values.frame.rib_margin_mm = 1;
  return values;
}

struct Lens {
  const char* name;
  LensValues values;
};
std::ostream& operator<<(std::ostream& out, const Lens& lens) { return out << lens.name; }

std::vector<Lens> lenses() {
  const LensValues eye = fourth_order_bullseye(Faces::true_curve);
  const LensValues belt = starting_values("4", Work::belt, 8);
  const LensValues unequal = first_order_unequal(Faces::arc);
  LensValues three_kinds = starting_values("4", Work::bullseye, 9);
  three_kinds.panels = {{30, 0, false}, {40, 0, false}, {50, 0, false}, {30, 0, false}, {40, 0, false},
                        {50, 0, false}, {30, 0, false}, {40, 0, false}, {50, 0, false}};
  return {
      {"bullseye", eye},
      {"belt", belt},
      {"bullseye_with_ribs_between_bands", with_ribs_between_bands(eye, 14, 24)},
      {"belt_with_ribs_between_bands", with_ribs_between_bands(belt, 9, 24)},
      {"unequal_panels_one_blind", with_ribs_between_bands(unequal, 12, 20)},
      {"two_panels", with_ribs_between_bands(two_panels(Work::belt, Faces::arc), 8, 20)},
      {"two_panels_of_bullseye_with_a_door",
       with_door(with_ribs_between_bands(two_panels(Work::bullseye, Faces::arc), 8, 20), 1, DoorHinge::right)},
      {"many_narrow_panels", starting_values("5", Work::belt, 32)},
      {"three_kinds_of_panels", three_kinds},
      {"bullseye_with_a_door", with_door(eye, 3, DoorHinge::left)},
      {"belt_with_a_door", with_door(with_ribs_between_bands(belt, 9, 24), 1, DoorHinge::right)},
      {"thick_ribs_with_seats_right_through", with_door(thick(belt), 8, DoorHinge::left)},
      {"no_base_and_little_margin", with_door(bare(eye), 2, DoorHinge::left)},
      {"every_band_its_own_way", every_band_its_own_way()},
  };
}

std::map<std::string, const PartPoints*> by_mark(const std::vector<PartPoints>& parts) {
  std::map<std::string, const PartPoints*> found;
  for (const PartPoints& part : parts) found[part.mark] = &part;
  return found;
}

// Some pairs that count as joined keep a little room of their own.
double room_of_joint(const PartPoints& a, const PartPoints& b) {
  const auto one_is = [&](PartKind kind) { return a.kind == kind || b.kind == kind; };
  if (one_is(PartKind::hinge_leaf) || one_is(PartKind::hinge_pin) || one_is(PartKind::latch)) return 0.31;
  if (one_is(PartKind::spacer) && one_is(PartKind::screw)) return 0.6;
  // Sampled outlines depart from their arcs, and fitted outlines from those they were fitted to.
  return 0.06;
}

const FramedLens& made(const Lens& lens) {
  return framed_once("assembly " + std::string(lens.name), lens.values);
}

class FrameAssembly : public testing::TestWithParam<Lens> {};

TEST_P(FrameAssembly, MarksEveryPartOnceAndJoinsOnlyWhatIsThere) {
  const FramePlan& frame = made(GetParam()).frame;
  std::set<std::string> marks;
  for (const FlatPart& part : frame.flats) EXPECT_TRUE(marks.insert(part.mark).second) << part.mark;
  for (const RoundPart& part : frame.rounds) EXPECT_TRUE(marks.insert(part.mark).second) << part.mark;
  for (const TurnedBar& part : frame.bars) EXPECT_TRUE(marks.insert(part.mark).second) << part.mark;
  std::set<std::pair<std::string, std::string>> joints;
  for (const FrameJoint& joint : frame.joints) {
    EXPECT_TRUE(marks.contains(joint.first)) << joint.first;
    EXPECT_TRUE(marks.contains(joint.second)) << joint.second;
    EXPECT_TRUE(joints.insert(std::minmax(joint.first, joint.second)).second)
        << joint.first << " " << joint.second;
  }
  for (const FlatPart& part : frame.flats) EXPECT_FALSE(part.shape_key.empty()) << part.mark;
  for (const RoundPart& part : frame.rounds) EXPECT_FALSE(part.shape_key.empty()) << part.mark;
}

TEST_P(FrameAssembly, TouchesWhereItSaysAndOverlapsNowhere) {
  const LensPlan& plan = made(GetParam()).plan;
  const FramePlan& frame = made(GetParam()).frame;
  const std::vector<PartPoints> parts = points_of(frame, plan);
  const auto found = by_mark(parts);
  for (const FrameJoint& joint : frame.joints) {
    if (!found.contains(joint.first) || !found.contains(joint.second)) continue;
    const PartPoints& a = *found.at(joint.first);
    const PartPoints& b = *found.at(joint.second);
    EXPECT_GT(overlap_mm(a, b, 1), -room_of_joint(a, b)) << joint.first << " and " << joint.second;
  }
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (std::size_t k = i + 1; k < parts.size(); ++k) {
      if (!parts[i].may_meet(parts[k], -0.02)) continue;
      EXPECT_LT(overlap_mm(parts[i], parts[k], 0), 0.02) << parts[i].mark << " and " << parts[k].mark;
    }
  }
}

// Places on and in the glass of a prism, in the lens frame.
std::vector<SpacePoint> glass_of(const PlannedPrism& prism) {
  std::vector<SpacePoint> places;
  const bool about_lens = prism.turning == TurningAxis::lens;
  const double dip = radians(prism.axis_dip_deg);
  const Trim& trim = prism.trim;
  const double a = radians(trim.clockwise_side_deg);
  const double b = radians(trim.anticlockwise_side_deg);
  for (const SectionPoint s : polygon_of(prism.profile, 0.2)) {
    for (int k = 0; k < 240; ++k) {
      const double t = 2 * kPi * k / 240;
      const double across = std::abs(s.z) * std::cos(t);
      const double up = std::abs(s.z) * std::sin(t);
      if ((trim.half == Half::upper && up < 0) || (trim.half == Half::lower && up > 0)) continue;
      const SpacePoint p = about_lens ? SpacePoint{s.r * std::cos(t), s.r * std::sin(t), s.z}
                                      : SpacePoint{s.r * std::cos(dip) + up * std::sin(dip), across,
                                                   prism.axis_z_mm - s.r * std::sin(dip) + up * std::cos(dip)};
      const double in_a = -p.x * std::sin(a) + p.y * std::cos(a);
      const double in_b = p.x * std::sin(b) - p.y * std::cos(b);
      if (std::min(in_a, in_b) < trim.set_back_mm) continue;
      const double axis = radians(prism.axis_deg);
      places.push_back(
          {p.x * std::cos(axis) - p.y * std::sin(axis), p.x * std::sin(axis) + p.y * std::cos(axis), p.z});
    }
  }
  return places;
}

TEST_P(FrameAssembly, LeavesTheGlassClear) {
  const LensPlan& plan = made(GetParam()).plan;
  const std::vector<PartPoints> parts = points_of(made(GetParam()).frame, plan);
  for (const PlannedPrism& prism : plan.prisms) {
    if (prism.panel > 2 && prism.panel != plan.values.frame.door_panel) continue;
    for (const SpacePoint p : glass_of(prism)) {
      for (const PartPoints& part : parts) {
        if (!part.near_box(p, -0.01)) continue;
        ASSERT_LT(part.depth(p, 0), 0.01) << prism.mark << " and " << part.mark;
      }
    }
  }
}

// The hole or bore of a plate on the axis of a screw, pin or dowel.
struct Found {
  double off_axis_mm = 1e9;
  double diameter_mm = 0;
};
Found hole_on(const FlatPart& part, const RoundPart& round) {
  Found best;
  const auto take = [&](SpacePoint on_axis, SpaceVector along, double diameter) {
    if (std::abs(std::abs(dot(along, round.along)) - 1) > 1e-9) return;
    const SpaceVector v = on_axis - round.from;
    const double off = length(v - dot(v, round.along) * round.along);
    if (off < best.off_axis_mm) best = {off, diameter};
  };
  for (const PlateHole& hole : part.holes) {
    take(part.place.out_of(SpacePoint{hole.centre.u, hole.centre.v, 0}), part.place.third, hole.diameter_mm);
  }
  for (const PlateBore& bore : part.bores) {
    take(part.place.out_of(bore.from), part.place.out_of(bore.along), bore.diameter_mm);
  }
  return best;
}

TEST_P(FrameAssembly, DrillsEveryPlateOnTheAxisOfWhatGoesThroughIt) {
  const FramePlan& frame = made(GetParam()).frame;
  std::map<std::string, const FlatPart*> flats;
  for (const FlatPart& part : frame.flats) flats[part.mark] = &part;
  std::map<std::string, int> plates_of;
  for (const RoundPart& round : frame.rounds) {
    for (const FrameJoint& joint : frame.joints) {
      if (joint.first != round.mark && joint.second != round.mark) continue;
      const auto flat = flats.find(joint.first == round.mark ? joint.second : joint.first);
      if (flat == flats.end() || round.kind == PartKind::spacer) continue;
      const Found hole = hole_on(*flat->second, round);
      EXPECT_LT(hole.off_axis_mm, 1e-9) << round.mark << " in " << flat->first;
      EXPECT_GE(hole.diameter_mm, round.diameter_mm - 1e-9) << round.mark << " in " << flat->first;
      EXPECT_LE(hole.diameter_mm, 1.2 * round.diameter_mm + 0.11) << round.mark << " in " << flat->first;
      ++plates_of[round.mark];
    }
  }
  for (const RoundPart& round : frame.rounds) {
    if (round.kind == PartKind::screw) {
      EXPECT_GE(plates_of[round.mark], 1) << round.mark;
    }
    if (round.kind == PartKind::dowel) {
      EXPECT_EQ(plates_of[round.mark], 2) << round.mark;
    }
  }
}

TEST_P(FrameAssembly, LeavesEveryHoleForSomethingThatGoesThroughIt) {
  const FramePlan& frame = made(GetParam()).frame;
  for (const FlatPart& part : frame.flats) {
    for (const PlateHole& hole : part.holes) {
      if (hole.use == "vent") continue;
      FlatPart one = part;
      one.holes = {hole};
      one.bores.clear();
      const bool used = std::any_of(frame.rounds.begin(), frame.rounds.end(), [&](const RoundPart& round) {
        return round.kind != PartKind::spacer && hole_on(one, round).off_axis_mm < 1e-9;
      });
      EXPECT_TRUE(used) << part.mark << ": " << hole.use;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Lenses, FrameAssembly, testing::ValuesIn(lenses()),
                         [](const auto& lens) { return std::string(lens.param.name); });

TEST(FrameAssemblyOfRandomLenses, TouchesWhereItSaysAndOverlapsNowhere) {
  Lot lot(20260);
  int tried = 0;
  while (tried < 4) {
    LensValues values = random_lens(lot);
    values.frame.door_panel = lot.whole(0, 3);
    values.frame.screw_mm = lot.whole(2, 6);
    values.frame.spacer_mm = lot.once_in(3) ? 0 : lot.between(5, 40);
    if (values.brief.focal_mm > 400) continue;  // the great ones take long and say nothing else
    const auto plan = plan_lens(values);
    if (!plan) continue;
    ++tried;
    const FramePlan frame = plan_frame(*plan);
    const std::vector<PartPoints> parts = points_of(frame, *plan);
    for (std::size_t i = 0; i < parts.size(); ++i) {
      for (std::size_t k = i + 1; k < parts.size(); ++k) {
        if (!parts[i].may_meet(parts[k], -0.02)) continue;
        EXPECT_LT(overlap_mm(parts[i], parts[k], 0), 0.02)
            << tried << ": " << parts[i].mark << " and " << parts[k].mark;
      }
    }
  }
}

TEST(FrameAssemblyOfOneLens, MakesTwoKindsOfPlatesForTheRibsOfEqualPanels) {
  const LensPlan plan = plan_of(starting_values("1", Work::bullseye, 8));
  const FramePlan frame = plan_frame(plan);
  std::set<std::string> keys;
  for (const FlatPart& part : frame.flats) {
    if (part.kind == PartKind::side_rib) keys.insert(part.shape_key);
  }
  EXPECT_EQ(keys.size(), 2u) << "a left one and a right one";
}

TEST(FrameAssemblyOfOneLens, MakesSixKindsOfPlatesForNinePanelsOfThreeKinds) {
  const auto all = lenses();
  const auto lens = std::find_if(all.begin(), all.end(),
                                 [](const Lens& l) { return std::string(l.name) == "three_kinds_of_panels"; });
  const FramePlan frame = plan_frame(plan_of(lens->values));
  std::set<std::string> keys;
  for (const FlatPart& part : frame.flats) {
    if (part.kind == PartKind::side_rib) keys.insert(part.shape_key);
  }
  EXPECT_LE(keys.size(), 6u);
}

TEST(FrameAssemblyOfOneLens, LeavesOutARibBetweenBandsThatStandsWhereTheRailIs) {
  LensValues values = sixth_order_belt(Faces::arc);
  values.section.lower_to_deg = values.section.refracting_to_deg;
  values.section.lower_rib_mm = 20;
  const FramePlan frame = plan_frame(plan_of(values));
  const auto warned =
      std::any_of(frame.warnings.begin(), frame.warnings.end(), [](const FrameWarning& warning) {
        return warning.mark == "P01-rib-lower" && warning.kind == FrameWarning::Kind::no_room;
      });
  EXPECT_TRUE(warned);
  for (const FlatPart& part : frame.flats) EXPECT_NE(part.kind, PartKind::cross_rib) << part.mark;
}

TEST(FrameAssemblyOfOneLens, SaysWhatFindsNoRoom) {
  LensValues values = fourth_order_bullseye(Faces::arc);
  values.frame.rail_mm = 4;  // M3 asks for 6 mm
  const FramePlan frame = plan_frame(plan_of(values));
  const auto said = [&](const std::string& word) {
    return std::any_of(frame.warnings.begin(), frame.warnings.end(), [&](const FrameWarning& warning) {
      return warning.kind == FrameWarning::Kind::no_room && warning.mark.find(word) != std::string::npos;
    });
  };
  EXPECT_TRUE(said("rail-top"));
  const bool into_rails = std::any_of(frame.flats.begin(), frame.flats.end(), [](const FlatPart& part) {
    return part.kind == PartKind::rail && !part.bores.empty();
  });
  EXPECT_FALSE(into_rails);
}

}  // namespace
}  // namespace prismwright
