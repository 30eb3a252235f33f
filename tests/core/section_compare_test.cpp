#include "core/lens/section_compare.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/angle.h"
#include "core/lens/quantities.h"

namespace prismwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr int kElevations = 500;

ComparedSection side(const char* name, const LensValues& values) {
  auto made = compared_section(name, values, kElevations);
  if (!made) throw std::runtime_error(made.problem().text);
  return std::move(made).value();
}

LensValues fourth_order() { return starting_values("4", Work::bullseye, 8); }

const FigurePair& figure(const SectionComparison& comparison, std::string_view key) {
  for (const FigurePair& each : comparison.figures)
    if (each.key == key) return each;
  throw std::runtime_error("no such figure");
}

const ZonePair& zone(const SectionComparison& comparison, std::string_view mark) {
  for (const ZonePair& each : comparison.zones)
    if (each.mark == mark) return each;
  throw std::runtime_error("no such zone");
}

TEST(SectionCompare, OneSectionTwiceIsAlike) {
  const SectionComparison same = compare_sections(side("a", fourth_order()), side("b", fourth_order()));
  EXPECT_TRUE(same.alike());
  EXPECT_EQ(same.first, "a");
  EXPECT_EQ(same.second, "b");
  EXPECT_TRUE(same.settings.empty());
  EXPECT_GT(same.zones.size(), 10u);
}

TEST(SectionCompare, NamesTheSettingsThatDifferWithBothTexts) {
  LensValues other = fourth_order();
  other.section.edge_mm = 5;
  other.material.index = 1.4918;
  const SectionComparison comparison = compare_sections(side("a", fourth_order()), side("b", other));
  ASSERT_EQ(comparison.settings.size(), 2u);
  EXPECT_EQ(comparison.settings[0].key, "material.index");
  EXPECT_EQ(comparison.settings[0].first, "");
  EXPECT_EQ(comparison.settings[0].second, "1.4918");
  EXPECT_EQ(comparison.settings[1].key, "section.edge_mm");
  EXPECT_EQ(comparison.settings[1].label, find_quantity("section.edge_mm")->label);
  EXPECT_EQ(comparison.settings[1].unit, "mm");
  EXPECT_EQ(comparison.settings[1].first, "4");
  EXPECT_EQ(comparison.settings[1].second, "5");
  EXPECT_FALSE(comparison.alike());
}

TEST(SectionCompare, SharesOfEachSideAddToOne) {
  LensValues arcs = fourth_order();
  arcs.section.faces = Faces::arc;
  arcs.section.joint = Joint::level;
  const SectionComparison comparison = compare_sections(side("a", fourth_order()), side("b", arcs));
  double first = 0;
  double second = 0;
  for (const char* key : {"share_level", "share_stray", "share_escaped", "share_stopped",
                          "share_lost_at_reflection", "share_lost_in_lands"}) {
    first += figure(comparison, key).first.value();
    second += figure(comparison, key).second.value();
  }
  EXPECT_NEAR(first, 1, 1e-9);
  EXPECT_NEAR(second, 1, 1e-9);
  // A level joint loses light that a joint along the ray does not; arcs depart from level, true curves do not.
  EXPECT_GT(figure(comparison, "share_lost_in_lands").second, figure(comparison, "share_lost_in_lands").first);
  EXPECT_LT(figure(comparison, "worst_departure_deg").first, 1e-4);
  EXPECT_GT(figure(comparison, "worst_departure_deg").second, 0.01);
}

TEST(SectionCompare, FewerPrismsAreMissingOnThatSideOnly) {
  LensValues low = fourth_order();
  low.section.upper_to_deg = 60;
  const SectionComparison comparison = compare_sections(side("full", fourth_order()), side("low", low));
  const FigurePair& zones = figure(comparison, "zones");
  EXPECT_GT(zones.first, zones.second);
  EXPECT_EQ(comparison.zones.size(), static_cast<std::size_t>(*zones.first));
  int missing = 0;
  for (const ZonePair& each : comparison.zones) {
    ASSERT_TRUE(each.first) << each.mark;
    if (each.second) continue;
    EXPECT_EQ(each.kind, ZoneKind::upper);
    EXPECT_TRUE(each.differs());
    ++missing;
  }
  EXPECT_EQ(missing, *zones.first - *zones.second);
  EXPECT_FALSE(zone(comparison, "U01").differs()) << "a stack begins alike wherever it ends";
  EXPECT_FALSE(zone(comparison, "C").differs());
}

TEST(SectionCompare, ZonesStandInTheOrderOfTheSectionWhicheverSideHasMore) {
  LensValues low = fourth_order();
  low.section.upper_to_deg = 60;
  const SectionComparison comparison = compare_sections(side("low", low), side("full", fourth_order()));
  const ComparedSection full = side("full", fourth_order());
  ASSERT_EQ(comparison.zones.size(), full.section.zones.size());
  for (std::size_t i = 0; i < full.section.zones.size(); ++i)
    EXPECT_EQ(comparison.zones[i].mark, full.section.zones[i].mark);
}

