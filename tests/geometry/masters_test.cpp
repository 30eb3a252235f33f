#include <gtest/gtest.h>

#include "tests/support/master_checks.h"
#include "tests/support/planned_lens.h"
#include "tests/support/random_lens.h"
#include "tests/support/sample_lenses.h"
#include "tests/support/solid_matchers.h"

namespace prismwright {
namespace {

constexpr double kWithin_mm = 1e-3;

WorksSettings uneven() {
  WorksSettings settings;
  settings.stock_mm = 0.5;
  settings.shrink_length_percent = 0.35;
  settings.shrink_depth_percent = 0.9;
  settings.shrink_height_percent = -0.4;
  return settings;
}

WorksSettings all_round() {
  WorksSettings settings;
  settings.stock_faces = StockFaces::all;
  return settings;
}

struct MasterCase {
  const char* name;
  LensValues values;
  WorksSettings settings;
};

/// Every sixth shape of each: the bench of the works looks at all of them.
std::vector<MasterCase> master_cases() {
  return {{"bullseye_even", fourth_order_bullseye(Faces::true_curve), {}},
          {"bullseye_uneven", fourth_order_bullseye(Faces::true_curve), uneven()},
          {"bullseye_all_faces", fourth_order_bullseye(Faces::arc), all_round()},
          {"belt_even", sixth_order_belt(Faces::true_curve), {}},
          {"belt_uneven", sixth_order_belt(Faces::true_curve), uneven()},
          {"unequal_panels", first_order_unequal(Faces::true_curve), uneven()},
          {"aimed_bands", every_band_its_own_way(), uneven()},
          {"flat_inner_faces", starting_values("6", Work::belt, 24), all_round()}};
}

class MasterOfAPrism : public ::testing::TestWithParam<MasterCase> {};

TEST_P(MasterOfAPrism, ShrunkAndSandedIsThePrism) {
  LensValues values = GetParam().values;
  if (std::string(GetParam().name) == "flat_inner_faces") values.section.inner_face = InnerFace::flat;
  const LensPlan plan = plan_of(values);
  const auto prisms = distinct_prisms(plan);
  MasterErrors worst;
  for (std::size_t i = 0; i < prisms.size(); i += 6) {
    const auto master = make_master(*prisms[i], prisms[i]->mark, GetParam().settings);
    ASSERT_TRUE(master.ok()) << master.problem().text;
    SCOPED_TRACE(prisms[i]->mark);
    EXPECT_THAT(master->shape, IsValidSolid());
    EXPECT_GT(master->casting_mm3, master->prism_mm3);
    MasterCheck check(*master, GetParam().settings);
    const MasterErrors faces = check.faces();
    const MasterErrors section = check.section();
    EXPECT_LT(faces.faces_mm, kWithin_mm);
    EXPECT_LT(section.corners_mm, kWithin_mm);
    EXPECT_LT(section.curves_mm, kWithin_mm);
    EXPECT_GT(faces.places, 30);
    worst.take(faces);
    worst.take(section);
  }
  EXPECT_GT(worst.sections, 3);
}

INSTANTIATE_TEST_SUITE_P(Of, MasterOfAPrism, ::testing::ValuesIn(master_cases()),
                         [](const auto& named) { return std::string(named.param.name); });

TEST(MastersOfRandomLenses, AreRightOrRefusedWithASentence) {
  MasterErrors worst;
  int made = 0;
  for (unsigned seed = 40; seed <= 52; ++seed) {
    Lot lot(seed);
    const auto plan = plan_lens(random_lens(lot));
    if (!plan) continue;
    WorksSettings settings;
    settings.stock_mm = lot.between(0, 1.2);
    settings.stock_faces = lot.any<StockFaces>();
    settings.shrink_depth_percent = lot.between(-1, 4);
    settings.shrink_length_percent = lot.between(-1, 4);
    settings.shrink_height_percent = lot.between(-1, 4);
    const auto prisms = distinct_prisms(*plan);
    const auto& prism = *prisms[static_cast<std::size_t>(lot.whole(0, static_cast<int>(prisms.size()) - 1))];
    SCOPED_TRACE(std::to_string(seed) + " " + prism.mark);
    const auto master = make_master(prism, prism.mark, settings);
    if (!master) {
      EXPECT_FALSE(master.problem().text.empty());
      continue;
    }
    ++made;
    MasterCheck check(*master, settings);
    worst.take(check.faces());
    worst.take(check.section());
  }
  EXPECT_GT(made, 4);
  EXPECT_LT(worst.faces_mm, kWithin_mm);
  EXPECT_LT(worst.corners_mm, kWithin_mm);
  EXPECT_LT(worst.curves_mm, kWithin_mm);
}

TEST(MasterShop, MakesOneSolidForAllPrismsOfAShapeAndForNoOtherSettings) {
  const LensPlan plan = plan_of(sixth_order_belt(Faces::arc));
  MasterShop shop;
  WorksSettings settings;
  const PlannedPrism& one = *plan.find("P01-U03");
  const PlannedPrism& like = *plan.find("P04-U03");
  ASSERT_EQ(one.shape_key, like.shape_key);
  const auto first = shop.make(one, "U03", settings);
  const auto second = shop.make(like, "U03", settings);
  ASSERT_TRUE(first.ok() && second.ok());
  EXPECT_EQ(shop.made_anew(), 1);
  EXPECT_TRUE((*first)->shape.IsSame((*second)->shape));
  EXPECT_EQ((*second)->prism.mark, "P04-U03");
  settings.shrink_height_percent = 0.9;
  ASSERT_TRUE(shop.make(one, "U03", settings).ok());
  EXPECT_EQ(shop.made_anew(), 2);
}

TEST(MasterWithoutStockOrShrinkage, IsThePrismItself) {
  const LensPlan plan = plan_of(fourth_order_bullseye(Faces::true_curve));
  WorksSettings settings;
  settings.stock_mm = 0;
  settings.shrink_depth_percent = settings.shrink_length_percent = settings.shrink_height_percent = 0;
  const auto master = make_master(*plan.find("P01-R5a"), "R5a", settings);
  ASSERT_TRUE(master.ok()) << master.problem().text;
  EXPECT_NEAR(master->master_mm3 / master->prism_mm3, 1, 1e-7);
}

}  // namespace
}  // namespace prismwright
