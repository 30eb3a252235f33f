#include "core/lens/quantities.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

namespace prismwright {
namespace {

Outcome<LensValues> with(const LensValues& values, std::vector<Assignment> assignments) {
  return with_assignments(values, assignments);
}

void expect_refused(std::vector<Assignment> assignments, const std::string& code,
                    std::vector<std::string> words) {
  const auto next = with(starting_values("4", Work::bullseye, 8), assignments);
  ASSERT_FALSE(next.ok()) << "should be refused: " << code;
  EXPECT_EQ(next.problem().code, code) << next.problem().text;
  EXPECT_EQ(next.problem().trouble, Trouble::request);
  for (const std::string& word : words) {
    EXPECT_NE(next.problem().text.find(word), std::string::npos)
        << "'" << word << "' in: " << next.problem().text;
  }
}

TEST(Quantities, HaveUniqueKeysAndSayWhatTheyMean) {
  std::set<std::string> keys;
  for (const Quantity& q : quantities()) {
    EXPECT_TRUE(keys.insert(q.key).second) << q.key;
    EXPECT_FALSE(q.label.empty()) << q.key;
    EXPECT_FALSE(q.meaning.empty()) << q.key;
    if (q.form == QuantityForm::number) {
      EXPECT_LT(q.min, q.max) << q.key;
    }
    if (q.form == QuantityForm::choice) {
      EXPECT_FALSE(q.choices.empty()) << q.key;
    }
  }
}

TEST(Quantities, ReadBackWhatTheyPrint) {
  LensValues values = starting_values("1", Work::belt, 6);
  values.brief.title = "North mole";
  values.section.refracting_margins_mm = {139.7, 1.0 / 3 + 200};
  values.section.upper_start_r_mm = 930;
  values.section.upper_start_z_mm = 510.25;
  values.material.index = 1.4918;
  values.panels[2].blind = true;
  std::vector<Assignment> all;
  for (const Quantity& q : quantities()) all.emplace_back(q.key, value_text(values, q.key));
  const auto copy = with(starting_values("4", Work::bullseye, 8), all);
  ASSERT_TRUE(copy.ok()) << copy.problem().text;
  EXPECT_TRUE(changed_keys(values, *copy).empty());
}

TEST(Starting, EveryOrderAndWorkGivesValuesThatPass) {
  for (const char* order : {"hyper-radial", "1", "2", "3", "3.5", "4", "5", "6"}) {
    for (const Work work : {Work::bullseye, Work::belt}) {
      for (const int panels : {2, 5, 8, 16}) {
        const LensValues values = starting_values(order, work, panels);
        const Done checked = check_values(values) ? check_buildable(values) : check_values(values);
        EXPECT_TRUE(checked.ok()) << order << " " << panels << ": " << (checked ? "" : checked.problem().text);
      }
    }
  }
}

TEST(Assignments, TakeTypedUnits) {
  const auto next =
      with(starting_values("4", Work::bullseye, 8),
           {{"section.edge_mm", "3/8 in"}, {"section.upper_to_deg", "75 deg"}, {"section.gap_mm", "0.05 cm"}});
  ASSERT_TRUE(next.ok()) << next.problem().text;
  EXPECT_DOUBLE_EQ(next->section.edge_mm, 9.525);
  EXPECT_DOUBLE_EQ(next->section.upper_to_deg, 75);
  EXPECT_DOUBLE_EQ(next->section.gap_mm, 0.5);
}

TEST(Numbers, AreReadAsPeopleTypeThem) {
  EXPECT_EQ(number_text(*read_number("6 in", "mm")), "152.4");
  EXPECT_DOUBLE_EQ(*read_number("1 3/8 in", "mm"), 34.925);
  EXPECT_DOUBLE_EQ(*read_number(" 12.5mm ", "mm"), 12.5);
  EXPECT_DOUBLE_EQ(*read_number("-1 1/2", "mm"), -1.5);
  EXPECT_EQ(number_text(*read_number("-0", "mm")), "0");
  EXPECT_EQ(number_text(*read_number("-0 in", "mm")), "0");
  EXPECT_FALSE(read_number("1e300/1e-300", "mm")) << "has no end";
  EXPECT_FALSE(read_number("1e308 m", "mm")) << "has no end";
  EXPECT_DOUBLE_EQ(*read_number("2 ft", "mm"), 609.6);
  EXPECT_FALSE(read_number("12 deg", "mm"));
  EXPECT_FALSE(read_number("", "mm"));
  EXPECT_FALSE(read_number("nan", "mm"));
  EXPECT_FALSE(read_number("1e999", "mm"));
  EXPECT_FALSE(read_number("3/0", "mm"));
  EXPECT_FALSE(read_number("four", "mm"));
}

TEST(Assignments, AnOrderBringsItsUsualValuesUnlessTheyAreGiven) {
  const LensValues fourth = starting_values("4", Work::bullseye, 8);
  const auto first = with(fourth, {{"brief.order", "first"}});
  ASSERT_TRUE(first.ok());
  EXPECT_EQ(first->brief.focal_mm, 920);
  EXPECT_EQ(first->section.edge_mm, 10);
  const auto given = with(fourth, {{"brief.focal_mm", "910"}, {"brief.order", "1"}});
  ASSERT_TRUE(given.ok());
  EXPECT_EQ(given->brief.focal_mm, 910);
}

TEST(Assignments, AMaterialBringsItsOwnIndex) {
  LensValues values = starting_values("4", Work::bullseye, 8);
  values.material.index = 1.49;
  const auto crown = with(values, {{"material.name", "crown"}});
  ASSERT_TRUE(crown.ok());
  EXPECT_FALSE(crown->material.index);
  EXPECT_DOUBLE_EQ(crown->material.effective_index(), 1.51);
}

TEST(Panels, AreCountedWidenedShiftedAndBlinded) {
  const auto next = with(starting_values("1", Work::bullseye, 8), {{"panels.widths_deg", "90, 60, 90, 60, 60"},
                                                                   {"panels.axis_shift_deg", "0 10 0 -10 0"},
                                                                   {"panels.blind", "5"}});
  ASSERT_TRUE(next.ok()) << next.problem().text;
  EXPECT_EQ(next->panels.size(), 5u);
  EXPECT_TRUE(next->panels[4].blind);
  const auto places = place_panels(next->panels);
  EXPECT_DOUBLE_EQ(places[0].axis_deg, 0);
  EXPECT_DOUBLE_EQ(places[1].axis_deg, 45 + 30 + 10);
  EXPECT_DOUBLE_EQ(places.back().to_deg - places.front().from_deg, 360);
}

TEST(Refusals, SayTheValueTheLimitAndTheAdvice) {
  expect_refused({{"material.index", "1.2"}}, "value.range", {"1.2", "1.3", "2", "Choose"});
  expect_refused({{"brief.focal_mm", "5"}}, "value.range", {"5 mm", "50", "3000"});
  expect_refused({{"brief.panels", "1"}}, "value.range", {"1", "between 2 and 32"});
  expect_refused({{"brief.panels", "400"}}, "value.range", {"400", "32"});
  expect_refused({{"brief.panels", "4.5"}}, "value.unreadable", {"whole number"});
  expect_refused({{"panels.widths_deg", "90, 90, 90, 80"}}, "panels.sum", {"350", "360", "10 deg wider"});
  expect_refused({{"panels.axis_shift_deg", "1, 2"}}, "panels.length", {"2 values for 8 panels"});
  expect_refused({{"panels.axis_shift_deg", "40 0 0 0 0 0 0 0"}}, "panels.axis", {"panel 1", "40", "22.5"});
  expect_refused({{"panels.blind", "9"}}, "panels.unknown", {"9", "1 to 8"});
  expect_refused({{"panels.blind", "1 2 3 4 5 6 7 8"}}, "panels.all_blind", {"8 panels"});
  expect_refused({{"section.refracting_margins_mm", "50, 80, 70"}}, "margins.rise", {"70", "80"});
  expect_refused({{"section.upper_to_deg", "20"}}, "limit.below_band", {"20", "28.5"});
  expect_refused({{"section.upper_start_r_mm", "300"}}, "start.half", {"upper_start_z_mm"});
  expect_refused({{"frame.pocket_mm", "9"}}, "frame.pocket", {"9 mm", "5 mm", "shallower"});
  expect_refused({{"frame.door_panel", "9"}}, "frame.door", {"9", "8 panels", "0 for none"});
  expect_refused({{"frame.door_panel", "3"}, {"frame.door_gap_mm", "2.5"}}, "frame.door_gap",
                 {"2.5 mm", "2 mm"});
  expect_refused({{"frame.changer_radius_mm", "40"}, {"frame.changer_to_mm", "-150"}}, "frame.changer",
                 {"-100", "-150"});
  expect_refused({{"frame.door_hinge", "top"}}, "value.choice", {"top", "left, right"});
  expect_refused({{"section.land_mm", "12"}}, "stack.lands", {"12 mm", "U01"});
  expect_refused({{"section.faces", "round"}}, "value.choice", {"round", "true, arc"});
  expect_refused({{"section.colour", "red"}}, "key.unknown", {"section.colour"});
  expect_refused({{"section.edge_mm", "thick"}}, "value.unreadable", {"thick", "mm"});
  expect_refused({{"section.edge_mm", ""}}, "value.unreadable", {"section.edge_mm"});
  expect_refused({{"section.edge_mm", "nan"}}, "value.unreadable", {"nan"});
}

TEST(Assignments, AreTakenAllOrNone) {
  const LensValues before = starting_values("4", Work::bullseye, 8);
  const auto next = with(before, {{"section.edge_mm", "5"}, {"section.gap_mm", "-1"}});
  EXPECT_FALSE(next.ok());
  EXPECT_EQ(before.section.edge_mm, 4);
}

}  // namespace
}  // namespace prismwright