TEST(SectionCompare, TellsLimitsSizesAndThicknessOfEachSide) {
  // A belt of two margins by hand; with a thin edge the margin is where the zone ends in height.
  LensValues narrow = fourth_order();
  narrow.section.refracting_margins_mm = {50, 90};
  LensValues wide = narrow;
  wide.section.refracting_margins_mm = {60, 90};
  const SectionComparison comparison = compare_sections(side("narrow", narrow), side("wide", wide));
  const ZonePair& centre = zone(comparison, "C");
  ASSERT_TRUE(centre.first && centre.second);
  EXPECT_EQ(centre.first->size_by, SizeBy::margin_mm);
  EXPECT_NEAR(centre.first->size_mm, 50, 1e-6);
  EXPECT_NEAR(centre.second->size_mm, 60, 1e-6);
  // The margin's ray enters at f tan t and rises by e tan a to the edge depth e: f tan t + e tan a = 50.
  const double t = radians(centre.first->to_deg);
  const double a = std::asin(std::sin(t) / narrow.material.effective_index());
  EXPECT_NEAR(250 * std::tan(t) + 4 * std::tan(a), 50, 1e-6);
  EXPECT_GT(centre.second->section_thickness_mm, centre.first->section_thickness_mm);
  EXPECT_EQ(zone(comparison, "U01").first->size_by, SizeBy::side_mm);
  EXPECT_NEAR(zone(comparison, "U01").first->size_mm, 30, 1e-9);
}

TEST(SectionCompare, CountsGlassByTheDensityOfEachSide) {
  LensValues crown = fourth_order();
  crown.material.name = "crown";
  crown.material.density_g_cm3 = 2.5;
  ComparedSection first = side("acrylic", fourth_order());
  ComparedSection second = side("crown", crown);
  const SectionComparison without = compare_sections(first, second);
  EXPECT_FALSE(figure(without, "volume_mm3").first) << "not worked out is not nought";
  EXPECT_FALSE(figure(without, "mass_g").second);
  first.glass = {{"C", 8, 60'000}, {"R1", 16, 40'000}};
  second.glass = {{"C", 8, 60'000}, {"R1", 16, 42'000}};
  const SectionComparison comparison = compare_sections(first, second);
  EXPECT_DOUBLE_EQ(figure(comparison, "volume_mm3").first.value(), 100'000);
  EXPECT_DOUBLE_EQ(figure(comparison, "mass_g").first.value(), 119);   // 100 cm3 of 1.19
  EXPECT_DOUBLE_EQ(figure(comparison, "mass_g").second.value(), 255);  // 102 cm3 of 2.5
  EXPECT_EQ(zone(comparison, "R1").second->volume_mm3, 42'000);
  EXPECT_FALSE(zone(comparison, "R2").first->volume_mm3);
}

TEST(SectionCompare, HeightReachesOverLowerImagesAndLowerPrisms) {
  LensValues belt_only = fourth_order();
  belt_only.section.upper_to_deg = belt_only.section.refracting_to_deg;
  belt_only.section.lower_to_deg = belt_only.section.refracting_to_deg;
  const ComparedSection belt = side("belt", belt_only);
  // The band alone is as high above the focal plane as below it, its top the last ring's corner at its edge.
  const double t = radians(28.5);
  const double a = std::asin(std::sin(t) / belt_only.material.effective_index());
  EXPECT_NEAR(height_mm(belt.section), 2 * (250 * std::tan(t) + 4 * std::tan(a)), 1e-6);
  EXPECT_GT(height_mm(side("all", fourth_order()).section), height_mm(belt.section) + 200);
}

TEST(SectionCompare, OfWhatCannotBeWorkedOutIsRefusedByItsName) {
  LensValues broken = fourth_order();
  broken.section.refracting_margins_mm = {90, 50};
  const auto refused = compared_section("steep", broken, kElevations);
  ASSERT_FALSE(refused.ok());
  EXPECT_THAT(refused.problem().text, HasSubstr("the section 'steep' cannot be worked out: "));
}

TEST(SectionCompare, EveryFigureIsFinite) {
  LensValues other = fourth_order();
  other.section.upper_to_deg = other.section.refracting_to_deg;
  other.section.lower_to_deg = other.section.refracting_to_deg;
  const SectionComparison comparison = compare_sections(side("a", fourth_order()), side("b", other));
  for (const FigurePair& each : comparison.figures) {
    EXPECT_TRUE(!each.first || std::isfinite(*each.first)) << each.key;
    EXPECT_TRUE(!each.second || std::isfinite(*each.second)) << each.key;
  }
  EXPECT_FALSE(figure(comparison, "least_margin_deg").second) << "no prism reflects there";
}

}  // namespace
}  // namespace prismwright
