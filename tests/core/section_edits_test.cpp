#include "core/lens/section_edits.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/lens/quantities.h"
#include "core/optics/proof.h"

namespace prismwright {
namespace {

/// A fourth-order lens whose section is edited as a maker would.
class EditedSection : public testing::Test {
 protected:
  void SetUp() override { solve(); }

  void take(const Outcome<SectionEdit>& edit) {
    ASSERT_TRUE(edit.ok()) << edit.problem().text;
    const auto next = with_assignments(values_, edit->assignments);
    ASSERT_TRUE(next.ok()) << next.problem().text;
    values_ = *next;
    solve();
  }

  void set(std::initializer_list<Assignment> assignments) {
    const auto next = with_assignments(values_, std::vector<Assignment>(assignments));
    ASSERT_TRUE(next.ok()) << next.problem().text;
    values_ = *next;
    solve();
  }

  void solve() {
    auto section = solve_section(values_.section_input());
    ASSERT_TRUE(section.ok()) << section.problem().text;
    section_ = std::move(*section);
  }

  [[nodiscard]] const Zone& zone(const char* mark) const {
    const Zone* found = section_.find(mark);
    if (!found) throw std::runtime_error(std::string("no zone ") + mark);
    return *found;
  }
  [[nodiscard]] int count(ZoneKind kind) const {
    return static_cast<int>(std::count_if(section_.zones.begin(), section_.zones.end(),
                                          [kind](const Zone& z) { return z.kind == kind; }));
  }

