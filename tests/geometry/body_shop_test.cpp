#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>

#include "core/base/angle.h"
#include "geometry/bodies.h"
#include "geometry/greatest_length.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

/// A small belt: few prisms, quickly made.
LensValues small_belt() {
  LensValues values = starting_values("6", Work::belt, 4);
  values.section.upper_to_deg = 45;
  values.section.lower_to_deg = values.section.refracting_to_deg;
  return values;
}

LensPlan planned(const LensValues& values) {
  auto plan = plan_lens(values);
  EXPECT_TRUE(plan.ok()) << (plan.ok() ? "" : plan.problem().text);
  return std::move(plan).value();
}

TEST(BodyShop, MakesCongruentPrismsOnceAndTurnsThemIntoPlace) {
  const LensPlan plan = planned(small_belt());
  BodyShop shop;
  const auto bodies = shop.make(plan);
  ASSERT_TRUE(bodies.ok()) << bodies.problem().text;
  EXPECT_EQ(shop.made_anew(), static_cast<int>(distinct_prisms(plan).size()));
  const PrismBody* first = bodies->find("P01-U01");
  const PrismBody* third = bodies->find("P03-U01");
  ASSERT_TRUE(first && third);
  EXPECT_TRUE(first->shape.IsPartner(third->shape));
  // Panel 3 of 4 looks the other way.
  EXPECT_NEAR(first->centre_of_gravity_mm.X(), -third->centre_of_gravity_mm.X(), 1e-9);
  EXPECT_GT(first->centre_of_gravity_mm.X(), 50);
  EXPECT_NEAR(first->centre_of_gravity_mm.Y(), 0, 1e-3);
  EXPECT_NEAR(first->centre_of_gravity_mm.Z(), third->centre_of_gravity_mm.Z(), 1e-9);
}

TEST(BodyShop, KeepsTheOrderOfThePlan) {
  const LensPlan plan = planned(small_belt());
  const auto bodies = BodyShop().make(plan);
  ASSERT_TRUE(bodies.ok());
  ASSERT_EQ(bodies->prisms.size(), plan.prisms.size());
  for (std::size_t i = 0; i < plan.prisms.size(); ++i) EXPECT_EQ(bodies->prisms[i].mark, plan.prisms[i].mark);
  EXPECT_EQ(bodies->find("P99-C"), nullptr);
}

TEST(BodyShop, RemakesNothingThatAnEditDidNotTouch) {
  LensValues values = small_belt();
  BodyShop shop;
  const auto before = shop.make(planned(values));
  ASSERT_TRUE(before.ok());
  values.material.density_g_cm3 = 2.5;
  const auto heavier = shop.make(planned(values));
  ASSERT_TRUE(heavier.ok());
  EXPECT_EQ(shop.made_anew(), 0);
  EXPECT_TRUE(heavier->prisms[0].shape.IsPartner(before->prisms[0].shape));
  EXPECT_NEAR(heavier->prisms[0].mass_g / before->prisms[0].mass_g, 2.5 / 1.19, 1e-9);

  // Upper prisms that reach higher: the ones below stay.
  values.section.upper_to_deg = 55;
  const LensPlan higher = planned(values);
  ASSERT_TRUE(shop.make(higher).ok());
  EXPECT_GT(shop.made_anew(), 0);
  EXPECT_LT(shop.made_anew(), static_cast<int>(distinct_prisms(higher).size()));
}

TEST(BodyShop, StopsWhenToldAndGoesOnFromThere) {
  const LensPlan plan = planned(small_belt());
  BodyShop shop;
  int told = 0;
  const auto stopped = shop.make(plan, [&](double, std::string_view) { return ++told < 4; });
  ASSERT_FALSE(stopped.ok());
  EXPECT_EQ(stopped.problem().trouble, Trouble::stopped);
  EXPECT_EQ(told, 4);
  ASSERT_TRUE(shop.make(plan).ok());
  EXPECT_LT(shop.made_anew(), static_cast<int>(distinct_prisms(plan).size()));
}

TEST(BodyShop, TellsHowFarItHasCome) {
  const LensPlan plan = planned(small_belt());
  double last = -1;
  bool rises = true;
  ASSERT_TRUE(BodyShop()
                  .make(plan,
                        [&](double share, std::string_view) {
                          rises = rises && share > last;
                          last = share;
                          return true;
                        })
                  .ok());
  EXPECT_TRUE(rises);
  EXPECT_DOUBLE_EQ(last, 1);
}

TEST(BodyShop, NamesThePrismThatCannotBeMade) {
  LensPlan plan = planned(small_belt());
  plan.prisms[3].trim.set_back_mm = 400;
  plan.prisms[3].shape_key = "no room";
  const auto bodies = BodyShop().make(plan);
  ASSERT_FALSE(bodies.ok());
  EXPECT_EQ(bodies.problem().where, plan.prisms[3].mark);
  EXPECT_EQ(bodies.problem().trouble, Trouble::request);
}

/// A ring of rectangular section about a panel's axis, 30 mm along it, 50 to 80 mm away from it.
PlannedPrism ring() {
  PlannedPrism prism;
  prism.mark = "P01-R1";
  prism.profile.faces = {straight_face(FaceRole::joint_lower, {200, 50}, {230, 50}),
                         straight_face(FaceRole::outer, {230, 50}, {230, 80}),
                         straight_face(FaceRole::joint_upper, {230, 80}, {200, 80}),
                         straight_face(FaceRole::inner, {200, 80}, {200, 50})};
  prism.trim = {-90, 90, 0, Half::whole, 0};
  return prism;
}

TEST(GreatestLength, OfAWholeRingIsItsDiameter) { EXPECT_NEAR(greatest_length_mm(ring()), 160, 0.2); }

TEST(GreatestLength, OfAHalfRingIsItsDiameter) {
  PlannedPrism half = ring();
  half.trim.half = Half::upper;
  EXPECT_NEAR(greatest_length_mm(half), 160, 0.2);
}

TEST(GreatestLength, OfAShortBeltIsItsChord) {
  PlannedPrism belt = ring();
  belt.turning = TurningAxis::lens;
  belt.trim = {-15, 15, 0, Half::whole, 0};
  EXPECT_NEAR(greatest_length_mm(belt), 2 * 230 * std::sin(radians(15)), 0.2);
}

TEST(GreatestLength, DoesNotDependOnWhereThePanelsAxisLies) {
  PlannedPrism even = ring();
  even.turning = TurningAxis::lens;
  even.trim = {-15, 15, 0, Half::whole, 0};
  PlannedPrism shifted = even;
  shifted.trim = {-5, 25, 0, Half::whole, 0};
  EXPECT_NEAR(greatest_length_mm(shifted) / greatest_length_mm(even), 1, 0.02);
}

}  // namespace
}  // namespace prismwright
