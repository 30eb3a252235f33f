#include "ui/models/cell_table.h"

#include <gtest/gtest.h>

#include "ui/models/clearance_table.h"
#include "ui/models/door_words.h"
#include "ui/models/fit_table.h"
#include "ui/models/parts_table.h"
#include "ui/models/setting_table.h"
#include "ui/views/plot_files.h"

namespace prismwright {
namespace {

CellSheet gaps_sheet() {
  CellSheet sheet;
  sheet.heads = {{"Part", "part", {}, false},
                 {"Gap\nmm", "gap_mm", {}, true},
                 {"Verdict", "verdict", {}, false},
                 {{}, "marks", {}, false}};
  sheet.rows = {
      {{"A"}, {word_cell("A"), number_cell("9.00", 9), verdict_cell(Verdict::clear), word_cell("A A2")}},
      {{"B"}, {word_cell("B"), blank_cell(), verdict_cell(Verdict::tight), word_cell("B")}},
      {{"C"}, {word_cell("C"), number_cell("10.00", 10), verdict_cell(Verdict::clash), word_cell("C C7")}}};
  return sheet;
}

QStringList shown(const CellFilter& filter) {
  QStringList parts;
  for (int row = 0; row < filter.rowCount(); ++row) parts << filter.index(row, 0).data().toString();
  return parts;
}

class CellsOnTable : public testing::Test {
 protected:
  void SetUp() override {
    table.setSheet(gaps_sheet());
    filter.setSourceModel(&table);
  }
  CellTable table;
  CellFilter filter;
};

TEST_F(CellsOnTable, SortByNumberNotByWordsAndBlankCellsComeLast) {
  filter.sort(1);
  EXPECT_EQ(shown(filter), (QStringList{"A", "C", "B"}));
}

TEST_F(CellsOnTable, SortByVerdictWorstFirst) {
  filter.sort(2);
  EXPECT_EQ(shown(filter), (QStringList{"C", "B", "A"}));
}

TEST_F(CellsOnTable, AreFoundByAColumnThatIsNotShown) {
  filter.setWords("C7");
  EXPECT_EQ(shown(filter), QStringList{"C"});
}

TEST_F(CellsOnTable, KeepToTheChoicesOfTheirColumns) {
  filter.setChoice(2, verdict_cell(Verdict::tight).shown);
  EXPECT_EQ(shown(filter), QStringList{"B"});
  filter.setWords("A2");
  EXPECT_EQ(filter.rowCount(), 0) << "both the word and the choice must hold";
  filter.setChoice(2, {});
  EXPECT_EQ(shown(filter), QStringList{"A"});
}

TEST_F(CellsOnTable, AreFoundByAnyOfTheirMarks) {
  EXPECT_EQ(table.lineOf("C"), 2);
  EXPECT_EQ(table.lineOf("D"), -1);
}

TEST(SavedWords, AreQuotedOnlyWhereTheyMustBe) {
  EXPECT_EQ(quoted_for_csv("P01-rib"), "P01-rib");
  EXPECT_EQ(quoted_for_csv("a, \"b\""), "\"a, \"\"b\"\"\"");
}

TEST(ClearanceRows, StandByWhatIsLeftOverTheNeededGapClashesFirst) {
  std::vector<Clearance> gaps(3);
  const auto set = [](Clearance& gap, const char* first, const char* second, double gap_mm, Verdict verdict) {
    gap.first = first;
    gap.second = second;
    gap.gap_mm = gap_mm;
    gap.needed_mm = 0.2;
    gap.verdict = verdict;
  };
  set(gaps[0], "A", "B", 1, Verdict::clear);
  set(gaps[1], "A", "C", 0.1, Verdict::tight);
  set(gaps[2], "B", "C", 0, Verdict::clash);
  gaps[2].overlap_mm3 = 4;
  const ClearanceSheet all = clearance_sheet(gaps, false);
  EXPECT_EQ(all.order, (std::vector<std::size_t>{2, 1, 0}));
  EXPECT_EQ(all.sheet.rows[0].marks, (QStringList{"B", "C"}));
  EXPECT_TRUE(all.sheet.rows[0].amiss);
  EXPECT_FALSE(all.sheet.rows[1].amiss);
  for (const CellRow& row : all.sheet.rows) EXPECT_EQ(row.cells.size(), all.sheet.heads.size());
}

PartsLine rails(const char* mark, int quantity, double thickness_mm, double mass_g) {
  PartsLine line;
  line.kind = PartKind::rail;
  line.thickness_mm = thickness_mm;
  line.quantity = quantity;
  line.mass_g = mass_g;
  for (int i = 0; i < quantity; ++i) line.marks.push_back(mark + std::to_string(i + 1));
  return line;
}

TEST(PartsRows, SayHowManyAreAlikeAndWhatTheyWeighTogether) {
  PartsLine unknown = rails("bar-", 1, 0, 0);
  unknown.mass_g.reset();
  const std::vector<PartsLine> lines{rails("rail-", 2, 8, 100), rails("short-", 1, 6, 50), unknown};
  const CellSheet sheet = parts_sheet(lines, false);
  ASSERT_EQ(sheet.rows.size(), 3U);
  EXPECT_EQ(sheet.rows[0].marks, (QStringList{"rail-1", "rail-2"}));
  EXPECT_EQ(sheet.rows[0].cells[0].shown, "rail-1 and 1 alike");
  EXPECT_EQ(sheet.rows[0].cells[0].saved, "rail-1");
  EXPECT_EQ(sheet.rows[0].cells[2].saved, "200");
  EXPECT_EQ(sheet.rows[1].cells[0].shown, "short-1");
  EXPECT_EQ(sheet.rows[2].cells[4].saved, "") << "a mass that is not known";
  EXPECT_EQ(total_words(lines), "250 g");
  for (const CellRow& row : sheet.rows) EXPECT_EQ(row.cells.size(), sheet.heads.size());
}

TEST(PartsRows, AreInInchesWhereLengthsAre) {
  const CellSheet sheet = parts_sheet({rails("rail-", 1, 25.4, 100)}, true);
  EXPECT_EQ(sheet.rows[0].cells[3].shown, "1.0000");
  EXPECT_EQ(sheet.rows[0].cells[3].saved, "25.4") << "saved in mm";
  PartsLine sized = rails("rail-", 1, 25.4, 100);
  sized.size = "254.0 x 25.4 mm";
  sized.size_inches = "10 x 1 in";
  EXPECT_EQ(parts_sheet({sized}, true).rows[0].cells[8].shown, "10 x 1 in");
  EXPECT_EQ(parts_sheet({sized}, false).rows[0].cells[8].shown, "254.0 x 25.4 mm");
}

DoorStep step_at(double angle_deg, double gap_mm) {
  DoorStep step;
  step.angle_deg = angle_deg;
  step.gap_mm = gap_mm;
  step.first = "P03-rib-left";
  step.second = "P04-rib-right";
  return step;
}

TEST(DoorReading, TellsTheNearestStepAndWhatStopsTheDoorBeyondIt) {
  DoorSweep sweep;
  sweep.steps = {step_at(0, 1), step_at(30, 0.62), step_at(60, 0)};
  sweep.free_deg = 60;
  EXPECT_EQ(door_words(sweep, 32, false), "gap 0.62 mm, P03-rib-left to P04-rib-right; free to 60.0°");
  EXPECT_EQ(door_words(sweep, 75, false), "stopped at 60.0°: P03-rib-left to P04-rib-right");
  EXPECT_EQ(door_step_at(sweep, 75), nullptr);
  EXPECT_EQ(door_free_words(sweep, 90), "60.0° of 90.0°");
  EXPECT_EQ(door_words({}, 10, false), "nothing stands near");
}

TEST(FitRows, FlagWhatCannotGoInBeforeTheStepsOfItsPanel) {
  PanelFit panel;
  panel.panel = 2;
  panel.steps.resize(2);
  panel.steps[0].marks = {"P02-rib-left"};
  panel.steps[1].marks = {"P02-R1", "P02-R2"};
  panel.steps[1].way = FitWay::from_sea;
  panel.steps[1].into_pocket_mm = 2.5;
  FitBlocked blocked;
  blocked.marks = {"P02-U01"};
  blocked.words = "The rail stands in its way.";
  panel.cannot.push_back(blocked);
  panel.open_seats.resize(1);
  panel.open_seats[0].mark = "P02-R1";
  panel.open_seats[0].from_sea = true;
  const CellSheet sheet = fit_sheet({panel}, false);
  ASSERT_EQ(sheet.rows.size(), 3U);
  EXPECT_TRUE(sheet.rows[0].amiss);
  EXPECT_EQ(sheet.rows[0].marks, QStringList{"P02-U01"});
  EXPECT_EQ(sheet.rows[2].cells[2].shown, "P02-R1 and 1 more");
  EXPECT_EQ(sheet.rows[2].cells[4].saved, "2.5");
  EXPECT_EQ(sheet.rows[2].cells[5].shown, name_of(FitWay::from_sea));
  LensPlan plan;
  for (const char* mark : {"P02-U01", "P02-R1", "P02-R2"}) {
    PlannedPrism prism;
    prism.mark = mark;
    plan.prisms.push_back(prism);
  }
  EXPECT_EQ(fit_words({panel}, plan), "2 of 3");
}

TEST(SettingRows, PutWhatFallsShortFirst) {
  SettingCheck enough;
  enough.mark = "P01-U01";
  enough.end = {200, 0.5, 0.2, 0.1};
  enough.sides = {20, 0.5, 0.2, 0.1, 0.05, 0};
  SettingCheck tight = enough;
  tight.mark = "P01-U02";
  tight.end.drawn_mm = 0.1;
  tight.end_enough = false;
  SettingCheck leaning = enough;
  leaning.mark = "P01-C";
  leaning.end = {};
  const SettingSheet all = setting_sheet({enough, tight, leaning}, false);
  EXPECT_EQ(all.order.front(), 1U);
  EXPECT_TRUE(all.sheet.rows.front().amiss);
  EXPECT_EQ(verdict_of(enough), Verdict::clear);
  EXPECT_EQ(verdict_of(tight), Verdict::tight);
  EXPECT_TRUE(setting_words(leaning, false).contains("no end"));
  const auto place = std::find(all.order.begin(), all.order.end(), 2U) - all.order.begin();
  EXPECT_EQ(all.sheet.rows[static_cast<std::size_t>(place)].cells[3].saved, "") << "no end, no gap at it";
}

}  // namespace
}  // namespace prismwright