  LensValues values_ = starting_values("4", Work::bullseye, 8);
  Section section_;
};

TEST_F(EditedSection, KeepsTheOtherZonesWhenOneIsResized) {
  const Section before = section_;
  take(resize_zone(values_, section_, "R2", SizeBy::to_deg, zone("R2").to_deg - 0.3));
  EXPECT_NEAR(zone("R2").to_deg, before.find("R2")->to_deg - 0.3, 1e-12);
  EXPECT_NEAR(zone("R1").to_deg, before.find("R1")->to_deg, 1e-12);
  EXPECT_NEAR(zone("R3").to_deg, before.find("R3")->to_deg, 1e-12);
  EXPECT_EQ(section_.zones.size(), before.zones.size());
}

TEST_F(EditedSection, ARingTakesAMarginInMillimetres) {
  take(resize_zone(values_, section_, "R1", SizeBy::margin_mm, 58));
  EXPECT_NEAR(zone_margin_mm(section_, zone("R1")), 58, 1e-9);
}

TEST_F(EditedSection, APrismTakesAnEntrySideAnEndOrAThickness) {
  take(resize_zone(values_, section_, "U03", SizeBy::side_mm, 27));
  EXPECT_NEAR(distance(zone("U03").corners->a, zone("U03").corners->b), 27, 1e-9);
  take(resize_zone(values_, section_, "U03", SizeBy::to_deg, 44));
  EXPECT_NEAR(zone("U03").to_deg, 44, 1e-9);
  take(resize_zone(values_, section_, "L02", SizeBy::to_deg, 39.5));
  EXPECT_NEAR(zone("L02").from_deg, -39.5, 1e-9);
  take(resize_zone(values_, section_, "U05", SizeBy::thickness_mm, 12));
  EXPECT_NEAR(zone("U05").section_thickness_mm, 12, 1e-9);
}

TEST_F(EditedSection, ALockedPrismStaysWhenTheBandIsDividedAnew) {
  const ReflectingCorners before = *zone("U05").corners;
  take(lock_zone(values_, section_, "U05", true));
  for (const auto& [division, number] :
       {std::pair{Division::count, 14.0}, std::pair{Division::area, 11.0}, std::pair{Division::height, 13.0},
        std::pair{Division::thickness, 11.0}, std::pair{Division::side, 25.0}}) {
    take(divide_band(values_, section_, Band::upper, division, number));
    const auto locked =
        std::find_if(section_.zones.begin(), section_.zones.end(), [](const Zone& z) { return z.locked; });
    ASSERT_NE(locked, section_.zones.end());
    EXPECT_NEAR(distance(locked->corners->a, before.a), 0, 1e-9);
    EXPECT_NEAR(distance(locked->corners->b, before.b), 0, 1e-9);
    EXPECT_NEAR(distance(locked->corners->c, before.c), 0, 1e-9);
  }
}

TEST_F(EditedSection, ALockedRingStaysWhenTheBandIsDividedAnew) {
  const Zone before = zone("R2");
  take(lock_zone(values_, section_, "R2", true));
  take(divide_band(values_, section_, Band::refracting, Division::count, 9));
  EXPECT_EQ(count(ZoneKind::centre) + count(ZoneKind::ring), 9);
  const auto locked =
      std::find_if(section_.zones.begin(), section_.zones.end(), [](const Zone& z) { return z.locked; });
  EXPECT_NEAR(locked->from_deg, before.from_deg, 1e-12);
  EXPECT_NEAR(locked->to_deg, before.to_deg, 1e-12);
  EXPECT_FALSE(resize_zone(values_, section_, locked->mark, SizeBy::to_deg, 20).ok());
}

TEST_F(EditedSection, DivisionByCountMakesEqualEntrySidesThatEndAtTheLimit) {
  take(divide_band(values_, section_, Band::upper, Division::count, 10));
  EXPECT_EQ(count(ZoneKind::upper), 10);
  for (int i = 2; i <= 10; ++i)
    EXPECT_NEAR(zone(("U" + std::string(i < 10 ? "0" : "") + std::to_string(i)).c_str()).side_mm,
                zone("U01").side_mm, 1e-6);
  EXPECT_NEAR(zone("U10").to_deg, values_.section.upper_to_deg, 1e-9);
}

TEST_F(EditedSection, DivisionByAreaMakesEqualSections) {
  set({{"section.land_mm", "0"}, {"section.gap_mm", "0"}});
  take(divide_band(values_, section_, Band::refracting, Division::area, 7));
  EXPECT_EQ(count(ZoneKind::ring), 6);
  for (const Zone& z : section_.zones) {
    if (!is_refracting(z.kind)) continue;
    const double area = area_mm2(z.profile) * (z.kind == ZoneKind::centre ? 0.5 : 1);
    EXPECT_NEAR(area / area_mm2(zone("R1").profile), 1, 1e-5) << z.mark;
  }
  take(divide_band(values_, section_, Band::lower, Division::area, 5));
  for (const Zone& z : section_.zones) {
    if (z.kind != ZoneKind::lower) continue;
    // The measure is the triangle of the corners; the curve adds a little of its own.
    EXPECT_NEAR(area_mm2(z.profile) / area_mm2(zone("L01").profile), 1, 2e-3) << z.mark;
  }
}

TEST_F(EditedSection, DivisionByThicknessKeepsWithinWhatTheCasterAllows) {
  take(divide_band(values_, section_, Band::upper, Division::thickness, 10));
  for (const Zone& z : section_.zones)
    if (z.kind == ZoneKind::upper) {
      EXPECT_LE(z.section_thickness_mm, 10 + 1e-9) << z.mark;
    }
  take(divide_band(values_, section_, Band::refracting, Division::thickness, 8));
  for (const Zone& z : section_.zones)
    if (is_refracting(z.kind)) {
      EXPECT_LE(z.thickness_mm, 8 + 1e-6) << z.mark;
    }
}

TEST_F(EditedSection, SplitAndRemoveAndAdd) {
  const int rings = count(ZoneKind::ring);
  const double end = zone("R2").to_deg;
  take(split_zone(values_, section_, "R2"));
  EXPECT_EQ(count(ZoneKind::ring), rings + 1);
  EXPECT_NEAR(zone("R3").to_deg, end, 1e-12);
  take(remove_zone(values_, section_, "R2"));
  EXPECT_EQ(count(ZoneKind::ring), rings);
  const int prisms = count(ZoneKind::lower);
  take(add_zone(values_, section_, Band::lower));
  EXPECT_EQ(count(ZoneKind::lower), prisms + 1);
  take(split_zone(values_, section_, "U02"));
  EXPECT_EQ(prove(section_, 2000).of(Fate::escaped), 0);
}

TEST_F(EditedSection, SaysWhatCannotBeMet) {
  EXPECT_FALSE(remove_zone(values_, section_, "X9").ok());
  take(lock_zone(values_, section_, "U05", true));
  const auto edit = divide_band(values_, section_, Band::upper, Division::count, 2);
  ASSERT_TRUE(edit.ok());
  const auto next = with_assignments(values_, edit->assignments);
  ASSERT_FALSE(next.ok());
  EXPECT_NE(next.problem().text.find("too few"), std::string::npos) << next.problem().text;
}

}  // namespace
}  // namespace prismwright
