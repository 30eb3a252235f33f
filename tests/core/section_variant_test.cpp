#include "core/lens/section_variant.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

SectionVariant variant_of(const LensValues& values) {
  return {"steep", "2026-03-01T09:30:00Z", section_texts(values)};
}

void drop_key(SectionVariant& variant, std::string_view key) {
  std::erase_if(variant.texts, [&](const Assignment& each) { return each.first == key; });
}

LensValues thick_crown() {
  LensValues values;
  values.section.edge_mm = 6;
  values.section.faces = Faces::arc;
  values.section.refracting = divided(Division::count, 4);
  values.material.name = "crown";
  values.material.index = 1.53;
  values.material.density_g_cm3 = 2.5;
  return values;
}

TEST(SectionVariant, TakenOverBringsSectionAndMaterialAndNothingElse) {
  LensValues present;
  present.brief.title = "Tallow Ness";
  present.panels = equal_panels(6);
  present.frame.rib_mm = 6;
  const auto taken = with_variant(present, variant_of(thick_crown()));
  ASSERT_TRUE(taken.ok()) << taken.problem().text;
  EXPECT_THAT(taken->notes, IsEmpty());
  EXPECT_THAT(section_texts(taken->values), testing::ContainerEq(section_texts(thick_crown())));
  EXPECT_EQ(taken->values.brief.title, "Tallow Ness");
  EXPECT_EQ(taken->values.panels.size(), 6u);
  EXPECT_EQ(taken->values.frame.rib_mm, 6);
}

TEST(SectionVariant, OfAnOlderProgramKeepsWhatItDidNotKnow) {
  SectionVariant old = variant_of(thick_crown());
  drop_key(old, "section.gap_mm");
  drop_key(old, "material.index");
  LensValues present;
  present.section.gap_mm = 0.8;
  present.material.index = 1.51;  // a new material's name would blank it
  const auto taken = with_variant(present, old);
  ASSERT_TRUE(taken.ok()) << taken.problem().text;
  EXPECT_EQ(taken->values.section.gap_mm, 0.8);
  EXPECT_EQ(taken->values.material.index, 1.51);
  EXPECT_EQ(taken->values.material.name, "crown");
  EXPECT_EQ(taken->values.section.edge_mm, 6);
}

TEST(SectionVariant, OfANewerProgramSaysWhatWasLeftOut) {
  SectionVariant newer = variant_of(thick_crown());
  newer.texts.emplace_back("section.mirror_mm", "12");
  newer.texts.emplace_back("brief.title", "never a variant's");
  const auto taken = with_variant(LensValues(), newer);
  ASSERT_TRUE(taken.ok()) << taken.problem().text;
  EXPECT_THAT(taken->notes, ElementsAre(HasSubstr("section.mirror_mm = '12'"), HasSubstr("brief.title")));
  EXPECT_EQ(taken->values.brief.title, "");
  EXPECT_EQ(taken->values.section.edge_mm, 6);
}

TEST(SectionVariant, ThatCannotBeWithThePresentFocalDistanceIsRefused) {
  LensValues first_order;
  first_order.brief.focal_mm = 920;
  first_order.section.upper_start_r_mm = 930;
  first_order.section.upper_start_z_mm = 520;
  first_order.section.reflecting_chord_mm = 90;
  LensValues sixth_order;
  sixth_order.brief.focal_mm = 150;
  SectionVariant variant = variant_of(first_order);
  for (Assignment& each : variant.texts)
    if (each.first == "section.reflecting_chord_mm") each.second = "9000";
  const auto taken = with_variant(sixth_order, variant);
  ASSERT_FALSE(taken.ok());
  EXPECT_THAT(taken.problem().text, HasSubstr("variant 'steep' cannot be taken over: "));
  EXPECT_THAT(taken.problem().text, HasSubstr("9000"));
}

TEST(VariantName, IsKeptWithoutWhiteSpaceRoundIt) {
  EXPECT_EQ(variant_name("  steep joints\t").value(), "steep joints");
  EXPECT_EQ(variant_name("presently").value(), "presently");
  EXPECT_FALSE(variant_name(" present ").ok());
}

}  // namespace
}  // namespace prismwright
